package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// pieces is what else is to be said of every embed: a column for each of them.
func pieces() Panel {
	return Panel{ID: "pieces", Title: "The embeds, in detail", Start: 1, cells: keys.Numbers | keys.Words, Grid: (*Facts).pieceGrid}
}

// The room for a value of an embed.
const pieceW = 16

// pieceGrid has a row for every key of an embed that the list of them does not show, and a column for every embed that uses it.
func (f *Facts) pieceGrid() grid.Grid {
	all := f.Plan.Top.Embeds
	g := grid.Grid{Frozen: 1, Empty: "no embeds: they are added in their list", Columns: []grid.Column{{W: labelW}}}
	if len(all) == 0 {
		return g
	}
	for _, e := range all {
		g.Columns = append(g.Columns, grid.Column{Head: screen.Clip(e.Name, pieceW), W: pieceW, Right: true})
	}
	g.Columns = append(g.Columns, grid.Column{W: 4, Grow: 1})
	var some []grid.Row // that do not count for each of them stand below
	for _, field := range all[0].Fields() {
		switch row, n := f.pieceRow(field); n {
		case 0:
		case len(all):
			g.Rows = append(g.Rows, row)
		default:
			some = append(some, row)
		}
	}
	g.Rows = append(g.Rows, some...)
	return g
}

// listed says whether a key of an embed stands in the list of embeds.
func listed(key string) bool {
	switch key {
	case "name", "outline", "length_mm", "width_mm", "height_mm", "out_mm":
		return true
	}
	return false
}

// counts says whether a key counts for an embed as it is.
func counts(e *pour.Embed, key string) bool {
	rod, own := e.Outline == pour.OutlineRod, e.In == pour.EmbedOwn
	switch key {
	case "turn_deg":
		return !rod && !e.AnyTurn && (e.Outline == pour.OutlineBox || e.Outline == pour.OutlineEllipse)
	case "any_turn":
		return e.Outline == pour.OutlineBox || e.Outline == pour.OutlineEllipse
	case "corners":
		return e.Outline == pour.OutlineOwn
	case "density_g_ml":
		return e.G == 0
	case "in", "per_bar", "across_mm":
		return !rod || key != "in"
	case "every", "along_mm":
		return !rod && !own
	case "at_mm":
		return !rod && own
	}
	return true
}

// pieceRow is the row of a key, and for how many embeds it counts: for none what stands in the list of them.
func (f *Facts) pieceRow(field pour.Field) (grid.Row, int) {
	cells := []grid.Cell{{Text: field.Label}}
	used := 0
	for i := range f.Plan.Top.Embeds {
		e, path := &f.Plan.Top.Embeds[i], at("top.embed", i)+field.Key
		if listed(field.Key) || !counts(e, field.Key) {
			cells = append(cells, grid.Cell{})
			continue
		}
		used++
		c := f.pieceCell(path, field)
		c.Name = field.Label + " of " + e.Name
		cells = append(cells, c)
	}
	_, unit := f.Show.ToUnit(0, field.Unit)
	return grid.Row{Sub: -1, Cells: append(cells, f.label(unit))}, used
}

// pieceCell is the cell of a key, by what the key holds.
func (f *Facts) pieceCell(path string, field pour.Field) grid.Cell {
	if field.Takes == pour.TakesColour {
		return f.colourCell(path)
	}
	r := f.row(path, field)
	if len(r.Cells) <= formValue {
		return grid.Cell{}
	}
	return r.Cells[formValue]
}

// colourCell is a colour that is typed as in the plan file.
func (f *Facts) colourCell(path string) grid.Cell {
	now, field, _ := pour.Text(f.Plan, path)
	c := words(field.Label, now, func(s string) pour.Edit { return pour.SetText(path, s) })
	c.Hint = field.Means + ": #rrggbb, as in #c9486e; nothing for grey"
	if c.Swatch, _ = screen.Hex(now); now == "" {
		c.Text, c.Style = "grey", f.Look.Quiet
	}
	return c
}
