package life

import (
	"cmp"
	"slices"
	"strings"

	"pourbench/pour/plain"
)

// Search returns the batches that hold every word, in any place: id, name, what its pour's file says, state and what is due.
func Search(list []Batch, text string) []Batch {
	words := strings.Fields(strings.ToLower(plain.Line(text)))
	var out []Batch
	for _, b := range list {
		if b.holds(words) {
			out = append(out, b)
		}
	}
	return out
}

func (b *Batch) holds(words []string) bool {
	now := strings.ToLower(b.ID + " " + b.Name + " " + string(b.State))
	for _, d := range b.Due {
		now += " " + strings.ToLower(d.Text)
	}
	for _, w := range words {
		if !strings.Contains(b.words, w) && !strings.Contains(now, w) {
			return false
		}
	}
	return true
}

// Sort is what a list of batches is sorted by.
type Sort string

// The ways to sort. Where two are alike the later pour comes first.
const (
	ByDay   Sort = "day"   // of the pour, the latest first
	ByDue   Sort = "due"   // what is due soonest first
	ByState Sort = "state" // in the order of their lives
	ByName  Sort = "name"
	ByLeft  Sort = "left" // most bars first
)

// Sorts lists the ways to sort.
func Sorts() []Sort { return []Sort{ByDay, ByDue, ByState, ByName, ByLeft} }

// Sorted returns the batches in an order.
func Sorted(list []Batch, by Sort) []Batch {
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b Batch) int {
		switch by {
		case ByDue:
			return cmp.Or(cmp.Compare(len(b.Due), 0)-cmp.Compare(len(a.Due), 0), compareDue(a, b))
		case ByState:
			return cmp.Compare(slices.Index(States(), a.State), slices.Index(States(), b.State))
		case ByName:
			return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
		case ByLeft:
			return cmp.Compare(b.Bars.Left, a.Bars.Left)
		}
		return cmp.Or(cmp.Compare(b.Poured, a.Poured), strings.Compare(b.ID, a.ID))
	})
	return out
}

// compareDue orders two batches by what is due first of each.
func compareDue(a, b Batch) int {
	if len(a.Due) == 0 || len(b.Due) == 0 {
		return 0
	}
	return cmp.Compare(a.Due[0].Day, b.Due[0].Day)
}
