package stock

import (
	"cmp"
	"slices"

	"pourbench/pour/lot"
)

// Materials are the materials there are packs of, by kind as listed and by id.
func (s *State) Materials() []lot.Material {
	out := make([]lot.Material, 0, len(s.Held))
	for m := range s.Held {
		out = append(out, m)
	}
	slices.SortFunc(out, func(a, b lot.Material) int {
		return cmp.Or(cmp.Compare(slices.Index(lot.Kinds(), a.Kind), slices.Index(lot.Kinds(), b.Kind)), cmp.Compare(a.ID, b.ID))
	})
	return out
}
