package tui

import (
	"fmt"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of the jug grid that other code points at.
const (
	jugName  = 1
	jugHeld  = 2
	jugShare = 3
	jugDye   = 5
)

// jugGrid is the heart of the bench: one row for each jug, and one more for each further colourant in it.
func (b *bench) jugGrid(p layout.Panel) grid.Grid {
	g := grid.Grid{Frozen: 2, Columns: b.jugColumns()}
	batch, plan := b.batch(p), b.plan.Batch(batchName(p))
	for i := range batch.Jugs {
		for k := range max(len(plan.Jugs[i].Colourants), 1) {
			g.Rows = append(g.Rows, b.jugRow(p, i, k))
		}
	}
	total := make([]grid.Cell, 5)
	total[jugName] = b.label("together")
	total[jugShare] = b.label(percent(100, 1))
	total[jugShare+1] = b.label(bare(b.show.Weight(batch.Size.BatterWeighG)))
	g.Rows = append(g.Rows, grid.Row{Cells: total, Total: true, Item: -1, Sub: -1})
	return g
}

func (b *bench) jugColumns() []grid.Column {
	unit := b.grams()
	return []grid.Column{
		{W: 1},
		{Head: "   jug", W: 14, Grow: 1},
		{Head: "held", W: 4},
		{Head: "share %", W: 7, Right: true},
		{Head: "batter " + unit, W: 9, Right: true},
		{Head: "colourant", W: 16, Grow: 2},
		{Head: "dose %", W: 6, Right: true},
		{Head: "weigh " + unit, W: 8, Right: true},
		{Head: "carrier " + unit, W: 13},
		{Head: "parts", W: 5, Right: true},
		{Head: "scent %", W: 7, Right: true},
		{Head: "full " + unit, W: 8, Right: true},
		{Head: "full mL", W: 7, Right: true},
		{Head: "holds mL", W: 8, Right: true},
		{Head: "superfat", W: 8, Right: true},
		{Head: "colour", W: 8},
		{Head: "late %", W: 6, Right: true},
	}
}

// jugRow is the k-th colourant of jug i; the jug's own cells stand in the first row alone.
func (b *bench) jugRow(p layout.Panel, i, k int) grid.Row {
	n := batchName(p)
	jug, line := b.plan.Batch(n).Jugs[i], b.batch(p).Jugs[i]
	r := grid.Row{Item: i, Sub: -1, Cells: make([]grid.Cell, len(b.jugColumns()))}
	if k < len(jug.Colourants) {
		r.Sub = k
	}
	if k == 0 {
		b.jugCells(r.Cells, n, i, jug, line)
		b.jugTail(r.Cells, p, i, jug, line)
	}
	b.dyeCells(r.Cells, n, i, k, jug, line)
	return r
}

func (b *bench) jugCells(cells []grid.Cell, n pour.BatchName, i int, jug pour.Jug, line pour.JugSheet) {
	cells[0] = grid.Cell{Text: look.Letter(i), Style: b.look.Strong}
	name := b.words("name of "+jug.Name, jug.Name, func(s string) pour.Edit { return pour.RenameJug(n, i, s) })
	name.Swatch, _ = screen.Hex(line.Colour.Hex)
	name.Hint = b.jugHint(line)
	cells[jugName] = name
	held := grid.Cell{Kind: grid.Tick, Text: "·", Style: b.look.Quiet, Name: "hold of " + jug.Name, Flip: pour.HoldShare(n, i, !jug.Held)}
	held.Hint = "its share gives way when another changes; Space holds it"
	if jug.Held {
		held.Text, held.Style = "held", b.look.Accent
		held.Hint = "its share stays when another changes; Space lets it go"
	}
	cells[jugHeld] = held
	share := b.number("share of "+jug.Name, percent(jug.SharePercent, 1), jug.SharePercent, pour.UnitPercent, 1,
		func(v float64) pour.Edit { return pour.SetShare(n, i, v) })
	share.Hint = "percent of the " + string(n) + "'s batter; the jugs that are not held give way"
	cells[jugShare] = share
	cells[jugShare+1] = b.shown(bare(b.show.Weight(line.BatterWeighG)), "batter to weigh into "+jug.Name+", "+b.grams())
}

// jugHint says what a jug will look like.
func (b *bench) jugHint(line pour.JugSheet) string {
	switch {
	case line.Colour.Hex == "":
		return "no colour can be estimated"
	case line.Colour.Estimated:
		return fmt.Sprintf("about %s once poured: an estimate from colourant, dose and %s %% white", line.Colour.Hex, percent(line.WhitePercent, 2))
	default:
		return line.Colour.Hex + " once poured, as you gave it"
	}
}

// jugTail fills the cells to the right of the colourants.
func (b *bench) jugTail(cells []grid.Cell, p layout.Panel, i int, jug pour.Jug, line pour.JugSheet) {
	n := batchName(p)
	cells[10] = b.shown(percent(line.ScentLoadPercent, 1), "scent inside this jug, percent of its oils")
	cells[11] = b.shown(bare(b.show.Weight(line.TotalG)), "batter, colour, carrier and scent together")
	cells[12] = b.shown(bare(b.show.Volume(line.TotalML)), "what the jug has to hold")
	holds := b.number("size of "+jug.Name, "–", jug.CapacityML, pour.UnitML, 50, func(v float64) pour.Edit { return pour.SetCapacity(n, i, v) })
	holds.Hint = "what the vessel holds, mL; 0: not stated"
	if jug.CapacityML > 0 {
		holds.Text = holds.Plain
	}
	cells[13] = holds
	cells[14] = b.shown(percent(line.Superfat.HeldPercent, 1), "superfat of this jug with what it holds; every oil at its low end: "+b.show.Percent(line.Superfat.LowPercent, 1))
	colour := b.words("colour of "+jug.Name, jug.BatterColour, func(s string) pour.Edit { return pour.SetBatterColour(n, i, s) })
	colour.Hint = "colour of the finished batter, as in #5566b0; empty: estimated"
	if colour.Text == "" {
		colour.Text, colour.Style = "~"+line.Colour.Hex, b.look.Quiet
	}
	cells[15] = colour
	cells[16] = b.lateCell(p, i)
}

func (b *bench) lateCell(p layout.Panel, i int) grid.Cell {
	batch := batchOf(b.clock, p)
	if batch == nil || i >= len(batch.Jugs) {
		return b.shown("…", "the clock is being worked out")
	}
	text := b.show.Figure(batch.Jugs[i].Clock.LateChancePercent, func(v float64) string { return percent(v, 0) })
	c := b.shown(b.clockText(text), "chance that it is past what the technique allows when its turn comes")
	if !b.fresh {
		c.Style = b.look.Stale
	}
	return c
}

// dyeCells fills the cells of one colourant, or the place where the first goes.
func (b *bench) dyeCells(cells []grid.Cell, n pour.BatchName, i, k int, jug pour.Jug, line pour.JugSheet) {
	pick := grid.Cell{Kind: grid.Choice, List: listColourants, Name: "colourant of " + jug.Name, Text: "none", Style: b.look.Quiet}
	pick.Hint = "Enter picks a colourant from the shelf"
	pick.Pick = func(id string) pour.Edit {
		c, _ := b.shelf.Colourant(id)
		return pour.SetColourant(n, i, k, c)
	}
	if k >= len(jug.Colourants) || k >= len(line.Colourants) {
		cells[jugDye] = pick
		return
	}
	d, of := line.Colourants[k], jug.Colourants[k]
	c, _ := b.shelf.Colourant(d.ID)
	pick.Text, pick.ID, pick.Style, pick.Hint = d.Name, d.ID, screen.Style{}, colourantHint(c)
	cells[jugDye] = pick
	dose := b.number("dose of "+d.Name, percent(of.DosePercent, 2), of.DosePercent, pour.UnitPercent, 0.05,
		func(v float64) pour.Edit { return pour.SetDose(n, i, k, v) })
	dose.Hint = fmt.Sprintf("percent of the jug's batter; usual %s to %s %%", percent(c.DoseLowPercent, 2), percent(c.DoseHighPercent, 2))
	cells[jugDye+1] = dose
	cells[jugDye+2] = b.shown(bare(b.show.Dose(d.PigmentG)), "pigment to weigh, "+b.grams()+b.spoons(d))
	cells[jugDye+3] = b.carrierCell(n, i, k, d)
	parts := b.number("carrier of "+d.Name, percent(of.CarrierParts, 1), of.CarrierParts, pour.UnitParts, 0.5,
		func(v float64) pour.Edit { return pour.SetCarrierParts(n, i, k, v) })
	parts.Hint = "grams of carrier per gram of pigment; 0: as the shelf says, " + percent(c.CarrierParts, 1)
	cells[jugDye+4] = parts
}

// carrierCell is what a colourant is wetted with; it goes round the carriers.
func (b *bench) carrierCell(n pour.BatchName, i, k int, d pour.DoseLine) grid.Cell {
	kinds := []string{pour.CarryOil, pour.CarryWater, pour.CarryGlycerin, pour.CarryNone}
	text := "dry"
	if d.CarrierG > 0 {
		text = bare(b.show.Dose(d.CarrierG)) + " " + d.Carrier
	}
	turn := func(steps float64) pour.Edit {
		return pour.SetCarrier(n, i, k, turned(kinds, d.Carrier, steps))
	}
	return grid.Cell{
		Kind: grid.Tick, Text: text, Name: "carrier of " + d.Name, Hint: "what the pigment is wetted with; Enter takes oil, water, glycerin or none in turn",
		Flip: turn(1), Nudge: func(steps float64) (pour.Edit, error) { return turn(steps), nil },
	}
}

func (b *bench) spoons(d pour.DoseLine) string {
	if !d.TeaspoonsML5.Known {
		return ""
	}
	return fmt.Sprintf("; about %s teaspoons, an estimate: weighing wins", percent(d.TeaspoonsML5.V, 1))
}

func colourantHint(c pour.Colourant) string {
	hint := c.Class + ", wets in " + c.Disperse + ", in alkali: " + c.Alkali
	if c.Dust {
		hint += ", fine dust: do not breathe it"
	}
	return hint
}
