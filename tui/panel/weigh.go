package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// The columns of what is weighed.
const (
	weighName = iota
	weighG
	weighUnit
	weighKind
)

// weigh is everything to weigh, base and icing together.
func weigh() Panel {
	return Panel{ID: "weigh", Title: "To weigh, all together", Grid: (*Facts).weighGrid}
}

func (f *Facts) weighGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{weighName: {W: 22, Grow: 1}, weighG: {W: 10, Right: true}, weighUnit: {W: 2}, weighKind: {W: 9}}}
	stopped := f.Sheet.LyeStopped()
	for i, w := range f.Sheet.Totals {
		draw := f.Show.DoseApart
		if w.Kind == pour.WeighOil || w.Kind == pour.WeighWater {
			draw = f.Show.WeightApart
		}
		amount, unit, style := draw(w.G).Number, f.grams(), screen.Style{}
		if stopped && (w.Kind == pour.WeighAlkali || w.Kind == pour.WeighWater) {
			amount, unit, style = doNotMix, "", f.Look.Stop
		}
		c, name := f.shown(amount, at("totals", i)+"g", w.Name+", base and icing together, for having enough; weigh by batch"), w.Name
		if w.Kind == pour.WeighAlkali && f.Plan.Icing != nil { // the one thing whose sum must never go into one batch
			name += ", base + icing: weigh by batch"
		}
		c.Style = style
		g.Rows = append(g.Rows, grid.Row{Sub: -1, Cells: []grid.Cell{weighName: {Text: name}, weighG: c, weighUnit: f.label(unit), weighKind: f.label(w.Kind)}})
	}
	return g
}
