package life_test

import (
	"testing"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// A batch goes through its states by what is logged of it and by the day.
func TestStatesFollowTheEvents(t *testing.T) {
	b := newBench(t)
	stands := func(on day.Day, want life.State, since day.Day) {
		t.Helper()
		if got := b.on(on); got.State != want || got.Since != since {
			t.Errorf("on %s: %s since %s, want %s since %s", on, got.State, got.Since, want, since)
		}
	}
	stands(date(12, 5), life.InMould, date(12, 5))
	b.logs(at(12, 6), logbook.Event{Kind: logbook.Unmoulded, What: "firm"})
	stands(date(12, 6), life.Unmoulded, date(12, 6))
	b.logs(at(12, 7), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 9, Seconds: 1}})
	stands(date(12, 7), life.Cut, date(12, 7))
	stands(date(12, 8), life.Curing, date(12, 7))
	b.logs(at(time.January, 20), logbook.Event{Kind: logbook.Lotted, Lot: "261205A"})
	stands(date(1, 20), life.Labelled, date(1, 20))
	if lots := b.on(date(1, 20)).Lots; len(lots) != 1 || lots[0] != (life.Lot{Lot: "261205A", Count: 8, Day: date(1, 20)}) {
		t.Errorf("all that were left are labelled: %+v", lots)
	}
	b.logs(at(1, 21), count(logbook.Sold, 6))
	stands(date(1, 21), life.Labelled, date(1, 20))
	b.logs(at(1, 22), count(logbook.Kept, 2))
	stands(date(1, 22), life.SoldOut, date(1, 22))
	b.logs(at(1, 23), logbook.Event{Kind: logbook.Failed, Text: "orange spots"})
	stands(date(1, 23), life.Failed, date(1, 23))
}

// The bar account by plain arithmetic.
func TestWhereTheBarsAre(t *testing.T) {
	b := newBench(t)
	b.logs(at(12, 6), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 9, Seconds: 1}})
	for _, e := range []logbook.Event{count(logbook.Sold, 3), count(logbook.Given, 1), count(logbook.Kept, 1), count(logbook.Seconds, 1)} {
		b.logs(at(12, 20), e)
	}
	b.logs(at(12, 21), count(logbook.Counted, 1))
	want := life.Account{Known: true, Bars: 9, Sold: 3, Given: 1, Kept: 1, Seconds: 2, Missing: 1, Left: 1}
	if got := b.on(date(12, 22)).Bars; got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
}
