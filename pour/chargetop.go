package pour

import (
	"pourbench/pour/label"
)

// embed adds what the pieces of a kind bring into an average bar. A cold-process piece that the plan says is made as the base is brings its colours and
// scents too, and has lost some water since, as where its mass is worked out. Of a piece of which the plan says neither nothing is known: soap of
// another day has other colours and scents, which a list that counted it as the base's would leave out.
func (c *charger) embed(i int) {
	k, e := &c.sheet.Embeds[i], &c.sheet.Plan.Top.Embeds[i]
	n := len(c.sheet.Cut.Bars)
	g := mean(n, func(bar int) float64 { return c.sheet.piecesIn(k, bar) }) * k.PieceG.orUnknown()
	c.into(e.Name, 1)
	switch {
	case len(e.MadeOf) > 0:
		c.count(embedAmount(e.Name), g)
		c.parts(e.madeOf(), label.Other, e.Name, g)
	case e.soap() && e.AsBase:
		c.asBase = append(c.asBase, e.Name)
		c.aged(agedLoss(e.made()), g)
	default:
		c.count(embedAmount(e.Name), g)
		c.put(label.Charge{Kind: label.Other, Name: label.Name{INCI: e.Name, Gap: true}, From: e.Name, Doubt: "what " + e.Name + " is made of is not stated"}, g)
	}
}

// aged adds so many grams of what the base is made of, once it has lost that part of its mass as water, or all the water it has.
func (c *charger) aged(lost, g float64) {
	all, water := 0.0, 0.0
	for _, x := range c.base {
		all += x.G
		if x.Kind == label.Water {
			water += x.G
		}
	}
	lost = min(lost, water/all)
	fresh := g / (1 - lost)
	for _, x := range c.base {
		part := x.G / all
		if x.Kind == label.Water {
			part *= 1 - lost*all/water
		}
		c.put(x, fresh*part)
	}
	for _, a := range c.baseHas {
		c.count(a, fresh*a.Percent/all)
	}
}

// strewn adds what a topping brings: of what is strewn on the loaf an average bar's part, of what goes on later all. What evaporates leaves its parts
// as they are. Icing batter is the icing's. It returns why it cannot be told.
func (c *charger) strewn(i int) string {
	l := &c.sheet.Toppings[i]
	if !l.AddsG.Known {
		return "how much of " + l.Name + " goes on is not known"
	}
	part := 1.0
	if l.OnLoaf() {
		bars := c.sheet.Cut.Bars
		part = mean(len(bars), func(k int) float64 { return c.sheet.partOf(bars[k].ThicknessMM(), bars[k].WideMM()) }) / c.sheet.barPart()
	}
	c.into(l.Name, part)
	sum := 0.0
	for _, p := range l.Parts {
		sum += p.Percent
	}
	for _, p := range l.Parts {
		m := inList(c.shelf.Toppings, p.ID, func(m *ToppingMaterial) string { return m.ID })
		g := l.PerBarG.V * p.Percent / sum * m.adds()
		c.count(label.Amount{Kind: label.RangeTopping, ID: m.ID, Name: m.Name}, g)
		c.parts(m.inLists(), label.Other, m.Name, g)
	}
	return ""
}

// madeOf is what a piece is made of by the plan. Where no part says how much of it there is, they are taken as equal.
func (e *Embed) madeOf() []Ingredient {
	out, sum := make([]Ingredient, len(e.MadeOf)), 0.0
	for k, p := range e.MadeOf {
		out[k] = Ingredient{Name: p.Name, Percent: p.Percent}
		sum += p.Percent
	}
	if sum == 0 {
		return equalParts(e.Name, len(out), func(i int) string { return e.MadeOf[i].Name })
	}
	return out
}
