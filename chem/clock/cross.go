package clock

import (
	"math"

	"pourbench/chem"
)

// stride is one step that was taken: where it began, how long it was, both ends and their slopes.
type stride struct {
	*walk
	t, h   float64
	p0, p1 point
	d0, d1 point
}

// at is the state a fraction s into the stride, by the cubic through both ends and their slopes.
func (s stride) at(u float64) point {
	a, b := u*u*(3-2*u), s.h*u*(1-u)
	return point{
		dose: s.p0.dose + a*(s.p1.dose-s.p0.dose) + b*((1-u)*s.d0.dose-u*s.d1.dose),
		q:    s.p0.q + a*(s.p1.q-s.p0.q) + b*((1-u)*s.d0.q-u*s.d1.q),
	}
}

// mark notes the stages reached in a stride.
func (w *walk) mark(s stride) {
	for k := range w.out.at {
		if stage := chem.Stage(k); !w.out.ok[k] && w.lack(stage, s.t+s.h, s.p1.dose) <= 0 {
			t, p := s.cross(stage)
			w.note(stage, t, w.temperature(w.conversion(p.dose), p.q))
		}
	}
}

// markAtOnce notes the stages a leg begins with: free acid's soap at lye-in, or a scent's jump.
func (w *walk) markAtOnce() {
	for k := range w.out.at {
		if stage := chem.Stage(k); !w.out.ok[k] && w.lack(stage, w.leg.from, w.dose) <= 0 {
			w.note(stage, w.leg.from, w.kelvin)
		}
	}
}

func (w *walk) note(s chem.Stage, t, kelvin float64) {
	w.out.at[s], w.out.kelvin[s], w.out.ok[s] = t, kelvin, true
}

// lack is what is still missing for a stage, ≤ 0 once it is reached.
func (w *walk) lack(s chem.Stage, t, dose float64) float64 {
	if s == chem.Emulsion {
		return w.leg.coarseAt(w.law, t)*math.Exp(-w.conversion(dose)/w.soapX) - coarseLeft
	}
	return w.marks[s] - dose
}

// cross places a stage that is reached within the stride: first on the cubic, then by one full step from the stride's start to
// that place and a straight line over what still lacks there.
func (s stride) cross(stage chem.Stage) (float64, point) {
	lo, hi := 0.0, 1.0
	for hi-lo > 1e-6 {
		u := (lo + hi) / 2
		if s.lack(stage, s.t+u*s.h, s.at(u).dose) > 0 {
			lo = u
		} else {
			hi = u
		}
	}
	if hi == 1 {
		return s.t + s.h, s.p1
	}
	before := s.slope
	s.slope = s.d0
	p, slope, _ := s.try(s.t, s.p0, hi*s.h)
	s.slope = before
	t := s.t + hi*s.h
	if stage == chem.Emulsion || !(slope.dose > 0) {
		return t, p
	}
	off := (s.marks[stage] - p.dose) / slope.dose
	off = math.Max(s.t-t, math.Min(off, s.t+s.h-t))
	return t + off, p.plus(off, slope)
}
