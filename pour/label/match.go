package label

import "strings"

// Match returns the rows of the list that a part of a scent fits: by its CAS number, where none fits by what a row covers, where none does by its name.
// One row is the one; several are to be asked about and never picked from; none: it stands in no list.
func Match(p Part, list []Allergen) []int {
	name := strings.TrimSpace(p.Name)
	for _, fits := range []func(a *Allergen) bool{
		func(a *Allergen) bool { return p.CAS != "" && holds(a.CAS, p.CAS) },
		func(a *Allergen) bool { return name != "" && holds(a.Covers, name) },
		func(a *Allergen) bool { return name != "" && strings.EqualFold(a.Name, name) },
	} {
		var rows []int
		for i := range list {
			if fits(&list[i]) {
				rows = append(rows, i)
			}
		}
		if len(rows) > 0 {
			return rows
		}
	}
	return nil
}

func holds(of []string, text string) bool {
	for _, s := range of {
		if strings.EqualFold(s, text) {
			return true
		}
	}
	return false
}
