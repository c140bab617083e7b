package tui

import (
	"fmt"
	"slices"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// taskGrid is the run in its order.
func (b *bench) taskGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{
		{Head: "at", W: 9, Right: true}, {Head: "takes", W: 8, Right: true}, {Head: "task", W: 14}, {Head: "jug", W: 18, Grow: 1}, {Head: "batch", W: 6},
	}}
	for i, t := range b.sheet.Run {
		jug := grid.Cell{}
		if batch := b.sheetOf(t.Batch); batch != nil && t.Jug != "" {
			k := slices.IndexFunc(batch.Jugs, func(j pour.JugSheet) bool { return j.Name == t.Jug })
			jug.Text = look.Letter(max(k, 0)) + " " + t.Jug
			if k >= 0 {
				jug.Swatch, _ = screen.Hex(batch.Jugs[k].Colour)
			}
		}
		hint := "J and K change the order; times are from the moment the base's lye meets its oils, minutes:seconds"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			b.shown(b.show.RunTime(t.StartMin), hint), b.shown(b.show.Span(t.LengthMin), hint), {Text: t.Kind}, jug, b.label(t.Batch),
		}})
	}
	return g
}

func (b *bench) sheetOf(batch string) *pour.BatchSheet {
	if batch == string(pour.Icing) {
		return b.sheet.Icing
	}
	return &b.sheet.Base
}

// clockGrid gives the clock panel its rows: one for each jug, with what its bar says in words.
func (b *bench) clockGrid(p layout.Panel) grid.Grid {
	g := grid.Grid{Columns: []grid.Column{{W: 10, Grow: 1}}}
	batch := batchOf(b.clock, p)
	if batch == nil {
		return g
	}
	for i, j := range batch.Jugs {
		c := b.shown(look.Letter(i)+" "+j.Name, b.clockText(b.stagesText(j)))
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{c}})
	}
	return g
}

// stagesText says when a jug reaches each stage, with the band.
func (b *bench) stagesText(j pour.JugSheet) string {
	text := j.Name + ":"
	for s := range chem.Stages {
		t := j.Stages[s]
		if chem.Stage(s) == chem.Emulsion || !t.Mid.Known {
			continue
		}
		draw := func(f pour.Figure) string {
			return b.show.Figure(f, func(v float64) string { return percent(pour.RoundMinutes(v), 0) })
		}
		text += fmt.Sprintf(" %s %s (%s to %s)", look.StageName(chem.Stage(s)), draw(t.Mid), draw(t.Low), draw(t.High))
	}
	if text == j.Name+":" {
		return text + " no times can be given"
	}
	return text + " min after lye-in"
}
