package drying

import (
	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// curveSteps is how many straight pieces the curve is drawn in; they are shorter at the start, where it bends.
const curveSteps = 90

// Of is the plot of a batch on a day: what was weighed of it, and the law where its weighings follow it or nothing but a forecast is there yet.
// It costs some hundred masses of the fit: make it once for what is shown.
func Of(b life.Batch, d life.Drying, show pour.Show, today day.Day) Plot {
	p := Plot{Name: b.Name, Show: show, Cut: CutDay(b)}
	if since := today - p.Cut; since >= 0 {
		p.Today = pour.Know(float64(since))
	}
	for _, w := range d.Means {
		p.Points = append(p.Points, Point{w.Day, w.G})
	}
	if d.Why != nil {
		p.Why = d.Tell()
		return p
	}
	if d.Known {
		p.Ready = ReadyOn(d.Ready)
	}
	if d.Fit != nil {
		p = p.Fitted(d.Fit)
	}
	return p
}

// CutDay is the day that the days of a batch's cure count from: that of its cut, or of the cut as planned while it is not cut.
func CutDay(b life.Batch) day.Day {
	if b.CutDay != nil {
		return *b.CutDay
	}
	return b.Course.CutDay()
}

// Fitted returns the plot with the curve of a fit.
func (p Plot) Fitted(fit *cure.Fit) Plot {
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

// ReadyOn is a ready day as the plot has it: no band begins before the cut.
func ReadyOn(e cure.Estimate) Ready { return Ready{true, e.V, max(e.Low(), 0), e.High()} }
