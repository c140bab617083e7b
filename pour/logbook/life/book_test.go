package life_test

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
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

// pouredAt is when lye met oil in the pours of these tests.
func pouredAt() time.Time { return time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC) }

// date is a calendar day.
func date(month time.Month, n int) day.Day {
	year := 2026
	if month < time.June {
		year++
	}
	return day.Of(time.Date(year, month, n, 0, 0, 0, 0, time.UTC))
}

// at is ten in the morning of a day.
func at(month time.Month, n int) time.Time { return date(month, n).At(10, 0, time.UTC) }

// bench is a book with one pour that went to bed on 5 December 2026.
type bench struct {
	testing.TB
	book  logbook.Book
	id    string
	shelf pour.Shelf
	plan  pour.Plan
}

func newBench(t testing.TB) *bench {
	t.Helper()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	b := &bench{t, book, "", shelf, plan}
	b.pours()
	return b
}

// pours begins another pour of the same plan.
func (b *bench) pours() {
	b.Helper()
	var err error
	b.id, err = b.book.Create(b.plan, "", pouredAt(), poured())
	must(b, err)
}

// poured are the marks of a run that is over.
func poured() []logbook.Event {
	mark := func(min int, e logbook.Event) logbook.Event {
		e.Run = time.Duration(min) * time.Minute
		e.Wall, e.Steady, e.Of, e.ID = pouredAt().Add(e.Run), e.Run, "one", fmt.Sprintf("p%d", min)
		return e
	}
	return []logbook.Event{
		mark(0, logbook.Event{Kind: logbook.Opened}), mark(1, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)}), mark(50, logbook.Event{Kind: logbook.Ended}),
	}
}

// logs logs an event at a moment and gives what came of it.
func (b *bench) logs(at time.Time, e logbook.Event) life.Logged {
	b.Helper()
	out, err := life.Log(b.book, b.shelf, b.id, e, at, "t1")
	if err != nil {
		b.Fatalf("%s at %s: %v", e.Kind, at, err)
	}
	return out
}

// refuses logs what cannot be.
func (b *bench) refuses(at time.Time, e logbook.Event) string {
	b.Helper()
	_, err := life.Log(b.book, b.shelf, b.id, e, at, "t1")
	if err == nil {
		b.Fatalf("%+v was logged", e)
	}
	return err.Error()
}

// on is the batch on a day, as its file has it.
func (b *bench) on(d day.Day) life.Batch {
	b.Helper()
	p, err := b.book.Read(b.id, b.shelf)
	must(b, err)
	return life.Of(p, b.shelf, pour.Hand{}, d)
}

func count(k logbook.EventKind, n int) logbook.Event {
	return logbook.Event{Kind: k, Life: logbook.Life{Count: n}}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
