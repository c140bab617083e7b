package learn

import (
	"bytes"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// lonely is the demo plan without its icing, and the built-in shelf.
func lonely(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t)
	plan.Icing = nil
	return plan, shelf
}

// meadow is the demo plan and the built-in shelf.
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

// maker pours a sheet on a clock of her own and marks what she sees.
type maker struct {
	testing.TB
	book logbook.Book
	from time.Time
	past time.Duration
	run  *live.Run
}

func (m *maker) clock() live.Moment {
	return live.Moment{Wall: m.from.Add(m.past), Steady: m.past, Of: "hers"}
}

// begins opens a pour of a sheet.
func begins(t testing.TB, book logbook.Book, sheet pour.Sheet, trial string, shelf pour.Shelf, from time.Time) *maker {
	t.Helper()
	m := &maker{TB: t, book: book, from: from}
	var err error
	m.run, err = live.Begin(book, sheet, trial, shelf, m.clock, "a")
	must(t, err)
	return m
}

// after marks something once a while has passed.
func (m *maker) after(d time.Duration, e logbook.Event) {
	m.Helper()
	m.past += d
	must(m, m.run.Mark(e))
}

// sees marks a stage of a jug of the base.
func (m *maker) sees(after time.Duration, jug string, stage chem.Stage) {
	m.Helper()
	m.after(after, logbook.Event{Kind: logbook.Seen, Batch: pour.Base, Jug: jug, Stage: stage})
}

// until finishes steps up to one, each as long as planned; nobody waits for lye to cool.
func (m *maker) until(key string) {
	m.Helper()
	for s := m.run.State(); s.Next < len(s.Steps); s = m.run.State() {
		step := s.Steps[s.Next]
		wait := time.Duration(step.LengthMin * float64(time.Minute))
		if step.Kind == pour.TaskCoolLye {
			wait = time.Minute
		}
		m.after(wait, logbook.Event{Kind: logbook.Done, Step: step.Key})
		if step.Key == key {
			return
		}
	}
	m.Fatalf("there is no step %q left", key)
}

// record is her pour as its file has it.
func (m *maker) record(shelf pour.Shelf) logbook.Pour {
	m.Helper()
	p, err := m.book.Read(m.run.ID, shelf)
	must(m, err)
	return p
}

func openTestBook(t testing.TB) logbook.Book {
	t.Helper()
	b, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	return b
}

// filled writes a number of pours into a book, a day apart, each with two stages seen in gentian.
func filled(t testing.TB, count int) (logbook.Book, pour.Shelf) {
	t.Helper()
	plan, shelf := lonely(t)
	sheet, book := pour.Work(plan, shelf, pour.Hand{}), openTestBook(t)
	for i := range count {
		m := begins(t, book, sheet, "", shelf, time.Date(2026, 12, 5+i, 10, 0, 0, 0, time.UTC))
		m.after(0, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)})
		m.after(2*time.Minute, logbook.Event{Kind: logbook.Done, Step: "base mix"})
		m.sees(2*time.Minute, "gentian", chem.Light)
		m.sees(5*time.Minute, "gentian", chem.Medium)
		m.after(time.Minute, logbook.Event{Kind: logbook.Ended})
	}
	return book, shelf
}

// journal appends an event to a pour from outside its run.
func journal(t testing.TB, book logbook.Book, id string, e logbook.Event) {
	t.Helper()
	_, _, err := book.Append(id, 0, e)
	must(t, err)
}
