package tui

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// drawTitle draws the plan's name with its unsaved mark, and the totals that are always in sight.
func (m *Model) drawTitle(a screen.Area) {
	w := m.drawTotals(a)
	x := a.Text(1, 0, "pourbench", m.look.Accent)
	name := m.session.Plan().Name
	if m.session.Dirty() {
		name += " ●"
	}
	a.Text(x+2, 0, screen.Clip(name, a.W()-w-x-4), m.look.Strong)
}

// drawTotals draws oils, batter, bars and the count of warnings at the right, and returns how much room they took.
func (m *Model) drawTotals(a screen.Area) int {
	b := m.bench
	batter := b.sheet.Base.Size.BatterWeighG
	oils := b.sheet.Base.Size.OilsG
	if b.sheet.Icing != nil {
		batter += b.sheet.Icing.Size.BatterWeighG
		oils += b.sheet.Icing.Size.OilsG
	}
	text := fmt.Sprintf("oils %s  batter %s  %d bars  ", b.show.Weight(oils), b.show.Weight(batter), b.sheet.Bars.Count)
	counts := map[pour.Severity]int{}
	for _, w := range b.warnings {
		counts[w.Severity]++
	}
	type mark struct {
		text  string
		style screen.Style
	}
	var marks []mark
	wide := screen.Width(text) + 1
	for _, s := range []pour.Severity{pour.Stop, pour.Caution, pour.Note} {
		if counts[s] == 0 {
			continue
		}
		t := fmt.Sprintf("%s %d", look.Mark(s), counts[s])
		marks = append(marks, mark{t, m.look.Severity(s)})
		wide += screen.Width(t) + 1
	}
	x := a.Text(a.W()-wide, 0, text, screen.Style{})
	for _, k := range marks {
		x = a.Text(x, 0, k.text, k.style) + 1
	}
	return wide
}

// whereW is the most room a warning's place takes.
const whereW = 24

// drawWarnings draws what to know before lye meets oil: a panel, or the worst of it on one line.
func (m *Model) drawWarnings(a screen.Area) {
	all := m.bench.warnings
	if !m.placed.Boxed {
		m.drawWorst(a, all)
		return
	}
	in := a.Box(m.look.Rule)
	x := a.Text(2, 0, " To know before lye meets oil ", m.look.Quiet)
	if hidden := len(all) - in.H(); hidden > 0 {
		a.Right(a.W()-2, 0, screen.Clip(fmt.Sprintf(" %d more: w reads all ", hidden), a.W()-x-2), m.look.Quiet)
	}
	if len(all) == 0 {
		in.Text(1, 0, "nothing stands against this plan", m.look.Good)
	}
	two := 2*len(all) <= in.H()
	y := 0
	for _, w := range all {
		if y >= in.H() {
			return
		}
		in.Text(1, y, look.Mark(w.Severity), m.look.Severity(w.Severity))
		x := in.Text(3, y, screen.Clip(w.Where, whereW)+":", m.look.Quiet)
		end := in.Text(x+1, y, screen.Clip(w.Text, in.W()-x-2), screen.Style{})
		if two {
			in.Text(5, y+1, screen.Clip("→ "+w.Do, in.W()-6), m.look.Quiet)
			y += 2
			continue
		}
		if room := in.W() - end - 4; room > 12 {
			in.Text(end+1, y, screen.Clip("→ "+w.Do, room), m.look.Quiet)
		}
		y++
	}
}

func (m *Model) drawWorst(a screen.Area, all []pour.Warning) {
	if len(all) == 0 {
		a.Text(1, 0, "nothing stands against this plan", m.look.Good)
		return
	}
	more := ""
	if len(all) > 1 {
		more = fmt.Sprintf("  +%d: w", len(all)-1)
	}
	w := all[0]
	a.Text(1, 0, look.Mark(w.Severity), m.look.Severity(w.Severity))
	x := a.Text(3, 0, screen.Clip(w.Where, whereW)+":", m.look.Quiet)
	a.Text(x+1, 0, screen.Clip(w.Text, a.W()-x-2-len(more)), screen.Style{})
	a.Right(a.W()-1, 0, more, m.look.Quiet)
}

// drawStatus draws the last thing the bench said, or what the cell under the cursor is.
func (m *Model) drawStatus(a screen.Area) {
	if m.status.Text() != "" {
		m.status.Draw(a, m.look)
		return
	}
	if m.dialogs.Top() != nil {
		return
	}
	cell, _, _ := m.cell()
	a.Text(1, 0, screen.Clip(cell.Hint, a.W()-2), m.look.Quiet)
}

// drawFooter draws the keys of what has them: the topmost dialog, the cell being typed in, or the panel in focus.
func (m *Model) drawFooter(a screen.Area) {
	dialog.Footer(a, m.footKeys(), m.look)
}

func (m *Model) footKeys() []keys.Binding {
	if top := m.dialogs.Top(); top != nil {
		return top.Keys()
	}
	if m.typing != nil {
		return keys.Footer(keys.Typing, 0)
	}
	return slices.DeleteFunc(keys.Footer(keys.Bench, has(m.at().Kind)), func(b keys.Binding) bool { return m.cannot(b.ID) != "" })
}
