package pour_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
)

// faultRow is a bend of the example that makes a fault, where it stands and a clause of what is said of it; and the nearest bend that makes none.
type faultRow struct {
	path, says    string
	wrong, seldom func(p *pour.Plan)
}

// What cannot be is a fault at its place, said once, with how to mend it; what is only seldom is none.
func TestWhatCannotBeIsAFaultAtItsPlace(t *testing.T) {
	demo, shelf := bench(t)
	if faults := demo.Check(shelf); len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, r := range append(partRows(), wholeRows()...) {
		p := demo.Clone()
		r.wrong(&p)
		faults := p.Check(shelf)
		if len(faults) != 1 || faults[0].Path != r.path || !strings.Contains(faults[0].Problem+"; "+faults[0].Mend, r.says) || faults[0].Mend == "" {
			t.Errorf("%s, %q: %+v", r.path, r.says, faults)
		}
		if r.seldom == nil {
			continue
		}
		p = demo.Clone()
		r.seldom(&p)
		if faults = p.Check(shelf); len(faults) > 0 {
			t.Errorf("%s: %+v", r.path, faults)
		}
	}
}

func partRows() []faultRow {
	return []faultRow{
		{"name", "is empty", func(p *pour.Plan) { p.Name = " " }, func(p *pour.Plan) { p.Name = strings.Repeat("é", 80) }},
		{"name", "too long", func(p *pour.Plan) { p.Name = strings.Repeat("é", 81) }, nil},
		{"base.jug[1].name", "too long", func(p *pour.Plan) { p.Base.Jugs[1].Name = strings.Repeat("x", 25) }, func(p *pour.Plan) { p.Base.Jugs[1].Name = strings.Repeat("x", 24) }},
		{"base.jug[2].name", "two jugs", func(p *pour.Plan) { p.Base.Jugs[2].Name, p.Base.Scents = "gentian", nil }, func(p *pour.Plan) { p.Icing.Jugs[0].Name = "gentian" }},
		{"base.jug[1].batter_colour", "six hex digits", func(p *pour.Plan) { p.Base.Jugs[1].BatterColour = "#5566b" }, func(p *pour.Plan) { p.Base.Jugs[1].BatterColour = "" }},
		{"base.jug[1].batter_colour", "six hex digits", func(p *pour.Plan) { p.Base.Jugs[1].BatterColour = "#5566bg" }, func(p *pour.Plan) { p.Base.Jugs[1].BatterColour = "#0189AF" }},
		{"base.jug[1].batter_colour", "six hex digits", func(p *pour.Plan) { p.Base.Jugs[1].BatterColour = "5566b00" }, nil},
		{"base.jug[1].colourant[0].colourant", "no colourant", func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Colourant = "ultramarin-blue" }, nil},
		{"base.jug[1].colourant[0].carrier", "oil", func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Carrier = "wine" }, func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Carrier = pour.CarryNone }},
		{"base.oil[0].oil", `did you mean "olive"?`, func(p *pour.Plan) { p.Base.Oils[0].Oil = "olvie" }, nil},
		{"base.oil[1].oil", "twice", func(p *pour.Plan) { p.Base.Oils[1].Oil = "olive" }, nil},
		{"base.extra[0].extra", "no extra", func(p *pour.Plan) { p.Base.Extras[0].Extra = "flour" }, func(p *pour.Plan) { p.Base.Extras[0].Extra = "henna" }},
		{"base.scent[0].scent", "no scent", func(p *pour.Plan) { p.Base.Scents[0].Scent = "smoke" }, nil},
		{"base.scent[0].into", "no jug of the base", func(p *pour.Plan) { p.Base.Scents[0].Into[1] = "sky" }, func(p *pour.Plan) { p.Base.Scents[0].Into = nil }},
		{"swirl.technique", "no technique", func(p *pour.Plan) { p.Swirl.Technique = "marble" }, nil},
		{"swirl.first", "no jug of the base", func(p *pour.Plan) { p.Swirl.First = "sky" }, func(p *pour.Plan) { p.Swirl.First = "pot" }},
		{"swirl.last", "first and last", func(p *pour.Plan) { p.Swirl.First, p.Swirl.Last = "fern", "fern" }, func(p *pour.Plan) { p.Swirl.First, p.Swirl.Last = "fern", "pot" }},
		{"bed.keep", "chill", func(p *pour.Plan) { p.Bed.Keep = "chil" }, func(p *pour.Plan) { p.Bed.Keep = pour.BedChill }},
		{"base.jug", "the first is the pot", func(p *pour.Plan) { p.Base.Jugs, p.Base.Scents = nil, nil }, nil},
		{"base.oil", "empty", func(p *pour.Plan) { p.Base.Oils = nil }, nil},
	}
}

func wholeRows() []faultRow {
	oils := func(size string, oilsG, perBar, layer float64) func(p *pour.Plan) {
		return func(p *pour.Plan) {
			p.Icing.Size, p.Icing.OilsG, p.Icing.PerBarG, p.Icing.LayerMM = size, oilsG, perBar, layer
		}
	}
	stock := func(strength, koh float64) func(p *pour.Plan) {
		return func(p *pour.Plan) { p.Base.StockLyePercent, p.Base.KOHSharePercent = strength, koh }
	}
	share := func(by float64) func(p *pour.Plan) { return func(p *pour.Plan) { p.Base.Jugs[0].SharePercent += by } }
	oil := func(by float64) func(p *pour.Plan) { return func(p *pour.Plan) { p.Base.Oils[0].Percent += by } }
	slab := func(shape string, barWidth float64) func(p *pour.Plan) {
		return func(p *pour.Plan) { p.Mould.Shape, p.Mould.BarWidthMM = shape, barWidth }
	}
	return []faultRow{
		{"base.jug", "100", share(0.011), share(0.009)},
		{"base.jug", "100", share(-0.011), share(-0.009)},
		{"base.oil", "100", oil(0.011), oil(0.009)},
		{"icing.oils_g", "nothing to mix", oils(pour.SizeOils, 0, 28, 5), oils(pour.SizeOils, 0.1, 0, 0)},
		{"icing.per_bar_g", "nothing to pipe", oils(pour.SizeBar, 400, 0, 5), oils(pour.SizeBar, 0, 0.1, 0)},
		{"icing.layer_mm", "nothing to pipe", oils(pour.SizeLayer, 400, 28, 0), oils(pour.SizeLayer, 0, 0, 0.1)},
		{"icing.size", "bar", oils(pour.SizeMould, 400, 28, 5), nil},
		{"base.size", "mould", func(p *pour.Plan) { p.Base.Size, p.Base.PerBarG = pour.SizeBar, 20 }, nil},
		{"base.stock_lye_percent", "NaOH alone", stock(50, 10), stock(50, 0)},
		{"base.stock_lye_percent", "10 to 52", stock(9.9, 0), stock(10, 0)},
		{"base.stock_lye_percent", "52", stock(52.1, 0), stock(52, 0)},
		{"base.carrier_oil", "not in its blend", func(p *pour.Plan) { p.Base.Carrier, p.Base.CarrierOil = pour.CarrierBatch, "grapeseed" }, func(p *pour.Plan) { p.Base.CarrierOil = "grapeseed" }},
		{"mould.bar_width_mm", "wider than the mould", slab(pour.ShapeSlab, 80.1), slab(pour.ShapeSlab, 80)},
		{"mould.bar_mm", "thicker than the mould", func(p *pour.Plan) { p.Mould.BarMM = 250.1 }, func(p *pour.Plan) { p.Mould.BarMM = 250 }},
		{"base.superfat_percent", "-5", func(p *pour.Plan) { p.Base.SuperfatPercent = -5.01 }, func(p *pour.Plan) { p.Base.SuperfatPercent = -5 }},
		{"base.superfat_percent", "40", func(p *pour.Plan) { p.Base.SuperfatPercent = 40.01 }, func(p *pour.Plan) { p.Base.SuperfatPercent = 40 }},
		{"base.superfat_percent", "number", func(p *pour.Plan) { p.Base.SuperfatPercent = math.NaN() }, nil},
		{"icing.jug[0].colourant[0].dose_percent", "20", func(p *pour.Plan) { p.Icing.Jugs[0].Colourants[0].DosePercent = 20.1 }, func(p *pour.Plan) { p.Icing.Jugs[0].Colourants[0].DosePercent = 20 }},
		{"base.jug[1].colourant", "64", doses(65), doses(64)},
	}
}

// doses gives a jug so many colourants.
func doses(n int) func(p *pour.Plan) {
	return func(p *pour.Plan) {
		for len(p.Base.Jugs[1].Colourants) < n {
			p.Base.Jugs[1].Colourants = append(p.Base.Jugs[1].Colourants, pour.Dose{Colourant: "mica-gold", DosePercent: 0.01})
		}
	}
}
