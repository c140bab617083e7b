package panel

import (
	"fmt"

	"pourbench/pour/label"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// The columns of a market's list.
const (
	checkState = iota
	checkText
	checkFrom
)

// labelChecks is the market's list of what stands on a label or is done before sale, as far as a design can answer it.
func labelChecks() Panel {
	return Panel{ID: "to tick", Title: "To tick in this market", Grid: (*Facts).checkGrid, change: changeCheck}
}

// changeCheck says where lines are ticked: by batch, since what a design cannot answer is a matter of its bars.
func changeCheck(f *Facts, on On) Do {
	if f.Plan.Label.Market == "" {
		return changeMarket(f, on)
	}
	return Do{Why: "lines are ticked for a batch that was poured: pourbench label check BATCH --tick ROW; {explain} reads this one in full"}
}

func (f *Facts) checkGrid() grid.Grid {
	l := f.labelled()
	g := grid.Grid{Empty: f.noFigures(l), Columns: []grid.Column{checkState: {W: 7}, checkText: {W: 26, Grow: 4}, checkFrom: {W: 8, Grow: 1}}}
	if g.Empty != "" {
		return g
	}
	if len(l.Checks) == 0 {
		g.Empty = "the shelf has no list for this market"
		return g
	}
	g.Rows = append(g.Rows, heading(askLocally))
	for i := range l.Checks {
		g.Rows = append(g.Rows, f.checkRow(&l.Checks[i], i))
	}
	return g
}

func (f *Facts) checkRow(c *label.Check, i int) grid.Row {
	text := grid.Cell{Kind: grid.Shown, Text: c.Row.Text, Hint: checkSays(c)}
	from := f.label(c.Row.Document)
	if c.Stale {
		from.Text, from.Style = "over a year old: "+from.Text, f.Look.Caution
	}
	cells := f.awaited([]grid.Cell{checkState: {Text: string(c.State)}, checkText: text, checkFrom: from})
	cells[checkState].Style = f.stateStyle(c.State)
	return grid.Row{Item: i, Sub: -1, Cells: cells}
}

func (f *Facts) stateStyle(s label.State) screen.Style {
	switch s {
	case label.Ticked:
		return f.Look.Good
	case label.Open:
		return f.Look.Caution
	}
	return f.Look.Quiet
}

// checkSays is all that is known of a line: what it wants, how it stands, and on what paper that stands.
func checkSays(c *label.Check) string {
	text := fmt.Sprintf("%s: %s", c.State, c.Row.Text)
	if c.Why != "" {
		text += " (" + c.Why + ")"
	}
	text += fmt.Sprintf("; %s %s, %s, as of %s", c.Row.Document, c.Row.Clause, c.Row.Confidence, c.Row.AsOf)
	if c.Stale {
		text += ", over twelve months ago"
	}
	return text + "; " + c.Row.ID + "; " + askLocally
}
