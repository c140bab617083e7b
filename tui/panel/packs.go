package panel

import (
	"pourbench/pour/lot"
	"pourbench/tui/grid"
)

// packs lists what lies there of the entry under the cursor of the list of the shelf, in the order in which its packs are picked.
func packs() Panel {
	return Panel{ID: "packs", Title: "Its packs", Grid: (*Facts).packGrid}
}

// The columns of the packs.
const (
	packID = iota
	packLeft
	packUntil
	packLot
)

func (f *Facts) packGrid() grid.Grid {
	g := grid.Grid{
		Empty:   "no pack of it in your ledger: {stock} goes to the page of stock",
		Columns: []grid.Column{packID: {W: 14, Grow: 1}, packLeft: {W: 9, Right: true}, packUntil: {W: 12}, packLot: {W: 8, Grow: 1}},
	}
	s := &f.Shelf.Stock
	for i, p := range s.Held[lot.Material{Kind: lot.Kind(f.Entry.Table), ID: f.Entry.ID}].Packs {
		if p.Left <= 0 {
			continue
		}
		until := "no date"
		switch {
		case p.Blocked(s.Today):
			until = "× past date"
		case p.Expires != 0:
			until = p.Expires.String()
		}
		hint := p.Name + ", " + p.Left.String() + " of " + p.Size.String() + " " + p.Material.Kind.Unit() + " left; {stock} goes to the page of stock"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			packID: {Kind: grid.Shown, Text: p.ID, Hint: hint}, packLeft: {Text: p.Left.String()}, packUntil: {Text: until}, packLot: {Text: p.Lot},
		}})
	}
	return g
}
