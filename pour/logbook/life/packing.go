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
	p.MassesG = together(last)
	return p, len(p.MassesG) > 0
}

// together is what each bar weighed by weighings of one day, the last counting of a bar that was weighed twice.
func together(list []WeighIn) []float64 {
	var out []float64
	at := map[int]int{}
	for _, w := range list {
		for i, g := range w.MassesG {
			bar := OneBar
			if i < len(w.Bars) {
				bar = w.Bars[i]
			}
			if k, again := at[bar]; again && bar != OneBar {
				out[k] = g
				continue
			}
			at[bar] = len(out)
			out = append(out, g)
		}
	}
	return out
}
