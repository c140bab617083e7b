package cure

import (
	"cmp"
	"math"
	"slices"
)

// Weighing is what a bar weighed, or the mean of the same bars: the day from the cut, with its part of a day, and g.
type Weighing struct{ Day, G float64 }

// Params are the unknowns of the law m(t) = A - B·(1 - f(t/tau)): the mass at the cut, the water that will go, and ln tau, tau in days.
type Params struct{ AG, BG, LnTau float64 }

// TauDays is the time of the slowest mode.
func (p Params) TauDays() float64 { return math.Exp(p.LnTau) }

// Fit is the law fitted to weighings under a prior.
type Fit struct {
	Params
	Covariance [3][3]float64 // of A, B and ln tau
	S, DataS   float64       // what was made least, and the weighings' part of it
	Weighings  []Weighing    // by day; none: it is the prior alone
	SDG        float64       // of one of them
	Box        Box
	Prior      Prior
	Lumped     bool // the plain exponential, not the law of a box

	law law
}

// MeanSDG is the sd of the mean of that many bars (n ≥ 1) on a scale of that step, g: [WeighingSDG] of one on a scale of 0.1 g or finer, and on
// a coarser one what its rounding adds, a twelfth of its step squared (derived).
func MeanSDG(stepG float64, n int) float64 {
	rounds := math.Max(0, square(stepG)-square(usualStepG)) / 12
	return math.Sqrt((square(WeighingSDG) + rounds) / float64(max(1, n)))
}

// usualStepG is the scale that WeighingSDG is for.
const usualStepG = 0.1

// Of fits the law of a box to at least two weighings, each good to sdG, in any order. The error is a *[Refusal]; with [Misfit] the fit is
// returned beside it, to be looked at and not to be forecast from.
func Of(box Box, prior Prior, weighings []Weighing, sdG float64) (*Fit, error) {
	return fit(box, prior, weighings, sdG, box.law())
}

// Exponential offers the plain exponential instead, f = e^(-t/tau), as the air would rule it: only where the weighings follow it, else it
// is refused as [Of] refuses. On data that a box drying from inside made it is weeks early and falsely sure.
func Exponential(box Box, prior Prior, weighings []Weighing, sdG float64) (*Fit, error) {
	return fit(box, prior, weighings, sdG, law{lumped: true})
}

func fit(box Box, prior Prior, weighings []Weighing, sdG float64, l law) (*Fit, error) {
	if err := box.Check(); err != nil {
		return nil, err
	}
	if err := prior.check(); err != nil {
		return nil, err
	}
	ordered := slices.Clone(weighings)
	slices.SortStableFunc(ordered, func(a, b Weighing) int { return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.G, b.G)) })
	if err := checkWeighings(ordered, sdG); err != nil {
		return nil, err
	}
	f := &Fit{Weighings: ordered, SDG: sdG, Box: box, Prior: prior, Lumped: l.lumped, law: l}
	if err := f.settle(); err != nil {
		return nil, err
	}
	return f, f.Check()
}

// Forecast returns the prior alone as a fit: of a bar that weighs cutG at the cut and was not weighed since.
func Forecast(box Box, prior Prior, cutG float64) (*Fit, error) {
	if err := box.Check(); err != nil {
		return nil, err
	}
	if err := prior.check(); err != nil {
		return nil, err
	}
	if !(cutG > 0 && cutG < mostG) {
		return nil, refuse(BadFigure, "a bar of %.4g g: it must weigh something, up to %d g", cutG, mostG)
	}
	f := &Fit{Params: Params{cutG, prior.Loss * cutG, prior.LnTau}, Box: box, Prior: prior, law: box.law()}
	f.Covariance[1][1], f.Covariance[2][2] = square(prior.LossSD*cutG), square(prior.LnTauSD)
	return f, nil
}

// What a weighing may be.
const (
	mostG    = 1_000_000
	mostDays = 36525 // a century
)

// checkWeighings refuses what no law can be fitted to.
func checkWeighings(w []Weighing, sdG float64) error {
	if !(sdG > 0 && sdG < mostG) {
		return refuse(BadFigure, "weighings good to ± %.3g g: give more than 0", sdG)
	}
	for _, x := range w {
		if !(x.Day >= 0 && x.Day <= mostDays) || !(x.G > 0 && x.G < mostG) {
			return refuse(BadFigure, "%.5g g on day %.4g: a mass must be above 0 g and up to %d, and a day 0 or more from the cut", x.G, x.Day, mostG)
		}
	}
	if len(w) < 2 {
		return refuse(TooFew, "%d weighed so far; two weighings on different days are needed, better five in the first week", len(w))
	}
	if first, last := w[0], w[len(w)-1]; last.Day == first.Day {
		return refuse(NoSpread, "all %d weighings are of day %.4g; weigh again on another day", len(w), first.Day)
	}
	for _, x := range w[1:] {
		if x.G > w[0].G+3*sdG {
			return refuse(Rising, "%.5g g on day %.4g is more than the %.5g g of day %.4g: the room is damper than the bar, or other bars were weighed", x.G, x.Day, w[0].G, w[0].Day)
		}
	}
	return nil
}

func square(x float64) float64 { return x * x }
