package life_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// The bars that a live cut weighs are weighed on day 0, each by the number its step has, and how many there are is the plan's count.
func TestALiveCutIsTheWeighingOfDayNought(t *testing.T) {
	plan, shelf := meadow(t)
	sheet := pour.Weigh(plan, shelf)
	p := logbook.Pour{ID: "x", Opened: pouredAt(), Plan: plan, Events: poured()}
	for i, task := range sheet.CutRun {
		piece := sheet.CutPiece(task)
		e := logbook.Event{Kind: logbook.Done, Step: task.Key}
		if piece >= 0 && sheet.Pieces()[piece].Bar > 0 {
			e.Kind, e.Value = logbook.Cut, 150+float64(sheet.Pieces()[piece].Bar)
		}
		e.ID, e.Wall = fmt.Sprintf("c%d", i), at(12, 6).Add(time.Duration(i)*time.Minute)
		p.Events = append(p.Events, e)
	}
	// bar 3 is weighed again; bars 2 and 3 a week later, at half past ten.
	again := p.Events[len(p.Events)-1]
	for _, e := range p.Events {
		if e.Kind == logbook.Cut && e.Value == 153 {
			again = e
		}
	}
	again.ID, again.Value, again.Wall = "again", 153.5, at(12, 6).Add(50*time.Minute)
	p.Events = append(p.Events, again, logbook.Event{Kind: logbook.WeighIn, ID: "w", Wall: at(12, 20), Life: logbook.Life{Day: "2026-12-13 10:30", Bars: []int{3, 2}, MassesG: []float64{140, 141}}})
	b := life.Of(p, shelf, pour.Hand{}, date(12, 20))
	if len(b.WeighIns) != 2 || b.Bars.Bars != 10 || b.Bars.Planned {
		t.Fatalf("%+v, %+v", b.WeighIns, b.Bars)
	}
	first := b.WeighIns[0]
	for bar, want := range map[int]float64{1: 151, 3: 153.5, 10: 160} {
		if g, ok := first.Mass(bar); !ok || g != want {
			t.Errorf("bar %d weighed %v, want %v", bar, g, want)
		}
	}
	if got := b.WeighIns[1].Days; got < 7+30./1440-1e-9 || got > 7+30./1440+1e-9 {
		t.Errorf("it was weighed on day %v of the cure, want 7 and half an hour", got)
	}
}

// The one bar of older logs is a series of its own, and its maker's word that it is cured makes the batch ready.
func TestOlderLogsStayReadable(t *testing.T) {
	plan, shelf := meadow(t)
	p := logbook.Pour{ID: "x", Opened: pouredAt(), Plan: plan, Events: append(poured(),
		logbook.Event{Kind: logbook.Cut, Value: 152, ID: "a", Wall: at(12, 6)},
		logbook.Event{Kind: logbook.Cured, Value: 139, What: "2027-01-10", ID: "b", Wall: at(time.January, 12)})}
	b := life.Of(p, shelf, pour.Hand{}, date(1, 20))
	var got []string
	for _, w := range b.WeighIns {
		got = append(got, fmt.Sprint(w.Bars, w.MassesG, w.Days))
	}
	if d := cmp.Diff([]string{"[0] [152] 0", "[0] [139] 35"}, got); d != "" {
		t.Error(d)
	}
	if b.State != life.Ready || b.Since != date(1, 10) || !b.Bars.Planned || b.Bars.Bars != 10 {
		t.Errorf("%s since %s, %+v", b.State, b.Since, b.Bars)
	}
}

// A day is a day when summer time begins: from the 6th of March to the 6th of April is 31 days by the clock on the wall.
func TestSummerTimeMovesNoDay(t *testing.T) {
	plan, shelf := meadow(t)
	there, err := time.LoadLocation("Europe/Vienna")
	if err != nil {
		t.Skip("no zones here")
	}
	on := func(month time.Month, n int) time.Time { return time.Date(2027, month, n, 9, 0, 0, 0, there) }
	p := logbook.Pour{ID: "x", Opened: on(3, 5), Plan: plan, Events: []logbook.Event{
		{Kind: logbook.Sliced, ID: "a", Wall: on(3, 6), Life: logbook.Life{MassesG: []float64{150}}},
		{Kind: logbook.WeighIn, ID: "b", Wall: on(4, 6), Life: logbook.Life{MassesG: []float64{140}}},
	}}
	if got := life.Of(p, shelf, pour.Hand{}, date(4, 7)).WeighIns[1].Days; got != 31 {
		t.Errorf("day %v, want 31", got)
	}
}
