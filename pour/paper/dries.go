package paper

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/drying"
	"pourbench/pour/logbook/life"
)

// Dries is what is told of how a batch dries.
type Dries struct {
	Batch  life.Batch
	Drying life.Drying
	Spread *cure.Spread // of the ready day, without taking it for normal; nil: it was not worked out
	Sheet  pour.Sheet
	Today  day.Day
}

// DriesText tells how a batch dries: what was weighed, the fit, masses and weekly loss, the ready day with its band, and how sure all that is;
// or in words why it cannot be told.
func DriesText(c Dries) string {
	p, plot := textPage(), drying.Of(c.Batch, c.Drying, c.Sheet.Plan.Show, c.Today)
	p.wrapped("", "HOW IT DRIES: "+c.Batch.Name)
	p.wrapped("", c.standing(plot))
	p.raw("")
	c.weighed(p, plot)
	if c.Drying.Fit == nil || c.Drying.Why != nil {
		why := "nothing is known of its bar"
		if c.Drying.Why != nil {
			why = c.Drying.Why.Error()
		}
		p.wrapped("FORECAST  ", "none: "+why+".")
		c.lately(p)
	} else {
		c.lately(p)
		c.masses(p, plot)
		c.ready(p, plot)
		c.prior(p)
	}
	p.raw("")
	p.wrapped("", "Forecasts lean early: soap dries more slowly towards its end than the law has it. Bars differ among themselves by more than the band of their mean.")
	p.wrapped("", "Dry is not safe: a bar that has stopped losing weight can still hold free alkali. Ready means here dry by your own criterion, nothing else; calendar and season wait for the plan's days of cure too.")
	return p.text()
}

// lately says what the bars lost of late as they were weighed, whatever the law has of it, and where there is no law that there is no day.
func (c Dries) lately(p *page) {
	text := c.Drying.TellLately()
	if text == "" {
		return
	}
	if c.Drying.Lawless() {
		text += ". No day is given"
	}
	p.wrapped("LATELY    ", text+".")
}

// standing is which batch it is and which day of its cure.
func (c Dries) standing(plot drying.Plot) string {
	text := c.Batch.ID + ", cut on " + plot.Cut.String()
	if c.Batch.CutDay == nil {
		text = c.Batch.ID + ", not cut yet: days count from the cut as it is planned, on " + plot.Cut.String()
	}
	if plot.Today.Known {
		text += "; today is " + plot.DayWords(plot.Today.V)
	}
	return text + "."
}

// weighed lists the weighings, each with how far it is off the law.
func (c Dries) weighed(p *page, plot drying.Plot) {
	d := c.Drying
	if len(d.Means) == 0 {
		p.wrapped("WEIGHED   ", "nothing yet: pourbench logbook weigh. Take the same three to five bars at the same hour, on days 0, 1, 2, 4, 7, then every week.")
		return
	}
	for _, on := range d.LeftOut {
		p.wrapped("LEFT OUT  ", "the weighing of "+on.String()+": not all of these bars were weighed then. Weigh the same ones every time.")
	}
	off := d.Fit != nil && d.Weighed
	text := barsText(d.Bars) + ", weighed " + often(len(d.Means)) + ":"
	if off {
		text = strings.TrimSuffix(text, ":") + "; behind each mass how far it is over the law:"
	}
	p.wrapped("WEIGHED   ", text)
	var residuals []float64
	if off {
		residuals = d.Fit.Residuals()
	}
	if d.ReadG > 0 {
		to, unit := plot.Show.ToUnit(d.ReadG, pour.UnitGram)
		p.wrapped("          ", fmt.Sprintf("Read to %.3g %s: each can be half of that off, which the fit reckons with.", to, unit))
	}
	for i, w := range d.Means {
		line := padded("          "+plot.DayWords(w.Day), 28) + plot.Weight(w.G)
		if i < len(residuals) {
			line = padded(line, 40) + signed(plot, residuals[i])
		}
		p.raw(line)
	}
}

// often is how often something was done, once at least.
func often(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// barsText names the bars that were weighed.
func barsText(bars []int) string {
	switch {
	case len(bars) == 0:
		return "one bar"
	case len(bars) == 1:
		return "bar " + strconv.Itoa(bars[0])
	}
	var out []string
	for _, n := range bars {
		out = append(out, strconv.Itoa(n))
	}
	return "the mean of bars " + strings.Join(out[:len(out)-1], ", ") + " and " + out[len(out)-1]
}

// signed is how far a mass is over, to a hundredth of a gram or a thousandth of an ounce.
func signed(plot drying.Plot, g float64) string {
	v, unit := plot.Show.ToUnit(g, pour.UnitGram)
	places := 2
	if unit != string(pour.UnitGram) {
		places = 3
	}
	text := plot.Show.Number(v, places)
	if !strings.HasPrefix(text, "-") {
		text = "+" + text
	}
	return text + " " + unit
}

// estimate is a mass with its band.
func estimate(plot drying.Plot, e cure.Estimate) string {
	return fmt.Sprintf("%s, 80 %% band %s to %s", plot.Weight(e.V), plot.Weight(e.Low()), plot.Weight(e.High()))
}

// masses tells the fit and what a bar weighs today, when it is packed and in the end.
func (c Dries) masses(p *page, plot drying.Plot) {
	f, show := c.Drying.Fit, c.Sheet.Plan.Show
	what := "FORECAST  "
	if c.Drying.Weighed {
		what = "FIT       "
	}
	p.wrapped(what, fmt.Sprintf("a bar of %s as cut, of which %s is water that will go; the slowest of it is down to a third in %s days (tau).",
		plot.Weight(f.AG), plot.Weight(f.BG), show.Number(f.TauDays(), 1)))
	if plot.Today.Known {
		p.wrapped("TODAY     ", fmt.Sprintf("%s; it loses %s in the week from now.", estimate(plot, f.Mass(plot.Today.V)), show.Percent(f.WeeklyLoss(plot.Today.V).V, 2)))
	}
	p.wrapped("PACKED    ", fmt.Sprintf("on %s, as planned: %s%s.", plot.DayWords(c.Sheet.Plan.PackDay()), estimate(plot, f.Mass(c.Sheet.Plan.PackDay())), c.later()))
	p.wrapped("FINALLY   ", estimate(plot, f.Final())+".")
}

// later says that something is strewn on the cured bars, which no mass here has in it.
func (c Dries) later() string {
	for i := range c.Sheet.Toppings {
		if !c.Sheet.Toppings[i].OnLoaf() {
			return ", without what is strewn on the cured bar"
		}
	}
	return ""
}

// ready tells when it is dry by the maker's criterion and how sure that is.
func (c Dries) ready(p *page, plot drying.Plot) {
	d := c.Drying
	if !d.Known {
		p.wrapped("READY     ", "when cannot be told.")
		return
	}
	left := "that day is past: weigh to see"
	switch days := int(math.Round(d.Ready.V) - plot.Today.V); { // as the calendar has it
	case !plot.Today.Known:
		left = "counted from the cut"
	case days > 0:
		left = counted(days, "day") + " left"
	case days == 0:
		left = "that is today"
	}
	p.wrapped("READY     ", fmt.Sprintf("on %s, when it loses less than %g %% a week; 80 %% band %s to %s; %s.", plot.DayWords(d.Ready.V), d.Criterion,
		plot.Date(plot.Ready.Low), plot.Date(plot.Ready.High), left))
	if s := c.Spread; s != nil {
		p.wrapped("          ", fmt.Sprintf("Summed over all that could be instead: as likely before %s as after it, eight times in ten from %s to %s.",
			plot.Date(s.P50), plot.Date(s.P10), plot.Date(s.P90)))
	}
}

// prior tells what was believed before the weighings.
func (c Dries) prior(p *page) {
	text := "what four weeks of cure are commonly taken for (common practice, no source): nothing was measured for soap. Three weighed batches of your own take its place."
	if n := c.Drying.Own; n > 0 {
		text = fmt.Sprintf("what %d of your own batches taught: your room, your rack, your bars.", n)
	}
	if c.Drying.Weighed {
		text = "its weighings and, before them, " + text
	}
	p.wrapped("RESTS ON  ", text)
}
