package life

import (
	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// Account is where the bars of a batch are: Bars = Sold + Given + Kept + Seconds + Missing + Left, always.
type Account struct {
	Known   bool // how many bars there were is known, or taken from the plan
	Planned bool // Bars is the plan's count: the cut said of none how many
	Bars    int
	Sold    int
	Given   int
	Kept    int
	Seconds int
	Missing int // what counts found too few; below 0: what they found too many, or what went out beyond what there was
	Left    int

	Over int // how many bars more went, at the worst moment, than were there: a file that was mended by hand
}

// account works out where the bars are, from events in their order. The count of bars is that of the cut, or the plan's where the loaf was cut and
// nobody said; a count of what is left says how many there were where nothing else does.
func account(events []logbook.Event, cut int, isCut bool, planned int) Account {
	a := Account{Bars: cut, Known: cut > 0}
	if !a.Known && isCut && planned > 0 {
		a.Bars, a.Known, a.Planned = planned, true, true
	}
	left := a.Bars
	for _, e := range events {
		n := e.Life.Count
		switch e.Kind {
		case logbook.Sold:
			a.Sold += n
		case logbook.Given:
			a.Given += n
		case logbook.Kept:
			a.Kept += n
		case logbook.Seconds:
			a.Seconds += n
		case logbook.Sliced:
			n = e.Life.Seconds
			a.Seconds += n
		case logbook.Counted:
			if !a.Known || a.Planned { // a count tells more than the plan
				a.Bars, a.Known, a.Planned = n+a.out(), true, false
			}
			left = n
			continue
		default:
			continue
		}
		left -= n
		a.Over = max(a.Over, -left)
	}
	if !a.Known {
		return Account{Sold: a.Sold, Given: a.Given, Kept: a.Kept, Seconds: a.Seconds, Bars: a.out()}
	}
	a.Left = max(left, 0)
	a.Missing = a.Bars - a.out() - a.Left
	return a
}

// out is how many bars went, as far as is known.
func (a Account) out() int { return a.Sold + a.Given + a.Kept + a.Seconds }

// On is where the bars were at the end of a day, by the events dated until then. Before the cut there are none.
func (b *Batch) On(d day.Day) Account {
	if b.CutDay == nil || *b.CutDay > d {
		return Account{}
	}
	n := 0
	for n < len(b.Events) && moment(b.Events[n]).Day <= d {
		n++
	}
	return account(b.Events[:n], b.cutBars, true, b.Planned.Bars)
}
