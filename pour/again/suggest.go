package again

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"pourbench/pour"
)

// Suggestion is a change of the plan that the logbook suggests. The plan stays as it is typed until it is made.
type Suggestion struct {
	Path   string    // of the field it changes, where it changes one
	Says   string    // what it does, as one clause: "plan the oils of the base at 38 °C"
	Why    string    // what in the logbook speaks for it
	Brings string    // what the plan then says that it does not say now
	Edit   pour.Edit // makes it
}

// asker looks for suggestions for a plan that pours a pour again.
type asker struct {
	past   Past
	others []Past // of her other pours, the latest first, without this one
	plan   pour.Plan
	shelf  pour.Shelf
	hand   pour.Hand
	show   pour.Show
	before pour.Sheet // of the plan, with its times
	found  []Suggestion
}

// Suggest lists the changes of a plan that the logbook suggests: by what happened when it was poured and, where they tell of the same, by the maker's
// other pours. Each was tried on a sheet of its own; one that changes nothing, that cannot be or that brings a stop is not among them. What it brings
// is what that sheet says; whether a batch is safe is not judged. It works out some hundred sheets: not for every frame.
func (p Past) Suggest(plan pour.Plan, others []Past, shelf pour.Shelf, h pour.Hand) []Suggestion {
	a := asker{past: p, plan: plan, shelf: shelf, hand: h, show: plan.Show, before: pour.Work(plan, shelf, h)}
	a.others = slices.DeleteFunc(slices.Clone(others), func(o Past) bool { return o.Pour.ID == p.Pour.ID })
	for _, ask := range []func(*asker){
		(*asker).temperatures, (*asker).lyeWait, (*asker).blender, (*asker).moments, (*asker).handsMinutes, (*asker).jugsInTime, (*asker).troubledJugs,
		(*asker).scents, (*asker).cutHour, (*asker).bareOrWrapped, (*asker).ashen, (*asker).overheated, (*asker).coloursSeen, (*asker).dried,
	} {
		ask(&a)
	}
	return a.found
}

// suggest tries a change, and keeps it with what it brings.
func (a *asker) suggest(path, says, why string, edit pour.Edit) {
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err != nil || reflect.DeepEqual(next, a.plan) || slices.ContainsFunc(a.found, func(s Suggestion) bool { return s.Says == says }) {
		return
	}
	sheet := pour.Work(next, a.shelf, a.hand)
	if stops(sheet) > stops(a.before) {
		return
	}
	a.found = append(a.found, Suggestion{Path: path, Says: says, Why: why, Brings: a.brings(sheet), Edit: edit})
}

func stops(s pour.Sheet) int {
	n := 0
	for _, w := range s.Warnings {
		if w.Severity == pour.Stop {
			n++
		}
	}
	return n
}

// number suggests another number at a path of the plan.
func (a *asker) number(path string, v float64, says, why string) {
	was, f, ok := pour.Number(a.plan, path)
	if !ok || math.Abs(was-v) < 1e-9 || (f.High > f.Low && (v < f.Low || v > f.High)) {
		return
	}
	a.suggest(path, says, why, pour.SetNumber(path, v))
}

// leastChance is the least change of a chance that is told, percent.
const leastChance = 5

// brings says what another sheet of the plan says otherwise: warnings that go and come, and jugs whose chance to come too late moves.
func (a *asker) brings(s pour.Sheet) string {
	var parts []string
	if gone := fewer(a.before, s); len(gone) > 0 {
		parts = append(parts, "takes away "+strings.Join(gone, ", "))
	}
	if come := fewer(s, a.before); len(come) > 0 {
		parts = append(parts, "the plan then warns of "+strings.Join(come, ", "))
	}
	for _, b := range s.Batches() {
		was := a.before.Batch(b.Name)
		for i, j := range b.Jugs {
			if was == nil || i >= len(was.Jugs) || was.Jugs[i].Name != j.Name {
				continue
			}
			now, then := j.Clock.LateChancePercent, was.Jugs[i].Clock.LateChancePercent
			if now.Known && then.Known && math.Abs(now.V-then.V) >= leastChance {
				parts = append(parts, fmt.Sprintf("%s too late: %s, was %s", j.Name, a.show.Percent(now.V, 0), a.show.Percent(then.V, 0)))
			}
		}
	}
	if len(parts) == 0 {
		return "no warning and no chance moves by it"
	}
	return strings.Join(parts, "; ")
}

// fewer lists the warnings of one sheet that another has fewer of, each by its code and what it stands on.
func fewer(a, b pour.Sheet) []string {
	var out []string
	for _, w := range a.Warnings {
		same := func(o pour.Warning) bool { return o.Code == w.Code && o.Where == w.Where }
		if told := w.Code + " (" + w.Where + ")"; !slices.ContainsFunc(b.Warnings, same) && !slices.Contains(out, told) {
			out = append(out, told)
		}
	}
	return out
}

// of names a batch where the plan has two.
func (a *asker) of(n pour.BatchName) string {
	if a.plan.Icing == nil {
		return ""
	}
	return " of the " + string(n)
}

// batches names the batches that both the pour and the plan have.
func (a *asker) batches() []pour.BatchName {
	out := []pour.BatchName{pour.Base}
	if a.plan.Icing != nil && a.past.Sheet.Icing != nil {
		out = append(out, pour.Icing)
	}
	return out
}

// toStep rounds a number to a step.
func toStep(v, step float64) float64 { return math.Round(math.Round(v/step)*step*1e6) / 1e6 }

// pours says so many pours.
func pours(n int) string {
	if n == 1 {
		return "1 pour"
	}
	return fmt.Sprintf("%d pours", n)
}
