package clock

import (
	"math"

	"pourbench/chem"
)

// ChancePast is the probability, 0 to 1, that the jug has reached a stage before a minute after lye-in: 1 − N((ln Λ* − ln Λ)/σ),
// Λ* being the speed at which it would just reach it then (trace model 2.5; Student's t once there are logs). It is not good to
// better than the model: show it in tenths. Chances of two jugs of a batch are not independent: never multiply them.
// The second result is false for a refused jug, an unknown stage and a minute that is NaN or beyond [HorizonMin].
func (f Forecast) ChancePast(stage chem.Stage, minute float64) (float64, bool) {
	if f.clock == nil || f.Refusal != "" || !known(stage) || math.IsNaN(minute) || minute > HorizonMin {
		return 0, false
	}
	if minute < 0 {
		return 0, true
	}
	c := f.clock
	ln := math.Log(c.pace)
	needed := 0.0
	if stage == chem.Emulsion {
		needed = c.law.solveEmulsion(f.sched, minute, ln, chanceTolerance)
	} else {
		needed = c.law.solve(f.sched, stage, minute, ln, chanceTolerance)
	}
	return 1 - c.hand.below((needed-ln)/f.Sigma), true
}

// SpeedAt is Λ, the speed at which the jug reaches a stage at just that minute after lye-in, with the hand's scents in place.
// A logbook takes its logarithm, on a clock with the zero Hand, as the observation of trace model 3.1. The second result is false
// where no speed does: the stage is there at once or through the blender alone, the minute is not over 0 and up to [HorizonMin], or
// the clock refuses the jug.
func (c *Clock) SpeedAt(j Jug, stage chem.Stage, minute float64) (float64, bool) {
	if c.checkJug(j) != nil || !known(stage) || !(minute > 0 && minute <= HorizonMin) {
		return 0, false
	}
	ln := c.law.solve(c.jugSchedule(j), stage, minute, 0, speedTolerance)
	if math.IsInf(ln, 0) {
		return 0, false
	}
	return math.Exp(ln), true
}

// ScentWeights is w_j = −∂ ln Λ/∂f_j at a fixed minute, for each scent of the jug: the part of the dose run up since it went in,
// 0 to its load against its test load (trace model 3.2; by a difference of ±0.05). The second result is false where [Clock.SpeedAt]'s is.
func (c *Clock) ScentWeights(j Jug, stage chem.Stage, minute float64) ([]float64, bool) {
	const d = 0.05
	w := make([]float64, len(j.Scents))
	for i := range j.Scents {
		var ln [2]float64
		for side, shift := range [2]float64{-d, d} {
			moved := j
			moved.Scents = append([]Scent(nil), j.Scents...)
			moved.Scents[i].LnFactor += shift
			speed, ok := c.SpeedAt(moved, stage, minute)
			if !ok {
				return nil, false
			}
			ln[side] = math.Log(speed)
		}
		w[i] = (ln[0] - ln[1]) / (2 * d)
	}
	return w, true
}

func known(s chem.Stage) bool { return s >= 0 && int(s) < chem.Stages }

// How closely ln of a dose must be met: for a chance, and for a log.
const (
	chanceTolerance = 1e-5
	speedTolerance  = 1e-9
	farLn           = 25 // beyond e^±25 no speed is looked for
	least           = 1e-12
	pastAim         = 2 // a run ends this much over the dose looked for: far enough for the secant to see no kink near its root
)

// solve finds ln Λ at which a stage is reached at a minute: −Inf where it is reached at any speed, +Inf where at none. It is a
// secant on ln of the dose run up by then, which is nearly a straight line in ln Λ.
func (l law) solve(s schedule, stage chem.Stage, minute, start, tolerance float64) float64 {
	from := l.dose(s.startX)
	aim := l.aim(s, stage, minute)
	if aim <= from {
		return math.Inf(-1)
	}
	if minute <= 0 {
		return math.Inf(1)
	}
	return root(func(ln float64) float64 {
		c := l.followTo(s, math.Exp(ln), minute, aim+pastAim)
		return math.Log(math.Max(least, (c.dose+c.rate*(minute-c.end)-from)/(aim-from)))
	}, start, tolerance)
}

// root is where a function that never falls passes 0, by a bracketed secant from start: ±Inf where it does not within e^±[farLn].
func root(miss func(ln float64) float64, start, tolerance float64) float64 {
	lo, hi := math.Inf(-1), math.Inf(1)
	x0, y0 := start, miss(start)
	x := x0 - y0
	for range 80 {
		if math.Abs(y0) < tolerance {
			return x0
		}
		if y0 < 0 {
			lo = math.Max(lo, x0)
		} else {
			hi = math.Min(hi, x0)
		}
		x = within(x, x0, y0, lo, hi)
		if math.Abs(x-start) > farLn {
			return math.Inf(int(math.Copysign(1, x-start)))
		}
		y := miss(x)
		slope := (y - y0) / (x - x0)
		x0, y0, x = x, y, x-y/slope
	}
	return x0
}

// within keeps the secant's proposal x inside what is known to hold the root: else half-way, or one on where a side is open.
func within(x, x0, y0, lo, hi float64) float64 {
	switch {
	case x > lo && x < hi && math.Abs(x-x0) <= 4:
		return x
	case y0 < 0 && math.IsInf(hi, 1):
		return x0 + 2
	case y0 > 0 && math.IsInf(lo, -1):
		return x0 - 2
	default:
		return (lo + hi) / 2
	}
}

// aim is the dose at which a stage is reached at that minute. For emulsion it depends on how fine the batter is by then.
func (l law) aim(s schedule, stage chem.Stage, minute float64) float64 {
	if stage != chem.Emulsion {
		return l.dose(stageX(stage))
	}
	return l.dose(l.emulsionX(s.coarseAt(l, minute)))
}
