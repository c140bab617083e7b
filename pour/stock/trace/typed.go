package trace

import (
	"slices"

	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
)

// notInLedger marks a lot that stands in a pour's file alone.
const notInLedger = "it stands in the pour alone; the ledger has no entry of it"

// byNumber gathers the lots of all packs by their number alone.
func (g *Graph) byNumber() map[string][]Thing {
	out := map[string][]Thing{}
	for _, l := range g.links { // by now those of lots and of takes
		if l.From.Kind == Lot && !slices.Contains(out[l.From.ID], l.From) {
			out[l.From.ID] = append(out[l.From.ID], l.From)
		}
	}
	return out
}

// typed links lots that were typed beside a weighing, and packs that were drawn from, to the batch, where the ledger has taken nothing of them for it. Of which material the lot
// is, is taken from the name of what was weighed; where no pack of that number has that name, any of that number may be it and all are linked,
// because a recall that names too many bars is better than one that misses some.
func (g *Graph) typed(b *life.Batch, named map[string][]Thing) {
	at := map[[2]Thing]int{}
	for _, e := range b.TypedIn {
		q, _ := lot.Weighed(e.Value) // what cannot be weighed is said as nothing: the doubt stands anyhow
		from := []Thing{PackOf(e.Pack)}
		if e.Pack == "" {
			from = g.meant(folded(e.Lot), folded(e.What), named)
		}
		for _, from := range from {
			if !g.taken(from, b.ID) {
				if _, ok := g.spelt[from]; !ok && from.Kind == Lot {
					g.spelt[from] = spelling{e.What, e.Lot}
				}
				g.flow(at, Link{From: from, To: BatchOf(b.ID), Q: q, Jugs: jugs(e.Jug), Doubt: notInLedger})
			}
		}
	}
}

// spelling is how a lot that stands in no ledger was typed, and what was weighed of it.
type spelling struct{ name, number string }

// meant are the lots that a typed number may be, or the pack whose id was typed.
func (g *Graph) meant(number, name string, named map[string][]Thing) []Thing {
	if _, ok := g.packs[number]; ok {
		return []Thing{PackOf(number)}
	}
	var out []Thing
	for _, t := range named[number] {
		for _, l := range g.Links(t, Forward) {
			if p := g.packs[l.To.ID]; folded(p.Name) == name || p.Material.ID == name {
				out = append(out, t)
				break
			}
		}
	}
	switch {
	case len(out) > 0:
		return out
	case len(named[number]) > 0:
		return named[number]
	}
	return []Thing{LotOf(lot.Material{ID: name}, number)}
}

// taken reports whether the ledger has taken something of a lot, or of a pack, for a batch.
func (g *Graph) taken(from Thing, batch string) bool {
	for _, l := range g.Links(from, Forward) {
		if len(l.Entries) > 0 && (l.To == BatchOf(batch) || l.To.Kind == Pack && from.Kind == Lot && g.taken(l.To, batch)) {
			return true
		}
	}
	return false
}
