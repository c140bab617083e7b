package panel

import (
	"math"
	"slices"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// doNotMix stands where a lye amount would, while a stop stands on the lye.
const doNotMix = "DO NOT MIX"

// lyeLabelW is the room for the labels of the lye's form.
const lyeLabelW = 19

// lye is size, lye, superfat and temperatures of a batch.
func lye(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "lye")), Title: ofBatch(n, "Lye and superfat"), cells: keys.Numbers | keys.Words,
		Grid: gridOf(n, (*Facts).lyeGrid),
	}
}

func (f *Facts) lyeGrid(n pour.BatchName) grid.Grid {
	return grid.Grid{Columns: formColumns(lyeLabelW, valueW), Rows: slices.Concat(
		f.sizeRows(n), f.alkaliRows(n), f.superfatRows(n), f.lyeRows(n), f.heatRows(n), f.timeRows(n),
	)}
}

// sizeRows says what the batch is sized by.
func (f *Facts) sizeRows(n pour.BatchName) []grid.Row {
	at := string(n) + "."
	rows := []grid.Row{heading("size"), f.wordBy(at+"size", "", func(w string) pour.Edit { return f.sizeBy(n, w) })}
	switch f.Plan.Batch(n).Size {
	case pour.SizeOils:
		rows = append(rows, f.field(at+"oils_g", "all oils"))
	case pour.SizeBar:
		rows = append(rows, f.field(at+"per_bar_g", ""))
	case pour.SizeLayer:
		rows = append(rows, f.field(at+"layer_mm", "over the whole top"))
	case pour.SizeShape:
		rows = append(rows, f.figure("one unit", f.Show.FigureApart(f.Sheet.Piping.UnitG, f.Show.DoseApart), at+"shape_g", "as much as is piped"))
	default:
		rows = append(rows, f.field("mould.fill_mm", "in the mould"))
	}
	switch {
	case n == pour.Icing && f.Plan.Piping.Shaped():
		loss := pour.Amount{Number: f.percent(f.batch(n).Size.LossPercent, 1), Unit: string(pour.UnitPercent)}
		rows = append(rows, f.figure("stays in bags", loss, at+"loss_percent", "as its piping says"))
	case n == pour.Icing:
		rows = append(rows, f.field(at+"loss_percent", ""))
	}
	return rows
}

// sizeBy sizes a batch by a word; by its oils it begins with as many as it has now, to the gram, where none are stated: without, none could be chosen.
func (f *Facts) sizeBy(n pour.BatchName, w string) pour.Edit {
	size := pour.SetWord(string(n)+".size", w)
	now := math.Round(f.batch(n).Size.OilsG)
	if w != pour.SizeOils || f.Plan.Batch(n).OilsG > 0 || !(now > 0) || f.batch(n).Refused.Masses != "" {
		return size
	}
	return pour.Both(pour.SetNumber(string(n)+".oils_g", now), size)
}

// alkaliRows is what goes on the lye scale.
func (f *Facts) alkaliRows(n pour.BatchName) []grid.Row {
	l, size, at := f.batch(n).Lye, f.batch(n).Size, string(n)+"."
	stopped := f.Sheet.LyeStopped()
	row := func(label string, v pour.Amount, path string) grid.Row {
		if stopped {
			v = pour.Amount{Number: doNotMix}
		}
		r := f.figure(label, v, path, "")
		if stopped {
			r.Cells[formValue].Style = f.Look.Stop
		}
		return r
	}
	rows := []grid.Row{heading("to weigh")}
	if l.Stock.WeighedG > 0 {
		rows = append(rows, row("stock lye", f.Show.DoseApart(l.Stock.ToWeighG), at+"stock_to_weigh_g"))
	}
	if l.NaOH.WeighedG > 0 {
		rows = append(rows, row("NaOH", f.Show.DoseApart(l.NaOH.ToWeighG), at+"naoh_to_weigh_g"))
	}
	if l.KOH.WeighedG > 0 {
		rows = append(rows, row("KOH", f.Show.DoseApart(l.KOH.ToWeighG), at+"koh_to_weigh_g"))
	}
	rows = append(rows, row("water to add", f.Show.FigureApart(l.WaterToAddG, f.Show.WeightApart), at+"water_to_add_g"))
	if l.WaterInExtrasG > 0 {
		rows = append(rows, f.figure("water in extras", f.Show.WeightApart(l.WaterInExtrasG), at+"water_in_extras_g", ""))
	}
	return append(rows, f.figure("batter", f.Show.WeightApart(size.BatterWeighG), at+"batter_weigh_g", f.Show.Volume(size.BatterML)))
}

// superfatRows says which superfat is which: the planned one of all oils, what the scales make of it, and that of the leanest jug.
func (f *Facts) superfatRows(n pour.BatchName) []grid.Row {
	batch, path := f.batch(n), string(n)+"."
	s := batch.Superfat
	weighed, alone, counted := "oils and alkali on their scales", "every oil at its low end", "every oil at its low end"
	best := "every oil at its high end"
	if batch.Lye.ExtraFatKOHG > 0 { // the batch's ends count oils alone, and so no caution rests on the fat of milk
		weighed, alone, counted, best = "counts fat in extras", "oils alone, each at its low end", "oils low, fat in extras counted", "oils alone, each at its high end"
	}
	rows := []grid.Row{
		heading("superfat"), f.field(path+"superfat_percent", "of all oils, carriers' too"),
		f.figure("as weighed", f.Show.PercentApart(s.AsWeighedPercent, 2), path+"superfat_as_weighed_percent", weighed),
		f.figure("worst case", f.Show.PercentApart(s.LowPercent, 1), path+"superfat_low_percent", alone),
		f.figure("best case", f.Show.PercentApart(s.HighPercent, 1), path+"superfat_high_percent", best),
	}
	lean, ok := batch.LeanestJug()
	if !ok {
		return rows
	}
	path = at(path+"jugs", slices.IndexFunc(batch.Jugs, func(j pour.JugSheet) bool { return j.Name == lean.Name }))
	return append(rows,
		f.figure("leanest jug", f.Show.PercentApart(lean.Superfat.FirmPercent, 2), path+"superfat_firm_percent", lean.Name+", with what it holds"),
		f.figure("its worst case", f.Show.PercentApart(lean.Superfat.LowPercent, 1), path+"superfat_low_percent", counted))
}

func (f *Facts) lyeRows(n pour.BatchName) []grid.Row {
	at := string(n) + "."
	return []grid.Row{
		heading("lye"), f.field(at+"lye_concentration_percent", "alkali ÷ (alkali + all water)"),
		f.figure("as mixed", f.Show.PercentApart(f.batch(n).Lye.AsMixedPercent, 1), at+"lye_as_mixed_percent", "over 50 % it will not dissolve"),
		f.field(at+"koh_share_percent", ""), f.word(at+"koh_share_by", "mass: of the pure alkali"),
		f.field(at+"naoh_purity_percent", ""), f.field(at+"koh_purity_percent", ""),
		f.field(at+"stock_lye_percent", ""), f.word(at+"carrier", "for colourants"),
		formRow("carrier oil", f.carrierOil(n)), formRow("ready-mixed blend", f.readyBlend(n)),
	}
}

// carrierOil is the oil that wets oil-borne colourants.
func (f *Facts) carrierOil(n pour.BatchName) grid.Cell {
	id := f.Plan.Batch(n).CarrierOil
	c := grid.Cell{Kind: grid.Choice, Text: "largest ▼", List: listOils, ID: id, Name: "carrier oil", Hint: "the oil that wets oil-borne colourants; as it stands, the largest of the blend"}
	c.Pick = func(id string) pour.Edit { return pour.SetCarrierOil(n, id) }
	if oil, ok := f.Shelf.Oil(id); ok {
		c.Text, c.Plain, c.Hint = oil.Name+" ▼", oil.Name, "the oil that wets oil-borne colourants"
	}
	return c
}

// readyBlend names a blend of oils that is bought or mixed beforehand and weighed as one.
func (f *Facts) readyBlend(n pour.BatchName) grid.Cell {
	name := f.Plan.Batch(n).ReadyBlend
	c := words("ready-mixed blend", name, func(s string) pour.Edit { return pour.SetReadyBlend(n, s) })
	c.Hint = "a ready-mixed blend is weighed as one, and still worked out oil by oil; empty: every oil is weighed"
	if name == "" {
		c.Text, c.Style = "–", f.Look.Quiet
	}
	return c
}

func (f *Facts) heatRows(n pour.BatchName) []grid.Row {
	h, at := f.batch(n).Heat, string(n)+"."
	return []grid.Row{
		heading("temperatures"), f.field(at+"oils_c", ""), f.field(at+"lye_c", ""),
		f.figure("batter starts at", f.Show.TempApart(h.MixC), at+"mix_c", ""), f.field(at+"batter_c", "0: worked out"),
		f.figure("lye rises by", f.Show.FigureApart(h.LyeRiseK, f.Show.TempDiffApart), at+"lye_rise_k", "as it dissolves"),
		f.figure("lye peaks at", f.Show.FigureApart(h.LyePeakC, f.Show.TempApart), at+"lye_peak_c", ""),
		f.figure("oils cloud near", f.Show.FigureApart(h.CloudC, f.Show.TempApart), at+"cloud_c", "± "+f.Show.TempDiff(chem.CloudBandC)),
	}
}

func (f *Facts) timeRows(n pour.BatchName) []grid.Row {
	at := string(n) + "."
	rows := []grid.Row{heading("times"), f.field(at+"split_at_min", "after lye-in")}
	if n == pour.Icing {
		rows = append(rows, f.field(at+"start_at_min", "run clock"), f.word(at+"bags", "one: striped"))
	}
	return append(rows, f.field(at+"final_moisture_percent", "of the cured bar"))
}
