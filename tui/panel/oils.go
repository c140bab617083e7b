package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// The columns of the blend.
const (
	oilName = iota
	oilPart
	oilG
	oilSap
	oilRange
)

// newOilPercent is what a new oil starts at; it is typed over at once.
const newOilPercent = 5

// oils is the blend of a batch.
func oils(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "oils")), Title: ofBatch(n, "Oils"), cells: keys.Numbers,
		Grid: gridOf(n, (*Facts).oilGrid),
		add: func(*Facts, On) Do {
			return Do{Pick: &grid.Cell{List: listOils, Name: "new oil", Pick: func(id string) pour.Edit { return pour.AddOil(n, id, newOilPercent) }}}
		},
		remove: func(f *Facts, on On) Do {
			return Do{Name: "removal of " + f.Plan.Batch(n).Oils[on.Row.Item].Oil, Edit: pour.RemoveOil(n, on.Row.Item)}
		},
	}
}

func (f *Facts) oilGrid(n pour.BatchName) grid.Grid {
	batch := f.batch(n)
	g := grid.Grid{Columns: []grid.Column{
		oilName:  {Head: "oil", W: 22, Grow: 1},
		oilPart:  {Head: "%", W: 7, Right: true},
		oilG:     {Head: f.grams(), W: 9, Right: true},
		oilSap:   {Head: "mg KOH/g", W: 9, Right: true},
		oilRange: {Head: "published", W: 12},
	}}
	for i, line := range batch.Oils {
		oil, _ := f.Shelf.Oil(line.ID)
		path := at(string(n)+".oils", i)
		pick := grid.Cell{
			Kind: grid.Choice, Text: line.Name, List: listOils, ID: line.ID, Name: "oil " + line.Name, Hint: oil.Note,
			Pick: func(id string) pour.Edit { return pour.SwapOil(n, i, id) },
		}
		part := f.part(f.Plan.Batch(n).Oils[i].Fields(), "percent", "part of "+line.Name, f.percent(line.Percent, 2), func(v float64) pour.Edit { return pour.SetOilPercent(n, i, v) })
		part.Hint, part.Figure = "percent of all oils; the others give way in proportion", at(string(n)+".oil", i)+"percent"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			oilName: pick, oilPart: part,
			oilG:     f.shown(f.Show.WeightApart(line.WeighG).Number, path+"weigh_g", line.Name+" to weigh, "+f.grams()),
			oilSap:   f.shown(f.percent(line.SapKOHMgG, 1), path+"sap_koh_mg_g", "working saponification value"),
			oilRange: f.shown(f.percent(line.SapLow, 0)+" to "+f.percent(line.SapHigh, 0), path+"sap_low_koh_mg_g", "range behind the worst case, mg KOH/g"),
		}})
	}
	g.Rows = append(g.Rows, grid.Row{Total: true, Item: -1, Sub: -1, Cells: []grid.Cell{
		oilName: f.label("together"), oilPart: f.label(f.percent(100, 2)),
		oilG: f.label(f.Show.WeightApart(batch.Size.OilsWeighG).Number), oilSap: f.label(f.percent(batch.Fats.SapKOHMgG, 1)),
	}})
	return g
}
