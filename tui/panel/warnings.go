package panel

import (
	"fmt"
	"strings"

	"pourbench/pour/whatif"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The words over what stands against a plan, where nothing does, and while mends are looked for.
const (
	WarningsTitle = "To know before lye meets oil"
	NothingStands = "nothing stands against this plan"
	MendsAwaited  = "what would mend it is being looked for …"
)

// leastDoW is the least room in which what to do is worth its beginning.
const leastDoW = 12

// The columns of the warnings.
const (
	warningMark = iota
	warningText
)

// Warnings is what to know before lye meets oil. It stands below the panels of every station; while it has the keys it lists every warning
// with its mends, and Enter makes one.
func Warnings() Panel {
	return Panel{
		ID: layout.Warnings, Title: WarningsTitle, Start: warningText, cells: keys.Words, Grid: (*Facts).warningGrid, Aside: (*Facts).DrawWarnings,
		change: func(f *Facts, on On) Do {
			switch {
			case on.Cell.Kind == grid.Tick:
				return Do{Name: on.Cell.Name, Edit: on.Cell.Flip, Said: on.Cell.Said}
			case f.Mends == nil:
				return Do{Why: MendsAwaited}
			case len(f.MendsOf(on.Row.Item)) > 0:
				return Do{Why: "go down to one of its mends: {change} makes it"}
			default:
				return Do{Why: NoMend}
			}
		},
	}
}

// NoMend is why a warning has none.
const NoMend = "no change of the plan takes it away: what it says to do is yours"

// MendsOf is the mends of a warning by its place; none while they are not known.
func (f *Facts) MendsOf(i int) []whatif.Mend {
	if i < 0 || i >= len(f.Mends) {
		return nil
	}
	return f.Mends[i]
}

// MendSaid is what is said once a mend is made.
func MendSaid(m whatif.Mend) string { return "done: " + m.Says + "; {undo} takes it back" }

func (f *Facts) warningGrid() grid.Grid {
	g := grid.Grid{Empty: NothingStands, Columns: []grid.Column{warningMark: {W: 1}, warningText: {W: 20, Grow: 1}}}
	row := func(i, sub int, mark, text grid.Cell) {
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: sub, Cells: []grid.Cell{warningMark: mark, warningText: text}})
	}
	for i, w := range f.Warnings {
		row(i, -1, grid.Cell{Text: look.Mark(w.Severity), Style: f.Look.Severity(w.Severity)}, grid.Cell{Kind: grid.Shown, Text: w.Told(), Hint: "→ " + w.Do})
		mends := f.MendsOf(i)
		for k, m := range mends {
			row(i, k, grid.Cell{}, grid.Cell{
				Kind: grid.Tick, Text: "  → " + m.Says, Style: f.Look.Accent, Name: m.Says, Flip: m.Edit, Said: MendSaid(m), Hint: "{change} makes this mend; {undo} takes it back",
			})
		}
		if len(mends) == 0 {
			row(i, -1, grid.Cell{}, f.label("  → "+w.Do))
		}
	}
	return g
}

// WarningLines is how many lines the warnings would fill.
func (f *Facts) WarningLines() int {
	lines := 0
	for i := range f.Warnings {
		lines += 1 + max(len(f.MendsOf(i)), 1)
	}
	return lines
}

// todo is the mends of a warning in one line or, where it has none, its own words on what to do.
func (f *Facts) todo(i int) string {
	var says []string
	for _, m := range f.MendsOf(i) {
		says = append(says, m.Says)
	}
	if len(says) == 0 {
		return "→ " + f.Warnings[i].Do
	}
	return "→ " + strings.Join(says, ", or: ")
}

// DrawWarnings draws what to know before lye meets oil, in a box.
func (f *Facts) DrawWarnings(a screen.Area) {
	in := a.Box(f.Look.Rule)
	x := a.Text(2, 0, " "+WarningsTitle+" ", f.Look.Quiet)
	if hidden := len(f.Warnings) - in.H(); hidden > 0 {
		a.Right(a.W()-2, 0, screen.Clip(fmt.Sprintf(" %d more: %s reads all ", hidden, f.Keys.Name(keys.Bench, keys.ReadAll)), a.W()-x-2), f.Look.Quiet)
	}
	if len(f.Warnings) == 0 {
		in.Text(1, 0, NothingStands, f.Look.Good)
	}
	two := 2*len(f.Warnings) <= in.H()
	y := 0
	for i, w := range f.Warnings {
		if y >= in.H() {
			return
		}
		in.Text(1, y, look.Mark(w.Severity), f.Look.Severity(w.Severity))
		end := in.Text(3, y, screen.Clip(w.Told(), in.W()-4), screen.Style{})
		if two {
			in.Text(5, y+1, screen.Clip(f.todo(i), in.W()-6), f.Look.Quiet)
			y += 2
			continue
		}
		if room := in.W() - end - 4; room > leastDoW {
			in.Text(end+1, y, screen.Clip(f.todo(i), room), f.Look.Quiet)
		}
		y++
	}
}

// DrawWorst draws the worst warning on one line, and how many more there are.
func (f *Facts) DrawWorst(a screen.Area) {
	if len(f.Warnings) == 0 {
		a.Text(1, 0, NothingStands, f.Look.Good)
		return
	}
	more := ""
	if n := len(f.Warnings); n > 1 {
		more = fmt.Sprintf("  +%d: %s", n-1, f.Keys.Name(keys.Bench, keys.ReadAll))
	}
	w := f.Warnings[0]
	a.Text(1, 0, look.Mark(w.Severity), f.Look.Severity(w.Severity))
	a.Text(3, 0, screen.Clip(w.Told(), a.W()-4-len(more)), screen.Style{})
	a.Right(a.W()-1, 0, more, f.Look.Quiet)
}
