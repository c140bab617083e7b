package again

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// trouble is a jug that seized or riced, with the words for it.
type trouble struct {
	batch pour.BatchName
	jug   string
	word  string
}

// troubles lists the jugs of a pour that seized or riced, each once. What went wrong before the split is of no jug: neither its scent nor its turn did it.
func (p Past) troubles() []trouble {
	var out []trouble
	for _, e := range p.standing {
		x := trouble{e.Batch, e.Jug, troubled(e.What)}
		if e.Kind == logbook.Troubled && (e.What == logbook.Seizes || e.What == logbook.Rices) && !logbook.SplitAfter(p.standing, e) && !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	return out
}

// troubledScents are the ids of the scents in jugs that seized or riced.
func (p Past) troubledScents() []string {
	var out []string
	for _, x := range p.troubles() {
		if i := p.jugAt(x.batch, x.jug); i >= 0 {
			for _, s := range p.Sheet.Batch(x.batch).Jugs[i].Scents {
				out = append(out, s.ID)
			}
		}
	}
	return out
}

// troubledJugs suggests for a jug that seized or riced to pour it first and, in the place of its scent, one that gave no trouble in another of her pours.
func (a *asker) troubledJugs() {
	for _, x := range a.past.troubles() {
		b := a.plan.Batch(x.batch)
		if b == nil || !slices.ContainsFunc(b.Jugs, func(j pour.Jug) bool { return j.Name == x.jug }) {
			continue
		}
		if x.batch == pour.Base {
			a.pouredFirst(x)
		}
		for i, part := range b.Scents {
			if part.GoesInto(x.jug) {
				a.gentler(x, i)
			}
		}
	}
}

// pouredFirst suggests to pour a jug before all others, where that makes it come too late less often and brings no new caution.
func (a *asker) pouredFirst(x trouble) {
	names := []string{x.jug}
	for _, k := range a.before.PourOrder() {
		if j := a.before.Base.Jugs[k].Name; j != x.jug {
			names = append(names, j)
		}
	}
	edit := pour.SetPourOrder(a.before, names)
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err != nil {
		return
	}
	sheet := pour.Work(next, a.shelf, a.hand)
	if cautions(sheet) <= cautions(a.before) && lateOf(sheet, x.jug) < lateOf(a.before, x.jug)-leastChance {
		a.suggest("", "pour "+x.jug+" first", x.jug+" "+x.word, edit)
	}
}

// lateOf is a jug's chance to come too late, percent; 0 where it is not known.
func lateOf(s pour.Sheet, jug string) float64 {
	for _, j := range s.Base.Jugs {
		if j.Name == jug {
			return j.Clock.LateChancePercent.V
		}
	}
	return 0
}

// mostScents is how many scents are offered in the place of one.
const mostScents = 3

// gentler suggests another scent that gave no trouble in any of her pours, where that was really told.
func (a *asker) gentler(x trouble, i int) {
	part := a.plan.Batch(x.batch).Scents[i]
	rough := a.past.troubledScents()
	for _, o := range a.others {
		rough = append(rough, o.troubledScents()...)
	}
	if !slices.Contains(a.past.troubledScents(), part.Scent) {
		return // it was swapped already
	}
	own, _ := a.shelf.Scent(part.Scent)
	offered := []string{}
	for _, o := range a.others {
		for _, b := range o.Sheet.Batches() {
			for _, s := range b.Scents {
				if len(offered) == mostScents || s.ID == part.Scent || slices.Contains(rough, s.ID) || slices.Contains(offered, s.ID) || a.faster(s.ID, part.Scent) {
					continue
				}
				ground, told := o.calm(s)
				if !told {
					continue
				}
				offered = append(offered, s.ID)
				a.swap(x.batch, i, s.ID, fmt.Sprintf("put %s in the place of %s%s", s.Name, own.Name, a.of(x.batch)), fmt.Sprintf("%s %s; %s; %s is no faster by the shelf", x.jug, x.word, ground, s.Name))
			}
		}
	}
}

// swap suggests another scent in a scent's place where that brings no caution, and none that by its shelf is faster.
func (a *asker) swap(n pour.BatchName, i int, id, says, why string) {
	if a.faster(id, a.plan.Batch(n).Scents[i].Scent) {
		return
	}
	edit := pour.SwapScent(n, i, id)
	next, err := pour.Apply(a.plan, a.shelf, edit)
	if err == nil && cautions(pour.Work(next, a.shelf, a.hand)) <= cautions(a.before) {
		a.suggest(fmt.Sprintf("%s.scent[%d].scent", n, i), says, why, edit)
	}
}
