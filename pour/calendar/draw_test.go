package calendar_test

import (
	"fmt"
	"strings"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour/calendar"
	"pourbench/pour/plain"
)

// midnight is how a day is kept in an entry.
func midnight(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

// letters are what a maker may write: of one to four octets, and all that iCalendar escapes or takes for a sign of its own.
var letters = []rune("aeinN 019;,:\\\"=-–é°ß漢🧼")

// drawText draws text that is safe to show, with newlines where it is of several lines.
func drawText(t *rapid.T, label string, lines bool) string {
	from := letters
	if lines {
		from = append([]rune{'\n'}, letters...)
	}
	n := rapid.SampledFrom([]int{0, 1, 20, 70, 150, 300}).Draw(t, label+" letters")
	s := string(rapid.SliceOfN(rapid.SampledFrom(from), n, n+10).Draw(t, label))
	if lines {
		return plain.Text(s)
	}
	return plain.Line(strings.TrimSpace("x" + s))
}

// drawEntry draws an entry that can be written.
func drawEntry(t *rapid.T, batch, kind string) calendar.Entry {
	minutes := func(label string, low, high int) time.Duration {
		return time.Duration(rapid.IntRange(low, high).Draw(t, label)) * time.Minute
	}
	e := calendar.Entry{
		Batch: batch, Kind: kind, What: drawText(t, "what", false), Words: drawText(t, "words", true),
		AllDay: rapid.Bool().Draw(t, "all day"), Reminded: rapid.Bool().Draw(t, "reminded"), Sequence: rapid.IntRange(0, 1<<31-1).Draw(t, "sequence"),
	}
	day := midnight(2026, 12, rapid.IntRange(1, 400).Draw(t, "day"))
	e.Start, e.End = day, day.AddDate(0, 0, rapid.IntRange(1, 9).Draw(t, "days"))
	if !e.AllDay {
		e.Start = day.Add(minutes("start", 0, 1439))
		e.End = e.Start.Add(minutes("length", 1, 5000))
	}
	if e.Reminded {
		e.Remind = minutes("remind", -5000, 5000)
	}
	e.Revised = day.AddDate(0, 0, -40).Add(minutes("revised", 0, 1439))
	return e
}

// drawEntries draws entries of one batch, each of a kind of its own, and lists the kinds.
func drawEntries(t *rapid.T, batch string) (entries []calendar.Entry, kinds []string) {
	for i := range rapid.IntRange(1, 5).Draw(t, "entries") {
		kind := fmt.Sprintf("kind-%d", i)
		entries, kinds = append(entries, drawEntry(t, batch, kind)), append(kinds, kind)
	}
	return entries, kinds
}
