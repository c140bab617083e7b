package calendar

import (
	"fmt"
	"strings"

	"pourbench/pour/day"
)

// List is entries in lines, those of days before today left out: what Write hands on, to be read on a screen or a printer.
func List(entries []Entry, today day.Day) string {
	const hour = "15:04"
	var b strings.Builder
	for _, e := range entries {
		if !e.End.After(midnightOf(today)) {
			continue
		}
		hours := ""
		if !e.AllDay {
			hours = e.Start.Format(hour) + " to " + e.End.Format(hour)
		}
		fmt.Fprintf(&b, "%s  %-14s %s\n", e.Start.Format("Mon 2006-01-02"), hours, e.What)
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
