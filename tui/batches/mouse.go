package batches

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
)

// click takes a click to the footer, to the line that says what was done last, to what is open, or to the batches and marks.
func (m *Model) click(msg tea.MouseClickMsg) tea.Cmd {
	f, at, p := m.dialogs.Frame, image.Pt(msg.X, msg.Y), m.place()
	switch {
	case msg.Button != tea.MouseLeft || p.TooSmall:
	case m.photo.shown():
		return m.closePhoto()
	case at.In(p.Footer):
		return m.clickFooter(msg.X)
	case at.In(p.Status) && m.status.Text() != "":
		m.dialogs.Open(m.status.Page(m.look))
	case m.dialogs.Top() != nil:
		return m.dialogs.Click(msg, m.refuse)
	case at.In(p.Title):
		return m.turn((msg.X > len(" Batches ")) != m.board)
	case at.In(p.Search) && f.H > 0:
		b, _ := m.opt.Keys.Find(keys.Batching, keys.Search)
		return m.perform(b, 0)
	case at.In(listing.Within(p.List)):
		return m.clickRow(at.Y - listing.Within(p.List).Min.Y - 1)
	case at.In(listing.Within(p.Chosen)):
		m.clickMark(at.Y - listing.Within(p.Chosen).Min.Y)
	}
	return nil
}

// turn goes to the other of the two pages, as its key does.
func (m *Model) turn(other bool) tea.Cmd {
	if !other {
		return nil
	}
	b, _ := m.opt.Keys.Find(keys.Batching, keys.Board)
	return m.perform(b, 0)
}

// clickRow chooses a batch; the chosen one is gone into.
func (m *Model) clickRow(y int) tea.Cmd {
	i := m.top + y
	if y < 0 || i >= len(m.shown) {
		return nil
	}
	m.search.On = false
	if i == m.at && !m.inside {
		return m.lookAt()
	}
	m.at, m.inside, m.mark, m.scroll = i, false, 0, 0
	m.settle()
	return m.reopen()
}

// clickMark chooses a mark of the batch.
func (m *Model) clickMark(y int) {
	b, ok := m.chosen()
	if !ok {
		return
	}
	m.inside = true
	lines := m.told(b, listing.Within(m.place().Chosen).Dx())
	if i := m.scroll + y; i < len(lines) && lines[i].mark > 0 {
		m.mark = lines[i].mark - 1
	}
	m.settle()
}

// wheel scrolls what is open, else the batch under the pointer, else it goes along the list.
func (m *Model) wheel(msg tea.MouseWheelMsg) {
	by := map[tea.MouseButton]int{tea.MouseWheelUp: -1, tea.MouseWheelDown: 1}[msg.Button]
	const rows = 3
	switch {
	case by == 0:
	case m.dialogs.Top() != nil:
		m.dialogs.Wheel(msg)
	case m.board:
		m.season.move(map[int]keys.ID{-1: keys.Up, 1: keys.Down}[by], m.boardRows())
	case image.Pt(msg.X, msg.Y).In(m.place().Chosen):
		m.scroll = max(m.scroll+by*rows, 0)
		m.settleBatch()
	default:
		m.at += by * rows
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
	b, _ := m.opt.Keys.Find(keys.Batching, id)
	return m.perform(b, nth)
}
