package cure

import (
	"cmp"
	"math"
	"slices"
)

// Spread is how a ready day is spread: its mean, sd and tenths.
type Spread struct{ Mean, SD, P10, P50, P90 float64 }

// The grid that the posterior is summed on: so many steps of ln tau, so many sd either way.
const (
	gridSteps = 400
	gridSDs   = 5
)

// gaussHermite are the nodes, in sd, and weights of five points for a normal distribution: 0 and ±√(5 ∓ √10); 8/15 and (7 ± 2√10)/60.
func gaussHermite() [5][2]float64 {
	near, far, root := math.Sqrt(5-math.Sqrt(10)), math.Sqrt(5+math.Sqrt(10)), math.Sqrt(10)
	heavy, light := (7+2*root)/60, (7-2*root)/60
	return [5][2]float64{{-far, light}, {-near, heavy}, {0, 8. / 15}, {near, heavy}, {far, light}}
}

// Posterior returns how the ready day is spread without taking it for normal: for every ln tau of a grid A and B are normal, weighted by
// exp(-S/2)/√det H, B on five nodes and A moved along with it. It is skewed to late. It costs some thousand ready days.
func (f *Fit) Posterior(criterionPercent float64) (Spread, error) {
	if err := checkCriterion(criterionPercent); err != nil {
		return Spread{}, err
	}
	type part struct{ day, weight float64 }
	parts := make([]part, 0, (gridSteps+1)*5)
	nodes := gaussHermite()
	least := math.Inf(1)
	var given [gridSteps + 1]linear
	for k := range given {
		given[k] = f.given(f.Prior.LnTau + f.Prior.LnTauSD*(2*gridSDs*float64(k)/gridSteps-gridSDs))
		least = math.Min(least, given[k].s)
	}
	for _, g := range given {
		weight := math.Exp(-(g.s-least)/2) / math.Sqrt(g.det)
		if weight < 1e-14 { // of the sum, which is near 1
			continue
		}
		for _, node := range nodes {
			p := g.Params
			p.BG += node[0] * g.sdB
			p.AG += node[0] * g.sdB * g.slope
			parts = append(parts, part{f.ready(p, criterionPercent), weight * node[1]})
		}
	}
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(a.day, b.day) })
	all, mean, squares := 0.0, 0.0, 0.0
	for _, p := range parts {
		all += p.weight
		mean += p.weight * p.day
	}
	mean /= all
	for _, p := range parts {
		squares += p.weight * square(p.day-mean)
	}
	out, run := Spread{Mean: mean, SD: math.Sqrt(squares / all)}, 0.0
	tenths := []struct {
		at *float64
		of float64
	}{{&out.P10, 0.1}, {&out.P50, 0.5}, {&out.P90, 0.9}}
	for _, p := range parts {
		for run += p.weight / all; len(tenths) > 0 && run >= tenths[0].of; tenths = tenths[1:] {
			*tenths[0].at = p.day
		}
	}
	return out, nil
}

// linear is what A and B are for a given ln tau, where the rest is linear.
type linear struct {
	Params
	s, det     float64 // S there, and the determinant of H without its row of ln tau
	sdB, slope float64 // of B, and how A goes with it
}

func (f *Fit) given(lnTau float64) linear {
	if len(f.Weighings) == 0 {
		return linear{Params: Params{f.AG, f.BG, lnTau}, s: square((lnTau - f.Prior.LnTau) / f.Prior.LnTauSD), det: 1, sdB: math.Sqrt(f.Covariance[1][1])}
	}
	h, down := f.normal(Params{LnTau: lnTau}) // from A and B of 0 the step is the solution
	det := h[0][0]*h[1][1] - h[0][1]*h[1][0]
	p := Params{(h[1][1]*down[0] - h[0][1]*down[1]) / det, (h[0][0]*down[1] - h[0][1]*down[0]) / det, lnTau}
	return linear{Params: p, s: f.badness(p), det: det, sdB: math.Sqrt(h[0][0] / det), slope: -h[0][1] / h[0][0]}
}
