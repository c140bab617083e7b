package tui

import (
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
)

// Restock reads the shelf again, with the stock and the costs laid over it, where one of their files changed since it was asked last.
type Restock func() (shelf pour.Shelf, changed bool, err error)

// lookEvery is how often the files behind the shelf are looked at: four of them are asked for their size and time, which costs nothing.
const lookEvery = 5 * time.Second

// restockedMsg says what became of the shelf.
type restockedMsg struct {
	shelf   pour.Shelf
	changed bool
	err     error
}

// restock looks whether another terminal, or an editor, changed what lies behind the shelf.
func (m *model) restock() tea.Cmd {
	look := m.opt.Restock
	if look == nil {
		return nil
	}
	return func() tea.Msg {
		shelf, changed, err := look()
		return restockedMsg{shelf, changed, err}
	}
}

// lookAgainMsg says that it is time to look.
type lookAgainMsg struct{}

// lookSoon looks again in a while, for terminals that do not tell when they come back into focus.
func (m *model) lookSoon() tea.Cmd {
	if m.opt.Restock == nil || m.opt.Plain {
		return nil
	}
	return tea.Tick(lookEvery, func(time.Time) tea.Msg { return lookAgainMsg{} })
}

// restocked puts the new shelf behind the plan. A file that cannot be read is said once, and a shelf that lacks what the plan uses is not taken.
func (m *model) restocked(msg restockedMsg) {
	switch {
	case msg.err != nil:
		m.refuse(reason(msg.err))
	case !msg.changed:
	default:
		if err := m.stillCarries(msg.shelf); err != nil {
			m.refuse("your shelf file changed and is not taken: " + reason(err))
			return
		}
		m.session.Stock(msg.shelf)
		m.lookAtShelf()
		m.say("your shelf, stock or costs changed, and the figures with them")
	}
}
