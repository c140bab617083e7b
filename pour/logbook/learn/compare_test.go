package learn

import (
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// measuredPour is a pour in which a weight, a temperature, a burst and a stage were marked, and a bar weighed the day after.
func measuredPour(t *testing.T) (logbook.Pour, pour.Sheet, pour.Shelf) {
	t.Helper()
	plan, shelf := lonely(t)
	sheet := pour.Work(plan, shelf, clock.Hand{})
	m := begins(t, openTestBook(t), sheet, "", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	m.after(0, logbook.Event{Kind: logbook.Weighed, What: sheet.Totals[0].Name, Value: 381.5, Lot: "L77"})
	m.until("base lye in")
	m.after(0, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadBatter, Value: 36.5})
	m.after(20*time.Second, logbook.Event{Kind: logbook.Blended, Batch: pour.Base, Value: 20})
	m.until("base split")
	m.sees(30*time.Second, "fern", chem.Light)
	m.until("base put to bed")
	m.after(24*time.Hour, logbook.Event{Kind: logbook.Cut, Value: 131.2})
	return m.record(shelf), sheet, shelf
}

func TestAPourGivesALogOfWhatReallyHappened(t *testing.T) {
	p, _, shelf := measuredPour(t)
	logs := logsOf(p, shelf)
	if len(logs) != 1 {
		t.Fatalf("the pour gives %d logs, want fern's", len(logs))
	}
	l := logs[0]
	if !l.Batter.Measured || l.Batter.StartC != 36.5 || len(l.Batter.Bursts) != 1 || l.Batter.Bursts[0].S != 20 {
		t.Errorf("the log took %v °C (measured %v) and bursts %v", l.Batter.StartC, l.Batter.Measured, l.Batter.Bursts)
	}
	lesson := fromLogs(logs)
	if lesson.Hand.Pours != 1 || len(lesson.Hand.Traits) < 2 {
		t.Errorf("the lesson rests on %d pours and has %d traits", lesson.Hand.Pours, len(lesson.Hand.Traits))
	}
	if _, err := clock.New(l.Batter, lesson.Hand); err != nil {
		t.Errorf("the clock does not take the hand: %v", err)
	}
}

func TestWhatWasMeasuredStandsBesideItsPlan(t *testing.T) {
	p, sheet, _ := measuredPour(t)
	want := map[string]float64{sheet.Totals[0].Name: 381.5, "base batter": 36.5, "a bar as cut": 131.2}
	for _, d := range Compare(p, sheet) {
		if v, ok := want[d.What]; ok {
			if d.Actual.V != v || !d.Planned.Known {
				t.Errorf("%s: planned %v, actual %v", d.What, d.Planned, d.Actual)
			}
			delete(want, d.What)
		}
	}
	if len(want) > 0 {
		t.Errorf("not compared: %v", want)
	}
}
