package learn

import (
	"fmt"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// TrialResult is what a trial says of its scent.
type TrialResult struct {
	Scent     string
	Finding   Finding // from this trial and every other pour
	Behaviour string  // the word to put on the shelf: by its speed, or by what it did
	Rices     bool    // it riced or separated: to be marked so on the shelf
	Learnt    bool    // false: nothing that was seen tells its speed
}

// Trial reads a trial's events beside what all pours taught. The trial's own log is one of the lesson's.
func Trial(p logbook.Pour, lesson Lesson) (TrialResult, error) {
	if p.TrialScent == "" {
		return TrialResult{}, fmt.Errorf("read a scent trial: the pour %s is none", p.ID)
	}
	out := TrialResult{Scent: p.TrialScent, Behaviour: pour.BehaviourUnknown}
	for _, f := range lesson.Scents {
		if f.ID == p.TrialScent {
			out.Finding, out.Behaviour, out.Learnt = f, f.Behaviour, true
		}
	}
	standing := logbook.Standing(p.Events)
	for _, e := range standing {
		if e.Kind != logbook.Troubled || e.Jug != live.TrialScented || logbook.SplitAfter(standing, e) { // before the split no scent is in it
			continue
		}
		switch e.What {
		case logbook.Seizes:
			out.Behaviour = pour.BehaviourSeizes
		case logbook.Rices, logbook.Separates:
			out.Rices = true
		}
	}
	return out, nil
}
