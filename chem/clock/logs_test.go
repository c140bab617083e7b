package clock

import (
	"math"
	"testing"

	"pourbench/chem"
)

// The logs of trace model 3.5 and what they teach are worked examples of our own model: regression, all of them.

// seen is one stage of a log of trace model 3.5 and the y it gives.
type seen struct {
	stage     chem.Stage
	minute, y float64
}

func TestLogsGiveTheTabledObservationsRegression(t *testing.T) {
	// Regression. Trace model 3.5, full example: ln of the speed that brings a stage at the minute it was seen.
	b := batter(balanced(), 35, Burst{0, 30})
	b.SplitMin = 2
	for _, c := range []struct {
		name string
		b    Batter
		j    Jug
		seen []seen
	}{
		{"A", batter(balanced(), 35, pulsed()...), Jug{Fraction: 1}, []seen{{chem.Light, 2.2, -.1419}, {chem.Medium, 4.5, .1810}, {chem.Thick, 9, .2110}}},
		{"B", batter(slow(), 30, Burst{0, 30}), Jug{Fraction: 1}, []seen{{chem.Medium, 13, .2240}, {chem.Thick, 22, .2259}}},
		{"C", b, scentedQuarter(), []seen{{chem.Medium, 4, .2772}, {chem.Thick, 6, .3252}}},
	} {
		clock := must(t, c.b, Hand{})
		for _, s := range c.seen {
			speed, ok := clock.SpeedAt(c.j, s.stage, s.minute)
			if !ok {
				t.Fatal("no speed")
			}
			near(t, c.name+" "+s.stage.String(), math.Log(speed), s.y, 6e-5)
			back := clock.law.follow(clock.jugSchedule(c.j), speed, HorizonMin).at[s.stage]
			near(t, c.name+" back again", back, s.minute, 1e-4) // invariant 9: solve and simulate are inverse
		}
	}
}

func TestLogsWeighTheirScentsAsTabledRegression(t *testing.T) {
	// Regression. Trace model 3.5, log C: 0.6071, the mean of its two stages.
	b := batter(balanced(), 35, Burst{0, 30})
	b.SplitMin = 2
	c, sum := must(t, b, Hand{}), 0.0
	for stage, minute := range map[chem.Stage]float64{chem.Medium: 4, chem.Thick: 6} {
		w, ok := c.ScentWeights(scentedQuarter(), stage, minute)
		if !ok || len(w) != 1 {
			t.Fatal(w, ok)
		}
		sum += w[0] / 2
	}
	near(t, "weight", sum, .6071, 6e-5)
	early, ok := c.ScentWeights(scentedQuarter(), chem.Light, 1.5)
	if !ok {
		t.Fatal("no weight")
	}
	near(t, "before the scent went in", early[0], 0, 1e-9)
}

func TestNoSpeedIsGivenWhereNoneFits(t *testing.T) {
	c := must(t, batter(balanced(), 35, Burst{0, 60}), Hand{})
	one := Jug{Fraction: 1}
	for _, q := range []struct {
		s      chem.Stage
		minute float64
	}{{chem.Light, 0}, {chem.Light, -1}, {chem.Light, math.NaN()}, {chem.Light, 361}, {chem.Emulsion, 1}, {9, 3}} {
		if v, ok := c.SpeedAt(one, q.s, q.minute); ok {
			t.Errorf("stage %d at %v: %v", q.s, q.minute, v)
		}
	}
	if _, ok := c.SpeedAt(Jug{}, chem.Light, 5); ok {
		t.Error("a jug of nothing has a speed")
	}
}

// threeLogs is the hand that logs A, B and C of trace model 3.5 teach, by its section 3.2: pace, balanced, slow, scent.
func threeLogs() Hand {
	m := make([]float64, 4)
	p := [][]float64{{square(.45), 0, 0, 0}, {0, square(.25), 0, 0}, {0, 0, square(.25), 0}, {0, 0, 0, square(.35)}}
	for _, log := range []struct {
		y, s2 float64
		h     [4]float64
	}{{.0834, .0475, [4]float64{1, 1, 0, 0}}, {.2250, .05125, [4]float64{1, 0, 1, 0}}, {.3012, .05125, [4]float64{1, 1, 0, .6071}}} {
		hp, s, e := make([]float64, 4), log.s2, log.y
		for i := range 4 {
			for k := range 4 {
				hp[i] += p[i][k] * log.h[k]
			}
			e -= log.h[i] * m[i]
			s += log.h[i] * hp[i]
		}
		for i := range 4 {
			m[i] += hp[i] / s * e
			for k := range 4 {
				p[i][k] -= hp[i] * hp[k] / s
			}
		}
	}
	return Hand{
		Traits: []Trait{
			{PaceTrait, "", m[0], 3}, {RecipeTrait, "balanced", m[1], 2}, {RecipeTrait, "slow", m[2], 1}, {ScentTrait, "s", m[3], 1},
		},
		Covariance: p, Pours: 3, // Freedom and Noise 0: the example uses neither
	}
}

// predictionD is trace model 3.5: balanced at 38 °C, one burst of 30 s, a fifth with the scent at 2 % from minute 2.
func predictionD(t *testing.T, h Hand) Forecast {
	t.Helper()
	b := batter(balanced(), 38, Burst{0, 30})
	b.SplitMin, b.Recipe = 2, "balanced"
	return must(t, b, h).Forecast(Jug{Fraction: .2, Scents: []Scent{scent(2, 2, 2)}})
}

func TestThreeLogsTeachAsTabledRegression(t *testing.T) {
	// Regression. Trace model 3.5, posterior after log C.
	h := threeLogs()
	for i, want := range []struct{ mean, sd float64 }{{.1489, .203}, {.0042, .198}, {.0418, .201}, {.1142, .284}} {
		near(t, "mean", h.Traits[i].Mean, want.mean, 1e-4)
		near(t, "sd", math.Sqrt(h.Covariance[i][i]), want.sd, 6e-4)
	}
}

func TestPredictionsBeforeAndAfterLogsKeepToTheWorkedExampleRegression(t *testing.T) {
	// Regression. Trace model 3.5, prediction D: medians to their print. Its bands count a scent's doubt by the part of the dose that the scent
	// has acted on; this clock counts all of it, as the scenarios of 4.3 do, so its bands hold the printed ones and are up to a tenth wider.
	for _, c := range []struct {
		name string
		h    Hand
		want [4]Time
	}{
		{"before", Hand{}, [4]Time{{Low: .5, Mid: 2.5, High: 5.6}, {Low: 2.2, Mid: 5.1, High: 11.6}, {Low: 3.6, Mid: 8.4, High: 19.9}, {Low: 5.5, Mid: 12.9, High: 32}}},
		{"after", threeLogs(), [4]Time{{Low: .9, Mid: 2.1, High: 3.2}, {Low: 2.7, Mid: 4.1, High: 6.3}, {Low: 4.4, Mid: 6.7, High: 10.4}, {Low: 6.6, Mid: 10.2, High: 16.1}}},
	} {
		f := predictionD(t, c.h)
		for i, want := range c.want {
			got := f.Stages[i+1]
			near(t, c.name+" median", got.Mid, want.Mid, .051)
			if got.Low > want.Low+.051 || got.High < want.High-.051 || got.Low < .9*want.Low-.051 || got.High > 1.1*want.High+.051 {
				t.Errorf("%s, %v: band %.3f to %.3f, printed %v to %v", c.name, chem.Stage(i+1), got.Low, got.High, want.Low, want.High)
			}
		}
	}
	f := predictionD(t, threeLogs())
	p, ok := f.ChancePast(chem.Thick, 8)
	if !ok {
		t.Fatal("no chance")
	}
	near(t, "past thick by minute 8", p, .70, .02)
	if f.Pours != 3 || f.RecipePours != 2 || !warns(f, FromLogs) || warns(f, StartingGuess) {
		t.Errorf("does not say what it rests on: %+v", f)
	}
}

func TestPredictionDIsUnchangedRegression(t *testing.T) {
	// Regression: this clock's own band before any log.
	for i, want := range [4][3]float64{{.470, 2.484, 5.952}, {2.080, 5.074, 12.191}, {3.478, 8.389, 20.609}, {5.338, 12.941, 33.020}} {
		got := predictionD(t, Hand{}).Stages[i+1]
		near(t, "low", got.Low, want[0], 1e-3)
		near(t, "mid", got.Mid, want[1], 1e-3)
		near(t, "high", got.High, want[2], 1e-3)
	}
}

func TestLearntNoiseWidensTheBand(t *testing.T) {
	h := threeLogs()
	calm := predictionD(t, h).Sigma
	h.Noise = 2.25
	near(t, "sigma", predictionD(t, h).Sigma, 1.5*calm, 1e-12) // trace model 3.4: √c_n·σ
}

func scentedQuarter() Jug { return Jug{Fraction: .25, Scents: []Scent{scent(2, 3, 2)}} }

func must(t *testing.T, b Batter, h Hand) *Clock {
	t.Helper()
	c, err := New(b, h)
	if err != nil {
		t.Fatal(err)
	}
	return c
}
