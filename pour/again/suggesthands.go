package again

import (
	"fmt"
	"math"
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

// handMin is how long the hands really needed for what a field says, in one pour: the value of the field with which the lengths of all steps that hang on
// it add up to those that were measured. A step of which something else makes up more than a fifth tells nothing of it.
func (p Past) handMin(path string, shelf pour.Shelf) (v float64, ok bool) {
	planned, _, _ := pour.Number(p.Sheet.Plan, path)
	if planned <= 0 {
		return 0, false
	}
	twice, err := pour.Apply(p.Sheet.Plan, shelf, pour.SetNumber(path, 2*planned))
	if err != nil {
		return 0, false
	}
	sheet := pour.Weigh(twice, shelf)
	longer := map[string]float64{}
	for _, st := range sheet.Stints() {
		longer[st.Key] = st.LengthMin
	}
	var took, rest, hangs float64
	for _, m := range p.measured() {
		by := longer[m.step.Key] - m.step.LengthMin // what the field makes of the step
		if by < mainly*m.step.LengthMin {
			continue
		}
		took, hangs, rest = took+m.actual, hangs+by, rest+m.step.LengthMin-by
	}
	if hangs <= 0 || took <= rest {
		return 0, false
	}
	return planned * (took - rest) / hangs, true
}

// leastOff is how far the hands were from their plan before another number is suggested, as a part of it.
const leastOff = 0.25

// mostLooked is how many of the other pours are looked at for the hands.
const mostLooked = 40

// handsMinutes suggests the minutes the hands really needed: the middle of this pour's and of what the others show.
func (a *asker) handsMinutes() {
	for _, path := range handFields() {
		own, ok := a.past.handMin(path, a.shelf)
		planned, f, _ := pour.Number(a.past.Sheet.Plan, path)
		if !ok || math.Abs(own-planned) < max(leastOff*planned, f.Step) {
			continue
		}
		all := []float64{own}
		for _, o := range a.others[:min(len(a.others), mostLooked)] {
			if v, ok := o.handMin(path, a.shelf); ok {
				all = append(all, v)
			}
		}
		now, _, _ := pour.Number(a.plan, path)
		v := max(toStep(median(all), f.Step), f.Step)
		if math.Abs(v-now) < f.Step || (v-planned)*(own-planned) <= 0 {
			continue // the others say that this pour was the odd one
		}
		label, _, _ := strings.Cut(f.Label, " (")
		why := fmt.Sprintf("planned %s, took %s", a.show.Span(planned), a.show.Span(own))
		if len(all) > 1 {
			why += fmt.Sprintf("; the middle of %s is %s", pours(len(all)), a.show.Span(median(all)))
		}
		a.number(path, v, fmt.Sprintf("plan %s for: %s", a.show.Span(v), label), why)
	}
}
