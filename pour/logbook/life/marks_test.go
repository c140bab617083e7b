package life

import (
	"testing"
	"time"

	"pourbench/pour/logbook"
)

func TestMarksSayWhatBecameOfEachEvent(t *testing.T) {
	at := time.Date(2026, 12, 20, 9, 0, 0, 0, time.UTC)
	events := []logbook.Event{
		{ID: "e1", Kind: logbook.Opened, Wall: at},
		{ID: "e2", Kind: logbook.Sliced, Wall: at, Life: logbook.Life{Count: 10}},
		{ID: "e3", Kind: logbook.Sold, Wall: at, Life: logbook.Life{Count: 3}},
		{ID: "e4", Kind: logbook.Sold, Wall: at, Life: logbook.Life{Count: 2}, Corrects: "e3"},
		{ID: "e5", Kind: logbook.Given, Wall: at, Life: logbook.Life{Count: 1}},
		{ID: "e6", Kind: logbook.TakenBack, Wall: at, What: "e5"},
	}
	got := Marks(events)
	want := []struct {
		id, why string
	}{{"e2", ""}, {"e3", "corrected on 2026-12-20"}, {"e4", ""}, {"e5", "taken back"}}
	if len(got) != len(want) {
		t.Fatalf("%d marks, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if m := got[i]; m.Event.ID != w.id || m.Why != w.why || m.Standing != (w.why == "") {
			t.Errorf("mark %d is %s, standing %v, %q; want %s, %q", i, m.Event.ID, m.Standing, m.Why, w.id, w.why)
		}
	}
}
