package label

import (
	"errors"
	"fmt"
	"math"

	"pourbench/chem"
)

// ErrList is wrapped by what [Made] refuses.
var ErrList = errors.New("no list of ingredients")

// Made returns what a bar is made of in one of the two styles, in g, each charge's parts by themselves and in the order of the charges: [List] adds up
// and puts them in their places. As salts, every mixing reacts by itself: see [chem.Blend.Reacted] for what is assumed. Names are those of the market,
// common English ones where both it and english say so. What is not an ingredient (the impurity of the alkali) is [Unlisted], so that the entries sum
// to the charges. A charge that is no mass, or a style that is not one of the two, is refused with an error that wraps [ErrList].
func Made(style Style, charges []Charge, m Market, english bool) ([]Entry, error) {
	for i := range charges {
		if err := charges[i].check(); err != nil {
			return nil, err
		}
	}
	e := entries{words: wording{m, english}, of: make([]Entry, 0, 3*len(charges))}
	switch style {
	case AsAdded:
		for i := range charges {
			e.asIs(&charges[i], charges[i].G)
		}
	case AsSalts:
		for _, in := range mixings(charges) {
			e.react(in)
		}
	default:
		return nil, fmt.Errorf("%w: style %q: it is %s or %s", ErrList, style, AsAdded, AsSalts)
	}
	return e.of, nil
}

func (c *Charge) check() error {
	if !(c.G >= 0) || math.IsInf(c.G, 0) {
		return fmt.Errorf("%w: %s in %s weighs %v g: give a mass of 0 or more", ErrList, c.called(), c.In, c.G)
	}
	if c.Kind == Fat && !(c.Fat.Sap >= 0 && !math.IsInf(c.Fat.Sap, 0)) {
		return fmt.Errorf("%w: %s has a saponification value of %v: give 0 or more", ErrList, c.called(), c.Fat.Sap)
	}
	if c.Kind == Acid && !(c.Acid.KOHMgG >= 0 && c.Acid.WaterG >= 0 && c.Acid.WaterG <= 1 && !math.IsInf(c.Acid.KOHMgG, 0)) {
		return fmt.Errorf("%w: %s takes up %v mg KOH per g and gives %v g of water: give 0 or more, and of water at most 1",
			ErrList, c.called(), c.Acid.KOHMgG, c.Acid.WaterG)
	}
	return nil
}

// called is what the charge is called in an error.
func (c *Charge) called() string {
	if c.From != "" {
		return c.From
	}
	return c.Name.INCI
}

// mixings are the charges by what they went into, in the order in which those appear.
func mixings(charges []Charge) [][]*Charge {
	var of [][]*Charge
	at := map[string]int{}
	for i := range charges {
		in, known := at[charges[i].In]
		if !known {
			in = len(of)
			at[charges[i].In] = in
			of = append(of, nil)
		}
		of[in] = append(of[in], &charges[i])
	}
	return of
}

// entries are being gathered.
type entries struct {
	words wording
	of    []Entry
}

// add writes down an ingredient; nothing of one is none.
func (e *entries) add(c *Charge, n Name, text string, class Class, g float64, unsure ...string) {
	if !(g > 0) {
		return
	}
	entry := Entry{Name: n, Text: text, G: g, Class: class}
	if c.From != "" {
		entry.From = []string{c.From}
	}
	for _, why := range append([]string{c.Doubt}, unsure...) {
		if entry.Unverified == "" {
			entry.Unverified = why
		}
	}
	e.of = append(e.of, entry)
}

// asIs writes down so much of a charge as what it was.
func (e *entries) asIs(c *Charge, g float64) {
	switch {
	case c.Kind == Scent:
		e.add(c, Name{INCI: e.words.scent(), Confidence: "read (2nd-hand)"}, e.words.scent(), Perfume, g)
	case c.Kind == Lost:
		e.add(c, c.Name, "carbonate and water of the alkali", Unlisted, g)
	case c.Name.Colour, c.Kind == Colour && c.Name.Confidence == "":
		e.add(c, c.Name, e.words.text(c.Name), Colourant, g, c.Name.unsure())
	default:
		e.add(c, c.Name, e.words.text(c.Name), Plain, g, c.Name.unsure())
	}
}

// react writes down what one mixing becomes.
func (e *entries) react(in []*Charge) {
	var blend chem.Blend
	var naohG, kohG, acidKOHG float64
	for _, c := range in {
		switch c.Kind {
		case Fat:
			blend = append(blend, chem.Part{Fat: c.Fat, G: c.G})
		case NaOH:
			naohG += c.G
		case KOH:
			kohG += c.G
		case Acid:
			acidKOHG += c.G * c.Acid.KOHMgG / 1000
		default:
		}
	}
	r := blend.Reacted(naohG, kohG, acidKOHG)
	fat := 0
	for _, c := range in {
		switch c.Kind {
		case Fat:
			e.soap(c, r.Fats[fat])
			fat++
		case NaOH:
			e.asIs(c, r.NaOHLeftG*c.G/max(naohG, c.G))
		case KOH:
			e.asIs(c, r.KOHLeftG*c.G/max(kohG, c.G))
		case Acid:
			e.neutral(c, r.Acids, r.SodiumShare)
		default:
			e.asIs(c, c.G)
		}
	}
}

// soap writes down what one fat becomes.
func (e *entries) soap(c *Charge, s chem.Soap) {
	e.salts(c, c.Name.Salts, s.SodiumG, s.PotassiumG)
	e.add(c, glycerin(), e.words.text(glycerin()), Plain, s.GlycerolG)
	e.add(c, water(), e.words.text(water()), Plain, s.WaterG)
	e.asIs(c, s.LeftG)
}

// neutral writes down what an acid becomes of which that fraction was neutralised. An acid that is only a little of what was put in (milk, vinegar)
// has no salts of its own: it stays in that thing's line, and the alkali it took up is there with it.
func (e *entries) neutral(c *Charge, fraction, sodium float64) {
	n := fraction * c.G * c.Acid.KOHMgG / 1000 / chem.MolarKOH
	naohG, kohG := n*sodium*chem.MolarNaOH, n*(1-sodium)*chem.MolarKOH
	if c.Acid.Salts == (Salts{}) {
		e.asIs(c, c.G+naohG+kohG)
		return
	}
	waterG := fraction * c.G * c.Acid.WaterG
	rest := fraction*c.G - waterG
	e.salts(c, c.Acid.Salts, sodium*rest+naohG, (1-sodium)*rest+kohG)
	e.add(c, water(), e.words.text(water()), Plain, waterG)
	e.asIs(c, c.G-fraction*c.G)
}

// salts writes down the two salts of a fat or an acid. One that has no name of its own is described and not named.
func (e *entries) salts(c *Charge, s Salts, sodiumG, potassiumG float64) {
	e.salt(c, s, "sodium", s.Sodium, sodiumG)
	e.salt(c, s, "potassium", s.Potassium, potassiumG)
}

func (e *entries) salt(c *Charge, s Salts, metal, name string, g float64) {
	wax := ""
	if c.Kind == Fat && c.Fat.Kind == chem.WaxEster {
		wax = "this line also holds the fatty alcohol that a wax sets free, which nothing but analysis tells apart: ask the assessor"
	}
	if name != "" && !s.Unassigned {
		n := Name{INCI: name, Confidence: s.Confidence}
		e.add(c, n, name, Plain, g, n.unsure(), wax)
		return
	}
	text := "Saponified " + e.words.text(c.Name)
	if c.Kind == Acid {
		text = "Neutralised " + e.words.text(c.Name)
	}
	why := fmt.Sprintf("no assigned name of its %s salt was found", metal)
	if name != "" {
		why += fmt.Sprintf(" (makers write %q)", name)
	}
	e.add(c, Name{INCI: text}, text, Plain, g, why+": it is described; list as added, or ask the assessor and state the name on your shelf", wax)
}
