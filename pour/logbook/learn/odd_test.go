package learn

import (
	"math"
	"testing"

	"pourbench/chem/clock"
)

// By hand: pace alone, prior variance 0.45² = 0.2025, s² = 0.25² + 0.20² + 0.15² = 0.125, so S = 0.3275 and 3 sd are 1.71682. Up to there
// an observation counts in full; beyond, its s² counts four times: S = 0.2025 + 0.5 = 0.7025 (trace model 3.2).
func TestAnOddObservationMovesTheBeliefByAsMuchAsItIsTrusted(t *testing.T) {
	for _, x := range []struct {
		y, s float64
		odd  bool
	}{{1.7168, .3275, false}, {1.7169, .7025, true}, {-1.7168, .3275, false}, {-1.7169, .7025, true}, {2.5, .7025, true}, {.1, .3275, false}} {
		b := newBelief()
		h := []pull{{b.trait(clock.PaceTrait, "", .45), 1}}
		in := b.learn(h, x.y, .125)
		if in.odd != x.odd || in.expected != 0 || in.e != x.y {
			t.Errorf("%v: odd %v, expected %v, off by %v", x.y, in.odd, in.expected, in.e)
		}
		near(t, "S", in.s, x.s)
		near(t, "mean", b.mean[0], .2025/x.s*x.y)
		near(t, "variance", b.cov[0][0], .2025-.2025*.2025/x.s)
	}
}

// The same through the whole lesson: pace 0.45², recipe 0.25², pour and judging 0.20² + 0.15² for a log of one stage.
func TestAnOddLogCountsAQuarterInTheHand(t *testing.T) {
	const pace, recipe, s2 = .2025, .0625, .0625
	for _, y := range []float64{.5, -.5, 3, -3} {
		s, odd := pace+recipe+s2, math.Abs(y) > 3*math.Sqrt(pace+recipe+s2)
		if odd {
			s += 3 * s2
		}
		lesson := fromLogs([]Log{plainLog(1, "r", y)})
		if lesson.Logs[0].Odd != odd || odd != (math.Abs(y) > 1.8) {
			t.Errorf("%v: odd is %v", y, lesson.Logs[0].Odd)
		}
		near(t, "pace", lesson.Hand.Traits[0].Mean, pace/s*y)
		near(t, "recipe", lesson.Hand.Traits[1].Mean, recipe/s*y)
		near(t, "variance of the pace", lesson.Hand.Covariance[0][0], pace-pace*pace/s)
		near(t, "between pace and recipe", lesson.Hand.Covariance[0][1], -pace*recipe/s)
		near(t, "noise", lesson.Hand.Noise, max(1, (4+y*y/s)/5))
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-12 {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func TestTwiceAsFastAsExpectedIsAFactorOfTwo(t *testing.T) {
	near(t, "factor", LogResult{Observed: math.Log(3), Expected: math.Log(1.5)}.Factor(), 2)
	near(t, "factor", LogResult{Observed: math.Log(.5), Expected: 0}.Factor(), .5)
}

// A bound is held against what is expected by then: with 0.3 learnt, the same bound stands 0.3 lower.
func TestABoundIsHeldAgainstWhatIsExpected(t *testing.T) {
	b := newBelief()
	h := []pull{{b.trait(clock.PaceTrait, "", .45), 1}}
	b.mean[0] = .3
	if in := b.learnBelow(h, .2, .125); math.Abs(in.e+.1) > 1e-12 || in.expected != .3 || b.mean[0] >= .3 {
		t.Errorf("0.2 under an expected 0.3 is off by %v and leaves %v", in.e, b.mean[0])
	}
}
