package taking

import (
	"pourbench/pour"
	"pourbench/pour/lot"
)

// Went is what went into the batches of a pour: what was weighed, and to the gram of the plan, before any scale rounds, what nobody weighed, so that
// nothing of which a scale shows nothing is lost. The number is how many of it were weighed; with none it is as planned, which is nil.
func Went(s *pour.Sheet, shelf pour.Shelf, wants []Want) (went []pour.Went, weighed int) {
	type place struct {
		batch     pour.BatchName
		jug, kind string
		m         lot.Material
	}
	of := map[place][]Want{}
	for _, w := range wants {
		k := place{w.Batch, w.Jug, w.Kind, w.Material}
		of[k] = append(of[k], w)
	}
	went = s.AsPlanned(shelf)
	for i := range went {
		w := &went[i]
		k := place{w.Batch, w.Jug, w.Kind, w.Material}
		if len(of[k]) == 0 {
			continue
		}
		if x := of[k][0]; !x.Planned {
			w.G = x.Q.V()
			weighed++
		}
		of[k] = of[k][1:]
	}
	if weighed == 0 {
		return nil, 0
	}
	return went, weighed
}
