package again

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// sniff is how strong a scent was in one week of one pour.
type sniff struct {
	pour     string
	week     int
	strength float64
}

// faint is the strength from which on a scent counts as faint, and held the one that counts as still there.
const (
	faintStrength = 1
	heldStrength  = 2
)

// sniffs lists what was sniffed of a scent in a pour, by week. A note of the whole bar counts where it has that scent alone.
func (p Past) sniffs(id string) []sniff {
	alone := map[string]bool{}
	for _, b := range p.Sheet.Batches() {
		for _, x := range b.Scents {
			alone[x.ID] = true
		}
	}
	if !alone[id] {
		return nil
	}
	var out []sniff
	for _, e := range p.standing {
		if e.Kind == logbook.Sniffed && (e.Life.Scent == id || e.Life.Scent == "" && len(alone) == 1) {
			out = append(out, sniff{p.Pour.ID, p.week(e), e.Value})
		}
	}
	slices.SortStableFunc(out, func(a, b sniff) int { return a.week - b.week })
	return out
}

// fades is the first week in which a scent was faint; false: it never was.
func fades(list []sniff) (week int, ok bool) {
	for _, s := range list {
		if s.strength <= faintStrength {
			return s.week, true
		}
	}
	return 0, false
}

// holds says whether a scent was still there in a week or later.
func holds(list []sniff, week int) bool {
	return slices.ContainsFunc(list, func(s sniff) bool { return s.week >= week && s.strength >= heldStrength })
}

// scents suggests more of a scent that went faint, or in its place one that held as long in another of her pours.
func (a *asker) scents() {
	for _, n := range a.batches() {
		for i, part := range a.plan.Batch(n).Scents {
			list := a.past.sniffs(part.Scent)
			week, faded := fades(list)
			if !faded {
				continue
			}
			sc, _ := a.shelf.Scent(part.Scent)
			why := fmt.Sprintf("%s was %s %s%s", sc.Name, strength(strengthAt(list, week)), weekTold(week), a.alsoFaded(part.Scent, week))
			a.moreScent(n, i, sc.Name, why)
			a.anotherScent(n, i, week, sc.Name, why)
		}
	}
}

func strengthAt(list []sniff, week int) float64 {
	i := slices.IndexFunc(list, func(s sniff) bool { return s.week == week && s.strength <= faintStrength })
	return list[max(i, 0)].strength
}

// alsoFaded says what the other pours with that scent show.
func (a *asker) alsoFaded(id string, week int) string {
	faded, told := 0, 0
	for _, o := range a.others {
		list := o.sniffs(id)
		_, f := fades(list)
		if !f && !holds(list, week) {
			continue
		}
		told++
		if f {
			faded++
		}
	}
	if told == 0 {
		return ""
	}
	return fmt.Sprintf("; faint in %d of %s besides", faded, pours(told))
}

// How much more of a faint scent is tried, and to what step: a step that can be smelled, common practice, no source.
const (
	moreScent = 1.25
	scentStep = 0.1
)

// moreScent suggests a greater load where that brings no caution: limits are those of the cured bar, and what goes over one is not suggested.
func (a *asker) moreScent(n pour.BatchName, i int, name, why string) {
	was := a.plan.Batch(n).Scents[i].PercentOfOils
	load := toStep(was*moreScent, scentStep)
	edit := pour.SetScentLoad(n, i, load)
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err != nil || load <= was || cautions(pour.Work(next, a.shelf, a.hand)) > cautions(a.before) {
		return
	}
	a.suggest(fmt.Sprintf("%s.scent[%d].percent_of_oils", n, i), fmt.Sprintf("raise %s%s to %s of the oils", name, a.of(n), a.show.Percent(load, 1)), why+fmt.Sprintf(", at %s", a.show.Percent(was, 1)), edit)
}

// cautions is how many warnings stand that are no notes.
func cautions(s pour.Sheet) int {
	k := 0
	for _, w := range s.Warnings {
		if w.Severity != pour.Note {
			k++
		}
	}
	return k
}

// anotherScent suggests a scent in its place that in another of her pours was still there when this one was faint.
func (a *asker) anotherScent(n pour.BatchName, i, week int, name, why string) {
	offered := map[string]bool{a.plan.Batch(n).Scents[i].Scent: true}
	for _, o := range a.others {
		for _, b := range o.Sheet.Batches() {
			for _, x := range b.Scents {
				list := o.sniffs(x.ID)
				_, faded := fades(list)
				if offered[x.ID] || faded || !holds(list, week) {
					continue
				}
				offered[x.ID] = true
				a.swap(n, i, x.ID, fmt.Sprintf("put %s in the place of %s%s", x.Name, name, a.of(n)),
					fmt.Sprintf("%s; %s was still %s %s in %s", why, x.Name, strength(last(list).strength), weekTold(last(list).week), o.Pour.ID))
			}
		}
	}
}

func last(list []sniff) sniff { return list[len(list)-1] }

// lookedFor is the most of an aspect that was seen on a pour's bars; false: nobody looked.
func (p Past) lookedFor(aspect string) (most float64, ok bool) {
	for _, e := range p.standing {
		if e.Kind == logbook.Looked && e.What == aspect {
			most, ok = math.Max(most, e.Value), true
		}
	}
	return most, ok
}
