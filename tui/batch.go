package tui

import (
	"fmt"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/screen"
)

// doNotMix stands where a lye amount would, while a stop stands on the lye.
const doNotMix = "do not mix"

// lyeStopped says whether a stop stands on the lye: then no lye amount is shown, as on paper.
func lyeStopped(s *pour.Sheet) bool {
	for _, w := range s.Warnings {
		if w.Lye && w.Severity == pour.Stop {
			return true
		}
	}
	return false
}

// oilGrid is the blend of a batch.
func (b *bench) oilGrid(p layout.Panel) grid.Grid {
	n, batch := batchName(p), b.batch(p)
	g := grid.Grid{Columns: []grid.Column{
		{Head: "oil", W: 22, Grow: 1},
		{Head: "%", W: 7, Right: true},
		{Head: b.grams(), W: 9, Right: true},
		{Head: "mg KOH/g", W: 9, Right: true},
		{Head: "published", W: 12},
	}}
	for i, line := range batch.Oils {
		oil, _ := b.shelf.Oil(line.ID)
		pick := grid.Cell{
			Kind: grid.Choice, Text: line.Name, List: listOils, ID: line.ID, Name: "oil " + line.Name, Hint: oil.Note,
			Pick: func(id string) pour.Edit { return pour.SwapOil(n, i, id) },
		}
		part := b.number("part of "+line.Name, percent(line.Percent, 2), line.Percent, pour.UnitPercent, 1, func(v float64) pour.Edit { return pour.SetOilPercent(n, i, v) })
		part.Hint = "percent of all oils; the others give way in proportion"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			pick, part, b.shown(bare(b.show.Weight(line.WeighG)), line.Name+" to weigh, "+b.grams()),
			b.shown(percent(line.SapKOHMgG, 1), "working saponification value"),
			b.shown(percent(line.SapLow, 0)+" to "+percent(line.SapHigh, 0), "range behind the worst case, mg KOH/g"),
		}})
	}
	g.Rows = append(g.Rows, grid.Row{Total: true, Item: -1, Sub: -1, Cells: []grid.Cell{
		b.label("together"), b.label(percent(100, 2)), b.label(bare(b.show.Weight(batch.Size.OilsWeighG))), b.label(percent(batch.Fats.SapKOHMgG, 1)),
	}})
	return g
}

// extraGrid is what goes into the whole batch before the split.
func (b *bench) extraGrid(p layout.Panel) grid.Grid {
	n, batch := batchName(p), b.batch(p)
	g := grid.Grid{Empty: "nothing yet: a adds white pigment, sugar, salt, milk or the like", Columns: []grid.Column{
		{Head: "extra", W: 22, Grow: 1}, {Head: "% of oils", W: 9, Right: true}, {Head: b.grams(), W: 9, Right: true}, {Head: "goes into", W: 9}, {Head: "water %", W: 7, Right: true},
	}}
	for i, line := range batch.Extras {
		x, _ := b.shelf.Extra(line.ID)
		name := b.shown(line.Name, x.Caution)
		into := b.intoCell(n, i, line)
		part := b.number(line.Name, percent(line.Percent, 2), line.Percent, pour.UnitPercent, 0.1, func(v float64) pour.Edit { return pour.SetExtra(n, i, v) })
		part.Hint = fmt.Sprintf("percent of the oils; usual %s to %s %%", percent(x.DoseLowPercent, 2), percent(x.DoseHighPercent, 2))
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			name, part, b.shown(bare(b.show.Dose(line.G)), line.Name+" to weigh, "+b.grams()), into, b.label(percent(line.WaterPercent, 0)),
		}})
	}
	return g
}

// intoCell is where an extra goes in; it goes round the places.
func (b *bench) intoCell(n pour.BatchName, i int, line pour.ExtraLine) grid.Cell {
	places := []string{pour.InOils, pour.InLye, pour.InWater}
	words := map[string]string{pour.InOils: "the oils", pour.InLye: "the lye", pour.InWater: "lye water"}
	turn := func(steps float64) pour.Edit { return pour.SetExtraIn(n, i, turned(places, line.In, steps)) }
	hint := map[pour.Joining]string{
		pour.JoinsOils: "stirred into the oils or at emulsion", pour.JoinsBefore: "dissolved in the lye's water before the alkali",
		pour.JoinsOnIce: "the lye's water itself, frozen or chilled before the alkali", pour.JoinsHot: "into the lye while it is hot", pour.JoinsCooled: "into the cooled lye",
	}[line.Joins]
	if line.AllPercent.Known && line.AllPercent.V > 0 {
		hint += "; " + percent(line.AllPercent.V, 2) + " % of the oils would be all of the lye's water"
	}
	return grid.Cell{
		Kind: grid.Tick, Text: words[line.In], Name: line.Name, Hint: hint + "; Enter: " + words[turned(places, line.In, 1)], Flip: turn(1),
		Nudge: func(steps float64) (pour.Edit, error) { return turn(steps), nil },
	}
}

// burstGrid is the runs of the stick blender.
func (b *bench) burstGrid(p layout.Panel) grid.Grid {
	n := batchName(p)
	bursts := b.plan.Batch(n).Blend
	g := grid.Grid{
		Empty:   "stirred by hand alone: a adds a burst",
		Columns: []grid.Column{{Head: "burst", W: 8}, {Head: "at min", W: 8, Right: true}, {Head: "seconds", W: 8, Right: true}, {W: 0, Grow: 1}},
	}
	set := func(i int, change func(*pour.Burst)) pour.Edit {
		next := append([]pour.Burst(nil), bursts...)
		change(&next[i])
		return pour.SetBursts(n, next)
	}
	for i, burst := range bursts {
		at := b.number("burst", percent(burst.AtMin, 2), burst.AtMin, pour.UnitMinute, 0.5,
			func(v float64) pour.Edit { return set(i, func(x *pour.Burst) { x.AtMin = v }) })
		at.Hint = "minutes after this batch's lye meets its oils"
		s := b.number("burst", percent(burst.S, 0), burst.S, pour.UnitSecond, 5,
			func(v float64) pour.Edit { return set(i, func(x *pour.Burst) { x.S = v }) })
		s.Hint = "seconds of blending; each one brings trace nearer"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{b.label(fmt.Sprint(i + 1)), trimZeros(at), s}})
	}
	return g
}

// trimZeros shows a number as it would be typed.
func trimZeros(c grid.Cell) grid.Cell { c.Text = c.Plain; return c }

// lyeGrid is size, lye, superfat and temperatures of a batch.
func (b *bench) lyeGrid(p layout.Panel) grid.Grid {
	n, batch := batchName(p), b.batch(p)
	at := string(n) + "."
	rows := b.sizeRows(n, at)
	rows = append(rows, heading("to weigh"))
	rows = append(rows, b.alkaliRows(batch)...)
	rows = append(rows, b.superfatRows(at, batch)...)
	rows = append(rows, heading("lye"), b.field(at+"lye_concentration_percent", "alkali ÷ (alkali + all water)"),
		b.figure("as mixed", b.show.Percent(batch.Lye.AsMixedPercent, 1), "over 50 % it will not dissolve"),
		b.field(at+"koh_share_percent", ""), b.word(at+"koh_share_by", "mass: of the pure alkali"), b.field(at+"naoh_purity_percent", ""), b.field(at+"koh_purity_percent", ""),
		b.field(at+"stock_lye_percent", ""), b.word(at+"carrier", "for colourants"),
		b.carrierOilRow(n), b.readyBlendRow(n),
		heading("temperatures"), b.field(at+"oils_c", ""), b.field(at+"lye_c", ""),
		b.figure("batter starts at", b.show.Temp(batch.Heat.MixC), ""), b.field(at+"batter_c", "0: worked out"),
		b.figure("lye rises by", b.show.Figure(batch.Heat.LyeRiseK, b.show.TempDiff), "as it dissolves"),
		b.figure("lye peaks at", b.show.Figure(batch.Heat.LyePeakC, b.show.Temp), ""),
		b.figure("oils cloud near", b.show.Figure(batch.Heat.CloudC, b.show.Temp), "± "+b.show.TempDiff(chem.CloudBandC)),
		heading("times"), b.field(at+"split_at_min", "after lye-in"))
	if n == pour.Icing {
		rows = append(rows, b.field(at+"start_at_min", "run clock"), b.word(at+"bags", "one: striped"))
	}
	rows = append(rows, b.field(at+"final_moisture_percent", "of the cured bar"))
	return grid.Grid{Columns: []grid.Column{{W: 19}, {W: 10, Right: true}, {W: 4}, {W: 0, Grow: 1}}, Rows: rows}
}

// superfatRows says which superfat is which: the planned one of all oils, what the scales make of it, and that of the leanest jug.
func (b *bench) superfatRows(at string, batch *pour.BatchSheet) []grid.Row {
	rows := []grid.Row{
		heading("superfat"), b.field(at+"superfat_percent", "of all oils, carriers' too"),
		b.figure("as weighed", b.show.Percent(batch.Superfat.AsWeighedPercent, 2), "oils and alkali on their scales"),
		b.figure("worst case", b.show.Percent(batch.Superfat.LowPercent, 1), "every oil at its low end"),
		b.figure("best case", b.show.Percent(batch.Superfat.HighPercent, 1), "every oil at its high end"),
	}
	if lean, ok := batch.LeanestJug(); ok {
		rows = append(rows, b.figure("leanest jug", b.show.Percent(lean.Superfat.FirmPercent, 2), lean.Name+", with what it holds"),
			b.figure("its worst case", b.show.Percent(lean.Superfat.LowPercent, 1), "every oil at its low end"))
	}
	return rows
}

// carrierOilRow is the oil that wets oil-borne colourants.
func (b *bench) carrierOilRow(n pour.BatchName) grid.Row {
	id := b.plan.Batch(n).CarrierOil
	c := grid.Cell{Kind: grid.Choice, Text: "largest ▼", List: listOils, ID: id, Name: "carrier oil", Hint: "the oil that wets oil-borne colourants; as it stands, the largest of the blend"}
	c.Pick = func(id string) pour.Edit { return pour.SetCarrierOil(n, id) }
	if oil, ok := b.shelf.Oil(id); ok {
		c.Text, c.Plain, c.Hint = oil.Name+" ▼", oil.Name, "the oil that wets oil-borne colourants"
	}
	return grid.Row{Sub: -1, Cells: []grid.Cell{{Text: "carrier oil"}, c}}
}

// readyBlendRow names a blend of oils that is bought or mixed beforehand and weighed as one.
func (b *bench) readyBlendRow(n pour.BatchName) grid.Row {
	name := b.plan.Batch(n).ReadyBlend
	c := b.words("ready-mixed blend", name, func(s string) pour.Edit { return pour.SetReadyBlend(n, s) })
	c.Hint = "a ready-mixed blend is weighed as one, and still worked out oil by oil; empty: every oil is weighed"
	if name == "" {
		c.Text, c.Style = "–", b.look.Quiet
	}
	return grid.Row{Sub: -1, Cells: []grid.Cell{{Text: "ready-mixed blend"}, c}}
}

// sizeRows says what the batch is sized by.
func (b *bench) sizeRows(n pour.BatchName, at string) []grid.Row {
	rows := []grid.Row{heading("size"), b.word(at+"size", "")}
	switch b.plan.Batch(n).Size {
	case pour.SizeOils:
		rows = append(rows, b.field(at+"oils_g", "all oils"))
	case pour.SizeBar:
		rows = append(rows, b.field(at+"per_bar_g", ""))
	case pour.SizeLayer:
		rows = append(rows, b.field(at+"layer_mm", "over the whole top"))
	default:
		rows = append(rows, b.field("mould.fill_mm", "in the mould"))
	}
	if n == pour.Icing {
		rows = append(rows, b.field(at+"loss_percent", ""))
	}
	return rows
}

// alkaliRows is what goes on the lye scale.
func (b *bench) alkaliRows(batch *pour.BatchSheet) []grid.Row {
	amount := func(text string) string {
		if lyeStopped(b.sheet) {
			return doNotMix
		}
		return text
	}
	row := func(label, text string) grid.Row {
		r := b.figure(label, text, "")
		if text == doNotMix {
			r.Cells[1].Text, r.Cells[1].Style, r.Cells[2].Text = "DO NOT MIX", b.look.Stop, ""
		}
		return r
	}
	var rows []grid.Row
	if batch.Lye.Stock.WeighedG > 0 {
		rows = append(rows, row("stock lye", amount(b.show.Dose(batch.Lye.Stock.ToWeighG))))
	}
	if batch.Lye.NaOH.WeighedG > 0 {
		rows = append(rows, row("NaOH", amount(b.show.Dose(batch.Lye.NaOH.ToWeighG))))
	}
	if batch.Lye.KOH.WeighedG > 0 {
		rows = append(rows, row("KOH", amount(b.show.Dose(batch.Lye.KOH.ToWeighG))))
	}
	rows = append(rows, row("water to add", amount(b.show.Figure(batch.Lye.WaterToAddG, b.show.Weight))))
	if batch.Lye.WaterInExtrasG > 0 {
		rows = append(rows, b.figure("water in extras", b.show.Weight(batch.Lye.WaterInExtrasG), ""))
	}
	return append(rows, b.figure("batter", b.show.Weight(batch.Size.BatterWeighG), b.show.Volume(batch.Size.BatterML)))
}

// fatGrid shows what the blend is made of. There is no score here, only chemistry.
func (b *bench) fatGrid(p layout.Panel) grid.Grid {
	batch := b.batch(p)
	f := batch.Fats.Families
	g := grid.Grid{Columns: []grid.Column{{W: 20}, {W: 6, Right: true}, {W: 4}, {W: 10, Grow: 1}}}
	row := func(name string, v float64) {
		r := b.figure(name, b.show.Percent(v, 1), "")
		r.Cells[3] = grid.Cell{Text: bar(v), Style: b.look.Accent}
		g.Rows = append(g.Rows, r)
	}
	row("C8 to C14", f.ShortPercent)
	row("palmitic + stearic", f.PalmiticStearicPercent)
	row("oleic", f.OleicPercent)
	row("linoleic + linolenic", f.LinoleicLinolenicPercent)
	row("ricinoleic", f.RicinoleicPercent)
	if f.OtherPercent > 0.05 {
		row("other or not known", f.OtherPercent)
	}
	iodine := b.show.Figure(batch.Fats.IodineValue, func(v float64) string { return percent(v, 0) })
	g.Rows = append(g.Rows,
		b.figure("iodine value", iodine, "g iodine per 100 g"),
		b.figure("saponification", percent(batch.Fats.SapKOHMgG, 1), "mg KOH/g"))
	return g
}

// bar draws a percentage as a bar, four percent to a cell, with half cells.
func bar(v float64) string {
	const perCell = 4
	halves := int(v/perCell*2 + 0.5)
	return strings.Repeat("█", halves/2) + strings.Repeat("▌", halves%2)
}

// weighGrid is everything to weigh, base and icing together.
func (b *bench) weighGrid() grid.Grid {
	g := grid.Grid{Columns: []grid.Column{{W: 22, Grow: 1}, {W: 10, Right: true}, {W: 2}, {W: 9}}}
	stopped := lyeStopped(b.sheet)
	for _, w := range b.sheet.Totals {
		draw := b.show.Weight
		if w.Kind != "oil" && w.Kind != "water" {
			draw = b.show.Dose
		}
		amount, unit := bare(draw(w.G)), b.grams()
		style := screen.Style{}
		if stopped && (w.Kind == "alkali" || w.Kind == "water") {
			amount, unit, style = "DO NOT MIX", "", b.look.Stop
		}
		c := b.shown(amount, w.Name+", base and icing together")
		c.Style = style
		g.Rows = append(g.Rows, grid.Row{Sub: -1, Cells: []grid.Cell{{Text: w.Name}, c, b.label(unit), b.label(w.Kind)}})
	}
	return g
}
