package logbook

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// meadow gives the demo plan and the built-in shelf.
func meadow(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	must(t, err)
	text, err := presets.Plan("alpine-meadow")
	must(t, err)
	plan, err := planfile.Read("alpine-meadow", bytes.NewReader(text), shelf)
	must(t, err)
	return plan, shelf
}

// opened is when the first pour of the tests was opened.
func opened() time.Time { return time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC) }

// course stamps events with ids and with the minute of a pour at which each happened.
type course struct {
	from   time.Time
	events []Event
}

func (c *course) mark(min float64, e Event) {
	e.Run = time.Duration(min * float64(time.Minute))
	e.Wall, e.Steady, e.Of = c.from.Add(e.Run), e.Run, "one"
	e.ID = fmt.Sprintf("e%d", len(c.events))
	c.events = append(c.events, e)
}

// aPour is one pour of a folder of its own: opened, its lye in and, at 4 minutes, a stage seen.
func aPour(t testing.TB) (Book, string, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	book := openTestBook(t)
	c := course{from: opened()}
	c.mark(0, Event{Kind: Opened})
	c.mark(1, Event{Kind: Done, Step: LyeIn(pour.Base)})
	c.mark(4, Event{Kind: Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Light})
	id, err := book.Create(plan, "", c.from, c.events)
	must(t, err)
	return book, id, shelf
}

func openTestBook(t testing.TB) Book {
	t.Helper()
	b, err := OpenBook(t.TempDir())
	must(t, err)
	return b
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
