package panel

import (
	"fmt"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The columns of the jugs.
const (
	jugLetter = iota
	jugName
	jugHeld
	jugShare
	jugBatter
	jugDye
	jugDose
	jugPigment
	jugCarrier
	jugParts
	jugScent
	jugFull
	jugFullML
	jugHolds
	jugSuperfat
	jugColour
	jugLate
	jugColumns
)

// jugs is the heart of the bench: one row for each jug of a batch, and one more for each further colourant in it.
func jugs(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "jugs")), Title: ofBatch(n, "Jugs"), Start: jugShare, cells: keys.Numbers,
		Grid: gridOf(n, (*Facts).jugGrid),
		hold: func(f *Facts, on On) Do { return f.holdShare(n, on) },
		add:  func(f *Facts, on On) Do { return f.addJug(n, on) },
		colour: func(f *Facts, on On) Do {
			jug := f.Plan.Batch(n).Jugs[on.Row.Item]
			i, k := on.Row.Item, len(jug.Colourants)
			cell := f.dyeCell(n, i, k, jug.Name)
			return pick(cell.List, cell.Name, func(id string) Do {
				return Do{Edit: cell.Pick(id), Said: f.nextOfDye(id), Seek: to(To{Item: i, Sub: k, Col: jugDose})}
			})
		},
		remove: func(f *Facts, on On) Do { return f.removeJug(n, on) },
		rename: func(_ *Facts, on On) Do {
			return Do{Seek: to(To{Item: on.Row.Item, Sub: -1, Col: jugName}), Begin: true}
		},
		move: func(f *Facts, on On, by int) Do {
			i := on.Row.Item
			return Do{
				Name: "place of " + f.Plan.Batch(n).Jugs[i].Name, Edit: pour.MoveJug(n, i, i+by),
				Seek: to(To{Item: i + by, Sub: on.Row.Sub, Col: keepCol}),
			}
		},
	}
}

func (f *Facts) holdShare(n pour.BatchName, on On) Do {
	i := on.Row.Item
	switch {
	case i < 0:
		return Do{Why: "the cursor is on no jug"}
	case on.Cell.Kind == grid.Tick:
		return flip(on)
	}
	jug := f.Plan.Batch(n).Jugs[i]
	said := jug.Name + " keeps its share"
	if jug.Held {
		said = jug.Name + " gives way again"
	}
	return Do{Name: "hold of " + jug.Name, Edit: pour.HoldShare(n, i, !jug.Held), Said: said}
}

func (f *Facts) addJug(n pour.BatchName, on On) Do {
	after := on.Row.Item
	if after < 0 {
		after = len(f.Plan.Batch(n).Jugs) - 1
	}
	return Do{
		Name: "new jug", Edit: pour.AddJug(n, after, "jug"), Said: "a new jug: type its share; r names it, c colours it",
		Seek: to(To{Item: after + 1, Sub: -1, Col: jugShare}),
	}
}

// removeJug takes a jug away, or the colourant whose cells the cursor is on.
func (f *Facts) removeJug(n pour.BatchName, on On) Do {
	i := on.Row.Item
	name := f.Plan.Batch(n).Jugs[i].Name
	if on.Row.Sub >= 0 && on.Col >= jugDye && on.Col <= jugParts {
		return Do{Name: "removal of a colourant from " + name, Edit: pour.RemoveColourant(n, i, on.Row.Sub)}
	}
	return Do{Name: "removal of " + name, Edit: pour.RemoveJug(n, i), Said: name + " is gone; {undo} brings it back"}
}

func (f *Facts) jugGrid(n pour.BatchName) grid.Grid {
	g := grid.Grid{Frozen: jugHeld, Columns: f.jugColumns()}
	batch, plan := f.batch(n), f.Plan.Batch(n)
	for i := range batch.Jugs {
		for k := range max(len(plan.Jugs[i].Colourants), 1) {
			g.Rows = append(g.Rows, f.jugRow(n, i, k))
		}
	}
	total := make([]grid.Cell, jugPigment+1)
	total[jugName] = f.label("together")
	total[jugShare] = f.label(f.percent(100, 1))
	total[jugBatter] = f.label(f.Show.WeightApart(batch.Size.BatterWeighG).Number)
	f.colourLegend(total, batch.Jugs)
	g.Rows = append(g.Rows, grid.Row{Cells: total, Total: true, Item: -1, Sub: -1})
	return g
}

func (f *Facts) jugColumns() []grid.Column {
	unit := f.grams()
	return []grid.Column{
		jugLetter:   {W: 1},
		jugName:     {Head: "   jug", W: 14, Grow: 1},
		jugHeld:     {Head: "held", W: 4},
		jugShare:    {Head: "share %", W: 7, Right: true},
		jugBatter:   {Head: "batter " + unit, W: 9, Right: true},
		jugDye:      {Head: "colourant", W: 16, Grow: 2},
		jugDose:     {Head: "dose %", W: 6, Right: true},
		jugPigment:  {Head: "weigh " + unit, W: 8, Right: true},
		jugCarrier:  {Head: "carrier " + unit, W: 13},
		jugParts:    {Head: "parts", W: 5, Right: true},
		jugScent:    {Head: "scent %", W: 7, Right: true},
		jugFull:     {Head: "full " + unit, W: 8, Right: true},
		jugFullML:   {Head: "full mL", W: 7, Right: true},
		jugHolds:    {Head: "holds mL", W: 8, Right: true},
		jugSuperfat: {Head: "superfat", W: 8, Right: true},
		jugColour:   {Head: "colour", W: 8},
		jugLate:     {Head: "late %", W: 6, Right: true},
	}
}

// jugRow is the k-th colourant of jug i; the jug's own cells stand in the first row alone.
func (f *Facts) jugRow(n pour.BatchName, i, k int) grid.Row {
	jug, line := f.Plan.Batch(n).Jugs[i], f.batch(n).Jugs[i]
	r := grid.Row{Item: i, Sub: -1, Cells: make([]grid.Cell, jugColumns)}
	path := at(string(n)+".jugs", i)
	if k < len(jug.Colourants) {
		r.Sub = k
	}
	if k == 0 {
		f.jugCells(r.Cells, n, i, jug, line, path)
		f.jugTail(r.Cells, n, i, jug, line, path)
	}
	f.dyeCells(r.Cells, n, i, k, jug, line, path)
	return r
}

func (f *Facts) jugCells(cells []grid.Cell, n pour.BatchName, i int, jug pour.Jug, line pour.JugSheet, path string) {
	cells[jugLetter] = grid.Cell{Text: look.Letter(i), Style: f.Look.Strong}
	name := words("name of "+jug.Name, jug.Name, func(s string) pour.Edit { return pour.RenameJug(n, i, s) })
	name.Swatch, _ = screen.Hex(line.Colour.Hex)
	name.Mark, name.MarkStyle = colourMark(line.Colour), f.Look.Quiet
	name.Hint, name.Field = f.jugHint(line), at(string(n)+".jug", i)+"name"
	cells[jugName] = name
	held := f.heldCell(jug.Held, "share")
	held.Name, held.Flip = "hold of "+jug.Name, pour.HoldShare(n, i, !jug.Held)
	cells[jugHeld] = held
	step, _ := pour.Row(jug.Fields(), "share_percent")
	share := f.part(jug.Fields(), "share_percent", "share of "+jug.Name, f.percent(jug.SharePercent, 1),
		func(v float64) pour.Edit { return pour.TypeShare(n, i, v) })
	share.Nudge = func(steps float64) (pour.Edit, error) {
		return pour.SetShare(n, i, Trim(jug.SharePercent+steps*step.Step)), nil
	}
	share.Figure = path + "share_percent"
	share.Hint = "percent of the " + string(n) + "'s batter; typing holds it while two others can give way"
	cells[jugShare] = share
	cells[jugBatter] = f.shown(f.Show.WeightApart(line.BatterWeighG).Number, path+"batter_weigh_g", "batter to weigh into "+jug.Name+", "+f.grams())
}

// The marks that stand between a jug's swatch and its name: whose colour it is.
const (
	markEstimated = "~"
	markStated    = "="
)

func colourMark(c pour.JugColour) string {
	if c.Estimated {
		return markEstimated
	}
	return markStated
}

// colourLegend says under the jugs of a batch what those of the marks mean that stand there.
func (f *Facts) colourLegend(total []grid.Cell, jugs []pour.JugSheet) {
	for _, j := range jugs {
		if j.Colour.Estimated {
			total[jugDye] = f.label(markEstimated + " estimated")
			continue
		}
		total[jugPigment] = f.label(markStated + " stated")
	}
}

// jugHint says what a jug will look like.
func (f *Facts) jugHint(line pour.JugSheet) string {
	switch {
	case line.Colour.Hex == "":
		return "no colour can be estimated"
	case line.Colour.Estimated:
		from := "nothing but its oils"
		switch dyed, white := len(line.Colourants) > 0, line.WhitePercent > 0; {
		case dyed && white:
			from = fmt.Sprintf("its colourants, their doses and %s of white", f.Show.Percent(line.WhitePercent, 2))
		case dyed:
			from = "its colourants and their doses"
		case white:
			from = f.Show.Percent(line.WhitePercent, 2) + " of white in the whole batch"
		}
		return fmt.Sprintf("about %s once poured: estimated (%s) from %s", line.Colour.Hex, markEstimated, from)
	default:
		return fmt.Sprintf("%s once poured: stated (%s) by you", line.Colour.Hex, markStated)
	}
}

// jugTail fills the cells to the right of the colourants.
func (f *Facts) jugTail(cells []grid.Cell, n pour.BatchName, i int, jug pour.Jug, line pour.JugSheet, path string) {
	cells[jugScent] = f.shown(f.percent(line.ScentLoadPercent, 1), path+"scent_load_percent", "scent inside this jug, percent of its oils")
	cells[jugFull] = f.shown(f.Show.WeightApart(line.TotalG).Number, path+"total_g", "batter, colour, carrier and scent together")
	cells[jugFullML] = f.shown(f.Show.VolumeApart(line.TotalML).Number, path+"total_ml", "what the jug has to hold")
	holds := f.part(jug.Fields(), "capacity_ml", "size of "+jug.Name, "–", func(v float64) pour.Edit { return pour.SetCapacity(n, i, v) })
	holds.Figure = at(string(n)+".jug", i) + "capacity_ml"
	holds.Hint = "what the vessel holds, mL; 0: not stated"
	if jug.CapacityML > 0 {
		holds.Text = holds.Plain
	}
	cells[jugHolds] = holds
	cells[jugSuperfat] = f.shown(f.percent(line.Superfat.HeldPercent, 1), path+"superfat_percent",
		"superfat of this jug with what it holds; every oil at its low end: "+f.Show.Percent(line.Superfat.LowPercent, 1))
	colour := words("colour of "+jug.Name, jug.BatterColour, func(s string) pour.Edit { return pour.SetBatterColour(n, i, s) })
	colour.Hint = "colour of the finished batter, as in #5566b0; empty: estimated"
	colour.Text = colourMark(line.Colour) + line.Colour.Hex
	if line.Colour.Estimated {
		colour.Style = f.Look.Quiet
	}
	cells[jugColour] = colour
	cells[jugLate] = f.lateCell(n, i, path)
}

func (f *Facts) lateCell(n pour.BatchName, i int, path string) grid.Cell {
	batch := batchOf(f.Timed, n)
	if batch == nil || i >= len(batch.Jugs) {
		return f.shown("…", "", "the clock is being worked out")
	}
	c := f.shown(f.timed(f.whole(batch.Jugs[i].Clock.LateChancePercent)), path+"late_chance_percent",
		"chance that it is past what the technique allows when its turn comes")
	if !f.Fresh {
		c.Style = f.Look.Stale
	}
	return c
}
