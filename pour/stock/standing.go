package stock

import (
	"cmp"
	"slices"
)

// Standing returns the entries that count, in the order of their days and on one day in that of the file: those that were neither taken back nor
// corrected, and the corrections, each in the place of what it corrects.
func Standing(entries []Entry) []Entry {
	gone, place := map[string]bool{}, map[string]int{}
	for i, e := range entries {
		place[e.ID] = i
		if e.Kind == TakenBack {
			gone[e.Of] = true
		}
	}
	for i, e := range entries {
		if e.Corrects == "" || gone[e.ID] {
			continue
		}
		gone[e.Corrects] = true
		if at, ok := place[e.Corrects]; ok {
			place[e.ID] = min(i, at)
		}
	}
	out := make([]Entry, 0, len(entries))
	for _, e := range entries {
		if e.Kind != TakenBack && e.Kind != Torn && !gone[e.ID] {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(place[a.ID], place[b.ID]))
	})
	return out
}
