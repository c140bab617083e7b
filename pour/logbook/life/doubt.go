package life

import (
	"fmt"
	"slices"
	"strconv"

	"pourbench/pour/logbook"
	"pourbench/pour/strict"
)

// farOff is how many times the planned mass, or which part of it, is taken for a slip: no bar is cut twice or half as thick by mistake.
const farOff = 2

// heavierG is by how much a bar may gain between two weighings before it is taken for a slip: three times what a scale of 0.1 g is good for. On
// a coarser one it is a division: what did not change at all can be read that much heavier.
const heavierG = 0.5

// doubts says what of the event can hardly be. It is logged all the same.
func (c *check) doubts() []string {
	var out []string
	doubt := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	e, planned := c.e, c.before.Planned.CutG
	if e.Kind == logbook.TakenBack || e.Corrects != "" {
		return nil
	}
	for i, g := range e.Life.MassesG {
		if planned.Known && planned.V > 0 && (g >= farOff*planned.V || g*farOff <= planned.V) {
			doubt("mass %d, %v g, is %.2g times that of a planned bar", i+1, g, g/planned.V)
		}
	}
	switch e.Kind {
	case logbook.Weighed:
		if g := plannedG(sheetOf(c.pour, c.shelf), e); g.Known && g.V > 0 && (e.Value >= farOff*g.V || e.Value*farOff <= g.V) {
			doubt("%v g is %.2g times the planned %v g", e.Value, e.Value/g.V, g.V)
		}
	case logbook.Sliced:
		if len(c.before.Of(logbook.Sliced)) > 0 {
			doubt("the loaf was cut already, on %s: the bars of both are counted", *c.before.CutDay)
		}
		if n, want := max(e.Life.Count, len(e.Life.MassesG)), c.before.Planned.Bars; want > 0 && n != want {
			doubt("%d bars where the plan has %d", n, want)
		}
	case logbook.WeighIn:
		c.doubtWeighing(doubt)
	case logbook.Unmoulded:
		if len(c.before.Of(logbook.Unmoulded)) > 0 {
			doubt("it was out of its mould already")
		}
	case logbook.Sold, logbook.Lotted, logbook.Given:
		if c.before.CutDay == nil {
			doubt("it is not logged that the loaf was cut")
		}
		if c.before.Is(Failed) {
			doubt("the batch is logged as failed")
		}
		if e.Kind == logbook.Sold {
			c.doubtSale(doubt)
		}
	case logbook.Counted:
		c.doubtCount(doubt)
	}
	return out
}

// doubtCount compares a count with the bars that were to be left.
func (c *check) doubtCount(doubt func(string, ...any)) {
	was := c.before.Bars
	switch miss := c.after.Bars.Missing - was.Missing; {
	case !was.Known || miss == 0:
	case miss > 0:
		doubt("%d bars were to be left, %d fewer are there", was.Left, miss)
	case c.e.Life.Count > was.Bars && !was.Planned:
		doubt("%d bars were to be left, %d more are there: that is more than the %d that were cut", was.Left, -miss, was.Bars)
	default:
		doubt("%d bars were to be left, %d more are there", was.Left, -miss)
	}
}

// priceOff is how many times an earlier price of the batch, or which part of it, is taken for a slip of the decimal sign.
const priceOff = 20

// doubtSale says what of a sale can hardly be: bars that are not ready or have no lot, a price far from the earlier ones.
func (c *check) doubtSale(doubt func(string, ...any)) {
	e := c.e
	if c.before.Is(Cut, Curing) {
		doubt("the batch is not ready by its own forecast")
	}
	if c.before.CutDay != nil && len(c.before.Lots) == 0 {
		doubt("no bar of it is labelled with a lot")
	}
	if e.Life.Price == "" {
		return
	}
	if e.Life.Currency == "" {
		doubt("the price has no currency")
	}
	price, err := strict.ParseNumber(e.Life.Price)
	sales := c.before.Of(logbook.Sold)
	for i := len(sales) - 1; i >= 0 && err == nil; i-- {
		was, unread := strict.ParseNumber(sales[i].Life.Price)
		if unread != nil || was <= 0 || sales[i].Life.Currency != e.Life.Currency {
			continue
		}
		if price > was*priceOff || price*priceOff < was {
			doubt("a price of %s is far from the %s of %s", e.Life.Price, sales[i].Life.Price, moment(sales[i]).Day)
		}
		return
	}
}

// doubtWeighing compares a weighing with the last one before it.
func (c *check) doubtWeighing(doubt func(string, ...any)) {
	at := moment(c.e)
	now := WeighIn{Bars: numbered(c.e.Life), MassesG: c.e.Life.MassesG}
	for i := len(c.before.WeighIns) - 1; i >= 0; i-- {
		last := c.before.WeighIns[i]
		if last.When.DaysSince(at) > 0 {
			continue
		}
		if last.When.Day == at.Day {
			doubt("there is a weighing of that day already: both are counted")
		}
		common, others := 0, []int(nil)
		for _, bar := range now.Bars {
			was, ok := last.Mass(bar)
			g, _ := now.Mass(bar)
			if !ok {
				others = append(others, bar)
				continue
			}
			if common++; g > was+max(heavierG, c.before.Drying.ReadG) {
				doubt("bar %d, %v g, is heavier than the %v g of %s", bar, g, was, last.When.Day)
			}
		}
		if common == 0 {
			doubt("none of these bars was weighed on %s: weigh the same ones every time", last.When.Day)
		} else if len(others) > 0 && !slices.Contains(last.Bars, OneBar) {
			doubt("the bars weighed on %s were %s, not %s: weigh the same ones every time", last.When.Day, joined(last.Bars, strconv.Itoa), joined(others, strconv.Itoa))
		}
		return
	}
}
