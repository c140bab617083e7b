package pour

import (
	"fmt"
	"slices"

	"pourbench/pour/lot"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// MaterialNeed is what a plan wants of one material for one of its batches or jugs.
type MaterialNeed struct {
	Material lot.Material
	Name     string
	Kind     string    // one of the Weigh… words: what it is in this plan; a carrier is an oil of the shelf, too
	Batch    BatchName // empty: for the loaf and its bars
	Jug      string    // empty: the whole batch
	Q        lot.Quantity
}

// Needs lists what the plan wants of every material, as its scales show it, in the order of the pour: what is weighed into each batch and its jugs,
// the toppings, and embeds by their pieces. A ready blend and a stock lye are one material each. Where a batch cannot be mixed there is nothing of it.
func (s *Sheet) Needs(shelf Shelf) []MaterialNeed {
	var out []MaterialNeed
	for _, b := range s.Batches() {
		if b.Refused.Masses != "" {
			continue
		}
		b.weighings(func(w Weighing, of lot.Material, scaleG float64) {
			out = s.need(out, w, b.Name, s.material(w.Kind, of, b.Name, shelf), scaleG)
		})
	}
	s.toppingWeighings(shelf, func(w Weighing, of lot.Material, scaleG float64) { out = s.need(out, w, "", of, scaleG) })
	for i := range s.Embeds {
		k := &s.Embeds[i]
		if n := len(k.Pieces); n > 0 {
			m := lot.Material{Kind: lot.Embed, ID: plain.Slug(k.Name, "embed")}
			out = append(out, MaterialNeed{Material: m, Name: k.Name, Kind: WeighEmbed, Q: lot.Quantity(n) * lot.One})
		}
	}
	return out
}

// need adds what is weighed, on the step its scale shows, unless it shows nothing of it.
func (s *Sheet) need(list []MaterialNeed, w Weighing, n BatchName, of lot.Material, g float64) []MaterialNeed {
	q, ok := lot.Weighed(roundTo(g, s.Plan.Show.drawnStep(w.Kind, g)))
	if !ok || q == 0 {
		return list
	}
	return append(list, MaterialNeed{Material: of, Name: w.Name, Kind: w.Kind, Batch: n, Jug: w.Jug, Q: q})
}

// material is what of the shelf something weighed is: a colourant that goes into the whole batch is a colourant still, and a carrier is the oil the
// batch names, water, or glycerin, which is an extra elsewhere.
func (s *Sheet) material(kind string, of lot.Material, n BatchName, shelf Shelf) lot.Material {
	switch {
	case kind == WeighExtra:
		if _, ok := find(shelf.Extras, of.ID, func(x *Extra) string { return x.ID }); !ok {
			of.Kind = lot.Colourant
		}
	case kind != WeighCarrier:
	case of.ID == CarryWater:
		of = lot.Material{Kind: lot.Other, ID: lot.Water}
	case of.ID == CarryOil:
		of = lot.Material{Kind: lot.Oil, ID: s.Plan.Batch(n).carrierOil()}
	default:
		of.Kind = lot.Extra
	}
	return of
}

// readyBlend is the material of a blend of oils that was mixed beforehand.
func readyBlend(name string) lot.Material {
	return lot.Material{Kind: lot.Blend, ID: plain.Slug(name, "blend")}
}

// Listed refuses a material of a kind that shelves list where this one does not, and says which was perhaps meant. What no shelf lists is let by.
func (s *Shelf) Listed(m lot.Material) error {
	takes, ok := map[lot.Kind]Takes{lot.Oil: TakesOil, lot.Colourant: TakesColourant, lot.Scent: TakesScent, lot.Topping: TakesTopping}[m.Kind]
	kind, known := s.known(takes)
	switch {
	case m.Kind == lot.Extra:
		kind, known = "extra", ids(s.Extras, func(x Extra) string { return x.ID })
	case !ok:
		return nil
	}
	if slices.Contains(known, m.ID) {
		return nil
	}
	return fmt.Errorf("%s is no %s on the shelf: %s", strict.Quote(m.ID), kind, strict.Meant(m.ID, known, "take one that is on the shelf, or add it to your own shelf file", ""))
}
