package panel

import (
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// noIcing invites to give the plan an icing.
func noIcing() Panel {
	add := func(*Facts, On) Do { return NewIcing() }
	return Panel{
		ID: "no icing", Title: "Icing", add: add, change: add,
		want: func(*Facts) int { return noIcingLines },
		Draw: (*Facts).drawNoIcing, tell: func(*Facts) []string { return []string{noIcingText + " {add} adds one."} },
	}
}

// noIcingText is what the invitation says.
const noIcingText = "This plan has no icing: a piped or spooned topping batter with its own oils, lye, jugs and scent."

// noIcingLines is how many lines the invitation takes.
const noIcingLines = 4

// NewIcing gives the plan an icing.
func NewIcing() Do {
	return Do{Name: "new icing", Edit: pour.AddIcing(), Said: "an icing that leans on the base; {undo} takes it away"}
}

func (f *Facts) drawNoIcing(a screen.Area, _ grid.Cursor, _ bool) {
	for i, l := range screen.Wrap(noIcingText, a.W()-4) {
		a.Text(2, 1+i, l, screen.Style{})
	}
	x := a.Text(2, noIcingLines, "a", f.Look.Accent)
	a.Text(x+1, noIcingLines, "adds one", f.Look.Quiet)
}
