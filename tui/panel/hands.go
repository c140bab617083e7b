package panel

import (
	"slices"

	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// hands is how long the hands need for each task.
func hands() Panel {
	return Panel{ID: "hands", Title: "How long the hands need", cells: keys.Numbers, Grid: (*Facts).handGrid}
}

func (f *Facts) handGrid() grid.Grid {
	g := grid.Grid{Columns: formColumns(labelW, valueW)}
	paths := []string{"run.cool_lye_min", "base.split_at_min", "run.split_min", "run.stir_min", "run.scent_min"}
	for _, path := range slices.Concat(paths, f.Sheet.HandsUsed(), []string{"run.bed_min"}) {
		g.Rows = append(g.Rows, f.field(path, ""))
	}
	if f.Sheet.Icing != nil {
		g.Rows = append(g.Rows, heading("icing"), f.field("icing.start_at_min", "on the run clock"), f.field("icing.split_at_min", "after its lye-in"))
	}
	return g
}
