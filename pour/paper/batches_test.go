package paper

import (
	"errors"
	"strings"
	"testing"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// Under its id and name a batch says its state, the day of its cure, its bars, what is due, and why its weighings tell nothing.
func TestTheListOfBatchesIsByHand(t *testing.T) {
	on := func(month time.Month, n int) day.Day { return day.Of(time.Date(2026, month, n, 0, 0, 0, 0, time.UTC)) }
	cut := on(12, 6)
	got := BatchList([]life.Batch{
		{
			ID: "2026-12-05-meadow", Name: "Meadow", State: life.Curing, Since: cut, CutDay: &cut, Bars: life.Account{Known: true, Bars: 9, Left: 8, Sold: 1},
			Due: []life.Due{{Text: "weigh in 2 days"}, {Text: "ready 29 Dec, 24 Dec to 6 Jan"}},
		},
		{ID: "2026-12-01-x", Name: "Odd", State: life.Curing, Since: cut, CutDay: &cut, WeighIns: make([]life.WeighIn, 2), Drying: life.Drying{Why: errors.New("check scale and dates")}},
		{ID: "2026-11-01-y", Fault: errors.New("line 3 is broken")},
	}, on(12, 14))
	want := `2026-12-05-meadow  Meadow
  curing since 2026-12-06, day 8 of the cure; 8 of 9 bars left; weigh in 2 days;
  ready 29 Dec, 24 Dec to 6 Jan
2026-12-01-x  Odd
  curing since 2026-12-06, day 8 of the cure; check scale and dates
2026-11-01-y
  line 3 is broken
`
	if got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	if got := BatchList(nil, on(12, 14)); !strings.Contains(got, "No batch is there") {
		t.Errorf("%q", got)
	}
}
