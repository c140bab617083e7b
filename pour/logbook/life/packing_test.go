package life_test

import (
	"slices"
	"testing"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

func weighIn(bars []int, g ...float64) logbook.Event {
	return logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{Bars: bars, MassesG: g}}
}

// A label's weight rests on bars that had nothing more to lose: those of the week before they were labelled.
func TestWhatBarsWeighWhenTheyArePacked(t *testing.T) {
	b := newBench(t)
	b.logs(at(12, 6), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{MassesG: []float64{130, 131, 132}}})
	b.logs(at(12, 20), weighIn([]int{1, 2, 3}, 120, 121, 122))
	if p, ok := b.on(date(12, 21)).Packing(); ok {
		t.Errorf("bars that are curing are packed by %+v", p)
	}
	b.logs(at(1, 10), weighIn([]int{1, 2, 3}, 110, 111, 112))
	b.logs(at(1, 10).Add(time.Hour), weighIn([]int{2, 1}, 111.5, 110.5))
	b.logs(at(1, 14), logbook.Event{Kind: logbook.Lotted, Lot: "A", Life: logbook.Life{Count: 3}})
	b.logs(at(1, 30), weighIn([]int{1, 2, 3}, 108, 109, 110))
	p, ok := b.on(date(2, 1)).Packing()
	if !ok || p.Day != date(1, 14) || p.Weighed != date(1, 10) || !slices.Equal(p.MassesG, []float64{110.5, 111.5, 112}) {
		t.Errorf("packed by %+v, %v", p, ok)
	}
	// Bar 3 was not weighed again: it is known by the weighing before, and all by that of the cut.
	b.logs(at(1, 13), weighIn([]int{2, 1}, 111, 110))
	now := b.on(date(2, 1))
	p, ok = now.Packing()
	if !ok || !slices.Equal(p.Bars, []int{2, 1}) || !slices.Equal(p.MassesG, []float64{111, 110}) || p.LastG[3] != 112 || p.LastG[2] != 111.5 || len(p.LastG) != 3 {
		t.Errorf("packed by %+v, %v", p, ok)
	}
	if cut := now.AsCut(); len(cut) != 3 || cut[1] != 130 || cut[3] != 132 {
		t.Errorf("as cut: %v", cut)
	}
}

// Where the weighing is too old when the bars are labelled there is none to go by.
func TestAnOldWeighingTellsNothingOfThePackedBars(t *testing.T) {
	for days, want := range map[int]bool{7: true, 8: false} {
		b := newBench(t)
		b.logs(at(12, 6), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{MassesG: []float64{130, 131, 132}}})
		b.logs(at(12, 20), weighIn(nil, 110, 111, 112))
		on := date(12, 20) + day.Day(days)
		b.logs(on.At(10, 0, time.UTC), logbook.Event{Kind: logbook.Lotted, Lot: "A", Life: logbook.Life{Count: 3}})
		if p, ok := b.on(on).Packing(); ok != want {
			t.Errorf("a weighing %d days before: %+v, %v", days, p, ok)
		}
	}
}

// Bars that were not labelled yet are packed as they were weighed since they are ready; before there is such a weighing nothing is known.
func TestReadyBarsArePackedAsTheyWereWeighedLast(t *testing.T) {
	b := newBench(t)
	b.cures(7)
	weighed(b, []float64{125.0, 122.1, 120.9, 119.5, 117.9, 117.0, 116.0, 114.6}, 0, 1, 2, 4, 7, 10, 14, 21)
	ready := b.on(date(12, 27)).Ready.Day
	if p, ok := b.on(ready).Packing(); ok {
		t.Errorf("packed by a weighing before they are ready: %+v", p)
	}
	on := ready + 5
	b.logs(on.At(10, 0, time.UTC), weighIn(nil, 113.4, 113.9, 114.4))
	if p, ok := b.on(on).Packing(); !ok || p.Weighed != on || p.Day != on || !slices.Equal(p.MassesG, []float64{113.4, 113.9, 114.4}) {
		t.Errorf("packed by %+v, %v", p, ok)
	}
}
