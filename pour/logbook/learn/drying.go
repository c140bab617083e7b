package learn

import (
	"cmp"
	"slices"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// Drying is what one batch says of how bars dry.
type Drying struct {
	Pour      string // id of the pour; empty: no bar of it was weighed twice
	Weighings int    // of the same bars
	Bars      int
	TauDays   float64
	LossG     float64 // that will go from a bar, of what it weighed first
	FirstG    float64
	Said      cure.Said // without any prior
	Why       string    // why it teaches nothing, or not yet; empty: it does
}

// dryingOf is what a pour says of how bars dry, by nothing but its own weighings. A pour that is left out says nothing.
func dryingOf(p logbook.Pour, shelf pour.Shelf) Drying {
	if p.PlanErr != nil || logbook.IsLeftOut(logbook.Standing(p.Events)) {
		return Drying{}
	}
	d := life.DryingOf(p, shelf, cure.Rack{})
	out := Drying{Pour: p.ID, Weighings: len(d.Means), Bars: len(d.Bars)}
	switch {
	case !d.Weighed && (d.Why == nil || len(d.Means) == 0):
		return Drying{}
	case d.Why != nil:
		out.Why = d.Why.Error()
		return out
	}
	out.TauDays, out.LossG, out.FirstG = d.Fit.TauDays(), d.Fit.BG, d.Means[0].G
	out.Said = d.Fit.Says(d.Bar.CutMoisture)
	out.Said.Batch = p.ID
	if !out.Said.LnD.Known() && !out.Said.Moisture.Known() {
		out.Why = "too few weighings, or over too few days, to say more than was known: weigh on until the loss of a week is small"
	}
	return out
}

// rack takes what batches said of drying into the lesson.
func (l *Lesson) rack(all []Drying) {
	var said []cure.Said
	for _, d := range all {
		if d.Pour == "" {
			continue
		}
		l.Dried = append(l.Dried, d)
		if d.Why == "" {
			said = append(said, d.Said)
		}
	}
	slices.SortFunc(l.Dried, func(a, b Drying) int { return cmp.Compare(a.Pour, b.Pour) })
	l.Rack = cure.Learn(said)
}
