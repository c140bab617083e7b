package live

import (
	"bytes"
	"errors"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// example gives an example plan and the built-in shelf.
func example(t testing.TB, name string) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(name)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read(name, bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	return plan, shelf
}

// lonely is the demo plan without its icing.
func lonely(t testing.TB) (pour.Sheet, pour.Shelf) {
	t.Helper()
	plan, shelf := example(t, "alpine-meadow")
	plan.Icing = nil
	return pour.Work(plan, shelf, pour.Hand{}), shelf
}

// wallClock is a clock of a test: a laptop at a moment of its life.
type wallClock struct {
	wall   time.Time
	steady time.Duration
	of     string
	sleeps bool
}

func newClock() *wallClock {
	return &wallClock{wall: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), of: "one", sleeps: true}
}

func (c *wallClock) now() Moment {
	return Moment{Wall: c.wall, Steady: c.steady, Of: c.of, Sleeps: c.sleeps}
}

// pass lets time go by.
func (c *wallClock) pass(d time.Duration) {
	c.wall, c.steady = c.wall.Add(d), c.steady+d
}

// sleep lets time go by for the wall clock alone.
func (c *wallClock) sleep(d time.Duration) { c.wall = c.wall.Add(d) }

func mustRun(t testing.TB, r *Run, err error) *Run {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func openTestBook(t testing.TB) logbook.Book {
	t.Helper()
	b, err := logbook.OpenBook(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// The marks a maker makes, on a run with a file and on one without.
func (r *Run) next() error { return r.act(Live.next) }

func (r *Run) stage(jug string, stage chem.Stage) error {
	return r.Mark(logbook.Event{Kind: logbook.Seen, Batch: pour.Base, Jug: jug, Stage: stage})
}

func (r *Run) note(jug, text string) error {
	return r.Mark(logbook.Event{Kind: logbook.Noted, Batch: pour.Base, Jug: jug, Text: text})
}

func (l Live) next(m Moment) (Live, []logbook.Event, error) {
	s := l.State()
	if s.Next >= len(s.Steps) {
		return l, nil, errors.New("every step is done")
	}
	return l.Do(s.Steps[s.Next].Key, m)
}

func (l Live) stage(n pour.BatchName, jug string, stage chem.Stage, m Moment) (Live, []logbook.Event, error) {
	return l.Mark(logbook.Event{Kind: logbook.Seen, Batch: n, Jug: jug, Stage: stage}, m)
}

func BenchmarkBoard(b *testing.B) {
	sheet, shelf := lonely(b)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	live, _, _ = live.Do("base lye in", c.now())
	o := live.Outlook(shelf, pour.Hand{})
	for b.Loop() {
		live.Board(o)
	}
}

func BenchmarkOutlook(b *testing.B) {
	sheet, shelf := lonely(b)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	live, _, _ = live.Do("base lye in", c.now())
	for b.Loop() {
		live.Outlook(shelf, pour.Hand{})
	}
}
