package panel

import (
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// topValueW is the room for the values of what is piped, set and cut: the longest word between its signs.
const topValueW = 16

// piping is the shape of the icing: the tip, what is made with it, and the bags.
func piping() Panel {
	return Panel{ID: "piping", Title: "Piped or spooned", cells: keys.Numbers | keys.Words, Grid: (*Facts).pipingGrid}
}

// pipingGrid has the rows that the shape uses, and no others.
func (f *Facts) pipingGrid() grid.Grid {
	g := grid.Grid{Columns: formColumns(labelW, topValueW), Rows: []grid.Row{f.chosen("piping.shape")}}
	p := f.Plan.Piping
	if f.Plan.Icing != nil {
		g.Rows = append(g.Rows, f.word("icing.size", f.sizedBy()))
		if f.Plan.Icing.Size == pour.SizeBar {
			g.Rows = append(g.Rows, f.field("icing.per_bar_g", ""))
		}
	}
	if p.Shape == "" || p.Shape == pour.PipeFree {
		return g
	}
	g.Rows = append(g.Rows, f.table("piping", func(key string) bool { return pipes(p, key) },
		map[string]string{"tip": "tip", "width_mm": p.Shape, "cup_ml": "icing and bags"})...)
	return g
}

// sizedBy says what the size of the icing comes from.
func (f *Facts) sizedBy() string {
	if f.Plan.Icing.Size == pour.SizeShape {
		return "as much as is piped"
	}
	return pour.SizeShape + ": as much as is piped"
}

// pipes says whether a key counts for the shape of the icing as it is: one that only some shapes use, for those alone.
func pipes(p pour.Piping, key string) bool {
	uses := map[string]string{
		"swell": "rosette rope ruffle", "pull": "rosette rope ruffle", "width_mm": "dollop shells", "height_mm": "dollop shells", "profile": "dollop",
		"coil_from_mm": "rosette", "coil_mm": "rosette", "tiers": "rosette", "overlap_percent": "rosette shells", "head_mm": "shells", "tail_mm": "shells",
		"wind_mm": "rope", "pitch_mm": "rope", "swing_mm": "ruffle", "wave_mm": "ruffle", "layer_mm": "spooned", "relief_mm": "spooned", "relief": "spooned",
	}
	if shapes, some := uses[key]; some && !slices.Contains(strings.Fields(shapes), p.Shape) {
		return false
	}
	spooned := p.Shape == pour.PipeSpooned
	switch key {
	case "shape":
		return false // it stands above all
	case "tip_mm":
		return !spooned && (p.Tip == pour.TipStar || p.Tip == pour.TipSlot || p.Shape != pour.PipeDollop && p.Shape != pour.PipeShells)
	case "points", "valley_mm":
		return !spooned && p.Tip == pour.TipStar
	case "wide_mm", "narrow_mm":
		return !spooned && p.Tip == pour.TipSlot
	case "pitch_mm":
		return p.WindMM > 0
	case "relief":
		return p.ReliefMM > 0
	case "tip", "along", "bag_g", "fill_min", "residue_bag_g", "one_bag", "bag":
		return !spooned
	case "per_bar":
		return !spooned && p.Along != pour.PipeLoaf
	case "rows":
		return !spooned && p.Along == pour.PipeLoaf
	case "cup_g":
		return p.CupML > 0
	case "overrun_percent":
		return p.CupML == 0
	case "residue_percent":
		return spooned || p.ResidueBagG == 0
	}
	return true
}
