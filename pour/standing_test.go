package pour_test

import (
	"math"
	"testing"

	"pourbench/pour"
	"pourbench/pour/relief"
)

// drawn is the drawing of a plan or fails.
func drawn(t *testing.T, p pour.Plan, shelf pour.Shelf) pour.Drawing {
	t.Helper()
	s := pour.Weigh(p, shelf)
	d, err := s.Drawing()
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// E1: nine bars of 25 between cuts that take 0.6, trims of 9.5: the first faces are at 10.1, 35.7, 61.3 mm, the cuts at 9.8 and 35.4.
func TestFacesAreTheCutSidesOfTheCutPlan(t *testing.T) {
	p, shelf := ninth(t)
	p.Cut.KerfMM, p.Cut.TrimAMM, p.Cut.TrimBMM, p.Cut.Left = 0.6, 5, 5, pour.LeftTrims
	d := drawn(t, p, shelf)
	if len(d.Bars) != 9 || len(d.Cuts) != 10 {
		t.Fatalf("%d faces and %d cuts, want 9 and 10", len(d.Bars), len(d.Cuts))
	}
	for i, from := range []float64{10.1, 35.7, 61.3} {
		if b := d.Bars[i]; math.Abs(b.From-from) > 1e-9 || math.Abs(b.To-from-25) > 1e-9 || math.Abs(d.Cuts[i]-from+0.3) > 1e-9 {
			t.Errorf("bar %d is drawn from %.3f to %.3f behind a cut at %.3f, want from %g", i+1, b.From, b.To, d.Cuts[i], from)
		}
	}
}

func TestAnEmbedIsDrawnWhereTheSheetSetsIt(t *testing.T) {
	p, shelf := ninth(t)
	p.Top.Embeds[0].AcrossMM, p.Top.Embeds[0].Colour = 12, "#ff8000"
	d := drawn(t, p, shelf)
	if d.Stands == nil || len(d.Stands.Pieces) != 9 || len(d.Stuffs) != 1 || d.Stuffs[0].Kind != pour.StuffEmbed {
		t.Fatalf("%+v", d.Stuffs)
	}
	one := d.Stands.Pieces[0]
	if !one.Ball || math.Abs(one.X-22.6) > 1e-9 || math.Abs(one.Y-52) > 1e-9 || one.High != 20 || one.Out != 4 {
		t.Errorf("the first piece is %+v", one)
	}
	if c := d.Top[one.Stuff]; c.R != 0xff || c.G != 0x80 || c.B != 0 {
		t.Errorf("it is drawn in %v", c)
	}
	// E3: the batter of the box and what lies in it fill it to the planned height.
	if got := d.Recipe.Box.H; math.Abs(got-62) > 1e-6 {
		t.Errorf("the base is drawn %.4f mm high, want 62", got)
	}
}

// T8: ten bars with three of T3's rosettes each, drawn as thirty units of 973.15 mm³ on the middles of the bars.
func TestIcingOfAShapeIsDrawnUnitByUnit(t *testing.T) {
	p, shelf := iced(t, rosette())
	d := drawn(t, p, shelf)
	if d.Stands == nil || d.Stands.Icing.Shape != relief.Rosette {
		t.Fatalf("it stands as %v", d.Stands)
	}
	c := &d.Stands.Icing
	if len(c.Spots) != 30 || math.Abs(c.Volume-973.15090635) > 1e-3 || math.Abs(c.Strand-26.73468) > 1e-4 || !c.Striped {
		t.Errorf("%d units of %.3f mm³, section %.4f, striped %v", len(c.Spots), c.Volume, c.Strand, c.Striped)
	}
	if got, want := c.Spots[1], (relief.Spot{X: 12.5, Y: 40}); got != want {
		t.Errorf("the second stands at %v, want %v", got, want)
	}
	p.Icing.Bags = ""
	if drawn(t, p, shelf).Stands.Icing.Striped {
		t.Error("with a bag for each jug the colours lie side by side")
	}
}

func TestEveryShapeIsDrawn(t *testing.T) {
	for name, p := range pipedPlans(t) {
		_, shelf := iced(t, rosette())
		s := pour.Weigh(p, shelf)
		d, err := s.Drawing()
		if err != nil {
			t.Fatal(err)
		}
		if len(s.Piping.At) == 0 {
			continue
		}
		if f := relief.New(*d.Stands); f.PeakMM() <= 0 {
			t.Errorf("%s: nothing of its icing stands on the loaf", name)
		}
	}
}

func TestAPlanWithNothingOnItDrawsAsBefore(t *testing.T) {
	p, shelf := hanger(t)
	d := drawn(t, p, shelf)
	if len(d.Stuffs) != 0 {
		t.Errorf("something lies on it: %+v", d.Stuffs)
	}
	if d.Stands == nil || d.Stands.Icing.Shape != relief.Piped || d.Above == nil || d.Above.Icing.Shape != relief.Piped {
		t.Error("its icing is not piped by eye, or does not show from above")
	}
	p.Icing = nil
	if d := drawn(t, p, shelf); d.Above != nil || d.Stands != nil {
		t.Error("a bare loaf has something on it")
	}
}

// What is put on after the cut is on the bars, but not on the loaf before it.
func TestWhatGoesOnAfterTheCutIsNotOnTheLoaf(t *testing.T) {
	p, shelf := example(t, "alpine-meadow")
	p.Top.Toppings = []pour.Topping{
		{CoveragePercent: 8, When: pour.StrewSkin, Parts: []pour.ToppingPart{{Material: "nonpareils", Percent: 60}, {Material: "sugar-pearls", Percent: 40}}},
		{CoveragePercent: 5, When: pour.StrewCut, Parts: []pour.ToppingPart{{Material: "calendula-petals", Percent: 100}}},
	}
	d := drawn(t, p, shelf)
	if len(d.Stands.Strewn) != 3 || len(d.Above.Strewn) != 2 || len(d.Stuffs) != 3 {
		t.Fatalf("%d materials lie on the bars, %d on the loaf", len(d.Stands.Strewn), len(d.Above.Strewn))
	}
	if got := d.Stands.Strewn[0]; got.Look != relief.Grains || math.Abs(got.Coverage-0.048) > 1e-9 {
		t.Errorf("nonpareils are drawn as %+v", got)
	}
	if got := d.Stands.Strewn[2].Look; got != relief.Flakes {
		t.Errorf("petals are drawn as %s", got)
	}
}
