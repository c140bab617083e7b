package label

import "strings"

// wording is how a market's labels name ingredients.
type wording struct {
	market  Market
	english bool // common English names, where the market allows them
}

// text is the name by which a substance is listed.
func (w wording) text(n Name) string {
	switch {
	case n.Colour && !w.market.ByName && n.Plain != "":
		return n.Plain
	case w.english && w.market.English && n.English != "":
		return n.English
	case !w.market.WholeINCI:
		return n.plain()
	case w.market.EUTrivial && !n.Colour && n.plain() != unbracketed(n.INCI):
		return n.Plain
	}
	return n.INCI
}

// plain is the form of the name used in the EU.
func (n Name) plain() string {
	if n.Plain != "" {
		return n.Plain
	}
	return unbracketed(n.INCI)
}

// unbracketed is an INCI name without the English word in it.
func unbracketed(inci string) string {
	from := strings.Index(inci, " (")
	if from < 0 {
		return inci
	}
	to := strings.IndexByte(inci[from:], ')')
	if to < 0 {
		return inci
	}
	return inci[:from] + inci[from+to+1:]
}

// scent is the word for all scents.
func (w wording) scent() string {
	if w.market.ScentWord != "" {
		return w.market.ScentWord
	}
	return "Parfum"
}

// unsure says why a name is not sure; empty: a document or a memory of one stands behind it.
func (n Name) unsure() string {
	if n.Confidence == "" {
		return "this name was not looked up: copy the one on the supplier's sheet"
	}
	return ""
}

// What alkali makes beside soap has its names here (INCI; memory, as the shelf has them), because no charge brings them.
func glycerin() Name {
	return Name{INCI: "Glycerin", Plain: "Glycerin", English: "glycerin", French: "Glycérine", Confidence: "memory"}
}

func water() Name {
	return Name{INCI: "Water", Plain: "Aqua", English: "water", French: "Eau", Confidence: "read"}
}
