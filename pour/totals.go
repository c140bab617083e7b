package pour

import (
	"cmp"
	"slices"

	"pourbench/pour/lot"
)

// Kinds of things to weigh.
const (
	WeighOil      = "oil"
	WeighAlkali   = "alkali"
	WeighWater    = "water"
	WeighExtra    = "extra"
	WeighColour   = "colourant"
	WeighCarrier  = "carrier"
	WeighScent    = "scent"
	WeighTopping  = "topping"
	WeighBatter   = "batter" // a jug's part of it, at the split
	WeighEmbed    = "embed"  // all pieces of a kind
	NameNaOH      = "sodium hydroxide (NaOH)"
	NameKOH       = "potassium hydroxide (KOH)"
	NameStock     = "stock lye"
	NameWater     = "water"
	nameReadyOils = "ready-mixed oils: "
)

// Fine reports whether it is weighed on the finer scale, as lye and small doses are, not on the kitchen scale.
func (w Weighing) Fine() bool {
	return w.Kind != WeighOil && w.Kind != WeighWater && w.Kind != WeighBatter
}

// totals adds up everything to weigh as its scale shows it, base, icing and toppings together, so that it is the sum of what the papers weigh;
// largest first and what is unknown last.
func (s *Sheet) totals(shelf Shelf) {
	var list []Weighing
	add := func(w Weighing, _ lot.Material, scaleG float64) {
		w.G = roundTo(scaleG, s.Plan.Show.drawnStep(w.Kind, scaleG))
		for i := range list {
			if list[i].Kind == w.Kind && list[i].Name == w.Name {
				list[i].G += w.G
				return
			}
		}
		w.Jug = ""
		list = append(list, w)
	}
	for _, b := range s.Batches() {
		b.weighings(add)
	}
	s.toppingWeighings(shelf, add)
	for _, k := range s.Embeds {
		if g := k.AllG.orUnknown(); g > 0 {
			add(Weighing{Name: k.Name, Kind: WeighEmbed, G: g}, lot.Material{}, g)
		}
	}
	slices.SortStableFunc(list, func(a, b Weighing) int { return cmp.Compare(b.G, a.G) })
	s.Totals = list
}

// Weighings lists what is put on a scale for this batch alone, as the scale shows it, in the order of the pour: what is mixed, then
// each jug's batter at the split, then what goes into the jugs.
func (b *BatchSheet) Weighings() []Weighing {
	var list, doses []Weighing
	b.weighings(func(w Weighing, _ lot.Material, scaleG float64) {
		w.G = scaleG
		if w.Jug == "" {
			list = append(list, w)
		} else {
			doses = append(doses, w)
		}
	})
	for _, j := range b.Jugs {
		list = append(list, Weighing{Name: WeighBatter, Kind: WeighBatter, Jug: j.Name, G: j.BatterWeighG})
	}
	return append(list, doses...)
}

// weighings gives everything that is weighed into a batch, exactly and as its scale shows it, each thing of each jug by
// itself, and which material it is: of a carrier its word instead of an id, and an extra that is a colourant as an extra.
func (b *BatchSheet) weighings(give func(w Weighing, of lot.Material, scaleG float64)) {
	add := func(kind, jug, name string, of lot.Material, g, scaleG float64) {
		if g <= 0 {
			return // nothing of it; what is unknown is given
		}
		give(Weighing{Name: name, Kind: kind, Jug: jug, G: g}, of, scaleG)
	}
	if b.ReadyBlend != "" {
		add(WeighOil, "", nameReadyOils+b.ReadyBlend, readyBlend(b.ReadyBlend), b.Size.OilsG, b.Size.OilsWeighG)
	} else {
		for _, o := range b.Oils {
			add(WeighOil, "", o.Name, lot.Material{Kind: lot.Oil, ID: o.ID}, o.G, o.WeighG)
		}
	}
	lye, water := &b.Lye, b.Lye.WaterToAddG.orUnknown()
	add(WeighAlkali, "", NameNaOH, lot.Material{Kind: lot.Alkali, ID: lot.NaOH}, lye.NaOH.WeighedG, lye.NaOH.ToWeighG)
	add(WeighAlkali, "", NameKOH, lot.Material{Kind: lot.Alkali, ID: lot.KOH}, lye.KOH.WeighedG, lye.KOH.ToWeighG)
	add(WeighAlkali, "", NameStock, lot.Material{Kind: lot.Blend, ID: lot.StockLye}, lye.Stock.WeighedG, lye.Stock.ToWeighG)
	add(WeighWater, "", NameWater, lot.Material{Kind: lot.Other, ID: lot.Water}, water, water)
	for _, x := range b.Extras {
		add(WeighExtra, "", x.Name, lot.Material{Kind: lot.Extra, ID: x.ID}, x.G, x.G)
	}
	for _, j := range b.Jugs {
		for _, d := range j.Colourants {
			add(WeighColour, j.Name, d.Name, lot.Material{Kind: lot.Colourant, ID: d.ID}, d.PigmentG, d.PigmentG)
			add(WeighCarrier, j.Name, d.CarrierName, lot.Material{ID: d.Carrier}, d.CarrierG, d.CarrierG)
		}
		for _, x := range j.Scents {
			add(WeighScent, j.Name, x.Name, lot.Material{Kind: lot.Scent, ID: x.ID}, x.G, x.G)
		}
	}
}
