package pour

import (
	"strings"

	"pourbench/pour/label"
)

// names are names of ingredients by all that a list can call them.
type names map[string]*label.Name

// nameKey is a name without what does not tell names apart.
func nameKey(text string) string { return strings.ToLower(strings.Join(strings.Fields(text), " ")) }

// listedNames are all names of the shelf; those of the oils come first, because they know their soaps. Other words for a thing stand only where no name does.
func (s *Shelf) listedNames() names {
	all := make([]label.Name, 0, len(s.Oils)+len(s.Names))
	also := make([][]string, 0, cap(all))
	for i := range s.Oils {
		if s.Oils[i].INCI != "" {
			all, also = append(all, s.Oils[i].label()), append(also, s.Oils[i].Also)
		}
	}
	for i := range s.Names {
		all, also = append(all, s.Names[i].listed()), append(also, s.Names[i].Also)
	}
	to := make(names, 5*len(all))
	for i := range all {
		for _, form := range all[i].Forms() {
			to.enter(form, &all[i])
		}
	}
	for i := range all {
		to.soaps(&all[i].Salts)
		for _, word := range also[i] {
			to.offer(word, &all[i])
		}
	}
	return to
}

// enter has a text stand for a name. Of an ingredient and a colourant of one word it is the ingredient; for two of a kind it is what they have in common,
// which is no name that anybody looked up.
func (to names) enter(text string, n *label.Name) {
	key := nameKey(text)
	was, taken := to[key]
	switch {
	case key == "" || taken && !was.Colour && n.Colour:
	case !taken || was.Colour && !n.Colour:
		to[key] = n
	case was.INCI != n.INCI || was.EU() != n.EU():
		both := label.Name{INCI: text, Colour: n.Colour}
		if was.INCI == n.INCI {
			both.INCI = n.INCI
		}
		if was.EU() == n.EU() {
			both.Plain = n.EU()
		}
		to[key] = &both
	}
}

// offer has a text stand for a name where it stands for none.
func (to names) offer(text string, n *label.Name) {
	key := nameKey(text)
	if _, taken := to[key]; !taken && key != "" {
		to[key] = n
	}
}

// soaps offers the names of salts that were found, which bought soap is listed by.
func (to names) soaps(s *label.Salts) {
	if s.Unassigned {
		return
	}
	for _, text := range [2]string{s.Sodium, s.Potassium} {
		if text != "" {
			to.offer(text, &label.Name{INCI: text, Confidence: s.Confidence})
		}
	}
}

// listed is the name with what its sources say of how far it was checked.
func (n *ListName) listed() label.Name {
	out := n.Name
	out.Confidence, out.Salts.Confidence = n.Source.Confidence, n.SaltSource.Confidence
	return out
}
