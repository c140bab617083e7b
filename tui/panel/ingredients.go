package panel

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// The columns of the ingredients.
const (
	lineName = iota
	linePercent
	lineG
	lineFrom
)

// ingredients is the list as the label of the market has it, in its order.
func ingredients() Panel {
	return Panel{ID: "ingredients", Title: "Ingredients", cells: keys.Words, least: atMost(leastIngredients), Grid: (*Facts).ingredientGrid, change: changeMarket}
}

// On a low screen list and allergens stand below each other in so many lines.
const (
	leastIngredients = 8
	leastAllergens   = 7
)

// atMost is a panel that can do with so many lines beside others.
func atMost(lines int) func(int) int {
	return func(want int) int { return min(want, lines) }
}

// What stands on the panels of a label where there is nothing to show.
const (
	noLabel      = "no label is asked for: {change} chooses the market where the bars are sold"
	labelAwaited = "the label is being worked out …"
	askLocally   = "no legal advice: " + currentText
	currentText  = "check the current text, ask locally"
)

// changeMarket chooses the market where a panel has no cell that could be changed.
func changeMarket(f *Facts, on On) Do {
	if f.Plan.Label.Market != "" {
		if on.Cell.Kind == grid.Blank {
			return Do{Why: labelAwaited}
		}
		return Do{Why: "this is worked out from the plan; it cannot be typed"}
	}
	return pick(listMarkets, "market of the label", func(id string) Do { return Do{Edit: pour.SetText("label.market", id)} })
}

// labelled is the label's figures of the plan on the bench or, while they are worked out again, of the plan before.
func (f *Facts) labelled() *pour.LabelSheet { return &f.Timed.Label }

// noFigures is why the panels of a label have nothing to show; empty: they have.
func (f *Facts) noFigures(l *pour.LabelSheet) string {
	switch {
	case f.Plan.Label.Market == "":
		return noLabel
	case l.Market == "" || l.Market != f.Plan.Label.Market:
		return labelAwaited
	}
	return l.Refused
}

// market is the market that a label is for.
func (f *Facts) market(l *pour.LabelSheet) label.Market {
	m, _ := f.Shelf.Market(l.Market)
	return m
}

// awaited draws cells quietly while what they show is worked out again.
func (f *Facts) awaited(cells []grid.Cell) []grid.Cell {
	if !f.Fresh {
		for i := range cells {
			cells[i].Style = f.Look.Stale
		}
	}
	return cells
}

func (f *Facts) ingredientGrid() grid.Grid {
	l := f.labelled()
	g := grid.Grid{Empty: f.noFigures(l), Columns: []grid.Column{
		lineName:    {Head: "ingredient", W: 26, Grow: 3},
		linePercent: {Head: "%", W: 7, Right: true},
		lineG:       {Head: f.grams() + " a bar", W: 8, Right: true},
		lineFrom:    {Head: "from", W: 12, Grow: 2},
	}}
	if g.Empty != "" {
		return g
	}
	m := f.market(l)
	g.Rows = append(g.Rows, heading(askLocally))
	if text := l.SameSoap(); text != "" {
		g.Rows = append(g.Rows, heading(text))
	}
	part := ""
	for i := range l.Lines {
		if p := linePart(&l.Lines[i], m, f.Show); p != part {
			part = p
			g.Rows = append(g.Rows, heading(p))
		}
		g.Rows = append(g.Rows, f.ingredientRow(&l.Lines[i], i))
	}
	all := f.shown(f.Show.Figure(l.MadeG, func(v float64) string { return f.Show.DoseApart(v).Number }), "label.made_g", "mass of the average bar as it was made, nothing dried: what the lines sum to")
	g.Rows = append(g.Rows, grid.Row{Item: -1, Sub: -1, Total: true, Cells: f.awaited([]grid.Cell{lineName: f.label("a bar as it was made"), linePercent: {}, lineG: all, lineFrom: {}})})
	return g
}

// linePart is the heading over the part of a list that a line stands in.
func linePart(l *label.Line, m label.Market, show pour.Show) string {
	switch {
	case l.Class == label.Unlisted:
		return "in the balance, on no label"
	case l.Class == label.Colourant:
		return "colourants, in any order"
	case l.Class == label.Perfume && m.ScentLast:
		return "scent, at the end"
	case l.Free && m.FreeAt:
		return show.Number(m.FreePercent, 0) + " % or less: any order is right"
	case l.Free:
		return "under " + show.Number(m.FreePercent, 0) + " %: any order is right"
	}
	return "by mass"
}

func (f *Facts) ingredientRow(l *label.Line, i int) grid.Row {
	path := at("label.lines", i)
	from := strings.Join(l.From, ", ")
	name := grid.Cell{Kind: grid.Shown, Text: l.Text, Plain: l.Text, Hint: l.Text + ": " + nameChecked(l)}
	if from != "" {
		name.Hint += "; from " + from
	}
	cells := []grid.Cell{
		lineName:    name,
		linePercent: f.shown(f.Show.Number(l.Percent, 3), path+"percent", l.Text+", percent of the bar as it was made"),
		lineG:       f.shown(f.Show.DoseApart(l.G).Number, path+"g", l.Text+" in the average bar as it was made, "+f.grams()),
		lineFrom:    f.label(from),
	}
	cells = f.awaited(cells)
	if l.Unverified != "" {
		cells[lineName].Text, cells[lineName].Style = "? "+l.Text, f.Look.Caution
	}
	return grid.Row{Item: i, Sub: -1, Cells: cells}
}

// nameChecked says how far the name of a line was checked.
func nameChecked(l *label.Line) string {
	switch {
	case l.Unverified != "":
		return "not verified: " + l.Unverified
	case l.Name.Confidence == "":
		return "the name as it stands"
	}
	return fmt.Sprintf("the name was checked: %s", l.Name.Confidence)
}
