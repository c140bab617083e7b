package life

import (
	"pourbench/pour/day"
)

// packingDays is how many days before bars are packed a weighing still tells what they weigh then: bars that are ready lose less a week than the
// maker's criterion.
const packingDays = 7

// Packing is what the bars weighed when they were packed: what a label's weight can rest on.
type Packing struct {
	Day     day.Day   // on which the first bars were labelled; where none was, of the weighing
	Weighed day.Day   // of the weighing
	MassesG []float64 // of the bars that were weighed that day, each once
	Bars    []int     // which they are; [OneBar]: not known

	LastG map[int]float64 // what bars weighed last before that day, by their number
}

// Packing finds the weighing that a label's weight can rest on: the last one in the week that ends when the first bars were labelled or, where none is
// labelled yet, the last one since the bars are ready. Earlier ones were of bars that had more to lose. False: there is none.
func (b Batch) Packing() (Packing, bool) {
	from, to := b.Since, day.Day(0)
	switch {
	case len(b.Lots) > 0:
		to = b.Lots[0].Day
		from = to - packingDays
	case !b.Is(Ready):
		return Packing{}, false
	}
	var p Packing
	var last []WeighIn
	for _, w := range b.WeighIns {
		if d := w.When.Day; d < from || len(b.Lots) > 0 && d > to {
			continue
		}
		if len(last) > 0 && last[0].When.Day != w.When.Day {
			last = nil
		}
		last = append(last, w)
	}
	if len(last) == 0 {
		return Packing{}, false
	}
	p.Weighed = last[0].When.Day
	p.Day = p.Weighed
	if len(b.Lots) > 0 {
		p.Day = to
	}
	p.Bars, p.MassesG = together(last)
	_, p.LastG = b.before(p.Weighed)
	return p, len(p.MassesG) > 0
}

// AsCut is what bars weighed on the day of their first weighing, g, by their number.
func (b Batch) AsCut() map[int]float64 {
	if len(b.WeighIns) == 0 {
		return nil
	}
	cut, _ := b.before(b.WeighIns[0].When.Day + 1)
	return cut
}

// before is what bars weighed before a day, g, by their number: on the day of the first weighing, and last.
func (b Batch) before(until day.Day) (cut, last map[int]float64) {
	cut, last = map[int]float64{}, map[int]float64{}
	for _, w := range b.WeighIns {
		if w.When.Day >= until {
			continue
		}
		for i, bar := range w.Bars {
			if bar == OneBar || i >= len(w.MassesG) {
				continue
			}
			last[bar] = w.MassesG[i]
			if w.When.Day == b.WeighIns[0].When.Day {
				cut[bar] = w.MassesG[i]
			}
		}
	}
	return cut, last
}

// together is what each bar weighed by weighings of one day, and which it is; the last counts of a bar that was weighed twice.
func together(list []WeighIn) (bars []int, massesG []float64) {
	at := map[int]int{}
	for _, w := range list {
		for i, g := range w.MassesG {
			bar := OneBar
			if i < len(w.Bars) {
				bar = w.Bars[i]
			}
			if k, again := at[bar]; again && bar != OneBar {
				massesG[k] = g
				continue
			}
			at[bar] = len(massesG)
			bars, massesG = append(bars, bar), append(massesG, g)
		}
	}
	return bars, massesG
}
