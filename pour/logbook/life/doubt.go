package life

import (
	"fmt"

	"pourbench/pour/logbook"
)

// farOff is how many times the planned mass, or which part of it, is taken for a slip: no bar is cut twice or half as thick by mistake.
const farOff = 2

// heavierG is by how much a bar may gain between two weighings before it is taken for a slip: three times what a scale of 0.1 g is good for.
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
		if e.Life.Price != "" && e.Life.Currency == "" {
			doubt("the price has no currency")
		}
	case logbook.Counted:
		if miss := c.after.Bars.Missing - c.before.Bars.Missing; miss != 0 && c.before.Bars.Known {
			doubt("%d bars were to be left, %d fewer are there", c.before.Bars.Left, miss)
		}
	}
	return out
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
		common := 0
		for _, bar := range now.Bars {
			was, ok := last.Mass(bar)
			g, _ := now.Mass(bar)
			if !ok {
				continue
			}
			if common++; g > was+heavierG {
				doubt("bar %d, %v g, is heavier than the %v g of %s", bar, g, was, last.When.Day)
			}
		}
		if common == 0 {
			doubt("none of these bars was weighed on %s: weigh the same ones every time", last.When.Day)
		}
		return
	}
}
