package calendar_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/calendar"
)

// A planned pour takes the hours of its run: from the first task before the lye goes in to the end of the last, in whole minutes.
func TestAPlannedPourTakesTheHoursOfItsRun(t *testing.T) {
	s := pour.Sheet{Run: []pour.Task{
		{StartMin: 3, LengthMin: 86.2}, {StartMin: -46.5, LengthMin: 10}, {StartMin: 0, LengthMin: 1}, {StartMin: math.NaN(), LengthMin: 1}, {StartMin: 5, LengthMin: math.Inf(1)},
	}}
	s.Plan.Name, s.Plan.PourAt = "Alpine Meadow", time.Date(2026, 12, 5, 10, 0, 30, 0, time.UTC)
	l, err := calendar.OfPlan(&s, "/soap/meadow.toml", at)
	if err != nil {
		t.Fatal(err)
	}
	if from, to := l.PourFrom.Format("15:04:05"), l.PourTo.Format("15:04:05"); from != "09:13:00" || to != "11:30:00" || l.Batch != "plan /soap/meadow.toml" || !l.Revised.Equal(at) {
		t.Errorf("%s to %s, %+v", from, to, l)
	}
	if path, ok := calendar.PlanOf(l.Batch); !ok || path != "/soap/meadow.toml" {
		t.Errorf("%q", path)
	}
	s.Run = nil
	if l, _ = calendar.OfPlan(&s, "/soap/meadow.toml", at); l.PourTo.Sub(l.PourFrom) != time.Hour {
		t.Errorf("without a run it takes %v", l.PourTo.Sub(l.PourFrom))
	}
	s.Plan.Trial = true
	if l, _ = calendar.OfPlan(&s, "/soap/meadow.toml", at); len(l.Entries()) != 1 {
		t.Errorf("a trial has %d entries: nothing of it is cut", len(l.Entries()))
	}
	s.Plan.PourAt = time.Time{}
	if _, err := calendar.OfPlan(&s, "/soap/meadow.toml", at); !errors.Is(err, calendar.ErrNoDay) {
		t.Errorf("%v", err)
	}
}
