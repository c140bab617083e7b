package tui

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// drawTitle draws the plan's name with its unsaved mark, and the totals that are always in sight.
func (m *model) drawTitle(a screen.Area) {
	name := m.session.Plan().Name
	if m.session.Dirty() {
		name += " ●"
	}
	if m.session.Plan().Template {
		name += " (template)"
	}
	x := a.Text(1, 0, "pourbench", m.look.Accent)
	w := m.drawTotals(a, a.W()-x-4, screen.Width(name))
	a.Text(x+2, 0, screen.Clip(name, a.W()-w-x-4), m.look.Strong)
}

// withIcing says that totals are of base and icing together.
const withIcing = "with icing: "

// leastName is how much of a plan's name stays in sight, whatever the totals are.
const leastName = 12

// drawTotals draws oils, batter, bars, a bar's cost and the count of warnings at the right, in the room that they and the name share, and returns how
// much of it they took. Oils and batter give way to the name's beginning; that an icing is in them is said where all of the name has room besides.
func (m *model) drawTotals(a screen.Area, room, name int) int {
	totals, counts := m.totals()
	type mark struct {
		text  string
		style screen.Style
	}
	var marks []mark
	wide := 1
	for _, s := range []pour.Severity{pour.Stop, pour.Caution, pour.Note} {
		if counts[s] == 0 {
			continue
		}
		t := fmt.Sprintf("%s %d", look.Mark(s), counts[s])
		marks = append(marks, mark{t, m.look.Severity(s)})
		wide += screen.Width(t) + 1
	}
	text := ""
	for bars := 2; ; totals = totals[1:] {
		text = strings.Join(totals, "  ") + "  "
		if len(totals) <= bars || wide+screen.Width(text) <= room-min(name, leastName) {
			break
		}
	}
	wide += screen.Width(text)
	if m.facts.Sheet.Icing != nil && wide+screen.Width(withIcing) <= room-name {
		text, wide = withIcing+text, wide+screen.Width(withIcing)
	}
	x := a.Text(a.W()-wide, 0, text, screen.Style{})
	for _, k := range marks {
		x = a.Text(x, 0, k.text, k.style) + 1
	}
	return wide
}

// totals is oils, batter and bars, base and icing together, and how many warnings there are of each severity.
func (m *model) totals() (text []string, counts map[pour.Severity]int) {
	f := m.facts
	batter := f.Sheet.Base.Size.BatterWeighG
	oils := f.Sheet.Base.Size.OilsG
	if f.Sheet.Icing != nil {
		batter += f.Sheet.Icing.Size.BatterWeighG
		oils += f.Sheet.Icing.Size.OilsG
	}
	counts = map[pour.Severity]int{}
	for _, w := range f.Warnings {
		counts[w.Severity]++
	}
	text = []string{"oils " + f.Show.Weight(oils), "batter " + f.Show.Weight(batter), fmt.Sprintf("%d bars", f.Sheet.Bars.Count)}
	if f.Sheet.Cost.Stated {
		text = append(text, f.Sheet.Cost.Told())
	}
	return text, counts
}

// drawStatus draws the last thing the bench said, or what the cell under the cursor is.
func (m *model) drawStatus(a screen.Area) {
	if m.status.Text() != "" {
		m.status.Draw(a, m.key(keys.Said), m.look)
		return
	}
	if m.dialogs.Top() != nil {
		return
	}
	cell, _, _ := m.cell()
	a.Text(1, 0, screen.Clip(m.fill(cell.Hint), a.W()-2), m.look.Quiet)
}

// drawFooter draws the keys of what has them: the topmost dialog, the cell being typed in, or the panel in focus.
func (m *model) drawFooter(a screen.Area) {
	dialog.Footer(a, m.footKeys(), m.look)
}

func (m *model) footKeys() []keys.Binding {
	if top := m.dialogs.Top(); top != nil {
		return top.Keys(m.dialogs.Frame)
	}
	if m.typing != nil {
		return m.opt.Keys.Footer(keys.Typing, 0)
	}
	return slices.DeleteFunc(m.opt.Keys.Footer(keys.Bench, m.at().Has()), func(b keys.Binding) bool { return m.cannot(b.ID) != "" })
}
