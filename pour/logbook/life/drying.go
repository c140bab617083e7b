package life

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pourbench/chem/cure"
	"pourbench/pour"
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
	Own       int             // own batches that the prior rests on; 0: on none
	Bar       pour.DryingBar  // the bar as the law takes it
}

// ErrOtherBars is weighings that have no bar in common.
var ErrOtherBars = errors.New("no bar was weighed twice: weigh the same three to five bars every time")

// Dry works out how a batch dries: sheet is its plan's, weighed or worked, rack what the maker's own batches taught.
func Dry(sheet *pour.Sheet, weighIns []WeighIn, rack cure.Rack) Drying {
	d := Drying{Criterion: sheet.Plan.Cure.Criterion()}
	d.Bars, d.Means = sameBars(weighIns)
	bar, err := sheet.DryingBar(rack, d.Bars...)
	d.Bar, d.Own = bar, bar.Own
	if err != nil {
		d.Why = err
		return d
	}
	if len(d.Means) < 2 && len(weighIns) > 1 {
		d.Why = ErrOtherBars
	}
	if len(d.Means) >= 2 {
		d.Fit, d.Why = cure.Of(bar.Box, bar.Prior, d.Means, cure.MeanSDG(sheet.Plan.Show.ScaleStepG, len(d.Bars)))
		d.Weighed = d.Fit != nil
	} else {
		cutG := bar.CutG
		if len(d.Means) == 1 && d.Means[0].Day < 1 {
			cutG = d.Means[0].G
		}
		var refused error
		if d.Fit, refused = cure.Forecast(bar.Box, bar.Prior, cutG); refused != nil {
			d.Why = refused
		}
	}
	if d.Fit == nil || d.Weighed && d.Why != nil {
		return d
	}
	d.Ready, err = d.Fit.Ready(d.Criterion)
	d.Known = err == nil && !math.IsNaN(d.Ready.V+d.Ready.SD)
	return d
}

// sameBars are the bars that can be followed and their means: the bar that was weighed most often, the lowest of several, and with it those
// that were weighed every time it was.
func sameBars(weighIns []WeighIn) ([]int, []cure.Weighing) {
	times := map[int]int{}
	var known []map[int]float64
	for _, w := range weighIns {
		g := w.byBar()
		known = append(known, g)
		for bar := range g {
			times[bar]++
		}
	}
	most := 0
	for bar, n := range times {
		if m := times[most]; n > m || n == m && bar < most {
			most = bar
		}
	}
	if most == 0 {
		return nil, nil
	}
	var bars []int
	for bar := range times {
		if every(known, most, bar) {
			bars = append(bars, bar)
		}
	}
	slices.Sort(bars)
	var means []cure.Weighing
	for i, g := range known {
		if _, ok := g[most]; !ok {
			continue
		}
		sum := 0.0
		for _, bar := range bars {
			sum += g[bar]
		}
		means = append(means, cure.Weighing{Day: weighIns[i].Days, G: sum / float64(len(bars))})
	}
	slices.SortStableFunc(means, func(a, b cure.Weighing) int { return cmp.Compare(a.Day, b.Day) })
	return bars, means
}

// every reports whether a bar was weighed each time another was.
func every(known []map[int]float64, most, bar int) bool {
	for _, g := range known {
		_, there := g[most]
		if _, ok := g[bar]; there && !ok {
			return false
		}
	}
	return true
}

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

// Tell says in words how far it is: dry when and how sure, or why that cannot be told.
func (d Drying) Tell() string {
	switch {
	case d.Why != nil:
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
