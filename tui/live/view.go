package live

import (
	"fmt"
	"path/filepath"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/plain"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
	"pourbench/tui/terminal"
)

// The smallest screen with jugs on it, and the size from which everything is drawn to be read from across the room.
const (
	minW   = 60
	minH   = 16
	largeW = 110
	largeH = 32
)

// View draws the run. It writes nothing to the model.
func (m *Model) View() tea.View {
	s := screen.New(m.dialogs.Frame.W, m.dialogs.Frame.H)
	m.draw(s.Area())
	v := tea.NewView(s.String())
	v.AltScreen = true
	v.WindowTitle = m.windowTitle()
	v.Cursor = terminal.Cursor(s)
	if m.dialogs.Top() != nil && !m.opt.NoMouse { // else the terminal may select text
		v.MouseMode = tea.MouseModeCellMotion
	}
	return v
}

// windowTitle is the jug that needs a hand, or the step under way. A terminal acts on what stands in a title, so it is made plain.
func (m *Model) windowTitle() string {
	text := m.worstWords()
	if text == "" {
		text = "pour"
		if now, ok := m.now(); ok {
			text = m.title(now.Step)
		}
	} else {
		text = "! " + text
	}
	return plain.Line(text) + " – " + plain.Line(m.sheet().Plan.Name)
}

func (m *Model) draw(a screen.Area) {
	if a.W() < minW || a.H() < minH {
		m.drawTiny(a)
	} else {
		m.drawRun(a)
	}
	m.dialogs.Draw(a, m.look)
}

// drawTiny says the most important things on a screen without room for more.
func (m *Model) drawTiny(a screen.Area) {
	lines := []string{m.elapsedText() + " " + m.lateText(), "now: nothing is left to do"}
	if now, ok := m.now(); ok {
		lines[1] = "now: " + m.title(now.Step)
	}
	if m.unkept != nil {
		lines = append(lines, m.unwrittenNotice())
	}
	lines = append(lines, m.worstWords(), m.status.Text(), fmt.Sprintf("%d × %d; wants %d × %d", a.W(), a.H(), minW, minH))
	y := 0
	for _, l := range lines {
		if l != "" {
			a.Text(0, y, screen.Clip(l, a.W()), screen.Style{})
			y++
		}
	}
}

// sizes is how high the parts of the screen are.
type sizes struct {
	clockScale, stepScale, clockH, stepH, detailH, nextH, gap, bottomH int
}

func (m *Model) sizes(a screen.Area) sizes {
	s := sizes{clockScale: 2, stepScale: 1, detailH: 2, nextH: 2, bottomH: 2}
	switch {
	case a.W() >= largeW && a.H() >= largeH:
		s = sizes{clockScale: 3, stepScale: 2, detailH: 2, nextH: 3, gap: 1, bottomH: 4}
	case a.H() < 22:
		s = sizes{clockScale: 1, stepScale: 0, detailH: 1, nextH: 1, bottomH: 1}
	}
	s.clockH, s.stepH = blockHeight(s.clockScale), max(blockHeight(s.stepScale), 1)
	jugs := a.H() - 2 - s.bottomH - (1 + s.gap + s.clockH + s.gap + 1 + s.stepH + s.detailH + s.nextH + s.gap)
	s.detailH += min(max(len(m.detailLines(a.W()-2))-s.detailH, 0), max(jugs-leastJugs, 0)) // a round of many jugs takes more lines
	return s
}

// leastJugs is how many lines the jugs keep when the step needs more.
const leastJugs = 3

func (m *Model) drawRun(a screen.Area) {
	s := m.sizes(a)
	w := a.W()
	m.drawTitle(a.Cut(0, 0, w, 1))
	y := 1 + s.gap
	m.drawClock(a.Cut(1, y, w-2, s.clockH), s)
	y += s.clockH + s.gap
	if _, ok := m.now(); ok {
		m.drawStep(a.Cut(1, y, w-2, 1+s.stepH+s.detailH), s)
		m.drawNext(a.Cut(1, y+1+s.stepH+s.detailH, w-2, s.nextH))
	} else {
		m.drawEnd(a.Cut(1, y, w-2, 1+s.stepH+s.detailH+s.nextH), s)
	}
	y += 1 + s.stepH + s.detailH + s.nextH + s.gap
	bottom := a.H() - 2 - s.bottomH
	m.drawJugs(a.Cut(0, y, w, bottom-y))
	m.drawBottom(a.Cut(1, bottom, w-2, s.bottomH))
	m.status.Draw(a.Cut(0, a.H()-2, w, 1), m.key(keys.Said), m.look)
	dialog.Footer(a.Cut(0, a.H()-1, w, 1), m.footKeys(), m.look)
}

// drawTitle names the pour and says where it is written.
func (m *Model) drawTitle(a screen.Area) {
	x := a.Text(1, 0, screen.Clip(m.sheet().Plan.Name, a.W()/2), m.look.Focus)
	journal, st := "written to "+filepath.Base(m.opt.Book.Path(m.ID())), m.look.Good
	switch {
	case m.unkept != nil:
		journal, st = "■ NOT WRITTEN", m.look.Stop
	case m.ID() == "":
		journal, st = "kept from the first mark on", m.look.Quiet
	}
	a.Right(a.W()-1, 0, screen.Clip(journal, a.W()-x-3), st)
}

// footKeys lists the keys that can act now, the most useful first.
func (m *Model) footKeys() []keys.Binding {
	if top := m.dialogs.Top(); top != nil {
		return top.Keys(m.dialogs.Frame)
	}
	return slices.DeleteFunc(m.opt.Keys.Footer(keys.Pouring, 0), func(b keys.Binding) bool { return m.cannot(b.ID) != "" })
}
