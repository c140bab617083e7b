package calendar_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-ical"
	"github.com/google/go-cmp/cmp"

	"pourbench/pour/calendar"
)

// sample is the worked example of the cure notes this package was made by: its text there has 1355 bytes with the sum below, every line of it
// held against RFC 5545 by hand (derived). It has a fold before an escaped newline, letters of two and three octets, a backslash, hours,
// days, and an entry that has moved.
const sample = `BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//pourbench//calendar 1//EN
CALSCALE:GREGORIAN
BEGIN:VEVENT
UID:d109ce27-5238-59b1-9e9c-f725c2009389
DTSTAMP:20261128T090000Z
SEQUENCE:0
DTSTART:20261206T040000
DTEND:20261206T100000
SUMMARY:Cut window: Alpine Meadow\, 261205A
DESCRIPTION:About a day after the pour\; cut one by one\, loaf on its side.
 \nKeep a thin slice\; note the café–blue swirl and the path C:\\batches
TRANSP:TRANSPARENT
BEGIN:VALARM
ACTION:DISPLAY
DESCRIPTION:Cut window: Alpine Meadow\, 261205A
TRIGGER:-PT1H
END:VALARM
END:VEVENT
BEGIN:VEVENT
UID:9bbf1498-8dd7-5e35-861f-48a43b3e53d5
DTSTAMP:20261128T090000Z
SEQUENCE:0
DTSTART;VALUE=DATE:20261213
DTEND;VALUE=DATE:20261214
SUMMARY:Weigh bars: Alpine Meadow\, 261205A
DESCRIPTION:Day 7 after the cut
TRANSP:TRANSPARENT
BEGIN:VALARM
ACTION:DISPLAY
DESCRIPTION:Weigh bars: Alpine Meadow\, 261205A
TRIGGER:PT9H
END:VALARM
END:VEVENT
BEGIN:VEVENT
UID:eca4454f-aa9b-5ee0-86d9-5365bdc69e32
DTSTAMP:20261214T183000Z
SEQUENCE:1
DTSTART;VALUE=DATE:20270103
DTEND;VALUE=DATE:20270104
SUMMARY:Ready (forecast): Alpine Meadow\, 261205A
DESCRIPTION:Loses less than 0.5 % a week\; band 30 Dec to 7 Jan
TRANSP:TRANSPARENT
BEGIN:VALARM
ACTION:DISPLAY
DESCRIPTION:Ready (forecast): Alpine Meadow\, 261205A
TRIGGER:PT9H
END:VALARM
END:VEVENT
END:VCALENDAR
`

// sampleSum is the SHA-256 sum that the notes state for it.
const sampleSum = "79fc6266ca12496aa8d61a9494180bafed051b5a49d289ecd91365f8758142a7"

const cutWords = "About a day after the pour; cut one by one, loaf on its side.\nKeep a thin slice; note the café–blue swirl and the path C:\\batches"

// sampleEntries is what the sample says.
func sampleEntries() []calendar.Entry {
	revised := time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC)
	return []calendar.Entry{
		{
			Batch: "261205A", Kind: "cut", What: "Cut window: Alpine Meadow, 261205A", Words: cutWords,
			Start: time.Date(2026, 12, 6, 4, 0, 0, 0, time.UTC), End: time.Date(2026, 12, 6, 10, 0, 0, 0, time.UTC),
			Reminded: true, Remind: -time.Hour, Revised: revised,
		},
		{
			Batch: "261205A", Kind: "weigh-1", What: "Weigh bars: Alpine Meadow, 261205A", Words: "Day 7 after the cut",
			Start: midnight(2026, 12, 13), End: midnight(2026, 12, 14), AllDay: true, Reminded: true, Remind: 9 * time.Hour, Revised: revised,
		},
		{
			Batch: "261205A", Kind: "ready", What: "Ready (forecast): Alpine Meadow, 261205A", Words: "Loses less than 0.5 % a week; band 30 Dec to 7 Jan",
			Start: midnight(2027, 1, 3), End: midnight(2027, 1, 4), AllDay: true, Reminded: true, Remind: 9 * time.Hour,
			Revised: time.Date(2026, 12, 14, 19, 30, 0, 0, time.FixedZone("CET", 3600)), Sequence: 1,
		},
	}
}

func TestTheSampleIsWrittenToTheByte(t *testing.T) {
	want := strings.ReplaceAll(sample, "\n", "\r\n")
	sum := sha256.Sum256([]byte(want))
	if got := hex.EncodeToString(sum[:]); len(want) != 1355 || got != sampleSum {
		t.Fatalf("the sample here has %d bytes and the sum %s: it was copied wrongly", len(want), got)
	}
	if d := cmp.Diff(want, write(t, sampleEntries())); d != "" {
		t.Error(d)
	}
}

// write is the text of a calendar.
func write(t interface {
	Helper()
	Fatal(args ...any)
}, entries []calendar.Entry,
) string {
	t.Helper()
	var out bytes.Buffer
	if err := calendar.Write(&out, entries); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestASecondLibraryReadsWhatTheSampleSays(t *testing.T) {
	cal, err := ical.NewDecoder(strings.NewReader(write(t, sampleEntries()))).Decode()
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(sampleEntries(), readBack(t, cal, "261205A", "cut", "weigh-1", "ready"), cmp.Comparer(time.Time.Equal)); d != "" {
		t.Error(d)
	}
}

func TestACancelledEntryKeepsItsNameAndStaysSilent(t *testing.T) {
	gone := sampleEntries()[0]
	gone.Cancelled, gone.Sequence = true, 1
	text := write(t, []calendar.Entry{gone})
	for _, want := range []string{"UID:d109ce27-5238-59b1-9e9c-f725c2009389\r\n", "SEQUENCE:1\r\n", "STATUS:CANCELLED\r\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in:\n%s", want, text)
		}
	}
	if strings.Contains(text, "VALARM") {
		t.Errorf("it reminds of what does not take place:\n%s", text)
	}
}

func TestAnEmptyCalendarIsRefused(t *testing.T) {
	var out bytes.Buffer
	if err := calendar.Write(&out, nil); err == nil || out.Len() > 0 { // RFC 5545, 3.6: at least one component
		t.Errorf("%v, and %q was written", err, out.String())
	}
}
