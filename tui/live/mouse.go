package live

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// click takes a click to the footer, to the line that says what was done last, or to what is open.
func (m *Model) click(msg tea.MouseClickMsg) tea.Cmd {
	f := m.dialogs.Frame
	switch {
	case msg.Button != tea.MouseLeft:
	case msg.Y == f.H-1 && f.W >= minW && f.H >= minH:
		return m.clickFooter(msg.X)
	case msg.Y == f.H-2 && m.status.Text() != "":
		m.dialogs.Open(m.status.Page(m.look))
	default:
		return m.dialogs.Click(msg, m.refuse)
	}
	return nil
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
