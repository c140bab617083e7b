package cure

import "math"

// When the fit is settled, and how long it may take.
const (
	settled    = 1e-12
	mostRounds = 200
	mostHalves = 60
)

// settle finds the least of S = Σ((m - A + B(1 - f))/σ)² + ((B - B0)/sB)² + ((u - u0)/su)², u being ln tau, by Gauss and Newton: H = JᵀJ/σ² + diag(0, 1/sB², 1/su²),
// the step halved while S rises. It starts from the first weighing and the prior.
func (f *Fit) settle() error {
	f.Params = Params{f.Weighings[0].G, f.lossG(), f.Prior.LnTau}
	f.S = f.badness(f.Params)
	for range mostRounds {
		h, down := f.normal(f.Params)
		step, ok := h.solve(down)
		if !ok {
			break
		}
		f.Params, f.S = f.along(step)
		if largest(step) < settled {
			return f.finish()
		}
	}
	h, down := f.normal(f.Params)
	if step, ok := h.solve(down); !ok || math.Abs(step[2]) > 1e-6 || math.Abs(step[0])+math.Abs(step[1]) > 1e-6*f.Weighings[0].G {
		return refuse(Unsettled, "no curve could be fitted to these %d weighings: check scale and dates", len(f.Weighings))
	}
	return f.finish()
}

// along is the end of a step, halved while S rises.
func (f *Fit) along(step [3]float64) (to Params, s float64) {
	scale := 1.0
	for range mostHalves {
		to = Params{f.AG + scale*step[0], f.BG + scale*step[1], f.LnTau + scale*step[2]}
		if s = f.badness(to); s <= f.S+settled {
			return to, s
		}
		scale /= 2
	}
	return f.Params, f.S
}

// finish works out the covariance, H⁻¹, and the weighings' part of S.
func (f *Fit) finish() error {
	h, _ := f.normal(f.Params)
	for i := range 3 {
		var unit [3]float64
		unit[i] = 1
		column, ok := h.solve(unit)
		if !ok {
			return refuse(Unsettled, "the weighings do not tell mass, water and speed apart: weigh on more days")
		}
		for k := range 3 {
			f.Covariance[k][i] = column[k]
		}
	}
	f.S = f.badness(f.Params)
	f.DataS = f.S - square((f.BG-f.lossG())/f.lossSDG()) - square((f.LnTau-f.Prior.LnTau)/f.Prior.LnTauSD)
	return nil
}

// lossG is B0, the prior's loss of the first weighing; lossSDG its sd.
func (f *Fit) lossG() float64   { return f.Prior.Loss * f.Weighings[0].G }
func (f *Fit) lossSDG() float64 { return f.Prior.LossSD * f.Weighings[0].G }

// badness is S.
func (f *Fit) badness(p Params) float64 {
	s := square((p.BG-f.lossG())/f.lossSDG()) + square((p.LnTau-f.Prior.LnTau)/f.Prior.LnTauSD)
	for _, w := range f.Weighings {
		s += square((w.G - f.mass(p, w.Day)) / f.SDG)
	}
	return s
}

// normal is H, and the direction downhill: half the gradient of S, turned about.
func (f *Fit) normal(p Params) (h matrix, down [3]float64) {
	vb, vu, v := square(f.lossSDG()), square(f.Prior.LnTauSD), square(f.SDG)
	h[1][1], h[2][2] = 1/vb, 1/vu
	down[1], down[2] = (f.lossG()-p.BG)/vb, (f.Prior.LnTau-p.LnTau)/vu
	tau := p.TauDays()
	for _, w := range f.Weighings {
		left, byLnTau := f.law.left(w.Day / tau)
		row := [3]float64{1, left - 1, p.BG * byLnTau}
		miss := w.G - p.AG + p.BG*(1-left)
		for i := range 3 {
			down[i] += row[i] * miss / v
			for k := range 3 {
				h[i][k] += row[i] * row[k] / v
			}
		}
	}
	return h, down
}

func largest(step [3]float64) float64 {
	return math.Max(math.Abs(step[0]), math.Max(math.Abs(step[1]), math.Abs(step[2])))
}

// matrix is symmetric and positive.
type matrix [3][3]float64

// solve returns x of m·x = b by Cholesky's way; ok is false where m is not positive.
func (m matrix) solve(b [3]float64) (x [3]float64, ok bool) {
	var l matrix
	for i := range 3 {
		for k := range i + 1 {
			sum := m[i][k]
			for j := range k {
				sum -= l[i][j] * l[k][j]
			}
			if i != k {
				l[i][k] = sum / l[k][k]
				continue
			}
			if !(sum > 0) || math.IsInf(sum, 0) {
				return x, false
			}
			l[i][i] = math.Sqrt(sum)
		}
	}
	for i := range 3 {
		x[i] = b[i]
		for k := range i {
			x[i] -= l[i][k] * x[k]
		}
		x[i] /= l[i][i]
	}
	for i := 2; i >= 0; i-- {
		for k := i + 1; k < 3; k++ {
			x[i] -= l[k][i] * x[k]
		}
		x[i] /= l[i][i]
	}
	return x, true
}
