package clock

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

// soapless is a clock in which only stirring emulsifies: a reaction too slow to matter and no free acid.
func soapless(t *testing.T, b Batter) *Clock {
	t.Helper()
	l := standardLaw()
	l.k0, l.ffaSoap = 1e-12, 0
	c, err := newClock(l, b, Hand{})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestEmulsionsBandIsAsWideAsSigma(t *testing.T) {
	// A blender that stays on: 1 - E = exp(-t/τ_b) comes to 0.25 at τ_b·ln 4, τ_b being 0.25 min at 1 kg (trace model 2.1 and 2.2), so
	// the ends of the 80 % band are that times e^±(1.2816·σ).
	f := soapless(t, batter(balanced(), 35, Burst{0, 600})).Forecast(Jug{Fraction: 1})
	mid := 0.25 * math.Log(4)
	near(t, "median", f.Stages[chem.Emulsion].Mid, mid, 1e-5)
	near(t, "early end", f.Stages[chem.Emulsion].Low, mid*math.Exp(-1.28155*f.Sigma), 1e-5)
	near(t, "late end", f.Stages[chem.Emulsion].High, mid*math.Exp(1.28155*f.Sigma), 1e-5)
	if f.Sigma < 0.5 {
		t.Errorf("a sigma of %v without a log", f.Sigma)
	}
}

func TestEmulsionWaitsForTheNextBurstWhereTheFirstWasWeak(t *testing.T) {
	// One burst of 30 s gives exp(-2·e^y) coarseness: under 0.25 needs y > ln(ln 4/2) = -0.3665; a second burst at 5 min finishes what a
	// weaker blender left. At the late end the first 30 s have done 2·e^-zσ of the ln 4 that are wanted.
	b := batter(balanced(), 35, Burst{0, 30}, Burst{5, 60})
	f := soapless(t, b).Forecast(Jug{Fraction: 1})
	slow := math.Exp(-1.28155 * f.Sigma)
	if slow > math.Log(4)/2 {
		t.Fatalf("the band is too narrow for this test: σ %v", f.Sigma)
	}
	near(t, "late end", f.Stages[chem.Emulsion].High, 5+(math.Log(4)/slow-2)*0.25, 1e-4)
	near(t, "median", f.Stages[chem.Emulsion].Mid, 0.25*math.Log(4), 1e-4)
}

func TestTheChanceOfEmulsionIsSpreadLikeItsBand(t *testing.T) {
	// After 60 s at 1 kg there is an emulsion unless the blender is slower than e^y with 4·e^y = ln 4: P = N(-y/σ), y = -1.0597.
	c := soapless(t, batter(balanced(), 35, Burst{0, 60}))
	f := c.Forecast(Jug{Fraction: 1})
	p, ok := f.ChancePast(chem.Emulsion, 1)
	if !ok {
		t.Fatal("no chance")
	}
	near(t, "after 60 s", p, math.Erfc(-1.0597/f.Sigma/math.Sqrt2)/2, 1e-4)
	real := forecast(t, batter(balanced(), 35, Burst{0, 30}), Jug{Fraction: 1})
	for _, q := range []struct{ minute, want float64 }{
		{real.Stages[chem.Emulsion].Low, .1}, {real.Stages[chem.Emulsion].Mid, .5}, {real.Stages[chem.Emulsion].High, .9},
	} {
		p, _ := real.ChancePast(chem.Emulsion, q.minute)
		near(t, "with its soap", p, q.want, 1e-3)
	}
}

func TestStagesComeInOrderAtEveryEndOfTheBand(t *testing.T) {
	// Hot and weak, cold and strong, stirred by hand, free acid past several stages: whatever the clock takes. What is drawn includes
	// batters whose soap brings light before stirring has made an emulsion.
	rapid.Check(t, func(t *rapid.T) {
		b, j := drawBatter(t), drawJug(t)
		b.FFA = rapid.Float64Range(.0001, .25).Draw(t, "free acid")
		b.StartC = rapid.Float64Range(20, 65).Draw(t, "any start")
		c, err := New(b, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		f := c.Forecast(j)
		if f.Refusal != "" {
			return
		}
		inOrder(t, f)
	})
}

// inOrder fails where a stage comes before the one it follows, at either end of the band or in the middle, or a band is not in order.
func inOrder(t *rapid.T, f Forecast) {
	for s := range f.Stages {
		at := f.Stages[s]
		if at.MidOK && !at.LowOK || at.HighOK && !at.MidOK || at.MidOK && at.Low > at.Mid || at.HighOK && at.Mid > at.High {
			t.Fatalf("%v: %+v", chem.Stage(s), at)
		}
		if s == 0 {
			continue
		}
		before := f.Stages[s-1]
		for _, end := range []struct {
			earlier, later     float64
			earlierOK, laterOK bool
		}{
			{before.Low, at.Low, before.LowOK, at.LowOK}, {before.Mid, at.Mid, before.MidOK, at.MidOK}, {before.High, at.High, before.HighOK, at.HighOK},
		} {
			if end.laterOK && (!end.earlierOK || end.earlier > end.later) {
				t.Fatalf("%v at %v before %v at %v (%v)", chem.Stage(s), end.later, chem.Stage(s-1), end.earlier, end.earlierOK)
			}
		}
	}
}

func TestLightBringsEmulsionWithIt(t *testing.T) {
	// 4.2 % of free acid: X0 = 0.30·0.042 = 0.0126, past light (0.012), while 1 - 0 of its coarseness leaves e^-1.26 = 0.284 > 0.25.
	b := batter(balanced(), 35)
	b.FFA = .042
	f := forecast(t, b, Jug{Fraction: 1})
	near(t, "emulsion", f.Stages[chem.Emulsion].Mid, 0, 0)
	near(t, "light", f.Stages[chem.Light].Mid, 0, 0)
	if p, ok := f.ChancePast(chem.Emulsion, 0); !ok || p != 1 {
		t.Errorf("the chance of emulsion at lye-in is %v, %v", p, ok)
	}
}
