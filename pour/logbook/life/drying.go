package life

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// Drying is how the bars of a batch dry: by what was weighed of them or, before two weighings, as the plan is forecast to.
type Drying struct {
	Fit       *cure.Fit       // of the weighings or, before there are enough, the plan's forecast; nil: neither can be told
	Weighed   bool            // Fit is of weighings, Why says whether they follow the law
	Why       error           // why the weighings tell nothing, in words; nil: they do, or there are too few of them yet and none is odd
	Known     bool            // Ready can be gone by
	Criterion float64         // loss a week, percent, under which the maker calls a bar dry
	Ready     cure.Estimate   // days from the cut; dry by that criterion is all that it means
	Bars      []int           // the same bars, weighed every time, by their numbers
	Means     []cure.Weighing // of those bars, by day
	LeftOut   []day.Day       // of weighings that lack one of those bars, and are left out
	Own       int             // own batches that the prior rests on; 0: on none
	Bar       pour.DryingBar  // the bar as the law takes it
	ReadG     float64         // what the weighings are read to as they show it themselves, g: 1 of a scale that gives whole grams, 0 of a fine one
	SDG       float64         // how good one of the means is
}

// ErrOtherBars is weighings that have no bar in common.
var ErrOtherBars = errors.New("no bar was weighed twice: weigh the same three to five bars every time")

// DryingOf works out how the batch of one pour's file dries, as [Dry] does, by what her other batches taught.
func DryingOf(p logbook.Pour, shelf pour.Shelf, rack cure.Rack) Drying {
	if p.PlanErr != nil {
		return Drying{Why: p.PlanErr}
	}
	return told(p, shelf).Rack.by(rack.Without(p.ID))
}

// Dry works out how a batch dries: sheet is its plan's, weighed or worked, rack what the maker's own batches taught.
func Dry(sheet *pour.Sheet, weighIns []WeighIn, rack cure.Rack) Drying {
	return onRack(sheet, weighIns).by(rack)
}

// racked is all that is known of how a batch dries before anything is worked out of it: what is kept of it from one opening to the next.
type racked struct {
	Bar       pour.DryingBar
	Refused   string // why there is no bar to be told of
	Criterion float64
	StepG     float64 // of the plan's scale
	ReadG     float64 // of the one that bars were weighed on, as their masses show it
	Bars      []int
	Means     []cure.Weighing
	LeftOut   []day.Day
	WeighIns  int
}

// onRack gathers it from the plan's sheet and the weighings.
func onRack(sheet *pour.Sheet, weighIns []WeighIn) racked {
	r := racked{Criterion: sheet.Plan.Cure.Criterion(), StepG: sheet.Plan.Show.ScaleStepG, WeighIns: len(weighIns)}
	r.Bars, r.Means, r.LeftOut = sameBars(weighIns)
	var read []float64
	for _, w := range weighIns {
		for _, bar := range r.Bars {
			if g, ok := w.byBar()[bar]; ok {
				read = append(read, g)
			}
		}
	}
	r.ReadG = cure.DivisionG(read, sheet.Plan.Show.FromUnit(1, pour.UnitGram))
	var err error
	if r.Bar, err = sheet.DryingBar(cure.Rack{}, r.Bars...); err != nil {
		r.Refused = err.Error()
	}
	return r
}

// by works out how the batch dries, with what the maker's own batches taught.
func (r racked) by(rack cure.Rack) Drying {
	d := Drying{Criterion: r.Criterion, Bars: r.Bars, Means: r.Means, LeftOut: r.LeftOut, Bar: r.Bar, ReadG: r.ReadG}
	d.SDG = cure.MeanSDG(max(r.StepG, r.ReadG), len(d.Bars))
	if r.Refused != "" {
		d.Why = errors.New(r.Refused)
		return d
	}
	var err error
	if d.Bar, err = r.Bar.By(rack); err != nil {
		d.Why = err
		return d
	}
	d.Own = d.Bar.Own
	if len(d.Means) < 2 && r.WeighIns > 1 {
		d.Why = ErrOtherBars
	}
	d.fit()
	if d.Fit == nil || d.Weighed && d.Why != nil {
		return d
	}
	d.Ready, err = d.Fit.Ready(d.Criterion)
	d.Known = err == nil && !math.IsNaN(d.Ready.V+d.Ready.SD)
	return d
}

// fit fits the weighings or, before there are two, takes the plan's forecast.
func (d *Drying) fit() {
	bar := d.Bar
	if len(d.Means) >= 2 {
		d.Fit, d.Why = cure.Of(bar.Box, bar.Prior, d.Means, d.SDG)
		d.Weighed = d.Fit != nil
		return
	}
	cutG := bar.CutG
	if len(d.Means) == 1 && d.Means[0].Day < 1 {
		cutG = d.Means[0].G
	}
	fit, err := cure.Forecast(bar.Box, bar.Prior, cutG)
	if d.Fit = fit; err != nil {
		d.Why = err
	}
}

// mostCounted is how many bars that are followed count for more than fewer: three tell as much as all of them (common practice, no source).
const mostCounted = 3

// sameBars are the bars that can be followed, their means, and the days of the weighings that lack one of them and are left out. Of the bars that
// weighings have in common those are followed that were weighed again most, a bar counting each time, and the lowest of several. The one bar of
// older logs is followed where no bar has a number.
func sameBars(weighIns []WeighIn) (bars []int, means []cure.Weighing, left []day.Day) {
	known := make([]map[int]float64, len(weighIns))
	numbered := false
	for i, w := range weighIns {
		known[i] = w.byBar()
		for bar := range known[i] {
			numbered = numbered || bar != OneBar
		}
	}
	if numbered {
		for _, g := range known {
			delete(g, OneBar)
		}
	}
	most := -1
	for _, set := range inCommon(known) {
		again := -1
		for _, g := range known {
			if holds(g, set) {
				again++
			}
		}
		score := again * min(len(set), mostCounted)
		if better := cmp.Or(cmp.Compare(score, most), cmp.Compare(len(set), len(bars)), slices.Compare(bars, set)); better > 0 {
			bars, most = set, score
		}
	}
	for i, g := range known {
		switch {
		case len(bars) == 0:
		case !holds(g, bars):
			left = append(left, weighIns[i].When.Day)
		default:
			sum := 0.0
			for _, bar := range bars {
				sum += g[bar]
			}
			means = append(means, cure.Weighing{Day: weighIns[i].Days, G: sum / float64(len(bars))})
		}
	}
	slices.SortStableFunc(means, func(a, b cure.Weighing) int { return cmp.Compare(a.Day, b.Day) })
	return bars, means, left
}

// inCommon lists the sets of bars that weighings have in common: those of each, of every two, and of all in which a bar is.
func inCommon(known []map[int]float64) [][]int {
	seen := map[string]bool{}
	var out [][]int
	add := func(set []int) {
		if key := fmt.Sprint(set); len(set) > 0 && !seen[key] {
			seen[key] = true
			out = append(out, set)
		}
	}
	for _, g := range known {
		add(slices.Sorted(maps.Keys(g)))
	}
	own, closed := len(out), map[int][]int{}
	for _, g := range known {
		for bar := range g {
			if was, there := closed[bar]; there {
				closed[bar] = both(was, g)
			} else {
				closed[bar] = slices.Sorted(maps.Keys(g))
			}
		}
	}
	for i := range own {
		for _, other := range out[:i] {
			set := slices.DeleteFunc(slices.Clone(out[i]), func(bar int) bool { return !slices.Contains(other, bar) })
			add(set)
		}
	}
	for _, set := range closed {
		add(set)
	}
	return out
}

// both is the bars of a set that a weighing has too.
func both(set []int, g map[int]float64) []int {
	return slices.DeleteFunc(slices.Clone(set), func(bar int) bool { _, ok := g[bar]; return !ok })
}

// holds reports whether a weighing has every bar of a set.
func holds(g map[int]float64, set []int) bool { return len(both(set, g)) == len(set) }

// byBar is what each bar weighed, by its number from 1; where no numbers were said, the first ones in their order.
func (w WeighIn) byBar() map[int]float64 {
	out := make(map[int]float64, len(w.MassesG))
	for i, g := range w.MassesG {
		bar := i + 1
		if i < len(w.Bars) {
			bar = w.Bars[i]
		} else if len(w.Bars) > 0 {
			break // masses of no bar
		}
		out[bar] = g
	}
	return out
}

// Misfit reports whether the weighings are such that no drying law fits them.
func (d Drying) Misfit() bool { return errors.Is(d.Why, &cure.Refusal{Reason: cure.Misfit}) }

// Lawless reports whether there are weighings enough, but such as no day can be told from.
func (d Drying) Lawless() bool {
	return d.Misfit() || errors.Is(d.Why, &cure.Refusal{Reason: cure.Rising})
}

// TellLately says what the bars lost in the week before their last weighing, by nothing but what they weighed; "" where those are too few.
func (d Drying) TellLately() string {
	lost, ok := cure.Lately(d.Means, d.SDG)
	if !ok {
		return ""
	}
	word, percent := "lost", lost.Percent.V
	if percent < 0 {
		word, percent = "gained", -percent
	}
	days := "day"
	if n := math.Round(lost.Days()); n > 1 {
		days = fmt.Sprintf("%.0f days", n)
	}
	return fmt.Sprintf("As weighed it %s %.1f %%, give or take %.1f, in the %s to day %.0f; under %.3g %% a week you call it dry", word, percent, lost.Percent.High()-lost.Percent.V, days, lost.ToDay, d.Criterion)
}

// Tell says in words how far it is: dry when and how sure, or why that cannot be told.
func (d Drying) Tell() string {
	switch {
	case d.Why != nil:
		if lost := d.TellLately(); lost != "" && d.Lawless() {
			return d.Why.Error() + "; no day is given. " + lost
		}
		return d.Why.Error()
	case !d.Known:
		return "when it is dry cannot be told"
	case d.Weighed:
		return fmt.Sprintf("loses under %.3g %% a week from day %.0f on (%.0f to %.0f) by %d weighings", d.Criterion, d.Ready.V, math.Max(0, d.Ready.Low()), d.Ready.High(), len(d.Means))
	case d.Own > 0:
		return fmt.Sprintf("forecast by %d of your own batches: loses under %.3g %% a week from day %.0f on (%.0f to %.0f)", d.Own, d.Criterion, d.Ready.V, math.Max(0, d.Ready.Low()), d.Ready.High())
	}
	return fmt.Sprintf("forecast by no more than common practice: loses under %.3g %% a week from day %.0f on (%.0f to %.0f); two weighings begin to tell", d.Criterion, d.Ready.V, math.Max(0, d.Ready.Low()), d.Ready.High())
}
