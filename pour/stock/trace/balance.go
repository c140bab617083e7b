package trace

import (
	"pourbench/pour/lot"
	"pourbench/pour/stock"
)

// Balance is where all of a lot, or of a pack, is. Received = Batches + Made + Lost + Counted + Left + Off, and Off is nothing unless ledger and
// shelves disagree.
type Balance struct {
	Kind     lot.Kind // in whose unit it is
	Received lot.Quantity
	Batches  lot.Quantity // taken for batches
	Made     lot.Quantity // taken for blends and embeds
	Lost     lot.Quantity // spilled and thrown away
	Counted  lot.Quantity // what counts found too little; below 0: too much
	Left     lot.Quantity // on the shelves, by the book
	Off      lot.Quantity // what none of these explains
}

// Balance weighs up a lot or a pack, to the ten-thousandth. False: it is none, or no pack of it is in the ledger. What moved is added up from the
// ledger's entries, what is left is what the shelves say.
func (g Graph) Balance(t Thing) (Balance, bool) {
	ours := map[string]bool{}
	var b Balance
	for _, p := range g.packsOf(t) {
		b.Kind, b.Left = p.Material.Kind, b.Left+p.Left
		ours[p.ID] = true
	}
	if len(ours) == 0 {
		return Balance{}, false
	}
	stock.Moved(g.state.Entries, map[string]lot.Quantity{}, func(e stock.Entry, out lot.Quantity) {
		if ours[e.Pack] {
			b.add(e.Kind, out, g.target(e.For).Kind == Pack)
		}
	})
	b.Off = b.Received - b.Batches - b.Made - b.Lost - b.Counted - b.Left
	return b, true
}

// add adds what an entry moved.
func (b *Balance) add(kind stock.Kind, out lot.Quantity, made bool) {
	switch kind {
	case stock.Received, stock.Made:
		b.Received -= out
	case stock.Lost:
		b.Lost += out
	case stock.Counted:
		b.Counted += out
	default:
		if made {
			b.Made += out
		} else {
			b.Batches += out
		}
	}
}

// packsOf are the packs of a lot, or the pack itself.
func (g Graph) packsOf(t Thing) []lot.Pack {
	var out []lot.Pack
	add := func(id string) {
		if p, ok := g.packs[id]; ok {
			out = append(out, p)
		}
	}
	switch t.Kind {
	case Pack:
		add(t.ID)
	case Lot:
		for _, l := range g.Links(t, Forward) {
			if l.To.Kind == Pack {
				add(l.To.ID)
			}
		}
	}
	return out
}
