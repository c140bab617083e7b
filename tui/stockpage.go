package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/terminal"
)

// noLedger is why nothing can be said of the stock.
const noLedger = "no ledger was opened with this bench"

// stockMsg says that the page of stock was left.
type stockMsg struct{ err error }

// goStock hands the terminal to the page of stock and takes it back when that is left.
func (m *model) goStock() tea.Cmd {
	open := m.opt.Stock
	if open == nil {
		m.refuse(noLedger)
		return nil
	}
	return m.parted(tea.Exec(terminal.Guest{Do: open}, func(err error) tea.Msg { return stockMsg{err} }))
}

// stockLeft says how the page of stock was left.
func (m *model) stockLeft(msg stockMsg) {
	if msg.err != nil {
		m.refuse(reason(msg.err))
		return
	}
	m.say("back from the stock")
}
