package learn

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem/clock"
)

// plainLog is a log whose line is known already: one stage, no scent.
func plainLog(n int, recipe string, y float64) Log {
	return Log{
		Pour: "p" + strconv.Itoa(n), When: day(n), Batch: "base", JugName: "pot",
		Batter: clock.Batter{Recipe: recipe}, Line: Line{Worked: true, Y: y, Stages: 1},
	}
}

// spread is the variance of β + u for a recipe, as the hand has it, and their mean.
func spread(h clock.Hand, recipe string) (mean, variance float64) {
	pace, own := -1, -1
	for i, t := range h.Traits {
		switch {
		case t.Kind == clock.PaceTrait:
			pace = i
		case t.Kind == clock.RecipeTrait && t.ID == recipe:
			own = i
		}
	}
	if pace < 0 {
		return 0, clock.PriorPaceSD*clock.PriorPaceSD + clock.PriorRecipeSD*clock.PriorRecipeSD
	}
	mean, variance = h.Traits[pace].Mean, h.Covariance[pace][pace]
	if own < 0 {
		return mean, variance + clock.PriorRecipeSD*clock.PriorRecipeSD
	}
	return mean + h.Traits[own].Mean, variance + h.Covariance[own][own] + 2*h.Covariance[pace][own]
}

const noise = clock.PourSD*clock.PourSD + clock.JudgeSD*clock.JudgeSD

func TestTheBandShrinksWithLogsAsInTheTable(t *testing.T) {
	// Trace model, section 3.4, β, u, τ and ω only, Gaussian z. Regression.
	for _, want := range []struct {
		n           int
		same, other float64
	}{{0, 2.08, 2.08}, {1, 1.54, 1.78}, {3, 1.44, 1.67}, {5, 1.42, 1.64}, {10, 1.40, 1.61}, {20, 1.39, 1.59}} {
		var same, others []Log
		for i := range want.n {
			same = append(same, plainLog(i, "r", 0))
			others = append(others, plainLog(i, "r"+strconv.Itoa(i), 0))
		}
		_, v := spread(fromLogs(same).Hand, "r")
		close4(t, "the same recipe", math.Exp(z80*math.Sqrt(v+noise)), want.same, 5.1e-3)
		_, v = spread(fromLogs(others).Hand, "a new one")
		close4(t, "a new recipe", math.Exp(z80*math.Sqrt(v+noise)), want.other, 5.1e-3)
	}
}

// makers simulates makers in y-space (trace model, section 3.4) and returns how often the 80 % band of the next pour of the same
// recipe holds what then happens.
func makers(r *rand.Rand, count, logs int, paceSD, pourSD float64) float64 {
	// 0.90 quantiles of Student's t with 4 + n degrees, trace model 3.4; without a log the clock takes the normal one.
	quantile := map[int]float64{0: z80, 1: 1.476, 3: 1.415, 10: 1.345}[logs]
	held := 0
	for range count {
		pace := paceSD*r.NormFloat64() + clock.PriorRecipeSD*r.NormFloat64()
		pour := func() float64 { return pace + pourSD*r.NormFloat64() + clock.JudgeSD*r.NormFloat64() }
		var list []Log
		for i := range logs {
			list = append(list, plainLog(i, "r", pour()))
		}
		h := fromLogs(list).Hand
		mean, v := spread(h, "r")
		if sigma := math.Sqrt((v + noise) * max(1, h.Noise)); math.Abs(pour()-mean) <= quantile*sigma {
			held++
		}
	}
	return float64(held) / float64(count)
}

func TestTheBandHoldsForMakersDrawnFromThePrior(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2026))
	for _, n := range []int{0, 1, 3, 10} {
		got := makers(r, 2000, n, clock.PriorPaceSD, clock.PourSD)
		t.Logf("%2d logs: %.0f %% of makers as the prior inside the 80 %% band; very different makers %.0f %%, sloppy ones %.0f %%",
			n, 100*got, 100*makers(r, 2000, n, .7, clock.PourSD), 100*makers(r, 2000, n, clock.PriorPaceSD, .35))
		if got < .75 || got > .90 {
			t.Errorf("with %d logs the band holds for %.1f %% of makers", n, 100*got)
		}
	}
}

// drawLogs draws logs with known lines, some of them scented, several jugs to a pour.
func drawLogs(t *rapid.T) []Log {
	var out []Log
	for i := range rapid.IntRange(1, 12).Draw(t, "pours") {
		for j := range rapid.IntRange(1, 3).Draw(t, "jugs") {
			l := plainLog(i, rapid.SampledFrom([]string{"", "a", "b", "c"}).Draw(t, "recipe"), rapid.Float64Range(-.3, .3).Draw(t, "y"))
			l.JugName = strconv.Itoa(j)
			l.Line.Stages = rapid.IntRange(1, 4).Draw(t, "stages")
			if rapid.Bool().Draw(t, "scented") {
				l.Jug.Scents = []clock.Scent{{ID: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "scent"), SD: .35, RefLoadPercent: 3, LoadPercent: 3}}
				l.Line.Weights = []float64{rapid.Float64Range(.1, 1.2).Draw(t, "w")}
			}
			out = append(out, l)
		}
	}
	return out
}

func byTrait(h clock.Hand) map[clock.TraitKind]map[string][2]float64 {
	out := map[clock.TraitKind]map[string][2]float64{}
	for i, tr := range h.Traits {
		if out[tr.Kind] == nil {
			out[tr.Kind] = map[string][2]float64{}
		}
		out[tr.Kind][tr.ID] = [2]float64{tr.Mean, h.Covariance[i][i]}
	}
	return out
}

func anyOdd(l Lesson) bool {
	for _, r := range l.Logs {
		if r.Odd {
			return true
		}
	}
	return l.Redone
}

func TestWhatIsLearntDoesNotDependOnTheOrderOfThePours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		logs := drawLogs(t)
		one := fromLogs(logs)
		moved := append([]Log(nil), logs...)
		days := rapid.Permutation(make30()).Draw(t, "days")
		for i := range moved {
			n, _ := strconv.Atoi(moved[i].Pour[1:])
			moved[i].When = day(days[n])
		}
		two := fromLogs(rapid.Permutation(moved).Draw(t, "order"))
		if anyOdd(one) || anyOdd(two) {
			t.Skip("an odd log counts by what came before it")
		}
		a, b := byTrait(one.Hand), byTrait(two.Hand)
		for kind := range a {
			for id, v := range a[kind] {
				w := b[kind][id]
				if math.Abs(v[0]-w[0]) > 1e-9 || math.Abs(v[1]-w[1]) > 1e-9 {
					t.Fatalf("%s %s: %v in one order, %v in another", kind, id, v, w)
				}
			}
		}
		if math.Abs(one.Hand.Noise-two.Hand.Noise) > 1e-9 || one.Hand.Freedom != two.Hand.Freedom {
			t.Fatalf("noise %v in one order, %v in another", one.Hand.Noise, two.Hand.Noise)
		}
	})
}

func make30() []int {
	out := make([]int, 30)
	for i := range out {
		out[i] = i
	}
	return out
}

func TestEveryLogNarrowsEveryTrait(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		logs := drawLogs(t)
		before := byTrait(fromLogs(logs).Hand)
		more := plainLog(29, "a", rapid.Float64Range(-2, 2).Draw(t, "y"))
		after := byTrait(fromLogs(append(append([]Log(nil), logs...), more)).Hand)
		for kind := range before {
			for id, v := range before[kind] {
				if w := after[kind][id]; w[1] > v[1]+1e-12 {
					t.Fatalf("%s %s: variance %v grew to %v with a log", kind, id, v[1], w[1])
				}
			}
		}
	})
}
