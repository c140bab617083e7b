package clock

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

// slack is the noise of two runs with different steps, min; see the accuracy test.
const slack = 2e-3

func times(t *rapid.T, b Batter, j Jug, h Hand) course {
	c, err := New(b, h)
	if err != nil {
		t.Fatal(err)
	}
	return c.law.follow(c.jugSchedule(j), c.pace, HorizonMin)
}

// notLater fails where b reaches a stage after a.
func notLater(t *rapid.T, what string, a, b course) {
	for s := range a.at {
		if a.ok[s] && a.at[s] < HorizonMin-slack && (!b.ok[s] || b.at[s] > a.at[s]+slack) {
			t.Fatalf("%s: %v at %v (%v), before it at %v", what, chem.Stage(s), b.at[s], b.ok[s], a.at[s])
		}
	}
}

func TestStagesComeInOrder(t *testing.T) {
	// Trace model, invariant 1.
	rapid.Check(t, func(t *rapid.T) {
		got := times(t, drawBatter(t), drawJug(t), Hand{})
		for s := chem.Medium; s <= chem.Stiff; s++ {
			if got.ok[s] && (!got.ok[s-1] || got.at[s] < got.at[s-1]) {
				t.Fatalf("%v at %v, %v at %v", s-1, got.at[s-1], s, got.at[s])
			}
		}
	})
}

func TestWhatSpeedsABatterNeverMakesAStageLater(t *testing.T) {
	// Trace model, invariant 2.
	more := rapid.Float64Range(0, 1)
	for name, change := range map[string]func(b *Batter, by float64) Hand{
		"warmer start": func(b *Batter, by float64) Hand { b.StartC += 9 * by; return Hand{} },
		"stronger lye": func(b *Batter, by float64) Hand { b.Concentration += .05 * by; return Hand{} },
		"faster hand":  func(_ *Batter, by float64) Hand { return paced(by) },
		"more FFA":     func(b *Batter, by float64) Hand { b.FFA += .02 * by; return Hand{} },
		"another pulse": func(b *Batter, by float64) Hand {
			b.Bursts = append(b.Bursts, Burst{b.SplitMin, 40 * by})
			b.SplitMin++
			return Hand{}
		},
		"additive":      func(b *Batter, by float64) Hand { b.Additives = []Additive{{Factor: 1 + by}}; return Hand{} },
		"warmer room":   func(b *Batter, by float64) Hand { b.RoomC += 15 * by; return Hand{} },
		"less superfat": func(b *Batter, by float64) Hand { b.Superfat -= .02 * by; return Hand{} },
	} {
		rapid.Check(t, func(t *rapid.T) {
			b, j := drawBatter(t), drawJug(t)
			j.ExtraWaterG = 0
			for i := range j.Scents {
				j.Scents[i].AtMin += 2 // after the later split of another pulse
			}
			changed := b
			h := change(&changed, more.Draw(t, "by"))
			if name == "another pulse" {
				b.SplitMin = changed.SplitMin
			}
			notLater(t, name, times(t, b, j, Hand{}), times(t, changed, j, h))
		})
	}
}

func paced(ln float64) Hand {
	return Hand{Traits: []Trait{{Kind: PaceTrait, Mean: ln}}, Covariance: [][]float64{{.2}}}
}

func TestInsulationNeverMakesAStageLaterWhereTheBatterIsWarmerThanTheRoom(t *testing.T) {
	// Trace model, invariant 2.
	rapid.Check(t, func(t *rapid.T) {
		b, j := drawBatter(t), drawJug(t)
		b.RoomC = math.Min(b.RoomC, b.StartC)
		warm := b
		warm.Cooling = CoolingInsulated
		notLater(t, "insulated", times(t, b, j, Hand{}), times(t, warm, j, Hand{}))
	})
}

func TestAScentActsByItsLoadAndOnlyAfterItWentIn(t *testing.T) {
	// Trace model, invariant 3.
	rapid.Check(t, func(t *rapid.T) {
		b := drawBatter(t)
		ln, at := rapid.Float64Range(-1, 1).Draw(t, "ln"), rapid.Float64Range(11, 20).Draw(t, "at")
		with := func(ln, load float64) Jug {
			s := scent(1, load, at)
			s.LnFactor = ln
			return Jug{Fraction: .3, Scents: []Scent{s}}
		}
		plain := times(t, b, Jug{Fraction: .3}, Hand{})
		if none := times(t, b, with(ln, 0), Hand{}); none.at != plain.at {
			t.Fatalf("no load: %v, no scent: %v", none.at, plain.at)
		}
		whole, half := times(t, b, with(ln, 3), Hand{}), times(t, b, with(2*ln, 1.5), Hand{})
		for s := range whole.at {
			if math.Abs(whole.at[s]-half.at[s]) > 1e-9*whole.at[s] {
				t.Fatalf("%v: φ at its load %v, φ² at half %v", chem.Stage(s), whole.at[s], half.at[s])
			}
			if plain.ok[s] && plain.at[s] < at && math.Abs(whole.at[s]-plain.at[s]) > slack {
				t.Fatalf("%v moved from %v to %v, before the scent at %v", chem.Stage(s), plain.at[s], whole.at[s], at)
			}
		}
		if ln >= 0 {
			notLater(t, "quick scent", plain, whole)
		} else {
			notLater(t, "slow scent", whole, plain)
		}
	})
}

func TestWithoutActivationEnergyWarmthChangesNothing(t *testing.T) {
	// Trace model, invariant 6.
	l := standardLaw()
	l.activeJ = 0
	rapid.Check(t, func(t *rapid.T) {
		b := drawBatter(t)
		warm := b
		warm.StartC = 60
		a, err := newClock(l, b, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		w, err := newClock(l, warm, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		j := Jug{Fraction: 1}
		at, warmAt := l.follow(a.jugSchedule(j), 1, HorizonMin).at, l.follow(w.jugSchedule(j), 1, HorizonMin).at
		for s := range at {
			if math.Abs(at[s]-warmAt[s]) > slack {
				t.Fatalf("%v at %v, warm at %v", chem.Stage(s), at[s], warmAt[s])
			}
		}
	})
}

func TestABatterAtRoomTemperatureWithoutHeatKeepsIt(t *testing.T) {
	// Trace model, invariant 6.
	l := standardLaw()
	l.heatJ = 0
	b := batter(balanced(), 30)
	b.RoomC, b.SplitMin = 30, 5
	c, err := newClock(l, b, Hand{})
	if err != nil {
		t.Fatal(err)
	}
	f := c.Forecast(Jug{Fraction: .4})
	for s := range f.Stages {
		near(t, "temperature", f.StageC[s], 30, 1e-9)
	}
}

func TestAnUnscentedPortionWithoutLossesBehavesAsTheBatch(t *testing.T) {
	// Trace model, invariant 8. Split off after the last burst; a tiny cooling stands for none.
	rapid.Check(t, func(t *rapid.T) {
		b := drawBatter(t)
		b.Cooling = 1e-12
		whole := times(t, b, Jug{Fraction: 1}, Hand{})
		part := times(t, b, Jug{Fraction: rapid.Float64Range(.01, 1).Draw(t, "fraction")}, Hand{})
		for s := range whole.at {
			if math.Abs(whole.at[s]-part.at[s]) > 1e-6 {
				t.Fatalf("%v: batch %v, portion %v", chem.Stage(s), whole.at[s], part.at[s])
			}
		}
	})
}
