package calendar

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/day"
)

// List is entries in lines, to be read on a screen or a printer. Of days before today it has what still holds everything up: a loaf that is
// not out of its mould or not cut.
func List(entries []Entry, today day.Day) string {
	const hour = "15:04"
	var b strings.Builder
	entries = slices.Clone(entries)
	byDate(entries)
	for _, e := range entries {
		late := ""
		if !e.End.After(midnightOf(today)) {
			if e.Done || e.Kind != kindUnmould && e.Kind != kindCut {
				continue
			}
			late = ", not done"
		}
		hours := ""
		if !e.AllDay {
			hours = e.Start.Format(hour) + " to " + e.End.Format(hour)
		}
		fmt.Fprintf(&b, "%s  %-14s %s%s\n", e.Start.Format("Mon 2006-01-02"), hours, e.What, late)
	}
	return b.String()
}

// Told counts what becomes of entries in a calendar that reads them.
type Told struct {
	Entries   int // in all
	New       int // with number 0
	Moved     int // whose dates have moved since they were first told, or came back
	Cancelled int
}

// Count tells what was handed out.
func Count(entries []Entry) Told {
	t := Told{Entries: len(entries)}
	for _, e := range entries {
		switch {
		case e.Cancelled:
			t.Cancelled++
		case e.Sequence > 0:
			t.Moved++
		default:
			t.New++
		}
	}
	return t
}
