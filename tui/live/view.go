package live

import (
	"fmt"
	"path/filepath"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/plain"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
	"pourbench/tui/terminal"
)

// View draws the run. It writes nothing to the model.
func (m *Model) View() tea.View {
	s := screen.New(m.dialogs.Frame.W, m.dialogs.Frame.H)
	m.draw(s.Area())
	v := tea.NewView(s.String())
	v.AltScreen = true
	v.WindowTitle = m.windowTitle()
	v.Cursor = terminal.Cursor(s)
	if !m.opt.NoMouse {
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
