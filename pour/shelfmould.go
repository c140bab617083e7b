package pour

import "slices"

// MouldEntry is a mould on the shelf.
type MouldEntry struct {
	ID, Name string
	Mould    Mould
	Source   Source
	Own      bool // the maker's own shelf file says something of it
}

// MouldsToTake are the moulds in the order they are offered: the maker's own before the others.
func (s Shelf) MouldsToTake() []MouldEntry {
	out := slices.Clone(s.Moulds)
	slices.SortStableFunc(out, func(a, b MouldEntry) int {
		switch {
		case a.Own == b.Own:
			return 0
		case a.Own:
			return -1
		}
		return 1
	})
	return out
}
