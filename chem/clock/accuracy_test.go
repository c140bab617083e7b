package clock

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

// worst is the largest difference in stage times between the clock and the reference, min, or relative where that is less.
func worst(t rapid.TB, r reference, got course, horizon float64) float64 {
	t.Helper()
	out := 0.0
	for s, want := range r.stages(horizon) {
		if math.IsInf(want, 1) {
			if got.ok[s] && got.at[s] < horizon-0.1 {
				t.Errorf("%v: the clock reaches it at %v, the reference not at all", chem.Stage(s), got.at[s])
			}
			continue
		}
		if !got.ok[s] {
			if want < horizon-0.1 {
				t.Errorf("%v: the reference reaches it at %v, the clock not at all", chem.Stage(s), want)
			}
			continue
		}
		off := math.Abs(got.at[s] - want)
		out = math.Max(out, math.Min(off, off/want*10)) // 0.1 % counts as 0.01 min
	}
	return out
}

func TestStageTimesAgreeWithAFineFixedStepReference(t *testing.T) {
	most := 0.0
	rapid.Check(t, func(t *rapid.T) {
		b, j := drawBatter(t), drawJug(t)
		pace := math.Exp(rapid.Float64Range(-2, 2).Draw(t, "ln pace"))
		c, err := New(b, Hand{})
		if err != nil {
			t.Fatal(err)
		}
		got := c.law.follow(c.jugSchedule(j), pace, HorizonMin)
		off := worst(t, reference{law: c.law, b: b, j: j, pace: pace, step: 0.02}, got, HorizonMin)
		if most = math.Max(most, off); off > 5e-3 { // half of what the clock promises
			t.Fatalf("off by %v", off)
		}
	})
	t.Logf("largest difference %.2g min (0.1 %% counting as 0.01 min)", most)
}

// drawBatter draws a batch the clock takes.
func drawBatter(t *rapid.T) Batter {
	names := []string{"olive", "sunflower", "coconut", "palm", "lard", "shea"}
	parts, sum := map[string]float64{}, 0.0
	for _, n := range names {
		parts[n] = rapid.Float64Range(0.01, 1).Draw(t, n)
		sum += parts[n]
	}
	for _, n := range names {
		parts[n] /= sum
	}
	b := batter(parts, rapid.Float64Range(24, 55).Draw(t, "start"), drawBursts(t)...)
	b.Concentration = rapid.Float64Range(.25, .45).Draw(t, "concentration")
	b.OilG = rapid.Float64Range(300, 5000).Draw(t, "oil")
	b.FFA = rapid.Float64Range(.0001, .02).Draw(t, "ffa")
	b.Superfat = rapid.Float64Range(0, .2).Draw(t, "superfat")
	b.RoomC = rapid.Float64Range(15, 30).Draw(t, "room")
	b.SplitMin += rapid.Float64Range(0, 5).Draw(t, "split")
	return b
}

func drawBursts(t *rapid.T) []Burst {
	var out []Burst
	at := 0.0
	for range rapid.IntRange(0, 3).Draw(t, "bursts") {
		at += rapid.Float64Range(0, 1).Draw(t, "pause")
		out = append(out, Burst{at, rapid.Float64Range(5, 40).Draw(t, "seconds")})
		at += out[len(out)-1].S / 60
	}
	return out
}

// drawJug draws a jug with no, one or two scents, stirred in after the longest split of drawBatter at the earliest.
func drawJug(t *rapid.T) Jug {
	j := Jug{Fraction: rapid.Float64Range(.1, 1).Draw(t, "fraction"), ExtraWaterG: rapid.Float64Range(0, 5).Draw(t, "water")}
	for range rapid.IntRange(0, 2).Draw(t, "scents") {
		j.Scents = append(j.Scents, scent(rapid.Float64Range(.7, 4).Draw(t, "factor"),
			rapid.Float64Range(.5, 6).Draw(t, "load"), rapid.Float64Range(10.5, 20).Draw(t, "at")))
	}
	return j
}
