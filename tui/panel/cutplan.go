package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// cutPlan is how the loaf is cut: what decides where the cuts run, the cutter, and what a cut may be off.
func cutPlan() Panel {
	return Panel{
		ID: "cut plan", Title: "Cut plan", cells: keys.Numbers | keys.Words, Grid: (*Facts).cutPlanGrid,
		least: func(want int) int { return min(want, leastCutPlan) },
	}
}

// The room for the labels and values of the cut plan, which stands in a narrow column.
const (
	cutLabelW = 19
	cutValueW = 15
)

// leastCutPlan is how many lines the plan of the cuts can do with beside the map of them.
const leastCutPlan = 7

// cutPlanGrid has the rows that count for the way the loaf is cut, and no others.
func (f *Facts) cutPlanGrid() grid.Grid {
	rows := f.table("cut", func(key string) bool { return cutsBy(f.Plan, key) }, map[string]string{"tool": "cutter", "clear_mm": "what may be off"})
	for i := range rows {
		if c := rows[i].Cells; len(c) > formValue && c[formValue].Figure == "cut.gang_at_mm" && f.Plan.Cut.GangAtMM == 0 {
			f.instead(&c[formValue], f.Sheet.Cut.Gang.AtMM, "cut.gang_at_mm", f.mm)
		}
	}
	return grid.Grid{Columns: formColumns(cutLabelW, cutValueW), Rows: rows}
}

// cutsBy says whether a key of the cut plan counts for the way the loaf is cut.
func cutsBy(p pour.Plan, key string) bool {
	c := p.Cut
	switch key {
	case "count":
		return c.By == pour.CutCount || c.By == pour.CutMass
	case "marks_mm":
		return c.By == pour.CutMarks
	case "wires_mm", "gang_at_mm":
		return c.By == pour.CutGang
	case "vary_mm", "even":
		return c.By == pour.CutBest
	case "left":
		return c.By != pour.CutMarks && c.By != pour.CutGang
	case "slice_at":
		return c.SliceMM > 0
	}
	return true
}
