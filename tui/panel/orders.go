package panel

import (
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
)

// The columns of the orders.
const (
	orderKind = iota
	orderJugs
	orderWorst
	orderTotal
	orderLate
)

// coloursAwaited is said while what the colours do is worked out.
const coloursAwaited = "what the colours do beside each other is being worked out …"

// orders puts the orders to pour in side by side, each with its price in mud and in time.
func orders() Panel {
	return Panel{ID: "orders", Title: "The order to pour in", picture: true, Grid: (*Facts).orderGrid}
}

func (f *Facts) orderGrid() grid.Grid {
	g := grid.Grid{Empty: coloursAwaited, Columns: []grid.Column{
		orderKind:  {Head: "order", W: 9},
		orderJugs:  {Head: "jugs", W: 9, Grow: 1},
		orderWorst: {Head: "worst", W: 5, Right: true},
		orderTotal: {Head: "total", W: 5, Right: true},
		orderLate:  {Head: "late %", W: 6, Right: true},
	}}
	for i, o := range f.Colours.Mingling.Orders {
		var letters, names []string
		for _, j := range o.Jugs {
			letters, names = append(letters, look.Letter(j)), append(names, f.Colours.Base.Jugs[j].Name)
		}
		path := at("orders", i)
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: f.stale([]grid.Cell{
			orderKind:  f.orderCell(o, path, names, i > 0),
			orderJugs:  {Text: strings.Join(letters, " ")},
			orderWorst: f.shown(f.percent(o.Worst, 2), path+"worst", "mud of its worst pair that touches, 0 clean to 1"),
			orderTotal: f.shown(f.percent(o.Total, 2), path+"total", "mean mud along all boundary, by who touches whom in this order"),
			orderLate:  f.orderLate(o, path),
		})})
	}
	return g
}

// orderCell names an order; one that is not the maker's own can be taken.
func (f *Facts) orderCell(o pour.Order, path string, names []string, other bool) grid.Cell {
	c := grid.Cell{Kind: grid.Shown, Text: o.Kind, Name: "order " + o.Kind, Figure: path + "total", Hint: strings.Join(names, ", ")}
	if !other {
		return c
	}
	c.Hint = "{change} takes it: " + c.Hint
	if f.ColoursFresh {
		c.Kind, c.Flip = grid.Tick, pour.SetPourOrder(*f.Colours, names)
	}
	return c
}

func (f *Facts) orderLate(o pour.Order, path string) grid.Cell {
	c := f.shown(f.whole(o.LatePercent), path+"late_percent", "the largest chance that a jug is too thick at its turn")
	if o.LateJug != "" {
		c.Hint += ": " + o.LateJug
	}
	if o.LatePercent.Known && o.LatePercent.V >= lateWorry {
		c.Text, c.Style = "!"+c.Text, f.Look.Caution
	}
	return c
}

// stale makes figures quiet while they are worked out again.
func (f *Facts) stale(cells []grid.Cell) []grid.Cell {
	if f.ColoursFresh {
		return cells
	}
	for i := range cells {
		cells[i].Style = f.Look.Stale
	}
	return cells
}
