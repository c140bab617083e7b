package label

import (
	"cmp"
	"math"
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
// One CAS number in several rows of the list is never picked from: it comes by its own name, with [Found.Either], and counts for none of them.
// Percentages are NaN for a bar without mass, and nothing is named then.
func Allergens(scents []ScentIn, cutG, curedG float64, m Market, list []Allergen) []Found {
	f := sums{list: list, at: map[sum]int{}}
	for i := range scents {
		f.scent(&scents[i])
	}
	for i := range f.of {
		f.judge(i, cutG, curedG, m)
	}
	slices.SortStableFunc(f.of, func(a, b Found) int {
		return cmp.Or(cmp.Compare(math.Round(b.G/least), math.Round(a.G/least)), strings.Compare(a.Name, b.Name))
	})
	return f.of
}

// least is the mass, g, below which a difference is not one: sums in another order are not another order.
const least = 1e-9

// sums are being added up.
type sums struct {
	list []Allergen
	of   []Found
	row  []int // of each, its row of the list; none
	at   map[sum]int
}

// sum is what is added up: a row of the list, or a name that has none.
type sum struct {
	row  int
	name string // in small letters; empty with a row
}

// none is the row of what stands in no list.
const none = -1

func (f *sums) scent(s *ScentIn) {
	self := none
	if s.Extract != "" {
		self = f.count(s.Name, Part{Name: s.Extract}, s.G, none)
	}
	for _, p := range s.Parts {
		f.count(s.Name, p, s.G*p.Percent/100, self)
	}
}

// count adds g of a part of a scent, and returns its row of the list, or none. All of an extract's mass counts already, so that a part that is the
// extract itself is left out.
func (f *sums) count(scent string, p Part, g float64, self int) int {
	rows := Match(p, f.list)
	switch {
	case len(rows) == 1 && rows[0] == self:
	case len(rows) == 1:
		f.add(sum{row: rows[0]}, Found{Name: f.list[rows[0]].Name}, Traced{scent, g})
	default:
		is := Found{Name: p.Name}
		for _, row := range rows {
			is.Either = append(is.Either, f.list[row].Name)
		}
		f.add(sum{none, strings.ToLower(p.Name)}, is, Traced{scent, g})
	}
	if len(rows) != 1 {
		return none
	}
	return rows[0]
}

// add counts some of what is added up.
func (f *sums) add(key sum, is Found, some Traced) {
	if !(some.G > 0) {
		return
	}
	at, known := f.at[key]
	if !known {
		at = len(f.of)
		f.at[key] = at
		f.of, f.row = append(f.of, is), append(f.row, key.row)
	}
	found := &f.of[at]
	found.G += some.G
	from := slices.IndexFunc(found.From, func(t Traced) bool { return t.Scent == some.Scent })
	if from < 0 {
		found.From = append(found.From, some)
		return
	}
	found.From[from].G += some.G
}

// judge puts a sum in proportion to the bar and says what follows from that.
func (f *sums) judge(at int, cutG, curedG float64, m Market) {
	found := &f.of[at]
	slices.SortStableFunc(found.From, func(a, b Traced) int { return cmp.Compare(b.G, a.G) })
	found.CutPercent = chem.PercentOfBar(found.G, cutG)
	found.CuredPercent = chem.PercentOfBar(found.G, curedG)
	row := f.row[at]
	if row == none {
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
