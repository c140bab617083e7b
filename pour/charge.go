package pour

import (
	"slices"

	"pourbench/chem"
	"pourbench/pour/label"
	"pourbench/pour/lot"
)

// charger makes charges of what goes into a bar, with all that its ids name.
type charger struct {
	sheet *Sheet
	shelf *Shelf
	water label.Name
	scent label.Name
	in    string  // the mixing that is charged
	part  float64 // and of what goes into it, the part that is in a bar
	out   []label.Charge
	has   []label.Amount // the same by what of the shelf it is, Percent in g until all is there

	asBase  []string       // embeds that the plan says are made as the base is
	base    []label.Charge // what the base alone is charged with
	baseHas []label.Amount
}

func newCharger(s *Sheet, shelf *Shelf) *charger {
	return &charger{sheet: s, shelf: shelf, water: shelf.LabelName(waterINCI), scent: shelf.LabelName(parfumINCI), out: make([]label.Charge, 0, 64), has: make([]label.Amount, 0, 64)}
}

// The names of what no shelf lists.
const (
	waterINCI  = "Aqua"
	parfumINCI = "Parfum"
	naohINCI   = "Sodium Hydroxide"
	kohINCI    = "Potassium Hydroxide"
)

// into says which mixing is charged next, and what part of it is in a bar.
func (c *charger) into(mixing string, part float64) { c.in, c.part = mixing, part }

// put adds so much of a mixing.
func (c *charger) put(x label.Charge, g float64) {
	if x.In, x.G = c.in, g*c.part; x.G > 0 {
		c.out = append(c.out, x)
	}
}

// charge adds what went into a batch.
func (c *charger) charge(w Went, b *Batch) {
	switch w.Material.Kind {
	case lot.Oil:
		c.oil(w.Material.ID, w.G)
	case lot.Alkali:
		c.alkali(w.Material.ID, w.G, b)
	case lot.Blend:
		c.blend(w, b)
	case lot.Extra:
		c.extra(w)
	case lot.Colourant:
		col := c.shelf.colourant(w.Material.ID)
		c.count(label.Amount{Kind: label.RangeColourant, ID: col.ID, Name: col.Name, White: col.White}, w.G)
		c.parts(col.inLists(), label.Colour, col.Name, w.G)
	case lot.Scent:
		x := inList(c.shelf.Scents, w.Material.ID, func(x *Scent) string { return x.ID })
		c.count(label.Amount{Kind: label.RangeScent, ID: x.ID, Name: x.Name}, w.G)
		c.put(label.Charge{Kind: label.Scent, Name: c.scent, From: x.Name}, w.G)
	default:
		c.put(label.Charge{Kind: label.Water, Name: c.water, From: NameWater}, w.G)
	}
}

func (c *charger) oil(id string, g float64) {
	o := inList(c.shelf.Oils, id, func(o *Oil) string { return o.ID })
	c.count(label.Amount{Kind: label.RangeOil, ID: o.ID, Name: o.Name}, g)
	c.put(label.Charge{Kind: label.Fat, Name: o.label(), From: o.Name, Fat: o.Fat}, g)
}

// alkali adds dry alkali, what is no alkali in it by itself.
func (c *charger) alkali(id string, g float64, b *Batch) {
	x, purity := label.Charge{Kind: label.NaOH, Name: c.shelf.LabelName(naohINCI), From: NameNaOH}, b.NaOHPurityPercent/100
	if id == lot.KOH {
		x, purity = label.Charge{Kind: label.KOH, Name: c.shelf.LabelName(kohINCI), From: NameKOH}, b.KOHPurityPercent/100
	}
	c.put(x, g*purity)
	x.Kind = label.Lost
	c.put(x, g*(1-purity))
}

// blend adds what was mixed beforehand: a stock lye, or the batch's oils.
func (c *charger) blend(w Went, b *Batch) {
	if w.Material.ID == lot.StockLye {
		strength := b.StockLyePercent / 100
		c.put(label.Charge{Kind: label.NaOH, Name: c.shelf.LabelName(naohINCI), From: NameStock}, w.G*strength)
		c.put(label.Charge{Kind: label.Water, Name: c.water, From: NameStock}, w.G*(1-strength))
		return
	}
	oils, sum := c.sheet.Base.Oils, 0.0
	if w.Batch == Icing {
		oils = c.sheet.Icing.Oils
	}
	for _, o := range oils {
		sum += o.G
	}
	for _, o := range oils {
		c.oil(o.ID, w.G*o.G/sum)
	}
}

// extra adds an extra by its parts. What it takes up of the alkali, its acid does: the first part of it that has a salt, or the largest.
func (c *charger) extra(w Went) {
	x, _ := c.shelf.Extra(w.Material.ID)
	if x.ID == "" { // a carrier that this shelf lists nowhere
		x.ID, x.Name = w.Material.ID, w.Material.ID
	}
	c.count(label.Amount{Kind: label.RangeExtra, ID: x.ID, Name: x.Name}, w.G)
	from := len(c.out)
	c.parts(c.shelf.extraInLists(&x), label.Other, x.Name, w.G)
	added := c.out[from:]
	if x.AlkaliKOHMgG <= 0 || len(added) == 0 {
		return
	}
	at := slices.IndexFunc(added, func(p label.Charge) bool { return p.Name.Salts.Sodium != "" })
	for i := range added {
		if at < 0 || added[at].Name.Salts.Sodium == "" && added[at].Kind == label.Water || added[at].Name.Salts.Sodium == "" && added[i].G > added[at].G && added[i].Kind != label.Water {
			at = i
		}
	}
	acid := &added[at]
	mg := x.AlkaliKOHMgG * w.G * c.part / acid.G
	acid.Kind, acid.Acid = label.Acid, label.Taking{KOHMgG: mg, WaterG: mg / 1000 / chem.MolarKOH * chem.MolarWater, Salts: acid.Name.Salts}
}

// parts adds a material by what it is made of.
func (c *charger) parts(of []Ingredient, kind label.Kind, from string, g float64) {
	for _, p := range of {
		x := label.Charge{Kind: kind, Name: c.shelf.LabelName(p.Name), From: from, Doubt: p.Doubt}
		if x.Name.Gap = onPacket(p.Name); x.Name.Gap {
			x.Doubt = "it is no name: " + p.Name + " of " + from + " are to be stated by its packet"
		}
		switch {
		case x.Name.INCI == c.water.INCI:
			x.Kind = label.Water
		case x.Name.INCI == c.scent.INCI:
			x.Kind = label.Scent
		case x.Name.Colour:
			x.Kind = label.Colour
		}
		c.put(x, g*p.Percent/100)
	}
}
