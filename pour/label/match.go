package label

import (
	"slices"
	"strings"
)

// Match returns the rows of the list that a part of a scent fits: by its CAS numbers, where none fits by what a row covers, where none does by its name.
// Where a number stands in several rows and the name is that of one of them, it is that one. One row is the one; several are to be asked about and never
// picked from; none: it stands in no list.
func Match(p Part, list []Allergen) []int {
	name := spelt(p.Name)
	rows := byCAS(casNumbers(p.CAS), list)
	if len(rows) > 1 {
		if said := slices.DeleteFunc(slices.Clone(rows), func(i int) bool { return !list[i].called(name) }); len(said) == 1 {
			return said
		}
	}
	if len(rows) > 0 || name == "" {
		return rows
	}
	if rows = rowsOf(list, func(a *Allergen) bool { return holds(a.Covers, name) }); len(rows) > 0 {
		return rows
	}
	return rowsOf(list, func(a *Allergen) bool { return strings.EqualFold(a.Name, name) })
}

func byCAS(numbers []string, list []Allergen) []int {
	if len(numbers) == 0 {
		return nil
	}
	return rowsOf(list, func(a *Allergen) bool {
		return slices.ContainsFunc(numbers, func(n string) bool { return slices.Contains(a.CAS, n) })
	})
}

func rowsOf(list []Allergen, fits func(*Allergen) bool) []int {
	var rows []int
	for i := range list {
		if fits(&list[i]) {
			rows = append(rows, i)
		}
	}
	return rows
}

// called reports whether the row, or something it covers, has that name.
func (a *Allergen) called(name string) bool {
	return name != "" && (strings.EqualFold(a.Name, name) || holds(a.Covers, name))
}

func holds(of []string, text string) bool {
	return slices.ContainsFunc(of, func(s string) bool { return strings.EqualFold(s, text) })
}

// spelt is a name of a statement as the list spells it: Greek letters by their names, no space too many.
func spelt(name string) string {
	if strings.IndexFunc(name, func(r rune) bool { return r > '~' }) >= 0 {
		name = strings.NewReplacer("α", "alpha", "β", "beta", "γ", "gamma", "δ", "delta", "Α", "alpha", "Β", "beta", "Γ", "gamma", "Δ", "delta").Replace(name)
	}
	return strings.Join(strings.Fields(name), " ")
}
