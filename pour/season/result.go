package season

import (
	"cmp"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/money"
)

// Result is how a design did, over all pours of it.
type Result struct {
	Design  string
	Pours   int
	Failed  int // of them
	Unknown int // of them, of those that came out: nobody knows how many bars there were, and they are in no figure of bars but those that went

	// Of the pours whose bars are known: Bars = Sold + Given + Kept + Seconds + Missing + Left, always.
	Bars, Sold, Given, Kept, Seconds, Missing, Left int

	SoldOut []int    // for every pour of which no bar is left: days from the first bar that went until the last
	By      []Outlet // with whom and by which channel, most bars first
}

// Outlet is one audience by one channel, each in the maker's own words; empty: she did not say.
type Outlet struct {
	Audience, Channel string
	Sold, Given       int // bars
	Takings           []Takings
	Unpriced          int   // of the bars sold, those whose price nobody said
	Days              []int // for every pour that is sold out and was sold here: days from its first bar that went until the last one here
}

// Takings are the prices of bars in one currency. They are exact.
type Takings struct {
	Currency string // its code; empty: nobody said
	Bars     int
	Sum      money.Amount
}

// averageDigits are those an average price is rounded to when it is told.
const averageDigits = 2

// Average is the price of one bar on average, rounded to two digits.
func (t Takings) Average() money.Amount { return t.Sum.Over(max(t.Bars, 1), averageDigits) }

// Results tells of every design how it did, by what was logged of all pours; those with most bars sold or given first. Trials are left out.
func Results(batches []life.Batch) []Result {
	var out []Result
	for _, b := range batches {
		if b.Fault != nil || b.State == life.Trial {
			continue
		}
		at := slices.IndexFunc(out, func(r Result) bool { return sameDesign(r.Design, b.Name) })
		if at < 0 {
			at = len(out)
			out = append(out, Result{Design: pour.DesignName(b.Name)})
		}
		out[at].take(b)
	}
	for i := range out {
		slices.SortStableFunc(out[i].By, func(x, y Outlet) int {
			return cmp.Or(cmp.Compare(y.Sold+y.Given, x.Sold+x.Given), strings.Compare(x.Audience, y.Audience), strings.Compare(x.Channel, y.Channel))
		})
		slices.Sort(out[i].SoldOut)
	}
	slices.SortStableFunc(out, func(x, y Result) int {
		return cmp.Or(cmp.Compare(y.Sold+y.Given, x.Sold+x.Given), strings.Compare(x.Design, y.Design))
	})
	return out
}

// take adds what was logged of one pour.
func (r *Result) take(b life.Batch) {
	r.Pours++
	if b.State == life.Failed {
		r.Failed++
	} else if !b.Bars.Known {
		r.Unknown++
	}
	if a := b.Bars; a.Known {
		r.Bars += a.Bars
		r.Sold, r.Given, r.Kept, r.Seconds, r.Missing, r.Left = r.Sold+a.Sold, r.Given+a.Given, r.Kept+a.Kept, r.Seconds+a.Seconds, r.Missing+a.Missing, r.Left+a.Left
	}
	var first, last day.Day
	ends := map[int]day.Day{} // the last bar by each outlet
	for _, e := range b.Events {
		if e.Kind != logbook.Sold && e.Kind != logbook.Given || e.Life.Count <= 0 {
			continue
		}
		on := eventDay(e)
		if len(ends) == 0 {
			first, last = on, on
		}
		first, last = min(first, on), max(last, on)
		i := r.outlet(e)
		if was, ok := ends[i]; !ok || on > was {
			ends[i] = on
		}
		r.By[i].add(e)
	}
	if b.State != life.SoldOut || len(ends) == 0 {
		return
	}
	r.SoldOut = append(r.SoldOut, int(last-first))
	for i, end := range ends {
		r.By[i].Days = append(r.By[i].Days, int(end-first))
		slices.Sort(r.By[i].Days)
	}
}

// eventDay is the day an event is of.
func eventDay(e logbook.Event) day.Day {
	if d, err := day.Parse(e.Day()); err == nil {
		return d
	}
	return day.Of(e.Wall)
}

// outlet is the place of an event's audience and channel in the list.
func (r *Result) outlet(e logbook.Event) int {
	i := slices.IndexFunc(r.By, func(o Outlet) bool { return same(o.Audience, e.Life.Audience) && same(o.Channel, e.What) })
	if i < 0 {
		i = len(r.By)
		r.By = append(r.By, Outlet{Audience: e.Life.Audience, Channel: e.What})
	}
	return i
}

// add takes in bars that were sold or given.
func (o *Outlet) add(e logbook.Event) {
	n := e.Life.Count
	if e.Kind == logbook.Given {
		o.Given += n
		return
	}
	o.Sold += n
	price, err := money.Parse(e.Life.Price)
	if err != nil {
		o.Unpriced += n
		return
	}
	i := slices.IndexFunc(o.Takings, func(t Takings) bool { return same(t.Currency, e.Life.Currency) })
	if i < 0 {
		o.Takings = append(o.Takings, Takings{Currency: strings.ToUpper(strings.TrimSpace(e.Life.Currency))})
		slices.SortFunc(o.Takings, func(x, y Takings) int { return strings.Compare(x.Currency, y.Currency) })
		i = slices.IndexFunc(o.Takings, func(t Takings) bool { return same(t.Currency, e.Life.Currency) })
	}
	o.Takings[i].Bars += n
	o.Takings[i].Sum = o.Takings[i].Sum.Plus(price.Times(n))
}
