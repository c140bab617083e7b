package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// The columns of the blend.
const (
	oilName = iota
	oilHeld
	oilPart
	oilG
	oilSap
	oilRange
)

// oils is the blend of a batch.
func oils(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "oils")), Title: ofBatch(n, "Oils"), Start: oilPart, cells: keys.Numbers,
		Grid:   gridOf(n, (*Facts).oilGrid),
		hold:   func(f *Facts, on On) Do { return f.holdOil(n, on) },
		spread: func(f *Facts, _ On) Do { return f.spreadOils(n) },
		add: func(f *Facts, _ On) Do {
			return pick(listOils, "new oil", func(id string) Do { return f.addOil(n, id) })
		},
		remove: func(f *Facts, on On) Do {
			return Do{Name: "removal of " + f.Plan.Batch(n).Oils[on.Row.Item].Oil, Edit: pour.RemoveOil(n, on.Row.Item)}
		},
	}
}

// addOil adds an oil, or goes to it where it is in the blend already.
func (f *Facts) addOil(n pour.BatchName, id string) Do {
	oil, _ := f.Shelf.Oil(id)
	all := f.Plan.Batch(n).Oils
	if i := slices.IndexFunc(all, func(o pour.OilPart) bool { return o.Oil == id }); i >= 0 {
		return Do{Said: oil.Name + " is in the blend already: type its percent", Seek: to(To{Item: i, Sub: -1, Col: oilPart})}
	}
	return Do{
		Edit: pour.AddOil(n, id), Said: oil.Name + ": type its percent; {hold} lets it go, {add} adds the next",
		Seek: to(To{Item: len(all), Sub: -1, Col: oilPart}),
	}
}

func (f *Facts) holdOil(n pour.BatchName, on On) Do {
	i := on.Row.Item
	if i < 0 {
		return Do{Why: "the cursor is on no oil"}
	}
	oil, name := f.Plan.Batch(n).Oils[i], f.batch(n).Oils[i].Name
	said := name + " keeps its part"
	if oil.Held {
		said = name + " gives way again"
	}
	return Do{Name: "hold of " + name, Edit: pour.HoldOil(n, i, !oil.Held), Said: said}
}

// SpreadName is what the edit is called that makes a blend whole.
const SpreadName = "spreading of the oils"

// spreadOils makes a blend that is not finished whole, and says what gave way.
func (f *Facts) spreadOils(n pour.BatchName) Do {
	batch := f.Plan.Batch(n)
	if batch.Unfinished() == "" {
		return Do{Why: "the oils sum to 100 %: nothing is to go"}
	}
	said := "100 % now: "
	next, err := pour.SpreadOils(n)(f.Plan.Clone())
	if err == nil {
		said += f.gaveWay(n, batch.Oils, next.Batch(n).Oils)
	}
	return Do{Name: SpreadName, Edit: pour.SpreadOils(n), Said: said + "; {undo} takes it back"}
}

// gaveWay says which oils are another part of the blend than before.
func (f *Facts) gaveWay(n pour.BatchName, before, after []pour.OilPart) string {
	var changed []string
	for i, o := range before {
		switch {
		case o.Percent == after[i].Percent:
		case o.Held:
			return fmt.Sprintf("all %d oils scaled in proportion, held ones too", len(before))
		default:
			changed = append(changed, f.batch(n).Oils[i].Name+" "+f.percent(o.Percent, 1)+" → "+f.percent(after[i].Percent, 1)+" %")
		}
	}
	return strings.Join(changed, ", ") + " (not held)"
}

func (f *Facts) oilGrid(n pour.BatchName) grid.Grid {
	batch := f.batch(n)
	g := grid.Grid{Columns: []grid.Column{
		oilName:  {Head: "oil", W: 22, Grow: 1},
		oilHeld:  {Head: "held", W: 4},
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
		own := f.Plan.Batch(n).Oils[i]
		part := f.part(own.Fields(), "percent", "part of "+line.Name, f.percent(line.Percent, 2), func(v float64) pour.Edit { return pour.SetOilPercent(n, i, v) })
		part.Hint, part.Figure = "percent of all oils; typing holds it, and the oils that are not held give way", at(string(n)+".oil", i)+"percent"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			oilName: pick, oilHeld: f.heldOil(n, i, own, line.Name), oilPart: part, oilG: f.oilGrams(n, i, line, path),
			oilSap:   f.shown(f.percent(line.SapKOHMgG, 1), path+"sap_koh_mg_g", "working saponification value"),
			oilRange: f.shown(f.percent(line.SapLow, 0)+" to "+f.percent(line.SapHigh, 0), path+"sap_low_koh_mg_g", "range behind the worst case, mg KOH/g"),
		}})
	}
	g.Rows = append(g.Rows, f.oilTotal(n))
	return g
}

func (f *Facts) heldOil(n pour.BatchName, i int, own pour.OilPart, name string) grid.Cell {
	c := f.heldCell(own.Held, "part")
	c.Name, c.Flip = "hold of "+name, pour.HoldOil(n, i, !own.Held)
	return c
}

// oilGrams is an oil's mass: typed, it becomes its part of the blend at the size the batch has.
func (f *Facts) oilGrams(n pour.BatchName, i int, line pour.OilLine, path string) grid.Cell {
	const nudgeG = 1
	set := func(g float64) pour.Edit { return pour.SetOilGrams(n, i, g, f.Shelf) }
	c := f.number("part of "+line.Name, f.Show.WeightApart(line.WeighG).Number, line.WeighG, pour.UnitGram, nudgeG, set)
	c.Figure, c.Hint = path+"weigh_g", line.Name+" to weigh, "+f.grams()+"; typed, it is its part of the batch and held, and the oils that are not held give way"
	if !pour.AsFigure(line.WeighG).Known {
		c.Plain, c.Nudge = "", nil
	}
	return c
}

// oilTotal is the last row: what the parts sum to, and while that is no hundred how far they are.
func (f *Facts) oilTotal(n pour.BatchName) grid.Row {
	batch, sum := f.batch(n), 0.0
	for _, o := range batch.Oils {
		sum += o.Percent
	}
	together, st := "together", f.Look.Quiet
	if so := f.Plan.Batch(n).Unfinished(); so != "" {
		together, st = so, f.Look.Stop
	}
	return grid.Row{Total: true, Item: -1, Sub: -1, Cells: []grid.Cell{
		oilName: {Text: together, Style: st}, oilPart: {Text: f.percent(sum, 2), Style: st},
		oilG: f.label(f.Show.WeightApart(batch.Size.OilsWeighG).Number), oilSap: f.label(f.percent(batch.Fats.SapKOHMgG, 1)),
	}}
}
