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

// What is logged afterwards stands on its own day, and within a day as it was typed; what stands in the place of another stands beside it.
func TestMarksStandByTheirDays(t *testing.T) {
	at := time.Date(2026, 12, 20, 9, 0, 0, 0, time.UTC)
	on := func(id, day string, after int) logbook.Event {
		return logbook.Event{ID: id, Kind: logbook.Looked, What: id, Value: 1, Wall: at.Add(time.Duration(after) * time.Minute), Life: logbook.Life{Day: day}}
	}
	corrected := on("f", "2026-12-08", 6)
	corrected.Corrects = "b"
	var told string
	for _, m := range Marks([]logbook.Event{on("a", "", 0), on("b", "2026-12-08", 1), on("c", "2026-12-06", 2), on("d", "2026-12-08", 3), on("e", "2026-12-06 11:00", 4), corrected}) {
		told += m.Event.ID
	}
	if told != "ecbfda" {
		t.Errorf("they stand as %s", told)
	}
}
