package logbook_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/logbook"
)

// A correction stands in the place of what it corrects, the later one of two; taken back, it corrects nothing.
func TestACorrectionStandsForWhatItCorrects(t *testing.T) {
	at := func(min int) time.Time { return time.Date(2026, 12, 6, 10, min, 0, 0, time.UTC) }
	first := logbook.Event{ID: "a", Kind: logbook.WeighIn, Wall: at(0), Life: logbook.Life{MassesG: []float64{125}}}
	better := logbook.Event{ID: "b", Kind: logbook.WeighIn, Wall: at(1), Corrects: "a", Life: logbook.Life{MassesG: []float64{152}}}
	best := logbook.Event{ID: "c", Kind: logbook.WeighIn, Wall: at(2), Corrects: "a", Life: logbook.Life{MassesG: []float64{125.2}}}
	other := logbook.Event{ID: "d", Kind: logbook.Kept, Wall: at(3), Life: logbook.Life{Count: 1}}
	back := logbook.Event{ID: "e", Kind: logbook.TakenBack, Wall: at(4), What: "c"}
	chained, backOfB := best, back
	chained.Corrects, backOfB.What = "b", "b"
	ring, ringed := first, better
	ring.Corrects, ringed.Corrects = "b", "a"
	early := chained
	early.Wall = at(-9) // of a machine whose clock is late
	for _, c := range []struct {
		name  string
		given []logbook.Event
		want  string
	}{
		{"alone", []logbook.Event{first, other}, "ad"},
		{"corrected", []logbook.Event{first, better, other}, "bd"},
		{"twice", []logbook.Event{first, better, best, other}, "cd"},
		{"the later one came first", []logbook.Event{best, other, better, first}, "cd"},
		{"taken back", []logbook.Event{first, better, best, other, back}, "bd"},
		{"a chain", []logbook.Event{first, better, chained, other}, "cd"},
		{"a chain in any order", []logbook.Event{chained, other, first, better}, "cd"},
		{"a chain of a late clock", []logbook.Event{first, better, early, other}, "cd"},
		{"a chain without its middle", []logbook.Event{first, better, chained, other, backOfB}, "cd"},
		{"a ring", []logbook.Event{ring, ringed, other}, "bd"},
		{"what is corrected is gone", []logbook.Event{better, other}, "bd"},
	} {
		got := ""
		for _, e := range logbook.Standing(c.given) {
			got += e.ID
		}
		if got != c.want {
			t.Errorf("%s: %s stand, want %s", c.name, got, c.want)
		}
	}
	want := better.Life
	want.Day = "2026-12-06 10:00" // the day of what it corrects
	for _, got := range logbook.Standing([]logbook.Event{first, better}) {
		if !cmp.Equal(got.Life, want) {
			t.Errorf("%+v", got.Life)
		}
	}
}
