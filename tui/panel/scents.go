package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/look"
)

// The columns of the scent matrix: first these, then one for each jug, then the columns of [Facts.scentTail].
const (
	scentName = iota
	scentLoad
	scentG
	scentAt
	scentJugs
)

// newScentPercent is what a new scent starts at; it is typed over at once.
const newScentPercent = 2

// scents is scents × jugs: load, grams, where each goes, and what is left of it in the cured bar against its limit.
func scents(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "scents")), Title: ofBatch(n, "Scents"), cells: keys.Numbers,
		Grid: gridOf(n, (*Facts).scentGrid),
		hold: func(_ *Facts, on On) Do {
			if on.Cell.Kind != grid.Tick {
				return Do{Why: "go to a jug's column to put the scent into it or leave it out"}
			}
			return flip(on)
		},
		add: func(f *Facts, _ On) Do {
			pot := f.Plan.Batch(n).Jugs[0].Name
			return pick(listScents, "new scent", func(id string) Do {
				sc, _ := f.Shelf.Scent(id)
				return Do{
					Edit: pour.AddScent(n, id, newScentPercent, []string{pot}), Said: sc.Name + ": type its load; {right} goes to the jugs, {hold} puts it into one",
					Seek: to(To{Item: len(f.Plan.Batch(n).Scents), Sub: -1, Col: scentLoad}),
				}
			})
		},
		remove: func(f *Facts, on On) Do {
			return Do{Name: "removal of " + f.Plan.Batch(n).Scents[on.Row.Item].Scent, Edit: pour.RemoveScent(n, on.Row.Item)}
		},
	}
}

// scentTail is the places of the last columns, behind those of the jugs: what is in the cured bar, and its limit.
func (f *Facts) scentTail(n pour.BatchName) (inBar, limit int) {
	inBar = scentJugs + len(f.batch(n).Jugs)
	return inBar, inBar + 1
}

func (f *Facts) scentGrid(n pour.BatchName) grid.Grid {
	batch := f.batch(n)
	g := grid.Grid{Frozen: scentLoad, Empty: "no scent: {add} adds one from the shelf", Columns: f.scentColumns(n)}
	for i := range batch.Scents {
		g.Rows = append(g.Rows, f.scentRow(n, i))
	}
	if len(batch.Scents) == 0 {
		return g
	}
	total := make([]grid.Cell, len(g.Columns))
	total[scentName] = f.label("inside each jug, % of its oils")
	for k, j := range batch.Jugs {
		text := f.percent(j.ScentLoadPercent, 1)
		if j.ScentLoadPercent == 0 {
			text = "–"
		}
		total[scentJugs+k] = f.shown(text, at(string(n)+".jugs", k)+"scent_load_percent", "scent inside "+j.Name+", percent of its own oils: several scents add up here")
	}
	inBar, _ := f.scentTail(n)
	total[inBar] = f.label(f.percent(f.Sheet.Bars.BaseScentPercent, 2))
	g.Rows = append(g.Rows, grid.Row{Total: true, Item: -1, Sub: -1, Cells: total})
	return g
}

func (f *Facts) scentColumns(n pour.BatchName) []grid.Column {
	inBar, limit := f.scentTail(n)
	cols := make([]grid.Column, limit+1)
	cols[scentName] = grid.Column{Head: "scent", W: 22, Grow: 3}
	cols[scentLoad] = grid.Column{Head: "load %", W: 6, Right: true}
	cols[scentG] = grid.Column{Head: f.grams(), W: 7, Right: true}
	cols[scentAt] = grid.Column{Head: "at min", W: 6, Right: true}
	for k := range f.batch(n).Jugs {
		cols[scentJugs+k] = grid.Column{Head: look.Letter(k), W: 4, Right: true}
	}
	cols[inBar] = grid.Column{Head: "bar %", W: 6, Right: true}
	cols[limit] = grid.Column{Head: "limit %", W: 7, Right: true}
	return cols
}

func (f *Facts) scentRow(n pour.BatchName, i int) grid.Row {
	batch := f.batch(n)
	line, part, path := batch.Scents[i], f.Plan.Batch(n).Scents[i], at(string(n)+".scents", i)
	sc, _ := f.Shelf.Scent(line.ID)
	inBar, limit := f.scentTail(n)
	cells := make([]grid.Cell, limit+1)
	cells[scentName] = grid.Cell{
		Kind: grid.Choice, Text: line.Name, List: listScents, ID: line.ID, Name: "scent " + line.Name, Hint: f.scentHint(sc),
		Pick: func(id string) pour.Edit { return pour.SwapScent(n, i, id) }, Field: at(string(n)+".scent", i) + "scent",
	}
	cells[scentLoad] = f.part(part.Fields(), "percent_of_oils", "load of "+line.Name, f.percent(line.LoadPercent, 2),
		func(v float64) pour.Edit { return pour.SetScentLoad(n, i, v) })
	cells[scentLoad].Hint = "percent of all oils of the batch; the grams go to the chosen jugs in proportion to their batter"
	cells[scentG] = f.shown(f.Show.DoseApart(line.G).Number, path+"g", line.Name+" to weigh, "+f.grams())
	cells[scentAt] = asTyped(f.part(part.Fields(), "at_min", "time of "+line.Name, "", func(v float64) pour.Edit { return pour.SetScentAt(n, i, v) }))
	cells[scentAt].Hint = "the earliest minute it goes in, after this batch's lye-in"
	own := at(string(n)+".scent", i)
	cells[scentLoad].Figure, cells[scentAt].Figure = own+"percent_of_oils", own+"at_min"
	for k, j := range batch.Jugs {
		cells[scentJugs+k] = f.scentTick(n, i, line, j)
	}
	cells[inBar], cells[limit] = f.inBar(line, path), f.limit(line, sc, path)
	return grid.Row{Item: i, Sub: -1, Cells: cells}
}

// scentTick is whether a scent goes into a jug; where it does, the grams it brings there are in the hint.
func (f *Facts) scentTick(n pour.BatchName, i int, line pour.ScentLine, j pour.JugSheet) grid.Cell {
	c := grid.Cell{Kind: grid.Tick, Text: "·", Style: f.Look.Quiet, Name: line.Name + " in " + j.Name, Flip: pour.ToggleScentJug(n, i, j.Name), Round: yesNo(slices.Contains(line.Into, j.Name))}
	c.Hint = line.Name + " stays out of " + j.Name + "; {hold} puts it in"
	if slices.Contains(line.Into, j.Name) {
		c.Text, c.Style = "●", f.Look.Accent
		for _, x := range j.Scents {
			if x.ID == line.ID {
				c.Hint = fmt.Sprintf("%s into %s; {hold} leaves it out", f.Show.Dose(x.G), j.Name)
			}
		}
	}
	return c
}

func (f *Facts) inBar(line pour.ScentLine, path string) grid.Cell {
	c := f.shown(f.percent(line.InBarPercent, 2), path+"in_bar_percent", "percent of the cured bar, base and icing together")
	if line.LimitPercent > 0 && line.InBarPercent > line.LimitPercent {
		c.Text, c.Style = "■"+c.Text, f.Look.Stop
	}
	return c
}

func (f *Facts) limit(line pour.ScentLine, sc pour.Scent, path string) grid.Cell {
	if line.LimitPercent == 0 {
		return f.shown("–", "", "no certificate on the shelf: ask the supplier for the category 9 limit")
	}
	return f.shown(f.percent(line.LimitPercent, 2), path+"limit_percent", "most its certificate allows in the cured bar, category 9, amendment "+sc.Amendment)
}

func (f *Facts) scentHint(sc pour.Scent) string {
	parts := []string{inBatter(f.Shelf.BehaviourOf(sc))}
	if sc.Rices {
		parts = append(parts, "can rice")
	}
	if sc.VanillinPercent > 0 {
		parts = append(parts, "vanillin "+f.percent(sc.VanillinPercent, 1)+" %: browns")
	}
	if sc.Notes != "" {
		parts = append(parts, sc.Notes)
	}
	return strings.Join(parts, "; ")
}

// inBatter says what a scent does to the batter it is stirred into.
func inBatter(behaviour string) string {
	switch behaviour {
	case pour.BehaviourNone:
		return "in batter: thickens it no sooner"
	case pour.BehaviourSlows:
		return "in batter: slows it"
	case pour.BehaviourFast:
		return "in batter: thickens it sooner"
	case pour.BehaviourStrong:
		return "in batter: thickens it much sooner"
	case pour.BehaviourSeizes:
		return "in batter: can set it within seconds"
	default:
		return "in batter: nobody has said how it behaves; try it in a small jug"
	}
}
