package recipe

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// book is the names on the shelf, ready to be looked up.
type book struct {
	oils   []entry
	others []entry // extras, colourants and scents: known, and not taken
}

// entry is something on the shelf with every name it goes by, each as its words.
type entry struct {
	id, name string
	says     string // of what is not taken
	names    [][]string
}

func newBook(s pour.Shelf) *book {
	var b book
	for _, o := range s.Oils {
		e := entry{id: o.ID, name: o.Name}
		for _, name := range append([]string{o.Name, o.ID, o.INCI}, o.Also...) {
			e.names = append(e.names, words(name))
		}
		b.oils = append(b.oils, e)
	}
	other := func(id, name, says string) {
		b.others = append(b.others, entry{id: id, name: name, says: says, names: [][]string{words(name), words(id)}})
	}
	for _, x := range s.Extras {
		other(x.ID, x.Name, "an extra: a in the panel Extras")
	}
	for _, c := range s.Colourants {
		other(c.ID, c.Name, "a colourant: c puts it into a jug")
	}
	for _, x := range s.Scents {
		other(x.ID, x.Name, "a scent: a at the station Scent")
	}
	return &b
}

func (b *book) name(id string) string {
	for _, e := range b.oils {
		if e.id == id {
			return e.name
		}
	}
	return ""
}

// qualities say how an oil was made or what it is for; it is the same oil to alkali.
const qualities = " organic bio natural raw pure virgin extra refined unrefined deodorised deodorized cold expeller pressed food cosmetic grade rbd the of degree degrees deg f c " //nolint:misspell // makers write it so too

// words are the words of a name that tell which oil it is, in small letters.
func words(name string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !letterOrDigit(r) }) {
		if !strings.Contains(qualities, " "+w+" ") && strings.Trim(w, "0123456789") != "" {
			out = append(out, w)
		}
	}
	return out
}

// weak words are left out in speech: "shea" is shea butter, "palm" is palm oil.
const weak = " oil butter seed nut bean fat "

// oil finds the oil that words name: by the same words in any order, run together or not, or with a weak one left out, if that is one oil
// alone. Where it is not, near lists the names of those that may be meant.
func (b *book) oil(typed []string) (id string, near []string) {
	if len(typed) == 0 {
		return "", nil
	}
	for _, same := range []func(typed, name []string) bool{sameWords, runTogether, weakLeftOut} {
		if found := b.oilsNamed(typed, same); len(found) == 1 {
			return found[0].id, nil
		}
	}
	return "", b.near(typed)
}

func (b *book) oilsNamed(typed []string, same func(typed, name []string) bool) []entry {
	var out []entry
	for _, e := range b.oils {
		if slices.ContainsFunc(e.names, func(name []string) bool { return len(name) > 0 && same(typed, name) }) {
			out = append(out, e)
		}
	}
	return out
}

func sameWords(typed, name []string) bool {
	return len(typed) == len(name) && subset(typed, name) && subset(name, typed)
}

func runTogether(typed, name []string) bool { return strings.Join(typed, "") == strings.Join(name, "") }

func weakLeftOut(typed, name []string) bool {
	return subset(typed, name) && !slices.ContainsFunc(name, func(w string) bool { return !slices.Contains(typed, w) && !strings.Contains(weak, " "+w+" ") })
}

func subset(of, all []string) bool {
	return !slices.ContainsFunc(of, func(w string) bool { return !slices.Contains(all, w) })
}

func names(found []entry) []string {
	const most = 3
	var out []string
	for _, e := range found[:min(len(found), most)] {
		out = append(out, e.name)
	}
	return out
}

// near lists oils that may be meant: those whose name is a slip of the finger away, those that say more than was typed, and those that say less.
func (b *book) near(typed []string) []string {
	joined := strings.Join(typed, " ")
	var found []entry
	for _, tell := range []func(e entry, name []string) bool{
		func(_ entry, name []string) bool {
			full, short := strings.Join(name, " "), strings.Join(strong(name), " ")
			return strict.Nearest(joined, []string{full, short}) != ""
		},
		func(_ entry, name []string) bool { return len(strong(typed)) > 0 && subset(strong(typed), name) },
		func(_ entry, name []string) bool { return len(strong(name)) > 0 && subset(strong(name), typed) },
	} {
		for _, e := range b.oils {
			known := slices.ContainsFunc(found, func(f entry) bool { return f.id == e.id })
			if !known && slices.ContainsFunc(e.names, func(name []string) bool { return tell(e, name) }) {
				found = append(found, e)
			}
		}
	}
	return names(found)
}

// strong are the words that are not weak.
func strong(name []string) []string {
	var out []string
	for _, w := range name {
		if !strings.Contains(weak, " "+w+" ") {
			out = append(out, w)
		}
	}
	return out
}

// aside says what a line is that is known and not taken; empty: it is not known.
func (b *book) aside(typed []string) string {
	for _, e := range b.others {
		if slices.ContainsFunc(e.names, func(name []string) bool {
			return len(name) > 0 && (sameWords(typed, name) || len(typed) > 1 && subset(typed, name))
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
	_, runes := l.amount, []rune(unmarked(l.Text))
	all, _ := numbers(runes)
	var tail []string
	for _, n := range all {
		if n.unit != "" || len(all) == 1 {
			tail = append(tail, strings.TrimFunc(string(runes[n.from:n.to]), unicode.IsSpace))
		}
	}
	return strings.Join(append([]string{name}, tail...), " ")
}
