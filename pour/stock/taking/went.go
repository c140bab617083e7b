package taking

import (
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/lot"
)

// Went is what went into the bars of a pour by the events that stand: what was weighed, and to the gram of the plan, before any scale rounds, what nobody
// weighed, so that nothing of which a scale shows nothing is lost. What was left out is not in it (see [logbook.Omitted]), nor is a jug that was left as
// it was: of its batch that much less is in the bars. The number is how many of it were weighed. Where nothing was weighed or left out it is as
// planned, which is nil.
func Went(s *pour.Sheet, shelf pour.Shelf, standing []logbook.Event) (went []pour.Went, weighed int) {
	type place struct {
		batch     pour.BatchName
		jug, kind string
		m         lot.Material
	}
	of := map[place][]Want{}
	for _, w := range Wants(s, shelf, standing) {
		k := place{w.Batch, w.Jug, w.Kind, w.Material}
		of[k] = append(of[k], w)
	}
	omitted := logbook.OmittedBy(standing)
	went = s.AsPlanned(shelf)
	all := len(went)
	went = slices.DeleteFunc(went, func(w pour.Went) bool {
		return omitted.Thing(w.Batch, w.Jug, w.Kind) || w.Jug != "" && omitted.Unused(w.Batch, w.Jug)
	})
	whole := len(went) == all
	for i := range went {
		w := &went[i]
		k := place{w.Batch, w.Jug, w.Kind, w.Material}
		if len(of[k]) > 0 {
			if x := of[k][0]; !x.Planned {
				w.G = x.Q.V()
				weighed++
			}
			of[k] = of[k][1:]
		}
		if part := used(s.Batch(w.Batch), omitted); w.Jug == "" && part < 1 {
			w.G *= part
			whole = false
		}
	}
	if weighed == 0 && whole {
		return nil, 0
	}
	return went, weighed
}

// used is the part of a batch's batter that was poured: all but what was left in jugs.
func used(b *pour.BatchSheet, omitted logbook.Omitted) float64 {
	all, left := 0.0, 0.0
	for _, j := range b.Jugs {
		all += j.BatterG
		if omitted.Unused(b.Name, j.Name) {
			left += j.BatterG
		}
	}
	if left == 0 || !(all > 0) {
		return 1
	}
	return (all - left) / all
}
