package calendar_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"pourbench/pour/calendar"
)

func TestWhatNoCalendarCanHoldIsRefusedWhole(t *testing.T) {
	for _, c := range []struct {
		name string
		bend func(*calendar.Entry)
		says string
	}{
		{"no batch", func(e *calendar.Entry) { e.Batch = "" }, "needs a batch"},
		{"no kind", func(e *calendar.Entry) { e.Kind = "" }, "needs a batch"},
		{"a kind with a slash", func(e *calendar.Entry) { e.Kind = "a/b" }, "slash"},
		{"a zone", func(e *calendar.Entry) { e.Start = e.Start.In(time.FixedZone("CET", 3600)) }, "without a zone"},
		{"no words", func(e *calendar.Entry) { e.What = "" }, "says nothing"},
		{"two lines", func(e *calendar.Entry) { e.What = "one\ntwo" }, "cannot be shown"},
		{"a line that injects", func(e *calendar.Entry) { e.Words = "x\r\nEND:VCALENDAR" }, "cannot be shown"},
		{"a broken letter", func(e *calendar.Entry) { e.Words = "\xff" }, "cannot be shown"},
		{"the year 0", func(e *calendar.Entry) { e.Start = midnight(0, 1, 1) }, "years"},
		{"the year 10000", func(e *calendar.Entry) { e.End = midnight(10000, 1, 1) }, "years"},
		{"revised never", func(e *calendar.Entry) { e.Revised = midnight(0, 1, 1) }, "years"},
		{"no length", func(e *calendar.Entry) { e.End = e.Start }, "end after"},
		{"backwards", func(e *calendar.Entry) { e.Start, e.End = e.End, e.Start }, "end after"},
		{"half a second", func(e *calendar.Entry) { e.Start = e.Start.Add(time.Second / 2) }, "parts of a second"},
		{"days from noon", func(e *calendar.Entry) { e.AllDay = true }, "midnight"},
		{"a reminder of seconds", func(e *calendar.Entry) { e.Remind = time.Second }, "whole minute"},
		{"below nothing", func(e *calendar.Entry) { e.Sequence = -1 }, "sequence"},
		{"a second of the name", func(e *calendar.Entry) { e.Kind = "ready" }, "there twice"},
		{"above an integer", func(e *calendar.Entry) { e.Sequence = 1 << 31 }, "sequence"},
	} {
		entries := sampleEntries()
		c.bend(&entries[0])
		var out bytes.Buffer
		err := calendar.Write(&out, entries)
		if err == nil || !strings.Contains(err.Error(), c.says) || out.Len() > 0 {
			t.Errorf("%s: %v, %d bytes written", c.name, err, out.Len())
		}
	}
}
