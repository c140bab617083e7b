package closing

import (
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/money"
)

// Count is a number of bars and what they cost.
type Count struct {
	Bars int
	Cost money.Amount
}

// Bars is where the cost of batches is over the days. Opening + Loaves + Added = Sold + Given + Own + Missing + WrittenOff + Left + Uncut. Seconds and
// the batches' own samples carry no cost: the good bars of a batch carry all of it.
type Bars struct {
	From, To   day.Day
	Opening    Count        // bars on hand
	Loaves     money.Amount // loaves poured before that were not cut
	Added      money.Amount // what went into batches on the days
	Cut        int          // bars cut on the days
	Sold       Count
	Given      Count
	Own        Count // kept for oneself
	Missing    Count // what counts found too few; below 0: too many
	WrittenOff Count // of batches that failed, and of those with no good bar
	Left       Count // bars on hand
	Uncut      money.Amount
	Seconds    int
	Samples    int
	Taken      []Taking // what was sold for, one for each currency
	NoPrice    int      // bars sold for which no price was written
	Unknown    []string // batches of which it is not logged how many bars they gave, or whose cost is only the least it can be
}

// Taking is what bars were sold for.
type Taking struct {
	Currency string
	Amount   money.Amount
}

// Costs says what a batch has cost until the end of a day, and whether that is all of it.
type Costs func(batch string, until day.Day) (money.Amount, bool)

// BarsOf closes the books of the bars over the days from one to another, both of them in it. All is counted at what a good bar of its batch costs by
// the last day, so that what is found bad later makes the others dearer from the first; and what is added to a batch later, as cartons are, is carried
// by all its good bars, on the days when it is added by those that went before, too.
func BarsOf(batches []life.Batch, costs Costs, from, to day.Day) Bars {
	out := Bars{From: from, To: to}
	for i := range batches {
		if batches[i].Fault == nil {
			out.batch(&batches[i], costs)
		}
	}
	return out
}

// places are the good bars that went, in one order, and then what became of the rest.
const (
	sold = iota
	given
	own
	missing
	wasted
	left
	uncut
	places
)

// moment is where the bars and the cost of a batch are at the end of a day.
type moment struct {
	account life.Account
	samples int
	bars    [places]int
	cost    [places]money.Amount
}

// at is where the bars of a batch are at the end of a day. What is there when a batch fails is written off.
func at(b *life.Batch, d day.Day) (m moment, failed bool) {
	m.account = b.On(d)
	for _, e := range b.Events {
		on, err := day.Parse(e.Day())
		switch {
		case err != nil || on > d:
		case e.Kind == logbook.Kept && e.What == logbook.KeptSample:
			m.samples += e.Life.Count
		case e.Kind == logbook.Failed:
			failed = true
		}
	}
	a := m.account
	m.bars = [places]int{sold: a.Sold, given: a.Given, own: a.Kept - m.samples, missing: a.Missing, left: a.Left}
	if failed {
		m.bars[wasted], m.bars[left] = a.Left, 0
	}
	return m, failed
}

// good is how many bars carry the cost of their batch.
func (m moment) good() int { return m.account.Bars - m.account.Seconds - m.samples }

// share parts the cost of a batch among so many good bars. Each part is taken off what is left, so that they come to all of it.
func (m *moment) share(total money.Amount, good int, failed bool) {
	rest := left
	if failed {
		rest = wasted
	}
	switch {
	case !m.account.Known && !failed:
		rest = uncut
	case m.account.Known && good <= 0:
		rest = wasted
	case m.account.Known:
		counted, before := 0, money.Amount{}
		for _, k := range []int{sold, given, own, missing} {
			counted += m.bars[k]
			upto := total.Part(int64(counted), int64(good))
			m.cost[k], before = upto.Minus(before), upto
		}
		m.cost[rest] = total.Minus(before)
		return
	}
	m.cost[rest] = total
}

// batch adds one batch.
func (c *Bars) batch(b *life.Batch, costs Costs) {
	total, known := costs(b.ID, c.To)
	earlier, _ := costs(b.ID, c.From-1)
	was, failedBefore := at(b, c.From-1)
	is, failed := at(b, c.To)
	was.share(earlier, is.good(), failedBefore)
	is.share(total, is.good(), failed)
	if !known || !is.account.Known && b.CutDay != nil && *b.CutDay <= c.To {
		c.Unknown = append(c.Unknown, b.ID)
	}
	c.Added = c.Added.Plus(total.Minus(earlier))
	c.Opening = c.Opening.plus(was.bars[left], was.cost[left])
	c.Loaves = c.Loaves.Plus(was.cost[uncut])
	for k, to := range map[int]*Count{sold: &c.Sold, given: &c.Given, own: &c.Own, missing: &c.Missing, wasted: &c.WrittenOff} {
		*to = to.plus(is.bars[k]-was.bars[k], is.cost[k].Minus(was.cost[k]))
	}
	c.Left = c.Left.plus(is.bars[left], is.cost[left])
	c.Uncut = c.Uncut.Plus(is.cost[uncut])
	c.Cut += is.account.Bars - was.account.Bars
	c.Seconds += is.account.Seconds - was.account.Seconds
	c.Samples += is.samples - was.samples
	c.sales(b)
}

// plus is both of two counts.
func (c Count) plus(bars int, cost money.Amount) Count {
	return Count{c.Bars + bars, c.Cost.Plus(cost)}
}

// sales adds up what the bars of a batch were sold for on the days.
func (c *Bars) sales(b *life.Batch) {
	for _, e := range b.Of(logbook.Sold) {
		on, err := day.Parse(e.Day())
		if err != nil || on < c.From || on > c.To {
			continue
		}
		price, err := money.Parse(e.Life.Price)
		if err != nil {
			c.NoPrice += e.Life.Count
			continue
		}
		k := slices.IndexFunc(c.Taken, func(t Taking) bool { return t.Currency == e.Life.Currency })
		if k < 0 {
			k = len(c.Taken)
			c.Taken = append(c.Taken, Taking{Currency: e.Life.Currency})
		}
		c.Taken[k].Amount = c.Taken[k].Amount.Plus(price.Times(e.Life.Count))
	}
}
