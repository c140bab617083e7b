// Package label works out what a bar's label has to say: the list of its ingredients, the allergens of its scents, its weight, the height of its
// letters, and whether a design stays inside what was assessed. It knows no plan and no file, and it is help, never legal advice: every rule of a
// market carries its document, the day it was looked up and how far it was checked.
//
// Units: g and percent by mass.
package label

import "pourbench/chem"

// Name is what a substance is called in lists of ingredients. The INCI name is the key: two things of one INCI name are one line.
type Name struct {
	INCI       string // with the English word in brackets where it has one: "Olea Europaea (Olive) Fruit Oil"
	Plain      string // the form used in the EU: "Olea Europaea Fruit Oil", "Aqua", "CI 77891"; empty: INCI without what stands in brackets
	English    string // the common name: "olive oil"; empty: INCI
	French     string // where a market wants it beside; empty: none known
	Colour     bool   // a colourant, which stands last
	Confidence string // how far the name was checked, in the words of a source; empty: not at all
	Gap        bool   // it is no name: only a packet has those it stands for; it is shown, and never printed
	Salts      Salts  // of a fat or an acid; empty: it has none
}

// Salts are the names of what alkali makes of a fat.
type Salts struct {
	Sodium, Potassium string
	Confidence        string // how far they were checked
	Unassigned        bool   // no such name was found among the assigned ones: it is shown with a warning and never printed on a label unasked
}

// Kind is what a charge is in the making of soap.
type Kind string

// The kinds of charge.
const (
	Fat    Kind = "fat"    // takes part in saponification
	NaOH   Kind = "naoh"   // pure sodium hydroxide
	KOH    Kind = "koh"    // pure potassium hydroxide
	Lost   Kind = "lost"   // impurity of the alkali: carbonate and water, not listed, kept in the balance
	Water  Kind = "water"  // wherever it comes from
	Acid   Kind = "acid"   // takes up alkali beside the fats
	Scent  Kind = "scent"  // a fragrance or essential oil
	Colour Kind = "colour" // a colourant or a part of one
	Other  Kind = "other"  // stays what it is
)

// Charge is something that went into a bar, in grams of one average bar as it was made, nothing dried.
type Charge struct {
	In   string // the mixing it went into: "base", "icing", or an embed's or topping's name; only charges of one mixing react with each other
	Kind Kind
	Name Name
	From string // what of the shelf it came with, as screens name it: "titanium white"
	G    float64
	Fat  chem.Fat // Fat: its kind and saponification value
	Acid Taking   // Acid: what it takes up and becomes

	Doubt string // why its amount is not sure; empty: it is
}

// Taking is what an acid does with alkali, per gram of it.
type Taking struct {
	KOHMgG float64 // alkali it takes up, mg KOH per g
	WaterG float64 // water that comes of it, g per g
	Salts  Salts   // what it becomes
}

// Style is one of the two ways to write a list.
type Style string

// The two styles; one list never mixes them.
const (
	AsAdded Style = "as_added" // oils, water and alkali, by the mass put in
	AsSalts Style = "as_salts" // soaps, glycerin, water and leftover fats, by the mass after the reaction, nothing dried
)

// Entry is one ingredient of a bar before it is put in its place, and how much of it there is.
type Entry struct {
	Name       Name
	Text       string // by which it is listed, in the words of the market; two entries of one text are added up
	G          float64
	Class      Class
	From       []string // what it came with, largest first
	Unverified string   // why its name is not sure, for screens; empty: it is
}

// Class is in which part of a list an entry stands.
type Class string

// The classes.
const (
	Plain     Class = "plain"     // by mass, or freely under the market's threshold
	Perfume   Class = "perfume"   // scent that is listed as one word
	Colourant Class = "colourant" // last
	Unlisted  Class = "unlisted"  // in the balance and never on a label: the impurity of the alkali
)

// Line is an ingredient in its place in a list.
type Line struct {
	Entry
	Percent float64 // of the bar as it was made
	Free    bool    // of what stands by mass: at or under the threshold, from where any order is right
}
