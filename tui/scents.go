package tui

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of the scent matrix before the jugs'.
const (
	scentName = 0
	scentLoad = 1
	scentJugs = 4
)

// scentGrid is scents × jugs: load, grams, where each goes, and what is left of it in the cured bar against its limit.
func (b *bench) scentGrid(p layout.Panel) grid.Grid {
	batch := b.batch(p)
	g := grid.Grid{Frozen: 1, Empty: "no scent: a adds one from the shelf", Columns: b.scentColumns(batch)}
	for i := range batch.Scents {
		g.Rows = append(g.Rows, b.scentRow(p, i))
	}
	if len(batch.Scents) == 0 {
		return g
	}
	total := make([]grid.Cell, len(g.Columns))
	total[scentName] = b.label("inside each jug, % of its oils")
	for k, j := range batch.Jugs {
		text := percent(j.ScentLoadPercent, 1)
		if j.ScentLoadPercent == 0 {
			text = "–"
		}
		total[scentJugs+k] = b.shown(text, "scent inside "+j.Name+", percent of its own oils: several scents add up here")
	}
	total[scentJugs+len(batch.Jugs)] = b.label(percent(b.sheet.Bars.BaseScentPercent, 2))
	g.Rows = append(g.Rows, grid.Row{Total: true, Item: -1, Sub: -1, Cells: total})
	return g
}

func (b *bench) scentColumns(batch *pour.BatchSheet) []grid.Column {
	cols := []grid.Column{
		{Head: "scent", W: 22, Grow: 3},
		{Head: "load %", W: 6, Right: true},
		{Head: b.grams(), W: 7, Right: true},
		{Head: "at min", W: 6, Right: true},
	}
	for i := range batch.Jugs {
		cols = append(cols, grid.Column{Head: look.Letter(i), W: 4, Right: true})
	}
	return append(cols, grid.Column{Head: "bar %", W: 6, Right: true}, grid.Column{Head: "limit %", W: 7, Right: true})
}

func (b *bench) scentRow(p layout.Panel, i int) grid.Row {
	n, batch := batchName(p), b.batch(p)
	line, part := batch.Scents[i], b.plan.Batch(n).Scents[i]
	sc, _ := b.shelf.Scent(line.ID)
	name := grid.Cell{
		Kind: grid.Choice, Text: line.Name, List: listScents, ID: line.ID, Name: "scent " + line.Name, Hint: b.scentHint(sc),
		Pick: func(id string) pour.Edit { return pour.SwapScent(n, i, id) },
	}
	load := b.number("load of "+line.Name, percent(line.LoadPercent, 2), line.LoadPercent, pour.UnitPercent, 0.1,
		func(v float64) pour.Edit { return pour.SetScentLoad(n, i, v) })
	load.Hint = "percent of all oils of the batch; the grams go to the chosen jugs in proportion to their batter"
	at := trimZeros(b.number("time of "+line.Name, "", part.AtMin, pour.UnitMinute, 0.5, func(v float64) pour.Edit { return pour.SetScentAt(n, i, v) }))
	at.Hint = "the earliest minute it goes in, after this batch's lye-in"
	cells := []grid.Cell{name, load, b.shown(bare(b.show.Dose(line.G)), line.Name+" to weigh, "+b.grams()), at}
	for _, j := range batch.Jugs {
		cells = append(cells, b.scentTick(n, i, line, j))
	}
	return grid.Row{Item: i, Sub: -1, Cells: append(cells, b.inBar(line), b.limit(line, sc))}
}

// scentTick is whether a scent goes into a jug; where it does, the grams it brings there are in the hint.
func (b *bench) scentTick(n pour.BatchName, i int, line pour.ScentLine, j pour.JugSheet) grid.Cell {
	c := grid.Cell{Kind: grid.Tick, Text: "·", Style: b.look.Quiet, Name: line.Name + " in " + j.Name, Flip: pour.ToggleScentJug(n, i, j.Name)}
	c.Hint = line.Name + " stays out of " + j.Name + "; Space puts it in"
	if slices.Contains(line.Into, j.Name) {
		c.Text, c.Style = "●", b.look.Accent
		for _, x := range j.Scents {
			if x.ID == line.ID {
				c.Hint = fmt.Sprintf("%s into %s; Space leaves it out", b.show.Dose(x.G), j.Name)
			}
		}
	}
	return c
}

func (b *bench) inBar(line pour.ScentLine) grid.Cell {
	c := b.shown(percent(line.InBarPercent, 2), "percent of the cured bar, base and icing together")
	if line.LimitPercent > 0 && line.InBarPercent > line.LimitPercent {
		c.Text, c.Style = "■"+c.Text, b.look.Stop
	}
	return c
}

func (b *bench) limit(line pour.ScentLine, sc pour.Scent) grid.Cell {
	if line.LimitPercent == 0 {
		return b.shown("–", "no certificate on the shelf: ask the supplier for the category 9 limit")
	}
	return b.shown(percent(line.LimitPercent, 2), "most its certificate allows in the cured bar, category 9, amendment "+sc.Amendment)
}

func (b *bench) scentHint(sc pour.Scent) string {
	parts := []string{"in batter: " + b.shelf.BehaviourOf(sc)}
	if sc.Rices {
		parts = append(parts, "can rice")
	}
	if sc.VanillinPercent > 0 {
		parts = append(parts, "vanillin "+percent(sc.VanillinPercent, 1)+" %: browns")
	}
	if sc.Notes != "" {
		parts = append(parts, sc.Notes)
	}
	return strings.Join(parts, "; ")
}

// usedScents lists the scents of the plan, each once.
func (b *bench) usedScents() []pour.Scent {
	var out []pour.Scent
	for _, batch := range b.sheet.Batches() {
		for _, line := range batch.Scents {
			sc, _ := b.shelf.Scent(line.ID)
			if !slices.ContainsFunc(out, func(s pour.Scent) bool { return s.ID == sc.ID }) {
				out = append(out, sc)
			}
		}
	}
	return out
}

// drawBehaviour says of every scent of the plan what the shelf says of it.
func (b *bench) drawBehaviour(a screen.Area) {
	y := 0
	for _, sc := range b.usedScents() {
		for i, par := range b.scentItem(sc).Detail {
			st := b.look.Quiet
			if i == 0 {
				st = b.look.Strong
			}
			for _, line := range screen.Wrap(par, a.W()-2) {
				a.Text(1, y, line, st)
				y++
			}
		}
		y++
	}
	if y == 0 {
		a.Text(1, 0, "no scent in this plan", b.look.Quiet)
	}
}
