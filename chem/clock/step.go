package clock

import "math"

// Error allowed in one step, dose and K. They leave stage times good to about 1e-4 min.
const (
	doseTolerance = 3e-7
	heatTolerance = 3e-5
)

// maxSteps bounds a leg; a usual one takes ten or so. A run that meets it stops there, and later stages have no time.
const maxSteps = 20000

// through carries the run to a minute of the present leg, by the embedded Runge-Kutta pair of order 5(4) of Dormand and Prince
// (J. Comput. Appl. Math. 6 (1980) 19) with step control.
func (w *walk) through(until float64) {
	t, p := w.leg.from, point{dose: w.dose}
	h := w.firstStep(until - t)
	for n := 0; t < until && w.dose < w.stop && n < maxSteps; n++ {
		last := t+h >= until
		if last {
			h = until - t
		}
		next, slope, e := w.try(t, p, h)
		grow := math.Min(5, math.Max(0.2, 0.9*math.Pow(e+1e-10, -0.2)))
		if !(e <= 1) {
			h *= math.Min(grow, 0.9)
			continue
		}
		to := t + h
		if last {
			to = until
		}
		x := w.conversion(next.dose)
		w.dose, w.kelvin = next.dose, w.temperature(x, next.q)
		if w.marking {
			w.mark(stride{w, t, h, p, next, w.slope, slope})
		}
		if w.peaking {
			w.peaks(stride{w, t, h, p, next, w.slope, slope})
		}
		t, p, w.slope = to, next, slope
		h *= grow
	}
	w.out.end = t
}

// firstStep guesses a step near what the tolerances allow: a tenth of a unit of dose, the time of the emulsion.
func (w *walk) firstStep(length float64) float64 {
	return math.Min(length, math.Min(0.1/w.slope.dose, w.leg.tau))
}

// try takes one step and returns its end, the slope there and the error against the tolerances (1: just allowed).
func (w *walk) try(t float64, p point, h float64) (next, slope point, e float64) {
	k1 := w.slope
	k2 := w.rates(t+h/5, p.plus(h/5, k1))
	k3 := w.rates(t+h*3/10, p.plus(h*3/40, k1).plus(h*9/40, k2))
	k4 := w.rates(t+h*4/5, p.plus(h*44/45, k1).plus(-h*56/15, k2).plus(h*32/9, k3))
	k5 := w.rates(t+h*8/9, p.plus(h*19372/6561, k1).plus(-h*25360/2187, k2).plus(h*64448/6561, k3).plus(-h*212/729, k4))
	k6 := w.rates(t+h, p.plus(h*9017/3168, k1).plus(-h*355/33, k2).plus(h*46732/5247, k3).plus(h*49/176, k4).
		plus(-h*5103/18656, k5))
	next = p.plus(h*35/384, k1).plus(h*500/1113, k3).plus(h*125/192, k4).plus(-h*2187/6784, k5).plus(h*11/84, k6)
	k7 := w.rates(t+h, next)
	off := point{}.plus(h*71/57600, k1).plus(-h*71/16695, k3).plus(h*71/1920, k4).plus(-h*17253/339200, k5).
		plus(h*22/525, k6).plus(-h/40, k7)
	e = math.Max(math.Abs(off.dose)/doseTolerance, math.Abs(off.q)/heatTolerance) / (1 + w.loose)
	return next, k7, e
}

func (p point) plus(c float64, k point) point { return point{p.dose + c*k.dose, p.q + c*k.q} }
