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
	book := map[string]lot.Quantity{} // what should be in each pack
	var b Balance
	for _, p := range g.packsOf(t) {
		b.Kind, b.Left = p.Material.Kind, b.Left+p.Left
		book[p.ID] = 0
	}
	if len(book) == 0 {
		return Balance{}, false
	}
	for _, e := range g.state.Entries {
		left, ours := book[e.Pack]
		if !ours {
			continue
		}
		switch e.Kind {
		case stock.Received, stock.Made:
			b.Received += e.Q
			left += e.Q
		case stock.Taken:
			if g.target(e.For).Kind == Pack {
				b.Made += e.Q
			} else {
				b.Batches += e.Q
			}
			left -= e.Q
		case stock.Lost:
			b.Lost += e.Q
			left -= e.Q
		case stock.Counted:
			b.Counted += left - e.Q
			left = e.Q
		}
		book[e.Pack] = left
	}
	b.Off = b.Received - b.Batches - b.Made - b.Lost - b.Counted - b.Left
	return b, true
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
