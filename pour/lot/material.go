// Package lot is what lies on a maker's shelves, by packs and their lots: quantities that are exact, which pack is picked first, and what it
// cost. It knows no plan, no file and no clock.
package lot

import (
	"fmt"
	"strings"
)

// Kind is a kind of material.
type Kind string

// The kinds of material. Those of the shelf go by the id the shelf has for them; the others by an id of the maker's own.
const (
	Oil       Kind = "oil"
	Alkali    Kind = "alkali" // IDs NaOH and KOH
	Colourant Kind = "colourant"
	Extra     Kind = "extra"
	Scent     Kind = "scent"
	Topping   Kind = "topping"
	Blend     Kind = "blend" // mixed by the maker beforehand: oils, a sprinkle blend; StockLye is one
	Embed     Kind = "embed" // in pieces
	Packaging Kind = "packaging"
	Other     Kind = "other" // anything else, weighed; Water is one
)

// IDs of what no shelf lists.
const (
	NaOH     = "naoh"
	KOH      = "koh"
	StockLye = "stock-lye"
	Water    = "water"
)

// Kinds lists the kinds of material.
func Kinds() []Kind {
	return []Kind{Oil, Alkali, Colourant, Extra, Scent, Topping, Blend, Embed, Packaging, Other}
}

// Counted reports whether a kind is counted in pieces; the others are weighed in g.
func (k Kind) Counted() bool { return k == Embed || k == Packaging }

// Unit is what a kind is measured in.
func (k Kind) Unit() string {
	if k.Counted() {
		return "pieces"
	}
	return "g"
}

// Material is one thing there can be packs of.
type Material struct {
	Kind Kind
	ID   string // small letters, digits and hyphens
}

// String writes the material as kind and id, "oil olive", which [ParseMaterial] reads.
func (m Material) String() string { return string(m.Kind) + " " + m.ID }

// ParseMaterial reads what [Material.String] wrote.
func ParseMaterial(text string) (Material, error) {
	kind, id, ok := strings.Cut(strings.TrimSpace(text), " ")
	for _, k := range Kinds() {
		if ok && string(k) == kind && id != "" {
			return Material{k, strings.TrimSpace(id)}, nil
		}
	}
	return Material{}, fmt.Errorf("read the material %q: write its kind and its id, such as %q", text, "oil olive")
}
