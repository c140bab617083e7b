package panel

import (
	"math"
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/look"
)

// The columns of the bars.
const (
	barNumber = iota
	barStart
	barEnd
	barThick
	barCut
	barCured
	barIcing
	barEmbed
	barTopping
	barVerdict
	barColumns
)

// cutBars is every bar as it comes off the cutter.
func cutBars() Panel {
	return Panel{
		ID: "bars", Title: "The bars, one by one", Start: barStart, cells: keys.Numbers, Grid: (*Facts).barGrid,
		least: func(want int) int { return min(want, leastCutPlan) },
	}
}

func (f *Facts) barGrid() grid.Grid {
	_, mm := f.Show.ToUnit(0, pour.UnitMM)
	unit := f.grams()
	g := grid.Grid{Frozen: barStart, Empty: "no bar is cut: the cut plan says why", Columns: []grid.Column{
		barNumber:  {Head: "bar", W: 7},
		barStart:   {Head: "from " + mm, W: 7, Right: true},
		barEnd:     {Head: "to " + mm, W: 6, Right: true},
		barThick:   {Head: "thick", W: 6, Right: true},
		barCut:     {Head: "cut " + unit, W: 7, Right: true},
		barCured:   {Head: "cured " + unit, W: 7, Right: true},
		barIcing:   {Head: "icing", W: 6, Right: true},
		barEmbed:   {Head: "embed", W: 6, Right: true},
		barTopping: {Head: "top", W: 5, Right: true},
		barVerdict: {W: 13, Grow: 1},
	}}
	for i, b := range f.Sheet.Cut.Bars {
		g.Rows = append(g.Rows, f.barRow(i, b))
	}
	return behind(g, f.offcuts())
}

// behind puts rows behind those of a grid that has any.
func behind(g grid.Grid, rows []grid.Row) grid.Grid {
	if len(g.Rows) > 0 {
		g.Rows = append(g.Rows, rows...)
	}
	return g
}

func (f *Facts) barRow(i int, b pour.BarPiece) grid.Row {
	path := at("cut.bars", i)
	cells := make([]grid.Cell, barColumns)
	cells[barNumber] = grid.Cell{Text: "bar " + strconv.Itoa(i+1)}
	half := f.Plan.Cut.KerfMM / 2
	cells[barStart] = f.edgeCell("start of bar "+strconv.Itoa(i+1), b.StartMM, -half, path+"start_mm")
	cells[barEnd] = f.edgeCell("end of bar "+strconv.Itoa(i+1), b.EndMM, half, path+"end_mm")
	cells[barThick] = f.shown(f.mm(b.ThicknessMM()), path+"thickness_mm", "from one cut to the next, less what they take")
	cells[barCut] = f.weightCell(b.CutG, path+"cut_g", "as cut, with all that is on and in it")
	cells[barCured] = f.weightCell(b.CuredG, path+"cured_g", "about, once dry")
	cells[barIcing] = f.weightCell(b.IcingG, path+"icing_g", "icing on it")
	cells[barEmbed] = f.weightCell(b.EmbedG, path+"embed_g", "embeds in it")
	cells[barTopping] = f.massCell(b.ToppingG, path+"topping_g", "toppings on it")
	if verdict, s, there := f.columnVerdict(b); there {
		c := grid.Cell{Text: verdict, Style: f.Look.Good}
		if s != pour.Note {
			c = grid.Cell{Text: look.Mark(s) + " " + verdict, Style: f.Look.Severity(s)}
		}
		cells[barVerdict] = c
	}
	return grid.Row{Item: i, Sub: -1, Cells: cells}
}

// weightCell is a mass that was worked out, on the kitchen scale.
func (f *Facts) weightCell(v pour.Figure, path, hint string) grid.Cell {
	return f.shown(f.Show.Figure(v, func(g float64) string { return f.Show.WeightApart(g).Number }), path, hint)
}

// edgeCell is where a bar begins or ends; typed and nudged, it moves the cut there. off is how far the middle of that cut stands from it.
func (f *Facts) edgeCell(name string, mm, off float64, path string) grid.Cell {
	i, ok := f.cutAt(mm + off)
	if !ok {
		return f.shown(f.mm(mm), path, "the loaf's own end, which is kept")
	}
	c := f.number(name, f.mm(mm), mm, pour.UnitMM, cutStepMM, func(v float64) pour.Edit { return pour.MoveCut(f.Sheet.Cut, i, v+off) })
	c.Figure, c.Name = path, "cut "+strconv.Itoa(i+1)
	c.Hint = "cut " + strconv.Itoa(i+1) + " runs here; {more} {less} move it by " + f.Show.LenNear(cutStepMM) + ", and both bars beside it follow"
	return c
}

// cutAt is the cut whose middle stands at a place.
func (f *Facts) cutAt(mm float64) (int, bool) {
	for i, at := range f.Sheet.Cut.CutsMM {
		if math.Abs(at-mm) < 1e-6 {
			return i, true
		}
	}
	return 0, false
}

// offcuts are the rows for what is cut off and is no bar.
func (f *Facts) offcuts() []grid.Row {
	c := f.Sheet.Cut
	row := func(name string, long float64, longPath string, g pour.Figure, path, hint string) grid.Row {
		cells := make([]grid.Cell, barColumns)
		cells[barNumber] = f.label(name)
		if longPath != "" {
			cells[barThick] = f.shown(f.mm(long), longPath, hint)
		}
		if path != "" {
			cells[barCut] = f.weightCell(g, path, hint)
		}
		return grid.Row{Item: -1, Sub: -1, Cells: cells}
	}
	var rows []grid.Row
	if c.TrimAMM > 0 {
		rows = append(rows, row("trim A", c.TrimAMM, "cut.trimmed_a_mm", pour.Figure{}, "", "trimmed at end A"))
	}
	if c.TrimBMM > 0 {
		rows = append(rows, row("trim B", c.TrimBMM, "cut.trimmed_b_mm", pour.Figure{}, "", "trimmed at end B"))
	}
	if c.TrimAMM+c.TrimBMM > 0 {
		rows = append(rows, row("trims", 0, "", c.TrimsG, "cut.trims_g", "all trims together"))
	}
	if c.SliceMM > 0 {
		rows = append(rows, row("slice", c.SliceMM, "cut.sliced_mm", c.SliceG, "cut.sample_g", "the sample slice"))
	}
	if c.KerfMM > 0 {
		rows = append(rows, row("crumbs", 0, "", c.KerfG, "cut.kerf_g", "what the cuts take"))
	}
	return rows
}
