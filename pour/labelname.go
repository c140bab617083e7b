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

// LabelName is the name of an ingredient on the shelf; a text that stands nowhere is the name as it stands, unverified.
func (s Shelf) LabelName(text string) label.Name {
	for i := range s.Names {
		if n := &s.Names[i]; strings.EqualFold(n.INCI, text) || strings.EqualFold(n.Plain, text) || strings.EqualFold(n.English, text) {
			return *n
		}
	}
	return label.Name{INCI: text}
}

// label is the name of an oil in lists.
func (o Oil) label() label.Name {
	return label.Name{INCI: cmp.Or(o.INCI, o.Name), English: o.Name, Confidence: o.INCISource.Confidence, Salts: label.Salts{Sodium: o.INCISoap, Confidence: o.INCISource.Confidence}}
}

// label is what a colourant is made of.
func (c Colourant) label() []Ingredient {
	return []Ingredient{{Name: cmp.Or(c.ColourIndex, c.Name), Percent: 100}}
}

// label is what an extra is made of.
func (x Extra) label() []Ingredient { return []Ingredient{{Name: x.Name, Percent: 100}} }

// label is what a topping is made of. Its list names no parts: they are taken as equal.
func (m ToppingMaterial) label() []Ingredient {
	if len(m.Ingredients) == 0 {
		return []Ingredient{{Name: m.Name, Percent: 100}}
	}
	out := make([]Ingredient, 0, len(m.Ingredients))
	for _, text := range m.Ingredients {
		x := Ingredient{Name: text, Percent: 100 / float64(len(m.Ingredients))}
		if len(m.Ingredients) > 1 {
			x.Doubt = "how much of each " + m.Name + " holds is not stated: taken as equal"
		}
		out = append(out, x)
	}
	return out
}

// label is the name of a scent in lists: what is listed as one word.
func (x Scent) label() string { return parfumINCI }
