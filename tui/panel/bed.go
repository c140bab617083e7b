package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// bed is what happens from the last pour to the shelf.
func bed() Panel {
	return Panel{ID: "bed", Title: "To bed", cells: keys.Numbers | keys.Words, Grid: (*Facts).bedGrid}
}

func (f *Facts) bedGrid() grid.Grid {
	g := f.Timed.Gel
	gels := "gels from " + f.Show.Figure(g.FromC, f.Show.Temp)
	if g.Word != "" {
		gels += ": " + g.Word
	}
	return grid.Grid{Columns: formColumns(labelW, valueW), Rows: []grid.Row{
		f.word("bed.keep", "insulate for gel, chill against"), f.field("bed.cut_after_h", "from lye-in"),
		f.field("bed.cure_days", "after the cut"), f.field("room.temperature_c", ""),
		f.figure("middle reaches", f.timedAmount(f.Show.FigureApart(g.MiddleC.Mid, f.Show.TempApart)), "gel.middle_c", gels),
	}}
}

// timedAmount is [Facts.timed] of a number with its unit.
func (f *Facts) timedAmount(v pour.Amount) pour.Amount {
	if v.Unit == "" {
		return pour.Amount{Number: f.timed(v.Number)}
	}
	return pour.Amount{Number: v.Number, Unit: f.timed(v.Unit)}
}
