package panel

import (
	"fmt"

	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of the neighbours.
const (
	pairJugs = iota
	pairTouch
	pairMixed
	pairMud
	pairVerdict
)

// pairs lists who touches whom on the loaf's faces, most contact first, and what they make where they touch, with the mixes that show it.
func pairs() Panel {
	return Panel{ID: "pairs", Title: "Neighbours", picture: true, Grid: (*Facts).pairGrid}
}

func (f *Facts) pairGrid() grid.Grid {
	g := grid.Grid{Empty: coloursAwaited, Columns: []grid.Column{
		pairJugs:    {Head: "pair", W: 5},
		pairTouch:   {Head: "touch", W: 5, Right: true},
		pairMixed:   {Head: "mixed", W: 10},
		pairMud:     {Head: "mud", W: 4, Right: true},
		pairVerdict: {W: 12, Grow: 1},
	}}
	jugs := f.Colours.Base.Jugs
	for i, p := range f.Colours.Mingling.Pairs {
		pair, path := jugs[p.A].Name+" beside "+jugs[p.B].Name, at("neighbours", i)
		names := f.shown(look.Letter(p.A)+" · "+look.Letter(p.B), path+"contact_percent", pair+f.mixes(p))
		names.Plain = pair
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: f.stale([]grid.Cell{
			pairJugs: names,
			pairTouch: f.shown(f.percent(p.ContactPercent, 0)+" %", path+"contact_percent",
				fmt.Sprintf("%s: %s %% of all boundary between jugs, measured on the faces of the loaf", pair, f.percent(p.ContactPercent, 1))),
			pairMixed:   f.mixed(p),
			pairMud:     f.shown(f.percent(p.Score, 2), path+"mud", pair+": mud, 0 clean to 1"),
			pairVerdict: f.verdict(p, pair, path),
		})})
	}
	return g
}

func (f *Facts) verdict(p pour.Pair, pair, path string) grid.Cell {
	c := f.shown(p.Verdict, path+"mud", "")
	switch p.Verdict {
	case string(colour.Muddy):
		c.Text, c.Style = "! "+p.Verdict, f.Look.Caution
	case string(colour.Clean):
		c.Style = f.Look.Good
	}
	if p.Cause != "" {
		c.Text += ", " + p.Cause
	}
	c.Hint = pair + ": " + c.Text
	c.Plain = c.Hint
	return c
}

// mixed shows the colours from one neighbour to the other; where the terminal has no colours, a word for what they look like where they meet.
func (f *Facts) mixed(p pour.Pair) grid.Cell {
	swatches := f.blend(p)
	if !f.Colourless {
		return grid.Cell{Swatches: swatches}
	}
	return grid.Cell{Text: look.ColourWord(swatches[len(swatches)/2])}
}

// mixes says what stands beside a pair: samples, or in words how they look where they meet.
func (f *Facts) mixes(p pour.Pair) string {
	if f.Colourless {
		what := ": their equal mix looks "
		if p.Parts[1] != 0.5 {
			what = ": where they meet they look "
		}
		return what + f.mixed(p).Text
	}
	percent := func(i int) string { return f.percent(100*p.Parts[i], 0) }
	return fmt.Sprintf(": the two, and between them their mixes with %s, %s and %s %% of the second", percent(0), percent(1), percent(2))
}

// blend is the colours from one neighbour to the other.
func (f *Facts) blend(p pour.Pair) []screen.Colour {
	jugs := f.Colours.Base.Jugs
	out := make([]screen.Colour, 0, 5)
	for _, hex := range []string{jugs[p.A].Colour.Hex, p.Swatches[0], p.Swatches[1], p.Swatches[2], jugs[p.B].Colour.Hex} {
		c, _ := screen.Hex(hex)
		out = append(out, c)
	}
	return out
}
