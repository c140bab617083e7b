package logbook

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/chem"
	"pourbench/chem/clock"
)

// The oils the trace model gives beside its golden values (section 4.3): rounded values from memory, for comparison only.
func testBatter(recipe string, startC float64, bursts ...clock.Burst) clock.Batter {
	olive := chem.Profile{chem.C16: .13, chem.C16x1: .01, chem.C18: .03, chem.C18x1: .71, chem.C18x2: .10, chem.C18x3: .01}
	sunflower := chem.Profile{chem.C16: .04, chem.C18: .04, chem.C18x1: .83, chem.C18x2: .08}
	coconut := chem.Profile{
		chem.C8: .08, chem.C10: .06, chem.C12: .48, chem.C14: .19, chem.C16: .09, chem.C18: .03, chem.C18x1: .06, chem.C18x2: .02,
	}
	palm := chem.Profile{chem.C14: .01, chem.C16: .44, chem.C18: .045, chem.C18x1: .39, chem.C18x2: .10}
	castor := chem.Profile{chem.Ricinoleic: .90, chem.C18x1: .04, chem.C18x2: .04, chem.C16: .01, chem.C18: .01}
	b := clock.Batter{
		Recipe: recipe, OilG: 1000, Profiled: 1, Superfat: .05, Concentration: .33, StartC: startC, RoomC: 22, Bursts: bursts,
	}
	add := func(part, sap float64, p chem.Profile) {
		sum := 0.0
		for _, w := range p {
			sum += w
		}
		b.SapKOHMgG += part * sap
		for a, w := range p {
			b.Profile[a] += part * w / sum
		}
	}
	if recipe == "slow" {
		add(.45, 190, sunflower)
		add(.30, 190, olive)
		add(.20, 257, coconut)
	} else {
		add(.40, 190, olive)
		add(.30, 257, coconut)
		add(.25, 200, palm)
	}
	add(.05, 180, castor)
	for _, u := range bursts {
		b.SplitMin = max(b.SplitMin, u.AtMin+u.S/60)
	}
	return b
}

func day(n int) time.Time { return time.Date(2026, 1, 1, 10, 0, 0, 0, time.UTC).AddDate(0, 0, n) }

// workedLogs are the three logs of the full example of the trace model, section 3.5.
func workedLogs() []Log {
	floral := clock.Scent{ID: "F1", Name: "floral", LnFactor: math.Log(2), SD: .35, RefLoadPercent: 3, LoadPercent: 3, AtMin: 2}
	c := testBatter("balanced", 35, clock.Burst{S: 30})
	c.SplitMin = 2
	return []Log{
		{
			Pour: "A", When: day(1), Batter: testBatter("balanced", 35, clock.Burst{S: 20}, clock.Burst{AtMin: .5, S: 20}, clock.Burst{AtMin: 1, S: 20}),
			Jug: clock.Jug{Fraction: 1}, Seen: []StageAt{{chem.Light, 2.2}, {chem.Medium, 4.5}, {chem.Thick, 9}},
		},
		{
			Pour: "B", When: day(2), Batter: testBatter("slow", 30, clock.Burst{S: 30}),
			Jug: clock.Jug{Fraction: 1}, Seen: []StageAt{{chem.Medium, 13}, {chem.Thick, 22}},
		},
		{
			Pour: "C", When: day(3), Batter: c,
			Jug: clock.Jug{Fraction: .25, Scents: []clock.Scent{floral}}, Seen: []StageAt{{chem.Medium, 4}, {chem.Thick, 6}},
		},
	}
}

func close4(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s is %.5f, want %.4f", what, got, want)
	}
}

func TestTheFullWorkedExampleComesOutToItsPrintedDigits(t *testing.T) {
	lesson := Learn(workedLogs())
	// Regression: the three logs of the trace model, section 3.5; our own arithmetic.
	for i, want := range []struct{ y, s float64 }{{.0834, .3125}, {.2250, .1850}, {.3012, .1316}} {
		got := lesson.Logs[i]
		close4(t, "y of log "+got.Log.Pour, got.Observed, want.y, 2e-4)
		close4(t, "S of log "+got.Log.Pour, got.SD*got.SD, want.s, 2e-4)
	}
	close4(t, "w of the floral", lesson.Logs[2].Log.Line.Weights[0], .6071, 2e-4)
	h := lesson.Hand
	for i, want := range []struct{ mean, sd float64 }{{.1489, .203}, {.0042, .198}, {.0418, .201}, {.1142, .284}} {
		close4(t, "mean of "+string(h.Traits[i].Kind)+" "+h.Traits[i].ID, h.Traits[i].Mean, want.mean, 2e-4)
		close4(t, "sd of "+string(h.Traits[i].Kind)+" "+h.Traits[i].ID, math.Sqrt(h.Covariance[i][i]), want.sd, 6e-4)
	}
	close4(t, "the floral's factor", lesson.Scents[0].Factor, 2.24, 5e-3)
	if h.Pours != 3 || h.Freedom != 7 || h.Noise != 1 {
		t.Errorf("the hand rests on %d pours, %d degrees, noise %v", h.Pours, h.Freedom, h.Noise)
	}
}
func TestXX(t *testing.T) { _ = rand.N[int]; _ = strconv.Itoa; _ = rapid.Check }
