package again

import (
	"fmt"
	"math"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/logbook/life"
)

// Weighings from which on a pour says by itself how its bars dry, whatever is believed of others; and the days by which that must be off the plan.
const (
	leastWeighings = 3
	leastDays      = 3.0
)

// dryDay is when the bars lose less than the maker's criterion, in days from the cut, by their own weighings. It says nothing of how safe they are.
func (p Past) dryDay() (cure.Estimate, bool) {
	return p.drying.Ready, p.drying.Known && p.drying.Weighed && len(p.drying.Means) >= leastWeighings
}

// off says whether a day from the cut is off the planned length of the cure.
func (p Past) off(day float64) bool { return math.Abs(day-p.Sheet.Plan.Bed.CureDays) >= leastDays }

// daysTold says a number of days, in weeks where it is whole ones.
func daysTold(days float64) string {
	n := int(math.Round(days))
	switch {
	case n == 7:
		return "a week"
	case n%7 == 0 && n > 0:
		return fmt.Sprintf("%d weeks", n/7)
	case n == 1:
		return "a day"
	}
	return fmt.Sprintf("%d days", n)
}

// lostPart is the part of its mass at the cut that a bar loses until it is dry: as its weighings are fitted, or as the one bar of older logs was weighed.
func (p Past) lostPart() (part float64, ok bool) {
	if _, fitted := p.dryDay(); fitted {
		return 1 - p.drying.Fit.Final().V/p.drying.Fit.Mass(0).V, true
	}
	var first, last float64
	for _, w := range p.weighIns {
		g, is := w.Mass(life.OneBar)
		switch {
		case !is:
		case first == 0:
			first = g
		default:
			last = g
		}
	}
	if first <= 0 || last <= 0 || last >= first {
		return 0, false
	}
	return 1 - last/first, true
}

// leastMoisture is how far the water left in a bar is from its plan before another figure is suggested, percent.
const leastMoisture = 0.5

// dried suggests the water that is left in the bar by what it really lost, and the days of cure that it really took.
func (a *asker) dried() {
	a.cureDays()
	lost, ok := a.past.lostPart()
	b := a.past.Sheet.Bars
	if !ok || !pour.AsFigure(b.CutG).Known || !pour.AsFigure(b.CuredG).Known || b.CutG <= 0 {
		return
	}
	dry := b.CuredG * (1 - b.FinalMoisturePercent/100) // what is no water, by the plan
	left := 100 * (1 - dry/(b.CutG*(1-lost)))
	for _, n := range a.batches() {
		planned := a.past.Sheet.Plan.Batch(n).FinalMoisturePercent
		if v := toStep(left, leastMoisture); math.Abs(left-planned) >= leastMoisture && v >= 0 {
			a.number(string(n)+".final_moisture_percent", v, fmt.Sprintf("plan %s of water in the cured bar%s", a.show.Percent(v, 1), a.of(n)),
				fmt.Sprintf("a bar loses %s of what it weighed when cut; the plan has %s", a.show.Percent(100*lost, 1), a.show.Percent(100*(1-b.CuredG/b.CutG), 1)))
		}
	}
}

// cureDays suggests as many days of cure as the bars really took, where the planned ones lie outside the band.
func (a *asker) cureDays() {
	ready, ok := a.past.dryDay()
	planned := a.past.Sheet.Plan.Bed.CureDays
	if !ok || !a.past.off(ready.V) || planned >= ready.Low() && planned <= ready.High() {
		return
	}
	v := math.Ceil(ready.V)
	a.number("bed.cure_days", v, fmt.Sprintf("cure for %s days", a.show.Number(v, 0)),
		fmt.Sprintf("by %d weighings it loses under %s a week from day %s on (%s to %s); that says when it is dry, and nothing else", len(a.past.drying.Means),
			a.show.Percent(a.past.drying.Criterion, 1), a.show.Number(ready.V, 0), a.show.Number(math.Max(0, ready.Low()), 0), a.show.Number(ready.High(), 0)))
}
