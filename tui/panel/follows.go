package panel

import (
	"strconv"

	"pourbench/pour"
	"pourbench/tui/grid"
)

// follows is what comes of the shape of the icing: grams, bags, and when it can be piped.
func follows() Panel {
	return Panel{ID: "piped", Title: "What comes of the shape", Grid: (*Facts).followGrid}
}

func (f *Facts) followGrid() grid.Grid {
	p := f.Sheet.Piping
	g := grid.Grid{Columns: formColumns(labelW, 9), Empty: "no shape of icing is stated: it is put on by eye"}
	if !p.Stated() {
		return g
	}
	if p.Lacks != "" {
		g.Empty = p.Lacks
		return g
	}
	figure := func(label string, v pour.Figure, draw func(float64) pour.Amount, path, remark string) {
		g.Rows = append(g.Rows, f.figure(label, f.Show.FigureApart(v, draw), path, remark))
	}
	count := func(label string, n int, path string) {
		g.Rows = append(g.Rows, f.figure(label, pour.Amount{Number: strconv.Itoa(n)}, path, ""))
	}
	figure("one of them", p.UnitG, f.Show.DoseApart, "icing.shape_g", "")
	count("on the loaf", p.Units, "piping.units")
	figure("all of them", p.NetG, f.Show.WeightApart, "piping.net_g", "")
	figure("to be made", p.NeedG, f.Show.WeightApart, "piping.need_g", "with what stays in bags")
	figure("made", p.MadeG, f.Show.WeightApart, "icing.made_g", "")
	if p.RestG.Known && p.RestG.V > 0 {
		figure("too much by", p.RestG, f.Show.WeightApart, "piping.rest_g", "for a small mould")
	}
	figure("stays in bags", p.LeftG, f.Show.WeightApart, "piping.left_g", "")
	count("bags", p.Bags, "piping.bags")
	count("filled", p.Fills, "piping.fills")
	g.Rows = append(g.Rows, heading("on the bars"))
	figure("one is wide", p.WidthMM, f.near, "piping.across_mm", "")
	figure("one stands", p.HighMM, f.near, "piping.high_mm", "high")
	if p.GapMM.Known {
		figure("gap to the next", p.GapMM, f.near, "piping.gap_mm", "over a cut")
		figure("a cut wants", p.LaneMM, f.near, "piping.lane_mm", "left clear")
	}
	g.Rows = append(g.Rows, heading("when"))
	minutes := func(v float64) pour.Amount { return pour.Amount{Number: f.Show.Minutes(v)} }
	figure("piping takes", p.PipeMin, minutes, "piping.pipe_min", "")
	figure("peak in the base", p.PeakMM, f.near, "piping.peak_needed_mm", "must stand: an estimate")
	w := f.Timed.Piping.Window
	clock := func(v float64) pour.Amount { return pour.Amount{Number: f.timed(f.Show.RunTime(v))} }
	figure("pipe from", w.From, clock, "piping.window_from_min", "thick, and the base bears")
	figure("until", w.To, clock, "piping.window_to_min", "the icing is stiff")
	return g
}
