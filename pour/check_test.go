package pour_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pourbench/pour"
)

// spoilt is a sound plan with one thing made wrong, and all that is said of it.
type spoilt struct {
	spoil func(*pour.Plan)
	want  string
}

func spoiltFields() []spoilt {
	return []spoilt{
		{func(p *pour.Plan) { p.Name = " " }, `name: is empty; give it a name`},
		{func(p *pour.Plan) { p.Name = strings.Repeat("é", 81) }, `name = "` + strings.Repeat("é", 20) + `"…: is too long to print; keep it to 80 letters`},
		{func(p *pour.Plan) { p.Mould.FillMM = 4.9 }, `mould.fill_mm = 4.9: is outside what can be; write a number from 5 to 1000`},
		{func(p *pour.Plan) { p.Mould.LossPercent = 50.1 }, `mould.loss_percent = 50.1: is outside what can be; write a number from 0 to 50`},
		{func(p *pour.Plan) { p.Room.TemperatureC = math.NaN() }, `room.temperature_c = NaN: is not a number; write a number from -10 to 50`},
		{func(p *pour.Plan) { p.Base.OilsC = math.Inf(1) }, `base.oils_c = +Inf: is not a number; write a number from 0 to 120`},
		{func(p *pour.Plan) { p.Swirl.Passes = 61 }, `swirl.passes = 61: is outside what can be; write a number from 0 to 60`},
		{func(p *pour.Plan) { p.Swirl.Passes = -1 }, `swirl.passes = -1: is outside what can be; write a number from 0 to 60`},
		{func(p *pour.Plan) { p.Show.Mass = "gr" }, `show.mass = "gr": is not a word this key knows; did you mean "g"? It can be g, oz`},
		{func(p *pour.Plan) { p.Mould.Shape = "" }, `mould.shape = "": is not a word this key knows; write one of loaf, slab, tube, cavity`},
		{func(p *pour.Plan) { p.Base.Size, p.Base.PerBarG = pour.SizeBar, 5 }, `base.size = "bar": is not a word this key knows; write one of mould, oils`},
		{func(p *pour.Plan) { p.Icing.Size = pour.SizeMould }, `icing.size = "mould": is not a word this key knows; write one of bar, layer, oils, shape`},
		{func(p *pour.Plan) { p.Icing.Bags = "two" }, `icing.bags = "two": is not a word this key knows; write one of each, one`},
		{func(p *pour.Plan) { p.Base.Extras[0].In = "pot" }, `base.extra[0].in = "pot": is not a word this key knows; write one of oils, lye, lye_water`},
		{func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Carrier = "wter" }, `base.jug[1].colourant[0].carrier = "wter": is not a word this key knows; did you mean "water"? It can be oil, water, glycerin, none`},
		{func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].DosePercent = 21 }, `base.jug[1].colourant[0].dose_percent = 21: is outside what can be; write a number from 0 to 20`},
		{func(p *pour.Plan) { p.Base.Blend[0].S = -1 }, `base.blend[0].s = -1: is outside what can be; write a number from 0 to 3600`},
		{func(p *pour.Plan) { p.Icing.Jugs[1].CapacityML = -1 }, `icing.jug[1].capacity_ml = -1: is outside what can be; write a number from 0 to 100000`},
		{func(p *pour.Plan) { p.Base.Jugs[2].BatterColour = "#12345g" }, `base.jug[2].batter_colour = "#12345g": is no colour; write six hex digits after a hash, as in "#5566b0"`},
		{func(p *pour.Plan) { p.Base.Jugs[2].BatterColour = "123456" }, `base.jug[2].batter_colour = "123456": is no colour; write six hex digits after a hash, as in "#5566b0"`},
		{func(p *pour.Plan) { p.Base.Jugs[2].BatterColour = "#1234567" }, `base.jug[2].batter_colour = "#1234567": is no colour; write six hex digits after a hash, as in "#5566b0"`},
		{func(p *pour.Plan) { p.Base.Jugs[2].BatterColour = "a123456" }, `base.jug[2].batter_colour = "a123456": is no colour; write six hex digits after a hash, as in "#5566b0"`},
	}
}

func spoiltNames() []spoilt {
	const own = "or add it to your own shelf file"
	return []spoilt{
		{func(p *pour.Plan) { p.Swirl.Technique = "" }, `swirl.technique = "": is no technique on the shelf; take one that is on the shelf, ` + own},
		{func(p *pour.Plan) { p.Swirl.Technique = "dorp" }, `swirl.technique = "dorp": is no technique on the shelf; did you mean "drop"? Or add it to your own shelf file`},
		{func(p *pour.Plan) { p.Base.Oils[1].Oil = "motor" }, `base.oil[1].oil = "motor": is no oil on the shelf; take one that is on the shelf, ` + own},
		{func(p *pour.Plan) { p.Icing.Oils[0].Oil = "olvie" }, `icing.oil[0].oil = "olvie": is no oil on the shelf; did you mean "olive"? Or add it to your own shelf file`},
		{func(p *pour.Plan) { p.Base.CarrierOil = "xxxxx" }, `base.carrier_oil = "xxxxx": is no oil on the shelf; take one that is on the shelf, ` + own},
		{func(p *pour.Plan) { p.Base.Extras[0].Extra = "sgar" }, `base.extra[0].extra = "sgar": is no extra on the shelf; did you mean "sugar"? Or add it to your own shelf file`},
		{func(p *pour.Plan) { p.Base.Extras[0].Extra = "ultramarin-blue" }, `base.extra[0].extra = "ultramarin-blue": is no extra on the shelf; did you mean "ultramarine-blue"? Or add it to your own shelf file`},
		{func(p *pour.Plan) { p.Base.Jugs[1].Colourants[0].Colourant = "sugar" }, `base.jug[1].colourant[0].colourant = "sugar": is no colourant on the shelf; take one that is on the shelf, ` + own},
		{func(p *pour.Plan) { p.Base.Scents[0].Scent = "meadow-hya" }, `base.scent[0].scent = "meadow-hya": is no scent on the shelf; did you mean "meadow-hay"? Or add it to your own shelf file`},
		{func(p *pour.Plan) { p.Base.Scents[0].Into = []string{"poppy", "gentain"} }, `base.scent[0].into = "gentain": is no jug of the base; did you mean "gentian"?`},
		{func(p *pour.Plan) { p.Swirl.First = "bucket" }, `swirl.first = "bucket": is no jug of the base; name a jug of the base, or leave it out`},
		{func(p *pour.Plan) { p.Swirl.Last = "popy" }, `swirl.last = "popy": is no jug of the base; did you mean "poppy"?`},
		{func(p *pour.Plan) { p.Icing.Scents = []pour.ScentPart{{Scent: "meadow-hay", Into: []string{"poppy"}}} }, `icing.scent[0].into = "poppy": is no jug of the icing; name a jug of the icing, or leave it out`},
	}
}

func spoiltTogether() []spoilt {
	return []spoilt{
		{func(p *pour.Plan) { p.Mould.BarMM = p.Mould.LengthMM + 1 }, `mould.bar_mm = 251: is thicker than the mould is long; write at most mould.length_mm`},
		{func(p *pour.Plan) { p.Mould.Shape, p.Mould.BarWidthMM = pour.ShapeSlab, p.Mould.WidthMM+1 }, `mould.bar_width_mm = 81: is wider than the mould; write at most mould.width_mm`},
		{func(p *pour.Plan) { p.Swirl.First, p.Swirl.Last = "poppy", "poppy" }, `swirl.last = "poppy": is pinned first and last; let one of the two go`},
		{func(p *pour.Plan) { p.Base.StockLyePercent, p.Base.KOHSharePercent = 50, 1 }, `base.stock_lye_percent = 50: a stock lye is taken to be NaOH alone; set koh_share_percent to 0, or weigh dry alkali`},
		{func(p *pour.Plan) { p.Base.StockLyePercent = 9.9 }, `base.stock_lye_percent = 9.9: no stock lye keeps at that strength; write 10 to 52, or 0 for dry alkali`},
		{func(p *pour.Plan) { p.Base.StockLyePercent = 52.1 }, `base.stock_lye_percent = 52.1: is outside what can be; write a number from 0 to 52`},
		{func(p *pour.Plan) { p.Base.Size = pour.SizeOils }, `base.oils_g = 0: there is nothing to mix; write the grams of oils, more than 0`},
		{func(p *pour.Plan) { p.Icing.Size, p.Icing.PerBarG = pour.SizeBar, 0 }, `icing.per_bar_g = 0: there is nothing to pipe; write the grams on each bar, more than 0`},
		{func(p *pour.Plan) { p.Icing.Size = pour.SizeLayer }, `icing.layer_mm = 0: there is nothing to pipe; write the mean height in mm, more than 0`},
		{func(p *pour.Plan) { p.Base.Oils = nil }, `base.oil: the blend is empty; add at least one [[base.oil]] with oil and percent`},
		{func(p *pour.Plan) { p.Base.Oils[0].Percent += 0.011 }, `base.oil: the oils sum to 100.011 %; make the percentages sum to 100`},
		{func(p *pour.Plan) { p.Base.Jugs[0].SharePercent -= 0.011 }, `base.jug: the shares sum to 99.989 %; make the shares sum to 100`},
		{func(p *pour.Plan) { p.Base.Oils[2].Oil = p.Base.Oils[0].Oil }, `base.oil[2].oil = "olive": stands in the blend twice; add the two percentages up`},
		{func(p *pour.Plan) { p.Icing.Jugs[1].Name = p.Icing.Jugs[0].Name }, `icing.jug[1].name = "cream": is the name of two jugs; give each jug its own name`},
		{func(p *pour.Plan) { p.Base.Carrier, p.Base.CarrierOil = pour.CarrierBatch, "neem" }, `base.carrier_oil = "neem": is taken from the batch but is not in its blend; name an oil of the blend, or write carrier = "extra"`},
		{func(p *pour.Plan) { p.Icing.Jugs = nil }, `icing.jug: there is no jug; add a [[icing.jug]] with name and share_percent; the first is the pot`},
		{func(p *pour.Plan) { p.Base.Extras = make65(p.Base.Extras[0]) }, `base.extra = 65: is more than a bench holds; keep to 64`},
		{func(p *pour.Plan) { p.Base.Jugs[1].Colourants = make65(p.Base.Jugs[1].Colourants[0]) }, `base.jug[1].colourant = 65: is more than a bench holds; keep to 64`},
		{func(p *pour.Plan) { p.Base.Blend = append(make65(p.Base.Blend[0]), make([]pour.Burst, 192)...) }, `base.blend = 257: is more than a bench holds; keep to 256`},
	}
}

func make65[T any](v T) []T {
	out := make([]T, 65)
	for i := range out {
		out[i] = v
	}
	return out
}

func TestEverythingThatCannotBeIsToldWithItsPlaceAndHowToMendIt(t *testing.T) {
	good, shelf := shelved(t)
	good.Base.Extras = []pour.ExtraPart{{Extra: "sugar", PercentOfOils: 1}}
	good.Icing.Scents = nil
	if faults := good.Check(shelf); len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, x := range append(append(spoiltFields(), spoiltNames()...), spoiltTogether()...) {
		p := good.Clone()
		x.spoil(&p)
		faults := p.Check(shelf)
		if len(faults) != 1 || faults[0].Error() != x.want {
			t.Errorf("got  %v\nwant [%s]", faults, x.want)
		}
	}
}

func TestWhatJustCanBePasses(t *testing.T) {
	good, shelf := shelved(t)
	for what, edge := range map[string]func(*pour.Plan){
		"the ends of ranges": func(p *pour.Plan) {
			p.Base.SuperfatPercent, p.Base.OilsC, p.Icing.LyeC, p.Swirl.Passes = -5, 0, 120, 60
		},
		"a name as long as may be": func(p *pour.Plan) { p.Name = strings.Repeat("é", 80) },
		"a sum within tolerance":   func(p *pour.Plan) { p.Base.Jugs[0].SharePercent += 0.009; p.Base.Oils[0].Percent -= 0.009 },
		"the ends of a stock lye": func(p *pour.Plan) {
			p.Base.StockLyePercent, p.Icing.StockLyePercent = 10, 52
			p.Base.KOHSharePercent, p.Icing.KOHSharePercent = 0, 0
		},
		"capitals in a colour": func(p *pour.Plan) { p.Base.Jugs[0].BatterColour = "#AbCdEf" },
		"a bar as wide as the slab": func(p *pour.Plan) {
			p.Mould.Shape, p.Mould.BarWidthMM, p.Mould.BarMM = pour.ShapeSlab, p.Mould.WidthMM, p.Mould.LengthMM
		},
		"a width that does not count in a loaf": func(p *pour.Plan) { p.Mould.BarWidthMM = p.Mould.WidthMM + 1 },
		"one jug pinned at both ends of itself": func(p *pour.Plan) {
			p.Base.Jugs, p.Base.Scents = []pour.Jug{{Name: "pot", SharePercent: 100}}, nil
			p.Swirl.First, p.Swirl.Last = "pot", "pot"
		},
		"a carrier from the blend":   func(p *pour.Plan) { p.Base.Carrier, p.Base.CarrierOil = pour.CarrierBatch, p.Base.Oils[1].Oil },
		"a carrier beside the blend": func(p *pour.Plan) { p.Base.Carrier, p.Base.CarrierOil = pour.CarrierExtra, "neem" },
		"a colourant as an extra":    func(p *pour.Plan) { p.Base.Extras = []pour.ExtraPart{{Extra: "ultramarine-blue", PercentOfOils: 1}} },
		"as many extras as may be":   func(p *pour.Plan) { p.Base.Extras = make65(pour.ExtraPart{Extra: "sugar"})[:64] },
		"no icing":                   func(p *pour.Plan) { p.Icing = nil },
	} {
		p := good.Clone()
		edge(&p)
		if faults := p.Check(shelf); len(faults) > 0 {
			t.Errorf("%s: %v", what, faults)
		}
	}
}

func TestCheckTellsFieldsInTheOrderOfTheFileAndThenWhatHangsTogether(t *testing.T) {
	p, shelf := shelved(t)
	p.Base.Jugs[0].SharePercent = 400
	p.Icing.LyeC, p.Mould.FillMM, p.Show.Length = 500, 0, "miles"
	var got []string
	for _, f := range p.Check(shelf) {
		got = append(got, f.Path)
	}
	if want := "[show.length mould.fill_mm base.jug[0].share_percent icing.lye_c base.jug]"; fmt.Sprint(got) != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestABlankPlanHoldsTheDefaultsAndABlankIcingItsOwn(t *testing.T) {
	p, icing := pour.Blank(), pour.BlankBatch(pour.Icing)
	if p.Icing != nil || p.Base.Size != pour.SizeMould || icing.Size != pour.SizeBar || icing.Bags != "" || p.Show.Mass != pour.MassGram || p.Swirl.Technique != "layers" {
		t.Errorf("%+v, %+v", p, icing)
	}
	if b := pour.BlankBatch(pour.Base); b.SuperfatPercent != 5 || b.NaOHPurityPercent != 100 || b.LossPercent != 0 || b.KOHShareBy != "" {
		t.Errorf("%+v", b)
	}
}
