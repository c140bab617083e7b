package pour_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pourbench/pour"
)

// roundTube is an upright tube of 75 mm, filled to 200, cut into rounds of 30.
func roundTube() pour.Mould {
	return pour.Mould{Shape: pour.ShapeTube, LengthMM: 75, WidthMM: 75, HeightMM: 220, FillMM: 200, BarMM: 30, LossPercent: 1.5}
}

// cavities are twelve of 80 by 55, filled to 28.
func cavities() pour.Mould {
	return pour.Mould{Shape: pour.ShapeCavity, LengthMM: 80, WidthMM: 55, HeightMM: 32, FillMM: 28, BarMM: 25, Cavities: 12, LossPercent: 1.5}
}

// moulded is the demo without icing and top in a mould.
func moulded(t *testing.T, m pour.Mould) pour.Sheet {
	t.Helper()
	p, shelf := example(t, "alpine-meadow")
	p.Mould, p.Icing, p.Top = m, nil, pour.Top{}
	return pour.Weigh(p, shelf)
}

// The volume of a cylinder is π·r²·h: 37.5² · 200 · 3.14159265 = 883 572.93 mm³. Of a round of 30 mm it is 132 535.94.
func TestATubeIsACylinderCutAlongItsHeight(t *testing.T) {
	s := moulded(t, roundTube())
	if v := s.Base.Size.PouredML; math.Abs(v-883.57293) > 1e-4 {
		t.Errorf("%.5f mL are poured", v)
	}
	if h := s.Base.Size.HeightMM; math.Abs(h-200) > 1e-9 {
		t.Errorf("it stands %g high", h)
	}
	if s.Bars.Count != 6 || s.Bars.ThicknessMM != 30 || s.Cut.TrimBMM != 20 {
		t.Errorf("%d rounds of %g, %g left", s.Bars.Count, s.Bars.ThicknessMM, s.Cut.TrimBMM)
	}
	gml := s.Base.Size.PouredG / s.Base.Size.PouredML
	if want := 132.53594 * gml; math.Abs(s.Bars.CutG-want) > 1e-4 {
		t.Errorf("a round weighs %g, not %g", s.Bars.CutG, want)
	}
	sum := s.Cut.TrimsG.V
	for _, b := range s.Cut.Bars {
		sum += b.CutG.V
	}
	if math.Abs(sum-s.Base.Size.PouredG) > 1e-6 {
		t.Errorf("rounds and rest come to %g of %g g", sum, s.Base.Size.PouredG)
	}
}

// The second worked example's arithmetic up the height: a wire of 0.6, ends kept: N = ⌊(200 + 0.6)/30.6⌋ = 6, cuts at 30.3, 60.9 and so on.
func TestATubesCutsAreMeasuredFromItsLowerEnd(t *testing.T) {
	p, shelf := example(t, "alpine-meadow")
	p.Mould, p.Icing, p.Top, p.Cut.KerfMM = roundTube(), nil, pour.Top{}, 0.6
	s := pour.Weigh(p, shelf)
	if len(s.Cut.Bars) != 6 || math.Abs(s.Cut.CutsMM[0]-30.3) > 1e-9 || math.Abs(s.Cut.CutsMM[1]-60.9) > 1e-9 {
		t.Errorf("%v", s.Cut.CutsMM)
	}
}

// 12 · 80 · 55 · 28 mm³ are 1478.4 mL; 12 of 100 mL are 1200.
func TestCavitiesAreFilledEachByItself(t *testing.T) {
	own := cavities()
	own.CavityML = 100
	for _, c := range []struct {
		m  pour.Mould
		ml float64
	}{{cavities(), 1478.4}, {own, 1200}} {
		s := moulded(t, c.m)
		if v := s.Base.Size.PouredML; math.Abs(v-c.ml) > 1e-6 {
			t.Errorf("%g mL are poured, not %g", v, c.ml)
		}
		if h := s.Base.Size.HeightMM; math.Abs(h-28) > 1e-9 {
			t.Errorf("they stand %g high", h)
		}
		if s.Bars.Count != 12 || s.Bars.ThicknessMM != 80 || len(s.Cut.CutsMM) != 0 || s.Cut.KerfMM != 0 || s.Cut.TrimsG.V != 0 {
			t.Errorf("%+v, cuts %v, trims %v", s.Bars, s.Cut.CutsMM, s.Cut.TrimsG)
		}
		if math.Abs(s.Bars.CutG*12-s.Base.Size.PouredG) > 1e-6 {
			t.Errorf("12 bars of %g are not %g", s.Bars.CutG, s.Base.Size.PouredG)
		}
		for _, w := range s.Warnings {
			if w.Code == "mould-offcut" {
				t.Error(w.Text)
			}
		}
	}
}

// Twelve cavities of 80 hold what a loaf of 960 holds, and a bar of each is a bar of 80: every mass is the same, icing and all.
func TestCavitiesWeighWhatALoafOfTheirLengthsWeighs(t *testing.T) {
	p, shelf := example(t, "alpine-meadow")
	p.Top, p.Piping = pour.Top{}, pour.Blank().Piping
	p.Icing.Size, p.Icing.PerBarG = pour.SizeBar, 17.3
	p.Mould = cavities()
	single := pour.Weigh(p, shelf)
	p.Mould.Shape, p.Mould.LengthMM, p.Mould.BarMM = pour.ShapeLoaf, 960, 80
	loaf := pour.Weigh(p, shelf)
	for name, pair := range map[string][2]float64{
		"base": {single.Base.Size.OilsG, loaf.Base.Size.OilsG}, "icing": {single.Icing.Size.OilsG, loaf.Icing.Size.OilsG}, "cut": {single.Bars.CutG, loaf.Bars.CutG},
		"cured": {single.Bars.CuredG, loaf.Bars.CuredG}, "stands": {single.Bars.StandsMM, loaf.Bars.StandsMM}, "icing on a bar": {single.Bars.IcingPerBarG, 17.3},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9*math.Abs(pair[1]) {
			t.Errorf("%s: %v in cavities, %v in the loaf", name, pair[0], pair[1])
		}
	}
}

// Errors of moulds teach.
func TestWhatCannotBeATubeOrCavitiesIsSaid(t *testing.T) {
	for _, c := range []struct {
		bend func(*pour.Plan)
		want string
	}{
		{func(p *pour.Plan) { p.Mould = roundTube(); p.Mould.WidthMM = 70 }, "mould.width_mm = 70: is another diameter than mould.length_mm = 75, and a tube is round; write its inside diameter as both"},
		{func(p *pour.Plan) { p.Mould = roundTube(); p.Mould.BarMM = 201 }, "mould.bar_mm = 201: is thicker than the tube is filled high, and rounds are cut along its height; write at most mould.fill_mm"},
		{func(p *pour.Plan) { p.Mould = roundTube(); p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 10}} }, "toppings and embeds other than rods cannot stand on every bar"},
		{func(p *pour.Plan) {
			p.Mould = roundTube()
			p.Top.Embeds = []pour.Embed{{Name: "core", LengthMM: 10, Outline: pour.OutlineRod}}
		}, ""},
		{func(p *pour.Plan) { b := pour.BlankBatch(pour.Icing); p.Mould, p.Icing = roundTube(), &b }, "an icing cannot be piped on every bar"},
		{func(p *pour.Plan) { p.Mould = cavities(); p.Mould.Cavities = 0 }, "mould.cavities = 0: no single mould is filled; write how many cavities there are, 1 or more"},
		{func(p *pour.Plan) { p.Mould = cavities(); p.Mould.CavityML = 123.3 }, "mould.cavity_ml = 123.3: is more than a box of its measures holds filled to mould.fill_mm, 123.2 mL"},
		{func(p *pour.Plan) { p.Mould = cavities(); p.Mould.CavityML = 123.2; p.Mould.BarMM = 900 }, ""},
	} {
		p, shelf := example(t, "alpine-meadow")
		p.Icing, p.Top = nil, pour.Top{}
		c.bend(&p)
		if got := fmt.Sprint(p.Check(shelf)); !strings.Contains(got, c.want) || c.want == "" && got != "[]" {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}
