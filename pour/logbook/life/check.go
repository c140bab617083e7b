package life

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/strict"
)

// check judges an event before it is logged: against its form, its pour, and the batch as it stands with it and without it.
type check struct {
	pour          logbook.Pour
	before, after *Batch
	shelf         pour.Shelf
	e             logbook.Event
	now           time.Time
}

// refusal says what cannot be, and how to put it right; nil: it can.
func (c *check) refusal() error {
	if c.e.Kind == logbook.TakenBack {
		return c.stands(c.e.What, "take back")
	}
	if c.e.Corrects != "" {
		if err := c.stands(c.e.Corrects, "correct"); err != nil {
			return err
		}
	} else if !c.e.Kind.OfLife() && !weighedLater(c.e) {
		return fmt.Errorf("it is no event of a batch's life; its kinds are %s", kinds())
	}
	for _, f := range []func() error{c.form, c.day, c.place, c.ticked, c.counts, c.bars} {
		if err := f(); err != nil {
			return err
		}
	}
	return nil
}

func kinds() string {
	var words []string
	for _, f := range Forms() {
		words = append(words, string(f.Kind))
	}
	return strings.Join(words, ", ")
}

// stands refuses to correct or take back what is not there, or no longer counts.
func (c *check) stands(id, do string) error {
	has := func(list []logbook.Event) bool {
		return slices.ContainsFunc(list, func(e logbook.Event) bool { return e.ID == id })
	}
	switch {
	case !has(c.pour.Events):
		return fmt.Errorf("%s %q: this pour has no such event; pourbench logbook show %s lists them", do, id, c.pour.ID)
	case !has(logbook.Standing(c.pour.Events)):
		return fmt.Errorf("%s %q: it does not count any more, because it was taken back or another stands in its place", do, id)
	case !has(c.before.Events):
		return c.ofPour(id, do)
	}
	return nil
}

// form holds the event against the fields of its kind.
func (c *check) form() error {
	e := c.e
	for _, f := range Fields(&e, c.pour.Plan) {
		if f.Required && f.Text() == "" {
			return fmt.Errorf("%s is missing: %s", f.Key, f.Describe())
		}
		if err := f.Set(f.Text()); err != nil {
			return err
		}
	}
	if n := utf8.RuneCountInString(e.Text + e.What + e.Lot + e.Life.Audience + e.Life.Path); n > logbook.MostLetters {
		return fmt.Errorf("%d letters are more than the %d that fit; write less", n, logbook.MostLetters)
	}
	return nil
}

// day refuses days before the pour, and days and hours to come.
func (c *check) day() error {
	at := moment(c.e)
	today := Moment{day.Of(c.now), c.now.Hour()*minutes + c.now.Minute(), true}
	switch {
	case c.e.Kind == logbook.Weighed: // it is of the moment it was weighed at
	case at.Day < c.before.Poured:
		return fmt.Errorf("%s is before the pour, which was on %s", at.Day, c.before.Poured)
	case at.Day > today.Day, at.Day == today.Day && at.Hour && at.compare(today) > 0:
		return fmt.Errorf("%s is still to come; today is %s", c.e.Life.Day, today.Day)
	}
	return nil
}

// place refuses what this pour has no place for: a loaf of a trial, a scent or jug that is not in its plan, a cut of what is not cut.
func (c *check) place() error {
	e := c.e
	notes := []logbook.EventKind{logbook.Weighed, logbook.Sniffed, logbook.Looked, logbook.Tested, logbook.Photo, logbook.Failed}
	switch {
	case c.before.State == Trial && !slices.Contains(notes, e.Kind):
		return errors.New("it was a trial, and nothing was poured into a mould")
	case e.Kind == logbook.Sold && c.before.Is(Failed) && e.Corrects == "":
		return errors.New("the batch is logged as failed, and its bars are not sold; take that back if it is not so")
	case e.Kind == logbook.Sold && c.before.CutDay == nil && e.Corrects == "":
		return errors.New("it is not logged that the loaf was cut: log that first, with slice")
	case e.Life.Scent != "" && c.pour.PlanErr == nil && !slices.Contains(scentsOf(c.pour.Plan), e.Life.Scent):
		return strict.NoWord("scent", e.Life.Scent, scentsOf(c.pour.Plan))
	case e.Jug != "" && c.pour.PlanErr == nil && !slices.Contains(jugsOf(c.pour.Plan), e.Jug):
		return strict.NoWord("jug", e.Jug, jugsOf(c.pour.Plan))
	case e.Kind == logbook.Tested && e.What == logbook.TestPH && (e.Value <= 0 || e.Value > 14):
		return fmt.Errorf("a pH of %v cannot be; write 0 to 14", e.Value)
	case e.Kind == logbook.WeighIn && c.cutDay() != nil && moment(e).Day < *c.cutDay():
		return fmt.Errorf("%s is before the cut, which was on %s", moment(e).Day, *c.cutDay())
	}
	return nil
}

// cutDay is the day of the cut as other events have it.
func (c *check) cutDay() *day.Day { return c.before.CutDay }

// counts refuses more bars than there are.
func (c *check) counts() error {
	if over, was := c.after.Bars.Over, c.before.Bars.Over; over > was && c.e.Kind != logbook.Counted {
		if c.e.Corrects != "" || c.e.Kind == logbook.Sliced {
			return fmt.Errorf("%d bars are gone already, more than the %d there would be", c.after.Bars.out(), c.after.Bars.Bars)
		}
		of := "that were cut"
		if c.after.Bars.Planned {
			of = "of the plan; log the cut with its count if there were more"
		}
		return fmt.Errorf("%d bars are more than the %d that are left of the %d %s", c.e.Life.Count, c.before.Bars.Left, c.after.Bars.Bars, of)
	}
	if c.e.Kind == logbook.Sliced && c.e.Life.Count == 0 && len(c.e.Life.MassesG) == 0 {
		return errors.New("say how many bars there are, with count, or what each of them weighs")
	}
	if n := max(c.e.Life.Count, len(c.e.Life.MassesG)); c.e.Kind == logbook.Sliced && c.e.Life.Seconds > n {
		return fmt.Errorf("%d seconds are more than the %d bars", c.e.Life.Seconds, n)
	}
	if c.e.Kind == logbook.Lotted && c.e.Life.Count == 0 {
		if c.before.Bars.Known {
			return errors.New("no bar is left to be labelled")
		}
		return errors.New("say how many bars are labelled, with count: it is not logged how many there are")
	}
	lotted := 0
	for _, l := range c.after.Lots {
		lotted += l.Count
	}
	if c.e.Kind == logbook.Lotted && c.after.Bars.Known && lotted > c.after.Bars.Bars {
		return fmt.Errorf("%d labelled bars are more than the %d there were", lotted, c.after.Bars.Bars)
	}
	return nil
}

// bars refuses bars that there are none of.
func (c *check) bars() error {
	l := c.e.Life
	n, known := c.after.Bars.Bars, c.after.Bars.Known && c.after.CutDay != nil
	for i, bar := range l.Bars {
		switch {
		case slices.Contains(l.Bars[:i], bar):
			return fmt.Errorf("bar %d is named twice", bar)
		case known && bar > n:
			return fmt.Errorf("there is no bar %d: %d were cut, numbered from 1 at end A", bar, n)
		}
	}
	switch {
	case len(l.Bars) > 0 && len(l.Bars) != len(l.MassesG):
		return fmt.Errorf("%d masses and %d bars: write one mass for every bar named", len(l.MassesG), len(l.Bars))
	case c.e.Kind == logbook.WeighIn && known && len(l.MassesG) > n:
		return fmt.Errorf("%d masses are more than the %d bars that were cut", len(l.MassesG), n)
	}
	for _, g := range l.MassesG {
		if !(g > 0) {
			return fmt.Errorf("a bar weighs more than 0 g, so %v g cannot be", g)
		}
	}
	return nil
}
