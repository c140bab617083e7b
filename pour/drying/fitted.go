package drying

import (
	"pourbench/chem/cure"
)

// curveSteps is how many straight pieces the curve is drawn in; they are shorter at the start, where it bends.
const curveSteps = 90

// Fitted returns the plot with the curve of a fit and, where it has none of its own, the fit's weighings.
func (p Plot) Fitted(fit *cure.Fit) Plot {
	if len(p.Points) == 0 {
		for _, w := range fit.Weighings {
			p.Points = append(p.Points, Point{w.Day, w.G})
		}
	}
	p = p.Sound()
	p.Curve = nil
	last := p.reach()
	for i := range curveSteps + 1 {
		part := float64(i) / curveSteps
		m := fit.Mass(last * part * part)
		p.Curve = append(p.Curve, Span{last * part * part, m.V, m.Low(), m.High()})
	}
	return p
}

// ReadyOn is a ready day as the plot has it.
func ReadyOn(e cure.Estimate) Ready { return Ready{true, e.V, max(e.Low(), 0), e.High()} }
