package cure

import "math"

// shortS is where the early law of a slab, in the root of time, is left for the series: there they agree to 1e-11.
const shortS = 0.1

// slab returns g(s), the part of its water that a slab open on both faces has not lost yet at s = π²Dt/l², and its
// elasticity -s·g'(s)/g(s), both 0 or more. g(s) = 8/π² · Σ exp(-(2n+1)²s)/(2n+1)² (Crank, The Mathematics of Diffusion, 2nd ed.,
// p. 48, read second-hand), and early 1 - 4√s/π^1.5 (derived). The leading exponential is taken out of the ratio, which stays
// a number when g itself is too small for one.
func slab(s float64) (g, elasticity float64) {
	switch {
	case s <= 0:
		return 1, 0
	case s <= shortS:
		lost := 4 * math.Sqrt(s) / (math.Pi * math.SqrtPi)
		return 1 - lost, lost / 2 / (1 - lost)
	}
	sum, slope, term, power, step := 1.0, 1.0, 1.0, 1.0, math.Exp(-8*s)
	for n := 1; n < 20; n++ {
		power *= step
		term *= power // exp(-((2n+1)² - 1)s)
		if term < 1e-18 {
			break
		}
		odd := float64(2*n + 1)
		sum += term / (odd * odd)
		slope += term
	}
	return 8 / (math.Pi * math.Pi) * math.Exp(-s) * sum, s * slope / sum
}

// law is f as a function of the time in units of tau: that of a box by the weights of its sides, or the plain exponential.
type law struct {
	weights [3]float64
	lumped  bool
}

// left returns the part of the water to go that is still there at x = t/tau, and its derivative by ln tau.
func (l law) left(x float64) (f, byLnTau float64) {
	if l.lumped {
		f = math.Exp(-math.Max(0, x))
		return f, f * math.Max(0, x)
	}
	f = 1
	for _, w := range l.weights {
		g, e := slab(w * x)
		f *= g
		byLnTau += e
	}
	return f, f * byLnTau
}
