package recipe

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/pour"
	"pourbench/pour/naming"
)

// book is the names on the shelf, ready to be looked up.
type book struct {
	oils   naming.Book
	others []other // extras, colourants and scents: known, and not taken
}

// other is something on the shelf that is no oil, and what is said of it.
type other struct {
	naming.Entry
	says string
}

func newBook(s pour.Shelf) *book {
	var b book
	for _, o := range s.Oils {
		b.oils = append(b.oils, naming.New(o.ID, o.Name, append([]string{o.ID, o.INCI}, o.Also...)...))
	}
	add := func(id, name, says string) { b.others = append(b.others, other{naming.New(id, name, id), says}) }
	for _, x := range s.Extras {
		add(x.ID, x.Name, "an extra: a in the panel Extras")
	}
	for _, c := range s.Colourants {
		add(c.ID, c.Name, "a colourant: c puts it into a jug")
	}
	for _, x := range s.Scents {
		add(x.ID, x.Name, "a scent: a at the station Scent")
	}
	return &b
}

// oil is the id of the oil that words name; empty: none, or several.
func (b *book) oil(typed []string) string {
	e, _ := b.oils.Find(typed)
	return e.Key
}

// aside says what a line is that is known and not taken; empty: it is not known.
func (b *book) aside(typed []string) string {
	for _, e := range b.others {
		if e.Fits(typed, func(typed, name []string) bool {
			return naming.SameWords(typed, name) || len(typed) > 1 && naming.Subset(typed, name)
		}) {
			return e.says
		}
	}
	for _, known := range []struct{ words, says string }{
		{" superfat super discount ", "set in the Lye panel, not taken"},
		{" water lye naoh koh hydroxide caustic ice concentration ", "worked out here, not taken"},
		{" total sum together subtotal ", "a sum, not an oil"},
		{" fragrance scent perfume essential parfum ", "a scent: a at the station Scent"},
		{" mica colourant colorant pigment oxide clay ", "a colourant: c puts it into a jug"}, //nolint:misspell // makers write it so too
	} {
		if slices.ContainsFunc(typed, func(w string) bool { return strings.Contains(known.words, " "+w+" ") }) {
			return known.says
		}
	}
	return ""
}

// Meant says what may be meant where no name was understood, or nothing.
func (l Line) Meant() string {
	if len(l.Near) == 0 {
		return ""
	}
	return "did you mean " + strings.Join(l.Near, ", ") + "?"
}

// Renamed is the text of a line with another name and the amount it has.
func (l Line) Renamed(name string) string {
	_, runes := l.amount, []rune(naming.Unmarked(l.Text))
	all, _ := numbers(runes)
	var tail []string
	for _, n := range all {
		if n.unit != "" || len(all) == 1 {
			tail = append(tail, strings.TrimFunc(string(runes[n.from:n.to]), unicode.IsSpace))
		}
	}
	return strings.Join(append([]string{name}, tail...), " ")
}
