package tui

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// techniqueGrid is how the jugs meet: the technique, its numbers, which of its many faces, and what is pinned.
func (b *bench) techniqueGrid() grid.Grid {
	t, _ := b.shelf.Technique(b.plan.Swirl.Technique)
	pick := grid.Cell{
		Kind: grid.Choice, Text: t.Name + " ▼", Plain: t.Name, List: listTechniques, ID: t.ID, Name: "technique", Hint: t.Do, Pick: pour.SetTechnique,
	}
	row := func(label string, c grid.Cell) grid.Row {
		return grid.Row{Sub: -1, Cells: []grid.Cell{{Text: label}, c}}
	}
	own := t.Drawn().Own(len(b.plan.Base.Jugs))
	passes := float64(b.plan.Swirl.Passes)
	count := b.number("passes", b.show.Plain(passes, pour.UnitCount), passes, pour.UnitCount, 1, func(v float64) pour.Edit { return pour.SetPasses(int(v)) })
	count.Hint = "pours, strokes or drops; 0: the technique's own"
	seed := float64(b.plan.Swirl.Seed)
	face := b.number("face", b.show.Plain(seed, pour.UnitCount), seed, pour.UnitCount, 1, func(v float64) pour.Edit { return pour.Reseed(int64(v)) })
	face.Hint = "which of the many faces this design can have; R pours another"
	return grid.Grid{Columns: []grid.Column{{W: 13}, {W: 20, Right: true, Grow: 1}, {W: 2}}, Rows: []grid.Row{
		row("technique", pick),
		b.dial(row("passes", count), passes, own.Passes > 0, fmt.Sprint(own.Passes)),
		b.dial(b.field("swirl.turns", ""), b.plan.Swirl.Turns, own.Turns > 0, percent(own.Turns, 1)),
		b.dial(b.field("swirl.height_mm", ""), b.plan.Swirl.HeightMM, own.HeightMM > 0, b.show.Len(own.HeightMM)),
		row("face", face),
		row("poured first", b.pinCell("first", b.plan.Swirl.First, b.plan.Swirl.Last, pour.PinFirst)),
		row("poured last", b.pinCell("last", b.plan.Swirl.Last, b.plan.Swirl.First, pour.PinLast)),
		row("pot between", b.betweenCell()),
	}}
}

// dial is a number of the technique; at 0 it shows the technique's own, and a dash where the technique does not have it.
func (b *bench) dial(r grid.Row, v float64, has bool, own string) grid.Row {
	if len(r.Cells) < 2 {
		return r
	}
	r.Cells[0].Text = strings.TrimSuffix(r.Cells[0].Text, " of the tool")
	c := &r.Cells[1]
	switch {
	case !has:
		c.Hint = "this technique has no " + r.Cells[0].Text
		if v == 0 {
			c.Text = "–"
		}
		c.Style = b.look.Quiet
		r.Cells = r.Cells[:2]
	case v == 0:
		c.Text, c.Style = "its own, "+own, b.look.Quiet
		r.Cells = r.Cells[:2]
	case len(r.Cells) > 3:
		r.Cells = r.Cells[:3]
	}
	return r
}

// pinCell pins one jug to an end of the order; it goes round the jugs that are not pinned to the other end.
func (b *bench) pinCell(end, now, other string, pin func(string) pour.Edit) grid.Cell {
	names := []string{""}
	for _, j := range b.plan.Base.Jugs {
		if j.Name != other {
			names = append(names, j.Name)
		}
	}
	text := now
	if text == "" {
		text = "any"
	}
	turn := func(steps float64) pour.Edit { return pin(turned(names, now, steps)) }
	return grid.Cell{
		Kind: grid.Tick, Text: "‹ " + screen.Clip(text, 13) + " ›", Plain: text, Name: "jug poured " + end, Flip: turn(1),
		Nudge: func(steps float64) (pour.Edit, error) { return turn(steps), nil },
		Hint:  "the jug that is poured " + end + " in every order that is worked out; Space goes round the jugs",
	}
}

func (b *bench) betweenCell() grid.Cell {
	on := b.plan.Swirl.PotBetween
	c := grid.Cell{Kind: grid.Tick, Text: "‹ no ›", Plain: "no", Name: "pot between", Flip: pour.PotBetween(!on)}
	c.Hint = "yes: some of the pot is poured between every two other jugs, so that no two others touch"
	if on {
		c.Text, c.Plain = "‹ yes ›", "yes"
	}
	return c
}

// orderGrid puts the orders to pour in side by side, each with its price in mud and in time.
func (b *bench) orderGrid() grid.Grid {
	g := grid.Grid{
		Empty:   "what the colours do beside each other is being worked out …",
		Columns: []grid.Column{{Head: "order", W: 9}, {Head: "jugs", W: 9, Grow: 1}, {Head: "worst", W: 5, Right: true}, {Head: "total", W: 5, Right: true}, {Head: "late %", W: 6, Right: true}},
	}
	for i, o := range b.colours.Look.Orders {
		jugs := b.colours.Base.Jugs
		var letters, names []string
		for _, j := range o.Jugs {
			letters, names = append(letters, look.Letter(j)), append(names, jugs[j].Name)
		}
		kind := grid.Cell{Kind: grid.Shown, Text: o.Kind, Name: "order " + o.Kind}
		if i > 0 && b.coloursFresh {
			kind.Kind, kind.Flip = grid.Tick, pour.SetPourOrder(*b.colours, names)
		}
		kind.Hint = strings.Join(names, ", ")
		if i > 0 {
			kind.Hint = "Enter takes it: " + kind.Hint
		}
		late := b.shown(b.show.Figure(o.LatePercent, func(v float64) string { return percent(v, 0) }), "the largest chance that a jug is too thick at its turn")
		if o.LateJug != "" {
			late.Hint += ": " + o.LateJug
		}
		if o.LatePercent.Known && o.LatePercent.V >= lateWorry {
			late.Text, late.Style = "!"+late.Text, b.look.Caution
		}
		cells := []grid.Cell{
			kind,
			{Text: strings.Join(letters, " ")},
			b.shown(percent(o.Worst, 2), "mud of its worst pair that touches, 0 clean to 1"), b.shown(percent(o.Total, 2), "mean mud along all boundary, by who touches whom in this order"), late,
		}
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: b.stale(cells)})
	}
	return g
}

// stale makes figures quiet while they are worked out again.
func (b *bench) stale(cells []grid.Cell) []grid.Cell {
	if b.coloursFresh {
		return cells
	}
	for i := range cells {
		cells[i].Style = b.look.Stale
	}
	return cells
}

// pairGrid lists who touches whom on the loaf's faces, most contact first, and what they make where they touch, with the mixes that show it.
func (b *bench) pairGrid() grid.Grid {
	g := grid.Grid{
		Empty:   "what the colours do beside each other is being worked out …",
		Columns: []grid.Column{{Head: "pair", W: 5}, {Head: "touch", W: 5, Right: true}, {Head: "mixed", W: 10}, {Head: "mud", W: 4, Right: true}, {W: 12, Grow: 1}},
	}
	jugs := b.colours.Base.Jugs
	for i, p := range b.colours.Look.Pairs {
		pair := jugs[p.A].Name + " beside " + jugs[p.B].Name
		names := b.shown(look.Letter(p.A)+" · "+look.Letter(p.B), pair+": the two, and between them their mixes with 25, 50 and 75 % of the second")
		names.Plain = pair
		verdict := b.shown(p.Verdict, pair)
		switch p.Verdict {
		case "muddy":
			verdict.Text, verdict.Style = "! "+p.Verdict, b.look.Caution
		case "clean":
			verdict.Style = b.look.Good
		}
		if p.Cause != "" {
			verdict.Text += ", " + p.Cause
		}
		verdict.Hint = pair + ": " + verdict.Text
		verdict.Plain = verdict.Hint
		touch := b.shown(percent(p.ContactPercent, 0)+" %", fmt.Sprintf("%s: %s %% of all boundary between jugs, measured on the faces of the loaf", pair, percent(p.ContactPercent, 1)))
		cells := []grid.Cell{names, touch, {Swatches: b.blend(p)}, b.shown(percent(p.Score, 2), pair+": mud, 0 clean to 1"), verdict}
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: b.stale(cells)})
	}
	return g
}

// blend is the colours from one neighbour to the other.
func (b *bench) blend(p pour.Pair) []screen.Colour {
	jugs := b.colours.Base.Jugs
	out := make([]screen.Colour, 0, 5)
	for _, hex := range []string{jugs[p.A].Colour.Hex, p.Swatches[0], p.Swatches[1], p.Swatches[2], jugs[p.B].Colour.Hex} {
		c, _ := screen.Hex(hex)
		out = append(out, c)
	}
	return out
}
