package life_test

import (
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// Where bars were on a day is told by what was dated until then, and before the cut there were none. A lot typed beside a weighing is kept, one
// without a lot and one that was taken back are not.
func TestWhereBarsWereOnADay(t *testing.T) {
	at := time.Date(2026, 3, 1, 10, 0, 0, 0, time.UTC)
	cut := day.Of(at) + 1
	mark := func(id string, after int, e logbook.Event) logbook.Event {
		e.ID, e.Wall = id, at.AddDate(0, 0, after)
		return e
	}
	p := logbook.Pour{ID: "p", Opened: at, PlanErr: errNoPlan{}, Events: []logbook.Event{
		mark("a", 0, logbook.Event{Kind: logbook.Weighed, What: "olive oil", Lot: "A12", Value: 300}),
		mark("b", 0, logbook.Event{Kind: logbook.Weighed, What: "coconut oil", Value: 200}),
		mark("c", 0, logbook.Event{Kind: logbook.Weighed, What: "shea butter", Lot: "S1", Value: 100}),
		mark("d", 0, logbook.Event{Kind: logbook.TakenBack, What: "c"}),
		mark("e", 1, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 10, Seconds: 1}}),
		mark("f", 20, logbook.Event{Kind: logbook.Sold, Life: logbook.Life{Count: 4}}),
		mark("g", 30, logbook.Event{Kind: logbook.Counted, Life: logbook.Life{Count: 4}}),
	}}
	b := life.Of(p, pour.Shelf{}, pour.Hand{}, cut+100)
	for after, want := range map[day.Day]life.Account{
		-1: {},
		0:  {Known: true, Bars: 10, Seconds: 1, Left: 9},
		18: {Known: true, Bars: 10, Seconds: 1, Left: 9},
		19: {Known: true, Bars: 10, Seconds: 1, Sold: 4, Left: 5},
		99: {Known: true, Bars: 10, Seconds: 1, Sold: 4, Missing: 1, Left: 4},
	} {
		if got := b.On(cut + after); got != want {
			t.Errorf("%d days after the cut: %+v, want %+v", after, got, want)
		}
	}
	if b.On(cut+99) != b.Bars {
		t.Errorf("at last %+v, want %+v", b.On(cut+99), b.Bars)
	}
	if len(b.TypedIn) != 1 || b.TypedIn[0].Lot != "A12" {
		t.Errorf("typed in are %+v", b.TypedIn)
	}
}

type errNoPlan struct{}

func (errNoPlan) Error() string { return "no plan" }

// The lot of a slip that was weighed again went into nothing.
func TestALotOfASlipIsNotTypedIn(t *testing.T) {
	p := logbook.Pour{Events: []logbook.Event{
		{ID: "a", Kind: logbook.Weighed, Batch: pour.Base, What: "olive oil", Value: 356.2, Lot: "OLV-77"},
		{ID: "b", Kind: logbook.Weighed, Batch: pour.Base, What: "olive oil", Value: 250.2},
		{ID: "c", Kind: logbook.Weighed, Batch: pour.Base, What: "castor oil", Value: 43, Lot: "C-1"},
		{ID: "d", Kind: logbook.Weighed, Batch: pour.Base, What: "castor oil", Value: 44, Lot: "C-2"},
	}}
	typed := life.Of(p, pour.Shelf{}, pour.Hand{}, 0).TypedIn
	if len(typed) != 1 || typed[0].Lot != "C-2" || typed[0].Value != 44 {
		t.Errorf("typed in are %+v", typed)
	}
}
