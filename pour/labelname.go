package pour

import (
	"cmp"
	"strings"

	"pourbench/pour/label"
)

// Ingredient is a part of something that is listed by what it is made of.
type Ingredient struct {
	Name    string  // as lists of ingredients have it
	Percent float64 // by mass; the parts of a thing sum to 100
	Doubt   string  // why its percent is not sure; empty: it is
}

// ListName is the name of an ingredient on the shelf. Its confidence is that of its source.
type ListName struct {
	ID string
	label.Name
	Also       []string // other words for it, as food lists, packets and sheets have them
	Note       string   // what else to know of it
	Source     Source
	SaltSource Source // of the names of its salts; empty where it has none
}

// LabelName is the name of an ingredient on the shelf, found by any of its forms and by other words for it. A text that stands nowhere is the name
// as it stands, unverified; so is a word that several names share (iron oxides), with what they have in common.
func (s Shelf) LabelName(text string) label.Name {
	if n, ok := s.listed[nameKey(text)]; ok {
		return *n
	}
	return label.Name{INCI: text}
}

// label is the name of an oil in lists. One without a name goes by what screens call it, unverified.
func (o *Oil) label() label.Name {
	if o.INCI == "" {
		return label.Name{INCI: o.Name}
	}
	return label.Name{
		INCI: o.INCI, Plain: o.INCIPlain, English: o.Name, Confidence: o.INCISource.Confidence,
		Salts: label.Salts{
			Sodium: o.INCISoap, Potassium: o.INCIPotassium, Unassigned: o.SaltUnassigned, Confidence: cmp.Or(o.SaltSource.Confidence, o.INCISource.Confidence),
		},
	}
}

// listed is what something is in a list where its shelf entry does not say what it is made of.
func listed(made []Ingredient, name string) []Ingredient {
	if len(made) > 0 {
		return made
	}
	return []Ingredient{{Name: name, Percent: 100}}
}

// inLists is what a colourant is made of. Where its entry says nothing but its numbers, they are taken as equal parts.
func (c *Colourant) inLists() []Ingredient {
	if len(c.MadeOf) > 0 || c.ColourIndex == "" {
		return listed(c.MadeOf, c.Name)
	}
	var numbers []string
	for number := range strings.SplitSeq(c.ColourIndex, ",") {
		if number = strings.TrimSpace(number); number != "" {
			numbers = append(numbers, number)
		}
	}
	if len(numbers) == 0 {
		return listed(nil, c.Name)
	}
	return equalParts(c.Name, len(numbers), func(i int) string { return numbers[i] })
}

// extraInLists is what an extra is made of; a colourant that serves as one is made of what it is in a jug.
func (s *Shelf) extraInLists(x *Extra) []Ingredient {
	if c := s.colourant(x.ID); len(x.MadeOf) == 0 && c.ID == x.ID {
		return c.inLists()
	}
	return listed(x.MadeOf, x.Name)
}

// inLists is what a topping is made of. Where its entry names its parts without how much of each, they are taken as equal.
func (m *ToppingMaterial) inLists() []Ingredient {
	if len(m.MadeOf) > 0 || len(m.Ingredients) == 0 {
		return listed(m.MadeOf, m.Name)
	}
	return equalParts(m.Name, len(m.Ingredients), func(i int) string { return m.Ingredients[i] })
}

// equalParts are the parts of something of which nobody says how much of each there is.
func equalParts(whole string, n int, name func(int) string) []Ingredient {
	out := make([]Ingredient, n)
	for i := range out {
		out[i] = Ingredient{Name: name(i), Percent: 100 / float64(n)}
		if n > 1 {
			out[i].Doubt = "how much of each part " + whole + " holds is not stated: taken as equal"
		}
	}
	return out
}

// onPacket reports whether a part is no name but stands for those that only its packet has. Words that end so are never printed.
func onPacket(name string) bool {
	const colours, soaps = "as on the packet", "Sodium soaps"
	return strings.HasSuffix(name, colours) || name == soaps
}
