package pour_test

import (
	"math"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// lone is what the clock is told of one extra in the base, and its sheet.
func lone(t *testing.T, id string, percent float64) ([]clock.Additive, pour.Sheet) {
	t.Helper()
	p, shelf := plainBase(t, 35, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Base.Extras = []pour.ExtraPart{{Extra: id, PercentOfOils: percent}}
	return told(t, p, shelf).Additives, pour.Work(p, shelf, pour.Hand{})
}

func TestTheClockIsToldWhatKindAnExtraIsAndItsDose(t *testing.T) {
	// Trace model 2.4: sugar, honey and milk 1.2 with heat, beer 1.5 with alcohol, clay 1.1, salt and lactate 1.0; each with sd 0.2. The doses they
	// hold for are the shelf's: sugar at 2 %, milk and beer at 20 %, kaolin at 2 %, salt in the middle of 0.3 to 3 %.
	for id, want := range map[string]clock.Additive{
		"sugar":     {Factor: 1.2, SD: .2, AtPercent: 2, Heat: true},
		"honey":     {Factor: 1.2, SD: .2, AtPercent: 2, Heat: true},
		"goat-milk": {Factor: 1.2, SD: .2, AtPercent: 20, Heat: true},
		"beer":      {Factor: 1.5, SD: .2, AtPercent: 20, Alcohol: true},
		"kaolin":    {Factor: 1.1, SD: .2, AtPercent: 2},
		"salt":      {Factor: 1, SD: .2, AtPercent: 1.65},
	} {
		got, _ := lone(t, id, 1.5)
		if len(got) != 1 {
			t.Fatalf("%s: %+v", id, got)
		}
		want.Name, want.Percent = got[0].Name, 1.5
		if got[0] != want {
			t.Errorf("%s: %+v, want %+v", id, got[0], want)
		}
	}
}

func TestAnExtraThatSurelyChangesNothingIsNotTold(t *testing.T) {
	p, shelf := plainBase(t, 35, map[string]float64{"olive": 100})
	for i := range shelf.Extras {
		if shelf.Extras[i].ID == "salt" {
			shelf.Extras[i].ClockFactor, shelf.Extras[i].ClockSD = 1, 0
		}
		if shelf.Extras[i].ID == "silk" {
			shelf.Extras[i].ClockFactor = 0 // nothing stated
		}
	}
	p.Base.Extras = []pour.ExtraPart{{Extra: "salt", PercentOfOils: 1}, {Extra: "silk", PercentOfOils: .1}}
	if got := told(t, p, shelf).Additives; len(got) != 0 {
		t.Errorf("the clock is told %+v", got)
	}
}

func TestADoseActsLogLinearlyThroughThePlan(t *testing.T) {
	// Speed 1.2^(dose/2): one plan's clock at pace p with no sugar is the other's with sugar. So ln speed at 1, 2 and 3 % must stand as 1 : 2 : 3. It
	// is read off by giving the maker's hand the pace that makes up for it: a batter of the same figures but a factor of its own.
	p, shelf := plainBase(t, 35, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	bare := told(t, p, shelf)
	for percent, factor := range map[float64]float64{1: 1.0954451, 2: 1.2, 3: 1.3145341} {
		p.Base.Extras = []pour.ExtraPart{{Extra: "sugar", PercentOfOils: percent}}
		got := pour.Work(p, shelf, pour.Hand{}).Base.Jugs[0].Clock.Stages
		b := bare
		b.Additives = []clock.Additive{{Name: "as quick", Factor: factor}}
		c, err := clock.New(b, clock.Hand{})
		if err != nil {
			t.Fatal(err)
		}
		jug, _ := pour.Weigh(p, shelf).ClockJug(pour.Base, p.Base.Jugs[0].Name, shelf)
		want := c.Forecast(jug).Stages
		for _, stage := range []chem.Stage{chem.Light, chem.Medium, chem.Thick, chem.Stiff} {
			equal(t, stage.String(), got[stage].Mid.V, want[stage].Mid, 1e-4)
		}
	}
	p.Base.Extras = []pour.ExtraPart{{Extra: "salt", PercentOfOils: 3}}
	salt := pour.Work(p, shelf, pour.Hand{}).Base.Jugs[0].Clock.Stages[chem.Medium].Mid.V
	p.Base.Extras = nil
	equal(t, "salt", salt, pour.Work(p, shelf, pour.Hand{}).Base.Jugs[0].Clock.Stages[chem.Medium].Mid.V, 1e-9)
}

func TestDosesFarOverAreSaidAndUsualOnesAreNot(t *testing.T) {
	_, usual := lone(t, "sugar", 2)
	_, pinch := lone(t, "goat-milk", 5)
	for name, s := range map[string]pour.Sheet{"2 % of sugar": usual, "5 % of milk": pinch} {
		if w, ok := found(s, "clock-wide"); ok {
			t.Errorf("%s: %+v", name, w)
		}
	}
	_, heap := lone(t, "sugar", 5)
	if _, ok := found(heap, "clock-wide"); !ok {
		t.Error("5 % of sugar is taken without a word")
	}
	// (0.25·0.2)² for a quarter of the milk's dose, and as much for its heat.
	_, none := lone(t, "sugar", 1e-9)
	equal(t, "sigma", pinch.Base.Sigma, math.Sqrt(none.Base.Sigma*none.Base.Sigma+2*.0025), 2e-3) // its water moves the lye a little
}
