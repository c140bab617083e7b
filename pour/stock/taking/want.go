// Package taking works out what a poured batch, its bars or something made beforehand takes out of which packs, what of it no pack covers, and what it
// cost. It writes nothing: it makes entries for the ledger and events for the pour.
package taking

import (
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/lot"
)

// Want is what a pour takes of one material for one of its batches or jugs.
type Want struct {
	pour.MaterialNeed
	Planned bool   // nobody weighed it; it is what the plan has
	Lot     string // that was typed beside the weight; empty: none
	Mark    string // of a weight, the name of its mark in the pour, by which it is corrected
}

// Wants lists what a pour takes: what was weighed by its marks, and what the plan has where nothing was weighed. What by the marks did not go in is not
// taken, weighed or not (see [logbook.Omitted]). The events are those that stand; of those the last weighing of a thing counts (see [logbook.Counting]).
func Wants(s *pour.Sheet, shelf pour.Shelf, standing []logbook.Event) []Want {
	standing, _ = logbook.Counting(standing, s)
	omitted := logbook.OmittedBy(standing)
	var out []Want
	for _, n := range s.Needs(shelf) {
		out = append(out, Want{MaterialNeed: n, Planned: true})
	}
	done := make([]bool, len(out))
	for i := range out {
		if done[i] {
			continue
		}
		alike := []int{}
		for k := i; k < len(out); k++ {
			if out[k].Batch == out[i].Batch && out[k].Jug == out[i].Jug && out[k].Name == out[i].Name {
				alike = append(alike, k)
				done[k] = true
			}
		}
		own, both := weights(out[i].MaterialNeed, standing)
		switch {
		case len(own) >= len(alike):
			for k, e := range own[len(own)-len(alike):] {
				out[alike[k]].weigh(e)
			}
		case len(both) > 0 && len(own) == 0:
			together(out, out[i].MaterialNeed, both[len(both)-1])
		}
	}
	return slices.DeleteFunc(out, func(w Want) bool { return w.Q == 0 || omitted.Thing(w.Batch, w.Jug, w.Kind) })
}

// weights are the marks of a thing's weight: those of its own batch, and those of older logs, which are of base and icing together.
func weights(n pour.MaterialNeed, standing []logbook.Event) (own, both []logbook.Event) {
	for _, e := range standing {
		switch {
		case e.Kind != logbook.Weighed || e.Jug != n.Jug || !strings.EqualFold(e.What, n.Name):
		case e.Batch == n.Batch:
			own = append(own, e)
		case e.Batch == "":
			both = append(both, e)
		}
	}
	return own, both
}

// weigh puts what was weighed in the place of what was planned. What is no weight leaves the plan's.
func (w *Want) weigh(e logbook.Event) {
	if q, ok := lot.Weighed(e.Value); ok {
		w.Q, w.Planned, w.Lot, w.Mark = q, false, e.Lot, e.ID
	}
}

// together divides a weight of base and icing over both, in the proportion the plan has.
func together(list []Want, like pour.MaterialNeed, e logbook.Event) {
	var at []int
	sum := lot.Quantity(0)
	for i, w := range list {
		if w.Name == like.Name && w.Jug == like.Jug && w.Planned {
			at, sum = append(at, i), sum+w.Q
		}
	}
	all, ok := lot.Weighed(e.Value)
	if !ok {
		return
	}
	left := all
	for k, i := range at {
		w := &list[i]
		part, _ := lot.Weighed(all.V() * w.Q.V() / sum.V())
		if k == len(at)-1 {
			part = left
		}
		left -= part
		w.Q, w.Planned, w.Lot, w.Mark = part, false, e.Lot, e.ID
	}
}
