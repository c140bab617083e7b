package logbook

import (
	"bytes"
	"testing"
	"time"

	"pourbench/chem/clock"
	"pourbench/pour"
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
	return pour.Work(plan, shelf, clock.Hand{}), shelf
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

func openTestBook(t testing.TB) Book {
	t.Helper()
	b, err := OpenBook(t.TempDir())
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
