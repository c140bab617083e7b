package calendar

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"
)

// product names the program in every file; RFC 5545, 3.7.3.
const product = "-//pourbench//calendar 1//EN"

// hours is a date with a time of day and no zone; RFC 5545, 3.3.5, form 1.
const hours = "20060102T150405"

// Write writes entries as an iCalendar file, in their order. It refuses an empty list, since a calendar needs one component, and an entry
// that [Entry.Check] refuses or whose name another has; then nothing is written.
func Write(w io.Writer, entries []Entry) error {
	if len(entries) == 0 {
		return errors.New("write a calendar: there is nothing to write into it, and a calendar file without an entry is none")
	}
	if err := sound(entries); err != nil {
		return err
	}
	c := &ics.Calendar{}
	c.SetVersion("2.0")
	c.SetProductId(product)
	c.SetCalscale("GREGORIAN")
	for _, e := range entries {
		c.AddVEvent(event(e))
	}
	var lines strings.Builder
	// The library breaks lines between words, which is allowed, but others then drop the space; and it ends them as the system does.
	if err := c.SerializeTo(&lines, ics.WithLineLength(math.MaxInt), ics.WithNewLine(lineEnd)); err != nil {
		return fmt.Errorf("write a calendar: %w", err)
	}
	_, err := io.WriteString(w, fold(lines.String()))
	return err
}

// event is an entry as the library has it. The order of its lines is that in which they are set.
func event(e Entry) *ics.VEvent {
	v := ics.NewEvent(UID(e.Batch, e.Kind))
	v.SetDtStampTime(e.Revised)
	v.SetSequence(e.Sequence)
	if e.Cancelled {
		v.SetStatus(ics.ObjectStatusCancelled)
	}
	if e.AllDay {
		v.SetAllDayStartAt(e.Start)
		v.SetAllDayEndAt(e.End)
	} else {
		v.SetProperty(ics.ComponentPropertyDtStart, e.Start.Format(hours))
		v.SetProperty(ics.ComponentPropertyDtEnd, e.End.Format(hours))
	}
	v.SetSummary(e.What)
	if e.Words != "" {
		v.SetDescription(e.Words)
	}
	v.SetTimeTransparency(ics.TransparencyTransparent)
	if !e.Reminded || e.Cancelled {
		return v
	}
	remind(v, e.What, e.Remind)
	if before, ok := e.early(); ok {
		remind(v, e.What, before)
	}
	return v
}

// remind has the calendar speak up at a time from the start.
func remind(v *ics.VEvent, what string, from time.Duration) {
	a := v.AddAlarm()
	a.SetAction(ics.ActionDisplay)
	a.SetProperty(ics.ComponentPropertyDescription, what)
	a.SetTrigger(trigger(from))
}

// trigger writes a duration of whole minutes; RFC 5545, 3.3.6.
func trigger(d time.Duration) string {
	const day = 24 * time.Hour
	var b strings.Builder
	if d < 0 {
		b.WriteByte('-')
		d = -d
	}
	b.WriteByte('P')
	if d >= day {
		fmt.Fprintf(&b, "%dD", d/day)
		d %= day
		if d == 0 {
			return b.String()
		}
	}
	b.WriteByte('T')
	h, m := d/time.Hour, d%time.Hour/time.Minute
	if h > 0 {
		fmt.Fprintf(&b, "%dH", h)
	}
	if m > 0 || h == 0 {
		fmt.Fprintf(&b, "%dM", m)
	}
	return b.String()
}
