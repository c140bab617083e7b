package label

import (
	"cmp"
	"slices"
	"strings"

	"pourbench/chem"
)

// ScentIn is a scent in a bar.
type ScentIn struct {
	Name    string // as screens name it
	G       float64
	Parts   []Part // what its statement says is in it
	Extract string // its name on labels when the scent itself is a listed natural extract; empty: it is none
}

// Part is a substance in a scent, percent of the scent.
type Part struct {
	Name, CAS string
	Percent   float64
}

// Allergens returns what is in the scents of a bar that weighs cutG as it was made and curedG when it is sold, the largest first: one substance, or one
// group, summed over all of them. A scent that is itself a listed extract counts with all of its mass, and its parts count by themselves as well. One is
// named where the market's list has it and more than the market's threshold of the cured bar is there, none of the scent taken to be lost in drying.
// Percentages are NaN for a bar without mass, and nothing is named then.
func Allergens(scents []ScentIn, cutG, curedG float64, m Market, list []Allergen) []Found {
	f := sums{list: list, at: map[string]int{}}
	for i := range scents {
		f.scent(&scents[i])
	}
	for i := range f.of {
		f.judge(i, cutG, curedG, m)
	}
	slices.SortStableFunc(f.of, func(a, b Found) int {
		return cmp.Or(cmp.Compare(b.G, a.G), strings.Compare(a.Name, b.Name))
	})
	return f.of
}

// sums are being added up.
type sums struct {
	list []Allergen
	of   []Found
	row  []int // of each, its row of the list; -1: none
	at   map[string]int
}

func (f *sums) scent(s *ScentIn) {
	self := -1
	if s.Extract != "" {
		self = slices.IndexFunc(f.list, func(a Allergen) bool { return strings.EqualFold(a.Name, s.Extract) })
		f.add(self, Found{Name: s.Extract}, s.Name, s.G)
	}
	for _, p := range s.Parts {
		g := s.G * p.Percent / 100
		switch rows := Match(p, f.list); {
		case len(rows) == 0:
			f.add(-1, Found{Name: p.Name}, s.Name, g)
		case len(rows) > 1:
			either := Found{Name: p.Name}
			for _, row := range rows {
				either.Either = append(either.Either, f.list[row].Name)
			}
			f.add(-1, either, s.Name, g)
		case rows[0] != self: // All of an extract's mass counts already.
			f.add(rows[0], Found{Name: f.list[rows[0]].Name}, s.Name, g)
		}
	}
}

// add counts g of a row of the list, or of what has none under its own name.
func (f *sums) add(row int, is Found, scent string, g float64) {
	if !(g > 0) {
		return
	}
	key := strings.ToLower(is.Name)
	at, known := f.at[key]
	if !known {
		at = len(f.of)
		f.at[key] = at
		f.of, f.row = append(f.of, is), append(f.row, row)
	}
	found := &f.of[at]
	found.G += g
	for i := range found.From {
		if found.From[i].Scent == scent {
			found.From[i].G += g
			return
		}
	}
	found.From = append(found.From, Traced{Scent: scent, G: g})
}

// judge puts a sum in proportion to the bar and says what follows from that.
func (f *sums) judge(at int, cutG, curedG float64, m Market) {
	found := &f.of[at]
	slices.SortStableFunc(found.From, func(a, b Traced) int { return cmp.Compare(b.G, a.G) })
	found.CutPercent = chem.PercentOfBar(found.G, cutG)
	found.CuredPercent = chem.PercentOfBar(found.G, curedG)
	row := f.row[at]
	if row < 0 {
		found.Unlisted = true
		return
	}
	a := &f.list[row]
	found.Prohibited, found.Most = a.Prohibited, a.MostRinse
	found.Over = a.Prohibited || a.MostRinse > 0 && found.CuredPercent > a.MostRinse+threshold
	found.Named = m.names(a) && found.CuredPercent > m.OverPercent+threshold
}

// names says whether an allergen is one of those the market wants named.
func (m Market) names(a *Allergen) bool {
	if a.Prohibited || a.CapOnly {
		return false
	}
	switch m.Allergens {
	case AllergensLong:
		return true
	case AllergensOld:
		return a.Old
	}
	return false
}
