package panel

import (
	"slices"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// The columns of the toppings.
const (
	toppingName = iota
	toppingWhen
	toppingCover
	toppingG
	toppingOf
	toppingPart
	toppingMix
	toppingAll
	toppingHands
	toppingColumns
)

// toppings is what goes onto the top, in its order. Keys that add and remove act on a topping or, in the columns of what it is made of, on
// its materials.
func toppings() Panel {
	return Panel{
		ID: "toppings", Title: "Toppings, in their order", Start: toppingCover, cells: keys.Numbers | keys.Words, Grid: (*Facts).toppingGrid,
		add: (*Facts).addTopping, remove: (*Facts).removeTopping,
		rename: func(_ *Facts, on On) Do {
			return Do{Seek: to(To{Item: on.Row.Item, Sub: -1, Col: toppingName}), Begin: true}
		},
		move: func(f *Facts, on On, by int) Do {
			i := on.Row.Item
			return Do{Name: "place of " + f.toppingCalled(i), Edit: pour.MoveTopping(i, by), Seek: to(To{Item: i + by, Sub: -1, Col: keepCol})}
		},
	}
}

// ofMaterial says whether a column is one of what a topping is made of.
func ofMaterial(col int) bool { return col >= toppingOf && col <= toppingMix }

func (f *Facts) addTopping(on On) Do {
	if i := on.Row.Item; i >= 0 && len(f.Plan.Top.Toppings) > 0 && ofMaterial(on.Col) {
		cell := f.mixCell(i)
		return pick(cell.List, cell.Name, func(id string) Do {
			return Do{Edit: cell.Pick(id), Said: cell.Adds(id), Seek: to(To{Item: i, Sub: len(f.Plan.Top.Toppings[i].Parts), Col: toppingPart})}
		})
	}
	return pick(listToppings, "new topping", func(id string) Do {
		x, _ := f.Shelf.Topping(id)
		t, col, what := freshTopping(x), toppingCover, "type how much of the top it covers, or its grams on a bar"
		if t.CoveragePercent == 0 {
			col, what = toppingG, "type its grams on a bar"
		}
		return Do{Edit: pour.AddTopping(t), Said: x.Name + ": " + what, Seek: to(To{Item: len(f.Plan.Top.Toppings), Sub: -1, Col: col})}
	})
}

// freshTopping is a topping of one material with the usual amount of it.
func freshTopping(x pour.ToppingMaterial) pour.Topping {
	t := pour.Topping{Parts: []pour.ToppingPart{{Material: x.ID, Percent: 100}}}
	switch use := x.Use; {
	case use.CoverHighPercent > 0:
		t.CoveragePercent = Trim((use.CoverLowPercent + use.CoverHighPercent) / 2)
	case use.DoseHighG > 0:
		t.GPerBar = Trim((use.DoseLowG + use.DoseHighG) / 2)
	default:
		t.GPerBar = 0.5
	}
	return t
}

// removeTopping takes a topping away, or the material whose cells the cursor is on.
func (f *Facts) removeTopping(on On) Do {
	i, k := on.Row.Item, max(on.Row.Sub, 0)
	name := f.toppingCalled(i)
	if parts := f.Plan.Top.Toppings[i].Parts; len(parts) > 1 && k < len(parts) && (on.Row.Sub > 0 || ofMaterial(on.Col)) {
		return Do{Name: "removal of a material from " + name, Edit: pour.RemoveToppingPart(i, k)}
	}
	return Do{Name: "removal of " + name, Edit: pour.RemoveTopping(i), Said: name + " is gone; {undo} brings it back"}
}

// toppingCalled is what a topping is called: by its own name or by its first material.
func (f *Facts) toppingCalled(i int) string {
	t := f.Plan.Top.Toppings[i]
	if t.Name != "" || len(t.Parts) == 0 {
		return t.Name
	}
	x, _ := f.Shelf.Topping(t.Parts[0].Material)
	return x.Name
}

func (f *Facts) toppingGrid() grid.Grid {
	g := grid.Grid{Frozen: toppingWhen, Empty: "nothing goes onto the top: {add} adds sprinkles, dust, petals, a spray or a drizzle from the shelf", Columns: []grid.Column{
		toppingName:  {Head: "   topping", W: 18, Grow: 2},
		toppingWhen:  {Head: "goes on", W: 9},
		toppingG:     {Head: f.grams() + " a bar", W: 7, Right: true},
		toppingCover: {Head: "covers %", W: 8, Right: true},
		toppingHands: {Head: "min", W: 4, Right: true},
		toppingOf:    {Head: "made of", W: 18, Grow: 1},
		toppingPart:  {Head: "part %", W: 6, Right: true},
		toppingMix:   {Head: "mix in", W: 6},
		toppingAll:   {Head: "in all " + f.grams(), W: 8, Right: true},
	}}
	for i, t := range f.Plan.Top.Toppings {
		for k := range max(len(t.Parts), 1) {
			r := grid.Row{Item: i, Sub: k, Cells: make([]grid.Cell, toppingColumns)}
			if k == 0 {
				r.Sub = -1
				f.toppingCells(r.Cells, i)
			}
			if k < len(t.Parts) {
				f.materialCells(r.Cells, i, k)
			}
			g.Rows = append(g.Rows, r)
		}
	}
	return g
}

// toppingCells fills the cells of a topping itself.
func (f *Facts) toppingCells(cells []grid.Cell, i int) {
	t, own := f.Plan.Top.Toppings[i], at("top.topping", i)
	called := f.toppingCalled(i)
	name := words("name of "+called, called, func(s string) pour.Edit { return pour.SetText(own+"name", s) })
	name.Plain = called
	if len(t.Parts) > 0 {
		x, _ := f.Shelf.Topping(t.Parts[0].Material)
		name.Hint = toppingHint(x)
		if c, ok := screen.Hex(x.Colour); ok {
			name.Swatch = c
		}
	}
	cells[toppingName], cells[toppingWhen] = name, f.whenCell(i)
	cells[toppingG] = f.cellOf(own + "g_per_bar")
	cells[toppingCover] = f.cellOf(own + "coverage_percent")
	if t.GPerBar > 0 {
		cells[toppingCover].Style = f.Look.Quiet
		cells[toppingCover].Hint += "; its grams count, they are typed"
	}
	cells[toppingHands] = f.cellOf(own + "hands_min")
	cells[toppingMix] = f.mixCell(i)
	if i >= len(f.Sheet.Toppings) {
		return
	}
	line, path := f.Sheet.Toppings[i], at("toppings", i)
	if t.GPerBar == 0 {
		f.instead(&cells[toppingG], line.PerBarG, path+"per_bar_g", func(g float64) string { return f.Show.DoseApart(g).Number })
	}
	if t.HandsMin == 0 {
		f.instead(&cells[toppingHands], pour.Know(line.HandsMin), path+"hands_min", func(v float64) string { return f.Show.Number(v, 1) })
	}
	cells[toppingAll] = f.massCell(line.AllG, path+"all_g", called+" on all bars")
}

// instead shows in the cell of a number that is 0 what then counts in its place.
func (f *Facts) instead(c *grid.Cell, v pour.Figure, path string, draw func(float64) string) {
	c.Text, c.Style, c.Figure = "="+f.Show.Figure(v, draw), f.Look.Quiet, path
}

// massCell is a small mass that was worked out.
func (f *Facts) massCell(v pour.Figure, path, hint string) grid.Cell {
	return f.shown(f.Show.Figure(v, func(g float64) string { return f.Show.DoseApart(g).Number }), path, hint)
}

// whenCell is when a topping goes on; it goes round the moments.
func (f *Facts) whenCell(i int) grid.Cell {
	path := at("top.topping", i) + "when"
	own, field, _ := pour.Text(f.Plan, path)
	now := own
	if now == "" && i < len(f.Sheet.Toppings) {
		now = f.Sheet.Toppings[i].When
	}
	moments := field.Choices()
	if now == "" {
		now = moments[0]
	}
	c := turning("when "+f.toppingCalled(i)+" goes on", "‹ "+now+" ›", moments, now, func(steps float64) pour.Edit { return pour.SetWord(path, turned(moments, now, steps)) })
	c.Plain, c.Figure = now, path
	c.Hint = map[string]string{
		pour.StrewWet: "on the fresh top, right after the icing", pour.StrewSkin: "when the top has skinned but is tacky", pour.StrewCut: "after the cut", pour.StrewCure: "on the cured bar",
	}[now] + "; {change} goes on to " + turned(moments, now, 1)
	if own == "" {
		c.Hint = "as the shelf says: " + c.Hint
	}
	return c
}

// materialCells fills the cells of one material of a topping.
func (f *Facts) materialCells(cells []grid.Cell, i, k int) {
	part := f.Plan.Top.Toppings[i].Parts[k]
	x, _ := f.Shelf.Topping(part.Material)
	cells[toppingOf] = grid.Cell{
		Kind: grid.Choice, Text: x.Name, List: listToppings, ID: part.Material, Name: "material of " + f.toppingCalled(i), Hint: toppingHint(x),
		Pick: func(id string) pour.Edit { return pour.SwapToppingPart(i, k, id) },
	}
	path := at(at("top.topping", i)+"part", k) + "percent"
	c := f.part(part.Fields(), "percent", "part of "+x.Name, f.percent(part.Percent, 1), func(v float64) pour.Edit { return pour.SetToppingPart(i, k, v) })
	c.Figure, c.Hint = path, "percent of the topping by mass; the others give way"
	cells[toppingPart] = c
}

// mixCell is where another material is mixed into a topping.
func (f *Facts) mixCell(i int) grid.Cell {
	return grid.Cell{
		Kind: grid.Choice, Text: "+ ▼", Style: f.Look.Quiet, List: listToppings, Name: "blend of " + f.toppingCalled(i),
		Hint: "mix another material of the shelf into " + f.toppingCalled(i),
		Pick: func(id string) pour.Edit { return pour.AddToppingPart(i, id) },
		Adds: func(id string) string {
			x, _ := f.Shelf.Topping(id)
			return x.Name + " is mixed in: type its part"
		},
	}
}

// cellOf is a number of the plan in a table, by its path in the file.
func (f *Facts) cellOf(path string) grid.Cell {
	r := f.stated(path)
	if len(r.Cells) <= formValue {
		return grid.Cell{}
	}
	return r.Cells[formValue]
}

// toppingHint says in short what a material minds.
func toppingHint(x pour.ToppingMaterial) string {
	return x.Name + ": " + join(slices.DeleteFunc([]string{x.Alkali.Note, x.Wet.Note, x.Heat.Note}, func(s string) bool { return s == "" }))
}

func (f *Facts) toppingItem(x pour.ToppingMaterial) dialog.Item {
	it := dialog.Item{ID: x.ID, Name: x.Name, Aside: x.Kind}
	if c, ok := screen.Hex(x.Colour); ok {
		it.Swatches = []screen.Colour{c}
	}
	warn := func(is bool, text string) string { return map[bool]string{true: text}[is] }
	it.Detail = []string{
		x.Name + ", " + x.Kind + ", goes on " + map[string]string{pour.StrewWet: "the wet top", pour.StrewSkin: "a tacky skin", pour.StrewCut: "after the cut", pour.StrewCure: "the cured bar"}[x.When],
		warn(x.Dust, "! fine dust: do not breathe it"), warn(x.Flammable, "! its vapour burns: no flame"), warn(x.Plastic, "! plastic particles: there are dates for them"),
	}
	facts := x.Behaviour(f.Show, f.Plan.Room.TemperatureC)
	for _, fact := range facts {
		it.Detail = append(it.Detail, fact.What+": "+fact.Says)
	}
	for _, fact := range facts {
		it.Detail = append(it.Detail, "source, "+fact.What+": "+fact.Source.Told()+" ("+fact.Source.Confidence+")")
	}
	return it
}
