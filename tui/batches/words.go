package batches

import (
	"fmt"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// dayOf is the day of an event.
func dayOf(e logbook.Event) day.Day {
	at, _ := e.When()
	return day.Of(at)
}

// words is what an event says, in words.
func (m *Model) words(e logbook.Event) string { return life.Tell(e, m.show()) }

// show is how masses are shown: as the chosen batch's plan has it, once its file was read.
func (m *Model) show() pour.Show {
	if s := m.detail.Plan.Show; s.ScaleStepG > 0 {
		return s
	}
	return pour.Metric()
}

// ago says how long ago a day was, or how far it is.
func ago(d, today day.Day) string {
	switch n := int(today - d); {
	case n == 0:
		return "today"
	case n == 1:
		return "yesterday"
	case n > 1:
		return fmt.Sprintf("%d days ago", n)
	case n == -1:
		return "tomorrow"
	default:
		return fmt.Sprintf("in %d days", -n)
	}
}

// kindOf is a kind of event by its name in a file.
func kindOf(name string) logbook.EventKind { return logbook.EventKind(name) }
