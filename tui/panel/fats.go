package panel

import (
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
)

// leastFatPercent is the least of what is not known that is worth a row, percent.
const leastFatPercent = 0.05

// fats shows what a blend is made of. There is no score here, only chemistry.
func fats(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "fats")), Title: ofBatch(n, "Fatty acids"),
		Grid: gridOf(n, (*Facts).fatGrid),
	}
}

func (f *Facts) fatGrid(n pour.BatchName) grid.Grid {
	fats, at := f.batch(n).Fats, string(n)+"."
	g := grid.Grid{Columns: []grid.Column{formLabel: {W: 20}, formValue: {W: 6, Right: true}, formUnit: {W: 4}, formRemark: {W: 10, Grow: 1}}}
	family := func(name string, v float64, path string) {
		r := f.figure(name, f.Show.PercentApart(v, 1), at+path, "")
		r.Cells[formRemark] = grid.Cell{Text: bar(v), Style: f.Look.Accent}
		g.Rows = append(g.Rows, r)
	}
	family("C8 to C14", fats.Families.ShortPercent, "short_percent")
	family("palmitic + stearic", fats.Families.PalmiticStearicPercent, "palmitic_stearic_percent")
	family("oleic", fats.Families.OleicPercent, "oleic_percent")
	family("linoleic + linolenic", fats.Families.LinoleicLinolenicPercent, "linoleic_linolenic_percent")
	family("ricinoleic", fats.Families.RicinoleicPercent, "ricinoleic_percent")
	if fats.Families.OtherPercent > leastFatPercent {
		family("other or not known", fats.Families.OtherPercent, "other_percent")
	}
	g.Rows = append(g.Rows,
		f.figure("iodine value", pour.Amount{Number: f.whole(fats.IodineValue)}, at+"iodine_value", "g iodine per 100 g"),
		f.figure("saponification", pour.Amount{Number: f.percent(fats.SapKOHMgG, 1)}, at+"sap_koh_mg_g", "mg KOH/g"))
	return g
}

// bar draws a percentage as a bar, four percent to a cell, with half cells.
func bar(v float64) string {
	const perCell = 4
	if !pour.AsFigure(v).Known {
		return ""
	}
	halves := int(v/perCell*2 + 0.5)
	return strings.Repeat("█", halves/2) + strings.Repeat("▌", halves%2)
}
