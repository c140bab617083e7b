package learn

import (
	"fmt"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// Difference is one figure as planned and as it was.
type Difference struct {
	What            string // "base pour fern", "base batter", "medium in fern" …
	Unit            pour.Unit
	Planned, Actual pour.Figure
	Predicted       bool // planned is what the clock predicts, no finer than it deserves
}

// Compare sets the plan's figures beside what happened: when steps were done, stages came and how warm things were, what was
// weighed, and what a bar weighed when cut and cured. The sheet is that of the plan as poured, with times.
func Compare(p logbook.Pour, sheet pour.Sheet) []Difference {
	s := live.Replay(sheet, p.Events)
	var out []Difference
	for _, step := range s.Steps {
		d := Difference{What: step.Key, Unit: pour.UnitMinute, Planned: pour.Know(step.PlannedMin + step.LengthMin)}
		if at, ok := s.Elapsed(step.DoneAt); ok && step.Done {
			d.Actual = pour.Know(at.Minutes())
		}
		out = append(out, d)
	}
	out = append(out, stageDifferences(sheet, s)...)
	for _, e := range s.Marks {
		if d, ok := measured(sheet, e); ok {
			out = append(out, d)
		}
	}
	return out
}

func stageDifferences(sheet pour.Sheet, s live.State) []Difference {
	var out []Difference
	for _, x := range s.Sightings {
		d := Difference{What: fmt.Sprintf("%s in %s of the %s", x.Stage, x.Jug, x.Batch), Unit: pour.UnitMinute, Actual: pour.Know(x.Min), Predicted: true}
		if !x.Reached {
			d.What = "not yet " + d.What
		}
		for _, b := range sheet.Batches() {
			for _, j := range b.Jugs {
				if b.Name == x.Batch && j.Name == x.Jug && int(x.Stage) < chem.Stages {
					d.Planned = j.Clock.Stages[x.Stage].Mid
				}
			}
		}
		out = append(out, d)
	}
	return out
}

// measured sets a reading or a weight beside its plan.
func measured(sheet pour.Sheet, e logbook.Event) (Difference, bool) {
	d := Difference{Actual: pour.Know(e.Value), What: e.What, Unit: pour.UnitGram}
	switch e.Kind {
	case logbook.Read:
		d.What, d.Unit = string(e.Batch)+" "+e.What, pour.UnitCelsius
		d.Planned = plannedC(sheet, e)
	case logbook.Weighed:
		for _, w := range sheet.Totals {
			if w.Name == e.What {
				d.Planned = pour.AsFigure(w.G)
			}
		}
	case logbook.Cut:
		d.What, d.Planned = "a bar as cut", pour.AsFigure(sheet.Bars.CutG)
	case logbook.Cured:
		d.What, d.Planned = "a cured bar", pour.AsFigure(sheet.Bars.CuredG)
	default:
		return d, false
	}
	return d, true
}

func plannedC(sheet pour.Sheet, e logbook.Event) pour.Figure {
	plan := sheet.Plan.Batch(e.Batch)
	if plan == nil {
		return pour.Figure{}
	}
	switch e.What {
	case logbook.ReadOils:
		return pour.Know(plan.OilsC)
	case logbook.ReadLye:
		return pour.Know(plan.LyeC)
	}
	for _, b := range sheet.Batches() {
		if b.Name == e.Batch {
			return pour.AsFigure(b.Heat.MixC)
		}
	}
	return pour.Figure{}
}
