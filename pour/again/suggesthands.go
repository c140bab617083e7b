package again

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
)

// handFields are the fields that say how long the hands need for one thing.
func handFields() []string {
	var out []string
	for _, t := range (&pour.Plan{}).Tables() {
		if t.Key != "run" {
			continue
		}
		for _, f := range t.Fields {
			if f.Unit == pour.UnitMinute && f.Key != "cool_lye_min" && f.Key != "skin_min" {
				out = append(out, "run."+f.Key)
			}
		}
	}
	return out
}

// mainly is the part of a step's length that a field must make up before the step tells anything of it.
const mainly = 0.8

// handMin is how long the hands really needed for what a field says, in one pour: the middle of what the steps that hang on it show, of two middle ones
// the one nearer to the plan, so that one step in which the telephone rang moves nothing. Steps is on how many it rests. A step of which something else
// makes up more than a fifth tells nothing of it.
func (p Past) handMin(path string, shelf pour.Shelf) (v float64, steps int) {
	planned, _, _ := pour.Number(p.Sheet.Plan, path)
	if planned <= 0 {
		return 0, 0
	}
	twice, err := pour.Apply(p.Sheet.Plan, shelf, pour.SetNumber(path, 2*planned))
	if err != nil {
		return 0, 0
	}
	sheet := pour.Weigh(twice, shelf)
	longer := map[string]float64{}
	for _, st := range sheet.Stints() {
		longer[st.Key] = st.LengthMin
	}
	var shown []float64
	for _, m := range p.measured() {
		by := longer[m.step.Key] - m.step.LengthMin // what the field makes of the step
		if by < mainly*m.step.LengthMin {
			continue
		}
		shown = append(shown, planned*(m.actual-m.step.LengthMin+by)/by)
	}
	if len(shown) == 0 {
		return 0, 0
	}
	if v = middle(shown, planned); v <= 0 {
		return 0, 0
	}
	return v, len(shown)
}

// middle is the middle of numbers, of which there is at least one; of two middle ones the one nearer to what was planned: it takes more than half of them
// to move a plan.
func middle(list []float64, planned float64) float64 {
	list = slices.Sorted(slices.Values(list))
	low, high := list[(len(list)-1)/2], list[len(list)/2]
	if math.Abs(low-planned) <= math.Abs(high-planned) {
		return low
	}
	return high
}

// leastOff is how far the hands were from their plan before another number is suggested, as a part of it.
const leastOff = 0.25

// mostLooked is how many of the other pours are looked at for the hands.
const mostLooked = 40

// handsMinutes suggests the minutes the hands really needed: the middle of this pour's and of what the others show.
func (a *asker) handsMinutes() {
	for _, path := range handFields() {
		own, steps := a.past.handMin(path, a.shelf)
		planned, f, _ := pour.Number(a.past.Sheet.Plan, path)
		if steps == 0 || math.Abs(own-planned) < max(leastOff*planned, f.Step) {
			continue
		}
		all := []float64{own}
		for _, o := range a.others[:min(len(a.others), mostLooked)] {
			if v, told := o.handMin(path, a.shelf); told > 0 {
				all = append(all, v)
			}
		}
		now, _, _ := pour.Number(a.plan, path)
		of := middle(all, planned)
		v := max(toStep(of, f.Step), f.Step)
		if math.Abs(v-now) < f.Step || (v-planned)*(own-planned) <= 0 {
			continue // the others say that this pour was the odd one
		}
		label, _, _ := strings.Cut(f.Label, " (")
		why := fmt.Sprintf("planned %s, took %s%s; ", a.show.Span(planned), a.show.Span(own), ofSteps(steps))
		if len(all) == 1 {
			why += "one pour only"
		} else {
			why += fmt.Sprintf("the middle of %s is %s", pours(len(all)), a.show.Span(of))
		}
		a.number(path, v, fmt.Sprintf("plan %s for: %s", a.show.Span(v), label), why)
	}
}

// ofSteps says on how many steps of a pour the minutes of the hands rest.
func ofSteps(n int) string {
	if n == 1 {
		return " in its one step"
	}
	return fmt.Sprintf(" in the middle of %d steps", n)
}
