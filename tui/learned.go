package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
)

// learnedMsg brings what the maker's pours have taught.
type learnedMsg struct {
	text string
	err  error
}

// readLearned reads the logbook beside the keyboard.
func (m *model) readLearned() tea.Cmd {
	learned := m.opt.Learned
	if learned == nil {
		m.refuse("no logbook was opened with this bench")
		return nil
	}
	return func() tea.Msg {
		text, err := learned()
		return learnedMsg{text, err}
	}
}

// learned shows what was learnt as a page.
func (m *model) learned(msg learnedMsg) {
	if msg.err != nil {
		m.refuse(reason(msg.err))
		return
	}
	m.dialogs.Open(dialog.NewPage("What your pours have taught the clock", msg.text))
}
