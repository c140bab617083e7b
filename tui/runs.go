package tui

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// taskGrid is the run in its order; the acts of one round stand in one row.
func (b *bench) taskGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{
		{Head: "at", W: 9, Right: true}, {Head: "takes", W: 8, Right: true}, {Head: "task", W: 14}, {Head: "jug", W: 18, Grow: 1}, {Head: "batch", W: 6},
	}}
	for i, st := range b.sheet.Stints() {
		hint := "J and K change the order; times are from the moment the base's lye meets its oils, minutes:seconds"
		jug := b.stintJugs(st)
		if jug.Hint = b.sheet.Tell(st); jug.Hint == "" {
			jug.Hint = hint
		}
		jug.Plain = jug.Hint
		kind := b.shown(string(st.Kind), jug.Hint)
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			b.shown(b.show.RunTime(st.StartMin), hint), b.shown(b.show.Span(st.LengthMin), hint), kind, jug, b.label(string(st.Batch)),
		}})
	}
	return g
}

// stintJugs is which jugs a row of the run is about: one by name, those of a round by their letters.
func (b *bench) stintJugs(st pour.Stint) grid.Cell {
	batch := b.sheet.Batch(st.Batch)
	if batch == nil {
		return grid.Cell{}
	}
	place := func(jug string) int {
		return slices.IndexFunc(batch.Jugs, func(j pour.JugSheet) bool { return j.Name == jug })
	}
	if st.Jug != "" {
		k := max(place(st.Jug), 0)
		c := grid.Cell{Text: look.Letter(k) + " " + st.Jug}
		c.Swatch, _ = screen.Hex(batch.Jugs[k].Colour.Hex)
		return c
	}
	var letters []string
	for _, t := range st.Tasks {
		if t.Jug != "" {
			letters = append(letters, look.Letter(max(place(t.Jug), 0)))
		}
	}
	text := strings.Join(letters, " ")
	switch {
	case len(letters) == 0 && len(st.Tasks) > 1:
		text = fmt.Sprintf("%d passes", len(st.Tasks))
	case st.Rounds > 0:
		text = strings.TrimSuffix(fmt.Sprintf("%d of %d: %s", st.Round, st.Rounds, text), ": ")
	}
	return grid.Cell{Text: text}
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
		t := j.Clock.Stages[s]
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
