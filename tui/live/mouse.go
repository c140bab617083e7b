package live

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// click takes a click to the footer, to the line that says what was done last, to what is open or, where nothing is, to the steps and jugs.
func (m *Model) click(msg tea.MouseClickMsg) tea.Cmd {
	f := m.dialogs.Frame
	switch {
	case msg.Button != tea.MouseLeft:
	case msg.Y == f.H-1 && f.W >= minW && f.H >= minH:
		return m.clickFooter(msg.X)
	case msg.Y == f.H-2 && m.status.Text() != "":
		m.dialogs.Open(m.status.Page(m.look))
	case m.dialogs.Top() != nil:
		return m.dialogs.Click(msg, m.refuse)
	case f.W >= minW && f.H >= minH:
		m.clickRun(msg.Y)
	}
	return nil
}

// clickRun chooses the step or the jug on a line. The step under way is finished by its key or by the footer alone: a cloth that wipes
// the screen must not finish one.
func (m *Model) clickRun(y int) {
	p := m.place(m.dialogs.Frame.W, m.dialogs.Frame.H)
	after := m.after()
	switch next := y - p.nextY; {
	case y >= p.jugsY && y < p.bottomY && m.cutting():
	case y >= p.jugsY && y < p.bottomY:
		per, top, rows := m.shownJugs(p.bottomY - p.jugsY)
		if i := (y - p.jugsY) / per; i < rows && top+i < len(m.board.Jugs) {
			m.pick(top + i)
		}
	case next >= 0 && next < min(p.nextH, len(after)):
		m.chooseStep(after[next].Key)
	}
}

// wheel scrolls what is open; else it goes along the jugs, which moves nothing but what is chosen.
func (m *Model) wheel(msg tea.MouseWheelMsg) {
	switch {
	case m.dialogs.Top() != nil:
		m.dialogs.Wheel(msg)
	case len(m.board.Jugs) == 0:
	case msg.Button == tea.MouseWheelUp:
		m.pick(max(m.jug-1, 0))
	case msg.Button == tea.MouseWheelDown:
		m.pick(min(m.jug+1, len(m.board.Jugs)-1))
	}
}

// clickFooter does what the footer names under the pointer, as its key would.
func (m *Model) clickFooter(x int) tea.Cmd {
	id, nth, ok := dialog.FootAt(m.dialogs.Frame.W, m.footKeys(), x)
	switch {
	case !ok:
		return nil
	case m.dialogs.Top() != nil:
		return m.dialogs.Act(id, m.refuse)
	}
	b, _ := m.opt.Keys.Find(keys.Pouring, id)
	return m.perform(b, nth)
}

// releaseMouse leaves the mouse to the terminal, or takes it back.
func (m *Model) releaseMouse() {
	if m.opt.NoMouse = !m.opt.NoMouse; m.opt.NoMouse {
		m.say("the mouse is the terminal's: it can select text; " + m.key(keys.Mouse) + " takes it back")
		return
	}
	m.say("the mouse is taken: click a step, a jug or a key")
}
