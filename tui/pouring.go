package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/terminal"
)

// pouredMsg says that the live run was left.
type pouredMsg struct{ err error }

// pourNow hands the terminal to the live run of this plan and takes it back when that is left. The run keeps its own copy of the plan.
func (m *model) pourNow() tea.Cmd {
	if m.opt.Pour == nil {
		m.refuse("no live run was opened with this bench")
		return nil
	}
	return m.parted(tea.Exec(m.guest(), func(err error) tea.Msg { return pouredMsg{err} }))
}

// guest is the live run of this plan, which has a copy of it.
func (m *model) guest() terminal.Guest {
	plan, pour := m.session.Plan().Clone(), m.opt.Pour
	return terminal.Guest{Do: func() error { return pour(plan) }}
}

// poured says how the run ended, and asks what it has taught.
func (m *model) poured(msg pouredMsg) tea.Cmd {
	say, how := m.say, "back from the run; what was marked is in the logbook"
	if msg.err != nil {
		say, how = m.refuse, reason(msg.err)
	}
	say(how)
	return m.readHand(func(taught string) { say(how + "; " + taught) })
}
