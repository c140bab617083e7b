// Package again pours a design once more: a new plan of a pour in the logbook, what really happened beside each figure of it, and the changes
// that the logbook suggests. It also sets two plans side by side. It works no figure of a plan out; it reads sheets and logs, and tries edits.
package again

import (
	"fmt"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/logbook/live"
)

// Past is a pour that is looked back on.
type Past struct {
	Pour  logbook.Pour
	Sheet pour.Sheet // of its plan as poured, with the times of the models alone: what a maker without logs was told

	state    live.State
	standing []logbook.Event
	weighIns []life.WeighIn
	drying   life.Drying
}

// Of looks back on a pour. A pour whose plan today's shelf cannot use, or that was a trial of a scent, is refused with what helps.
// The hand says what her own batches taught of the rack.
func Of(p logbook.Pour, shelf pour.Shelf, h pour.Hand) (Past, error) {
	if err := usable(p); err != nil {
		return Past{}, err
	}
	sheet := pour.Work(p.Plan, shelf, pour.Hand{})
	return look(p, sheet, shelf, h), nil
}

// Seen looks back on a pour for what it has in common with others: its sheet has no times of the clock. What cannot be used is passed over.
func Seen(pours []logbook.Pour, shelf pour.Shelf) []Past {
	var out []Past
	for _, p := range pours {
		if usable(p) == nil && !logbook.IsLeftOut(logbook.Standing(p.Events)) {
			out = append(out, look(p, pour.Weigh(p.Plan, shelf), shelf, pour.Hand{}))
		}
	}
	return out
}

func look(p logbook.Pour, sheet pour.Sheet, shelf pour.Shelf, h pour.Hand) Past {
	batch := life.Of(p, shelf, h, day.Of(p.Opened))
	return Past{
		Pour: p, Sheet: sheet, state: live.Replay(sheet, p.Events), standing: logbook.Standing(p.Events), weighIns: batch.WeighIns,
		drying: life.Dry(&sheet, batch.WeighIns, h.Rack),
	}
}

func usable(p logbook.Pour) error {
	switch {
	case p.PlanErr != nil:
		return fmt.Errorf("pour %s again: its plan cannot be used with today's shelf; put what it names back on your own shelf file, under its old id: %w", p.ID, p.PlanErr)
	case p.TrialScent != "" || p.Plan.Trial:
		return fmt.Errorf("pour %s again: it was a trial of %s in two small jugs, and no loaf was poured; open the plan itself and pour that", p.ID, p.TrialScent)
	}
	return nil
}

// Plan is the new plan that pours it again: all of it as it was poured, but for its moment, the mark of a template and its name, which says that it
// is poured again. It knows its pour.
func (p Past) Plan() pour.Plan {
	plan := pour.FromTemplate(p.Pour.Plan)
	plan.Name, plan.AgainOf = pour.NameAgain(plan.Name), p.Pour.ID
	return plan
}

// lyeIn is when the base's lye met its oils, by the wall clock.
func (p Past) lyeIn() (time.Time, bool) {
	for _, e := range p.standing {
		if e.Kind == logbook.Done && e.Step == logbook.LyeIn(pour.Base) {
			return e.Wall, true
		}
	}
	return time.Time{}, false
}

// cutAt is when the loaf was cut: by the day it was logged for, else by the first piece that was weighed.
func (p Past) cutAt() (at time.Time, ok bool) {
	for _, e := range p.standing {
		if e.Kind == logbook.Sliced || e.Kind == logbook.Cut {
			at, _ = e.When()
			return at, true
		}
	}
	return at, false
}
