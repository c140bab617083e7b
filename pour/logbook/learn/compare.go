package learn

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// Difference is one figure as planned and as it was.
type Difference struct {
	What            string // "base pour, round 1 of 3", "base batter", "medium in fern" …
	Path            string // of the plan's figure or field, as `pourbench figures` and the plan's file name it; empty: there is none
	Unit            pour.Unit
	Planned, Actual pour.Figure
	Fine            bool      // a weight of the finer scale
	Predicted       bool      // planned is what the clock predicts, no finer than it deserves
	Before          []float64 // what was weighed of it before, in its unit, and does not count: it was weighed again
}

// Told draws one of its figures in a plan's units.
func (d Difference) Told(show pour.Show, f pour.Figure) string {
	return show.Figure(f, func(v float64) string {
		switch d.Unit {
		case pour.UnitMinute:
			return show.RunTime(v)
		case pour.UnitGram:
			if d.Fine {
				return show.Dose(v)
			}
			return show.Weight(v)
		case pour.UnitCelsius:
			return show.Temp(v)
		case pour.UnitPercent:
			return show.Percent(v, 1)
		}
		return show.Plain(v, d.Unit)
	})
}

// Compare sets the plan's figures beside what happened: when steps began, stages came and how warm things were, what was weighed, and what a bar weighed when cut and cured. The sheet is that of the plan as poured, with times.
func Compare(p logbook.Pour, sheet pour.Sheet) []Difference {
	s := live.Replay(sheet, p.Events)
	var out []Difference
	for _, step := range s.Steps {
		d := Difference{What: strings.TrimSpace(string(step.Batch) + " " + step.Name), Path: stepPath(&sheet, step.Step), Unit: pour.UnitMinute, Planned: pour.Know(step.PlannedMin)}
		if at, ok := s.Elapsed(s.Began(step)); ok && step.Done {
			d.Actual = pour.Know(at.Minutes())
		}
		out = append(out, d)
	}
	out = append(out, stageDifferences(sheet, s)...)
	for _, e := range s.Marks {
		if d, ok := measured(sheet, e); ok {
			for _, slip := range s.Again[e.ID] {
				d.Before = append(d.Before, slip.Value)
			}
			out = append(out, d)
		}
	}
	for _, f := range s.Superfats(&sheet) {
		out = append(out, Difference{What: string(f.Batch) + " superfat as weighed", Path: string(f.Batch) + ".superfat_as_weighed_percent", Unit: pour.UnitPercent, Planned: pour.AsFigure(f.PlannedPercent), Actual: pour.AsFigure(f.Percent)})
	}
	return append(out, cutDifferences(sheet, p.Events)...)
}

// cutDifferences sets the cut beside its plan, once it was begun: when its steps began, counted from when it did, and every piece's mass.
func cutDifferences(sheet pour.Sheet, events []logbook.Event) []Difference {
	s := live.ReplayCut(sheet, events)
	if _, begun := s.Elapsed(0); !begun {
		return nil
	}
	var out []Difference
	masses := live.Masses(&sheet, s.Marks)
	for _, step := range s.Steps {
		if slices.ContainsFunc(masses, func(m live.Mass) bool { return m.Step == step.Key }) {
			continue // what it weighed is told below
		}
		d := Difference{What: "the cut: " + step.Name, Path: cutStepPath(&sheet, step.Step), Unit: pour.UnitMinute, Planned: pour.Know(step.PlannedMin)}
		if at, _ := s.Elapsed(s.Began(step)); step.Done {
			d.Actual = pour.Know(at.Minutes())
		}
		out = append(out, d)
	}
	for _, m := range masses {
		out = append(out, Difference{What: m.Name + " as cut", Path: piecePath(m.Piece), Unit: pour.UnitGram, Planned: m.PlannedG, Actual: m.TrueG})
	}
	return out
}

func stageDifferences(sheet pour.Sheet, s live.State) []Difference {
	var out []Difference
	for _, x := range s.Sightings {
		d := Difference{What: fmt.Sprintf("%s in %s of the %s", x.Stage, x.Jug, x.Batch), Unit: pour.UnitMinute, Actual: pour.Know(x.Min), Predicted: true}
		if x.Whole {
			d.What = fmt.Sprintf("%s in all of the %s", x.Stage, x.Batch)
		}
		if !x.Reached {
			d.What = "not yet " + d.What
		}
		for _, b := range sheet.Batches() {
			for i, j := range b.Jugs {
				if b.Name == x.Batch && j.Name == x.Jug && int(x.Stage) < chem.Stages {
					d.Planned = j.Clock.Stages[x.Stage].Mid
					d.Path = fmt.Sprintf("%s.jugs[%d].stage_min.%s[1]", b.Name, i, x.Stage)
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
	if (e.Kind == logbook.Cut || e.Kind == logbook.Weighed) && e.Step != "" {
		return d, false // a piece of the cut, told with the others
	}
	switch e.Kind {
	case logbook.Read:
		d.What, d.Unit = string(e.Batch)+" "+e.What, pour.UnitCelsius
		d.Planned, d.Path = plannedC(sheet, e)
	case logbook.Weighed:
		d.What = strings.TrimSpace(strings.TrimSpace(string(e.Batch)+" "+e.Jug) + " " + e.What)
		if w, ok := weighing(sheet, e); ok {
			d.Planned, d.Fine, d.Path = pour.AsFigure(w.G), w.Fine(), weighingPath(&sheet, e.Batch, w)
		}
	case logbook.Cut:
		d.What, d.Path, d.Planned = "a bar as cut on "+e.Day(), "bars.cut_g", pour.AsFigure(sheet.Bars.CutG)
	case logbook.Cured:
		d.What, d.Path, d.Planned = "a cured bar on "+e.Day(), "bars.cured_g", pour.AsFigure(sheet.Bars.CuredG)
	default:
		return d, false
	}
	return d, true
}

// weighing is what the plan has of something that was weighed: for its batch and jug or, in logs that name none, for base and icing
// together.
func weighing(sheet pour.Sheet, e logbook.Event) (pour.Weighing, bool) {
	list := sheet.Totals
	if b := sheet.Batch(e.Batch); b != nil {
		list = b.Weighings()
	} else if e.Batch != "" {
		return pour.Weighing{}, false
	}
	for _, w := range list {
		if w.Name == e.What && w.Jug == e.Jug {
			return w, true
		}
	}
	return pour.Weighing{}, false
}

// plannedC is the planned temperature of what was read, and its path.
func plannedC(sheet pour.Sheet, e logbook.Event) (pour.Figure, string) {
	plan := sheet.Plan.Batch(e.Batch)
	if plan == nil {
		return pour.Figure{}, ""
	}
	at := string(e.Batch) + "."
	switch e.What {
	case logbook.ReadOils:
		return pour.Know(plan.OilsC), at + "oils_c"
	case logbook.ReadLye:
		return pour.Know(plan.LyeC), at + "lye_c"
	}
	for _, b := range sheet.Batches() {
		if b.Name == e.Batch {
			return pour.AsFigure(b.Heat.MixC), at + "mix_c"
		}
	}
	return pour.Figure{}, ""
}
