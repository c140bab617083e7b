package clock

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

func TestTheBandHoldsTheMedianAndIsNeverUnderItsFloor(t *testing.T) {
	// Trace model, invariant 9; the floor of section 3.4: σ of 0.25, pour to pour and judging, ×/÷ 1.38.
	sharp := Hand{
		Traits:     []Trait{{Kind: PaceTrait}, {Kind: RecipeTrait, ID: "r", Pours: 90}, {Kind: ScentTrait, ID: "s"}},
		Covariance: [][]float64{{0, 0, 0}, {0, 0, 0}, {0, 0, 0}}, Freedom: 94, Noise: 1, Pours: 90,
	}
	rapid.Check(t, func(t *rapid.T) {
		b, j := drawBatter(t), drawJug(t)
		b.Recipe = "r"
		c, err := New(b, sharp)
		if err != nil {
			t.Fatal(err)
		}
		f := c.Forecast(j)
		if f.Refusal != "" {
			return
		}
		if f.Sigma < math.Hypot(PourSD, JudgeSD) || c.z < normal90 {
			t.Fatalf("sigma %v, z %v", f.Sigma, c.z)
		}
		for s, at := range f.Stages {
			if at.HighOK && !at.MidOK || at.MidOK && !at.LowOK || at.MidOK && at.Low > at.Mid+slack || at.HighOK && at.Mid > at.High+slack {
				t.Fatalf("%v: %+v", chem.Stage(s), at)
			}
		}
	})
}

func TestNoSpreadGivesNoWidth(t *testing.T) {
	// Trace model, invariant 9: z = 0.
	c, err := New(batter(balanced(), 35, Burst{0, 20}), Hand{})
	if err != nil {
		t.Fatal(err)
	}
	c.z = 0
	for _, s := range c.Forecast(Jug{Fraction: 1}).Stages {
		if s.Low != s.Mid || s.High != s.Mid {
			t.Errorf("%+v", s)
		}
	}
}

func TestChanceIsAHalfAtTheMedianAndATenthAtTheEndsOfTheBand(t *testing.T) {
	for _, h := range []Hand{{}, {Freedom: 7, Noise: 1.4, Pours: 3}} {
		b := batter(balanced(), 35, Burst{0, 30})
		b.SplitMin = 2
		c, err := New(b, h)
		if err != nil {
			t.Fatal(err)
		}
		f := c.Forecast(Jug{Fraction: .25, Scents: []Scent{scent(2, 3, 2)}})
		for s := chem.Light; s <= chem.Stiff; s++ {
			for _, q := range []struct{ minute, want float64 }{{f.Stages[s].Low, .1}, {f.Stages[s].Mid, .5}, {f.Stages[s].High, .9}} {
				p, ok := f.ChancePast(s, q.minute)
				if !ok {
					t.Fatal("no chance")
				}
				near(t, s.String(), p, q.want, 1e-4)
			}
		}
	}
}

func TestChanceNeverFallsAsTimePasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, err := New(drawBatter(t), Hand{})
		if err != nil {
			t.Fatal(err)
		}
		f := c.Forecast(drawJug(t))
		if f.Refusal != "" {
			return
		}
		for s := range chem.Stages {
			last := 0.0
			for _, minute := range []float64{-1, 0, .1, .3, .7, 1.5, 4, 11, 12, 30, 90, 360} {
				p, ok := f.ChancePast(chem.Stage(s), minute)
				if !ok || !(p >= last-1e-4 && p <= 1) {
					t.Fatalf("%v at %v min: %v (%v) after %v", chem.Stage(s), minute, p, ok, last)
				}
				last = p
			}
		}
	})
}

func TestChanceIsRefusedWhereItMeansNothing(t *testing.T) {
	f := forecast(t, batter(balanced(), 35, Burst{0, 20}), Jug{Fraction: 1})
	for _, q := range []struct {
		s      chem.Stage
		minute float64
	}{{-1, 5}, {chem.Stage(chem.Stages), 5}, {chem.Light, math.NaN()}, {chem.Light, HorizonMin + 1}} {
		if _, ok := f.ChancePast(q.s, q.minute); ok {
			t.Errorf("stage %d at %v has a chance", q.s, q.minute)
		}
	}
	if _, ok := (Forecast{}).ChancePast(chem.Light, 5); ok {
		t.Error("an empty forecast has a chance")
	}
	if p, ok := f.ChancePast(chem.Light, -5); !ok || p != 0 {
		t.Errorf("before lye-in: %v, %v", p, ok)
	}
}

func TestTraceIndexPassesItsMarksAsTheStagesAre(t *testing.T) {
	f := forecast(t, batter(balanced(), 35, Burst{0, 20}), Jug{Fraction: 1})
	for s := chem.Light; s <= chem.Stiff; s++ {
		got, ok := f.TraceIndex(f.Stages[s].Mid)
		if !ok {
			t.Fatal("no index")
		}
		near(t, s.String(), got, float64(s)+1, 1e-4)
	}
	last := -1.0
	for minute := 0.0; minute <= HorizonMin; minute += 7 {
		got, ok := f.TraceIndex(minute)
		if !ok || got < last {
			t.Fatalf("at %v: %v after %v", minute, got, last)
		}
		last = got
	}
	near(t, "in the end", last, 5, 0)
	if _, ok := f.TraceIndex(math.NaN()); ok {
		t.Error("an index at no minute")
	}
}

func TestStudentsQuantilesAreTheTabledOnes(t *testing.T) {
	// Trace model 3.4: 0.90 quantiles for 0, 1, 2, 3, 5 and 10 logs.
	for n, want := range map[int]float64{0: 1.533, 1: 1.476, 2: 1.440, 3: 1.415, 5: 1.383, 10: 1.345} {
		near(t, "t", student90(PriorFreedom+n), want, 5.1e-4)
	}
	near(t, "one degree", student90(1), 3.0777, 5e-5) // Abramowitz and Stegun, table 26.10
	near(t, "many degrees", student90(100_000), normal90, 1e-4)
	near(t, "below", studentCDF(-1.476, 5), .10, 1e-4)
}
