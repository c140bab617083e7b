package panel

import (
	"slices"
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// pinW is the most room a pinned jug's name takes.
const pinW = 13

// technique is how the jugs meet: the technique, its numbers, which of its many faces, and what is pinned.
func technique() Panel {
	return Panel{ID: "technique", Title: "Technique", cells: keys.Numbers | keys.Words, picture: true, Grid: (*Facts).techniqueGrid}
}

func (f *Facts) techniqueGrid() grid.Grid {
	t, _ := f.Shelf.Technique(f.Plan.Swirl.Technique)
	pick := grid.Cell{
		Kind: grid.Choice, Text: t.Name + " ▼", Plain: t.Name, List: listTechniques, ID: t.ID, Name: "technique", Hint: t.Do, Pick: pour.SetTechnique,
	}
	own := t.Drawn().Own(len(f.Plan.Base.Jugs))
	passes := float64(f.Plan.Swirl.Passes)
	count := asTyped(f.number("passes", "", passes, pour.UnitCount, 1, func(v float64) pour.Edit { return pour.SetPasses(int(v)) }))
	count.Figure = "swirl.passes"
	count.Hint = "pours, strokes or drops; 0: the technique's own"
	seed := float64(f.Plan.Swirl.Seed)
	face := asTyped(f.number("face", "", seed, pour.UnitCount, 1, func(v float64) pour.Edit { return pour.Reseed(int64(v)) }))
	face.Figure = "swirl.seed"
	face.Hint = "which of the many faces this design can have; R pours another"
	return grid.Grid{Columns: []grid.Column{formLabel: {W: 13}, formValue: {W: 20, Right: true, Grow: 1}, formUnit: {W: 2}}, Rows: []grid.Row{
		formRow("technique", pick),
		f.dial("passes", formRow("", count), passes, own.Passes > 0, strconv.Itoa(own.Passes)),
		f.dial("turns", f.field("swirl.turns", ""), f.Plan.Swirl.Turns, own.Turns > 0, f.percent(own.Turns, 1)),
		f.dial("pour height", f.field("swirl.height_mm", ""), f.Plan.Swirl.HeightMM, own.HeightMM > 0, f.Show.Len(own.HeightMM)),
		formRow("face", face),
		formRow("poured first", f.pinCell("first", f.Plan.Swirl.First, f.Plan.Swirl.Last, pour.PinFirst)),
		formRow("poured last", f.pinCell("last", f.Plan.Swirl.Last, f.Plan.Swirl.First, pour.PinLast)),
		formRow("pot between", f.betweenCell()),
	}}
}

// dial is a number of the technique; at 0 it shows the technique's own, and a dash where the technique does not have it.
func (f *Facts) dial(label string, r grid.Row, v float64, has bool, own string) grid.Row {
	if len(r.Cells) <= formValue {
		return r
	}
	c := &r.Cells[formValue]
	r.Cells[formLabel].Text = label
	switch {
	case !has:
		c.Hint, c.Style = "this technique has no "+label, f.Look.Quiet
		if v == 0 {
			c.Text = "–"
		}
		r.Cells = r.Cells[:formUnit]
	case v == 0:
		c.Text, c.Style = "its own, "+own, f.Look.Quiet
		r.Cells = r.Cells[:formUnit]
	default:
		r.Cells = r.Cells[:min(len(r.Cells), formRemark)]
	}
	return r
}

// pinCell pins one jug to an end of the order; it goes round the jugs that are not pinned to the other end.
func (f *Facts) pinCell(end, now, other string, pin func(string) pour.Edit) grid.Cell {
	names := []string{""}
	for _, j := range f.Plan.Base.Jugs {
		if j.Name != other {
			names = append(names, j.Name)
		}
	}
	text := now
	if text == "" {
		text = "any"
	}
	c := turning("jug poured "+end, "‹ "+screen.Clip(text, pinW)+" ›", names, now, func(steps float64) pour.Edit { return pin(turned(names, now, steps)) })
	c.Round[slices.Index(c.Round, "")] = "any"
	c.Plain, c.Hint = text, "the jug that is poured "+end+" in every order that is worked out; {switch} goes round the jugs"
	return c
}

func (f *Facts) betweenCell() grid.Cell {
	on := f.Plan.Swirl.PotBetween
	c := grid.Cell{Kind: grid.Tick, Text: "‹ no ›", Plain: "no", Name: "pot between", Flip: pour.PotBetween(!on), Round: yesNo(on)}
	c.Hint = "yes: some of the pot is poured between every two other jugs, so that no two others touch"
	if on {
		c.Text, c.Plain = "‹ yes ›", "yes"
	}
	return c
}
