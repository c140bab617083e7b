package panel

import (
	"fmt"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The words over what stands against a plan, and where nothing does.
const (
	WarningsTitle = "To know before lye meets oil"
	NothingStands = "nothing stands against this plan"
)

// leastDoW is the least room in which what to do is worth its beginning.
const leastDoW = 12

// WarningLines is how many lines the warnings would fill.
func (f *Facts) WarningLines() int { return 2 * len(f.Warnings) }

// DrawWarnings draws what to know before lye meets oil, in a box. It stands on every station.
func (f *Facts) DrawWarnings(a screen.Area) {
	in := a.Box(f.Look.Rule)
	x := a.Text(2, 0, " "+WarningsTitle+" ", f.Look.Quiet)
	if hidden := len(f.Warnings) - in.H(); hidden > 0 {
		a.Right(a.W()-2, 0, screen.Clip(fmt.Sprintf(" %d more: %s reads all ", hidden, f.Keys.Name(keys.Bench, keys.ReadAll)), a.W()-x-2), f.Look.Quiet)
	}
	if len(f.Warnings) == 0 {
		in.Text(1, 0, NothingStands, f.Look.Good)
	}
	two := f.WarningLines() <= in.H()
	y := 0
	for _, w := range f.Warnings {
		if y >= in.H() {
			return
		}
		in.Text(1, y, look.Mark(w.Severity), f.Look.Severity(w.Severity))
		end := in.Text(3, y, screen.Clip(w.Told(), in.W()-4), screen.Style{})
		if two {
			in.Text(5, y+1, screen.Clip("→ "+w.Do, in.W()-6), f.Look.Quiet)
			y += 2
			continue
		}
		if room := in.W() - end - 4; room > leastDoW {
			in.Text(end+1, y, screen.Clip("→ "+w.Do, room), f.Look.Quiet)
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
