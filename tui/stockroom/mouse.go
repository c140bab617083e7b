package stockroom

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
)

// click takes a click to the footer, to the line that says what was done last, to what is open, or to the list and what is chosen of it.
func (m *Model) click(msg tea.MouseClickMsg) tea.Cmd {
	at, p := image.Pt(msg.X, msg.Y), m.place()
	switch {
	case msg.Button != tea.MouseLeft || p.TooSmall:
	case at.In(p.Footer):
		return m.clickFooter(msg.X)
	case at.In(p.Status) && m.status.Text() != "":
		m.dialogs.Open(m.status.Page(m.look))
	case m.dialogs.Top() != nil:
		return m.dialogs.Click(msg, m.refuse)
	case at.In(p.Search):
		m.search.On, m.inside = true, false
	case at.In(listing.Within(p.List)):
		return m.clickRow(at.Y - listing.Within(p.List).Min.Y - 1)
	case at.In(listing.Within(p.Chosen)):
		m.clickMark(at.Y - listing.Within(p.Chosen).Min.Y)
	}
	return nil
}

// clickRow chooses a line; the chosen one is gone into.
func (m *Model) clickRow(y int) tea.Cmd {
	i := m.list.Top + y
	if y < 0 || i >= len(m.shown) {
		return nil
	}
	m.search.On = false
	if i == m.list.At && !m.inside {
		return m.lookAt()
	}
	m.list.At, m.inside, m.story = i, false, listing.Story{}
	m.settle()
	return nil
}

// clickMark chooses an entry of the pack.
func (m *Model) clickMark(y int) {
	r, ok := m.chosen()
	if !ok {
		return
	}
	m.inside = true
	told := m.told(r, listing.Within(m.place().Chosen).Dx())
	if i := m.story.Scroll + y; i < len(told) && told[i].Mark > 0 {
		m.story.Mark = told[i].Mark - 1
	}
	m.settle()
}

// wheel scrolls what is open, else what is chosen under the pointer, else it goes along the list.
func (m *Model) wheel(msg tea.MouseWheelMsg) {
	by := map[tea.MouseButton]int{tea.MouseWheelUp: -1, tea.MouseWheelDown: 1}[msg.Button]
	const rows = 3
	switch {
	case by == 0:
	case m.dialogs.Top() != nil:
		m.dialogs.Wheel(msg)
	case image.Pt(msg.X, msg.Y).In(m.place().Chosen):
		m.story.Scroll = max(m.story.Scroll+by*rows, 0)
		m.settle()
	default:
		m.list.At += by * rows
		m.settle()
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
	case m.search.On:
		m.actSearch(id)
		return nil
	}
	b, _ := m.opt.Keys.Find(keys.Stocking, id)
	return m.perform(b, nth)
}
