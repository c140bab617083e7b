package panel

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour/swirl"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of what is counted on a face.
const (
	measurePart = iota
	measureOf
	measureBeside
)

// leastMeasures is the rows beside other panels that make it worth showing: the parts of five jugs and their heading.
const leastMeasures = 6

// measures is what was counted on the face: what each jug has of it, and which colours border on which.
func measures() Panel {
	return Panel{ID: "measures", Title: "On this face", picture: true, least: atMost(leastMeasures), Grid: (*Facts).measureGrid}
}

func (f *Facts) measureGrid() grid.Grid {
	g := grid.Grid{Empty: "the face is being counted …", Columns: []grid.Column{measurePart: {W: 5, Right: true}, measureOf: {W: 20, Grow: 1}, measureBeside: {W: 12}}}
	jugs := f.Plan.Base.Jugs
	if f.Counted == nil || len(f.Counted.Shares) != len(jugs) {
		return g
	}
	g.Rows = append(g.Rows, heading("of this face"))
	for i, share := range f.Counted.Shares {
		j := jugs[i]
		name := grid.Cell{Text: look.Letter(i) + " " + j.Name}
		name.Swatch, _ = screen.Hex(f.Sheet.Base.Jugs[i].Colour.Hex)
		part := f.shown(f.percent(share*100, 0)+" %", "", j.Name+": its part of this face; the bars of a loaf differ, all of them together have the planned share")
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{measurePart: part, measureOf: name, measureBeside: f.label("planned " + f.percent(j.SharePercent, 0))}})
	}
	g.Rows = append(g.Rows, heading("of its borders"))
	for i, x := range borders(*f.Counted) {
		text := jugs[x.a].Name + " against " + jugs[x.b].Name
		part := f.shown(f.percent(x.percent, 0)+" %", "", fmt.Sprintf("%s %% of the borders are %s", f.percent(x.percent, 0), text))
		part.Plain = part.Hint
		g.Rows = append(g.Rows, grid.Row{Item: len(jugs) + i, Sub: -1, Cells: []grid.Cell{measurePart: part, measureOf: {Text: text}, measureBeside: f.mudLabel(x)}})
	}
	return g
}

// border is the border between two portions on a face.
type border struct {
	a, b    int // jugs
	percent float64
}

// leastBorderPercent is the least part of all borders that is listed, percent.
const leastBorderPercent = 0.5

// borders lists the borders of a face, the longest first, without the shortest.
func borders(face swirl.Measure) []border {
	total := 0.0
	for i, row := range face.Borders {
		for _, mm := range row[i+1:] {
			total += mm
		}
	}
	var out []border
	for i, row := range face.Borders {
		for k, mm := range row[i+1:] {
			if part := mm / total * 100; total > 0 && part >= leastBorderPercent {
				out = append(out, border{i, i + 1 + k, part})
			}
		}
	}
	slices.SortStableFunc(out, func(x, y border) int { return int(math.Round(1000 * (y.percent - x.percent))) })
	return out
}

// mudLabel says how muddy a border is.
func (f *Facts) mudLabel(x border) grid.Cell {
	mud := f.Colours.Mingling.Mud
	if x.a >= len(mud) || x.b >= len(mud) {
		return grid.Cell{}
	}
	return f.label("mud " + f.percent(mud[x.a][x.b], 2))
}
