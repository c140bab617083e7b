package pour_test

import (
	"testing"

	"pourbench/chem/colour"
	"pourbench/pour"
)

// plainOf is the colour of a jug without a colourant, of a blend of oils in percent.
func plainOf(t *testing.T, plan pour.Plan, shelf pour.Shelf, oils ...pour.OilPart) colour.RGB {
	t.Helper()
	plan.Base.Oils, plan.Base.CarrierOil = oils, ""
	plan.Base.Extras, plan.Base.Jugs[0].Colourants, plan.Base.Jugs[0].BatterColour = nil, nil, ""
	sheet := pour.Weigh(plan, shelf)
	rgb, err := colour.ParseHex(sheet.Base.Jugs[0].Colour.Hex)
	if err != nil {
		t.Fatalf("%v: %v", err, sheet.Warnings)
	}
	t.Log(oils, rgb.Hex())
	return rgb
}

func oil(id string, percent float64) pour.OilPart { return pour.OilPart{Oil: id, Percent: percent} }

func TestOilsTintThePlainBatter(t *testing.T) {
	plan, shelf := shelved(t)
	hex := func(s string) colour.RGB {
		rgb, err := colour.ParseHex(s)
		if err != nil {
			t.Fatal(err)
		}
		return rgb
	}
	olive := plainOf(t, plan, shelf, oil("olive", 80), oil("coconut", 20))
	coconut := plainOf(t, plan, shelf, oil("olive", 20), oil("coconut", 80))
	if d := olive.Difference(coconut); d < 4 || olive.OKLCH().C < coconut.OKLCH().C || olive.OKLCH().L > coconut.OKLCH().L {
		t.Errorf("olive-rich %s and coconut-rich %s: %.2f apart, want 4 or more, the first darker and yellower", olive.Hex(), coconut.Hex(), d)
	}
	// The blend that most makers begin with is the cream that stands for a batter of which nothing is known.
	usual := plainOf(t, plan, shelf, oil("olive", 40), oil("coconut", 25), oil("palm", 25), oil("castor", 5), oil("shea", 5))
	if d := usual.Difference(hex(colour.PlainBatter)); d > 2.5 {
		t.Errorf("the usual blend is %s, %.2f from %s", usual.Hex(), d, colour.PlainBatter)
	}
	for _, o := range shelf.Oils {
		one := plainOf(t, plan, shelf, oil(o.ID, 100))
		if d := one.Difference(hex(o.Tint)); d > 0.5 {
			t.Errorf("a batter of %s alone is %s, its tint %s", o.ID, one.Hex(), o.Tint)
		}
	}
}
