package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/terminal"
)

// Poured is a pour that is to be opened as a new plan: the plan, and what was made of it in words. The zero value is none.
type Poured struct {
	Plan *pour.Plan
	Said string
}

// batchesMsg says that the page of batches was left.
type batchesMsg struct {
	poured Poured
	err    error
}

// goBatches hands the terminal to the page of batches and takes it back when that is left.
func (m *model) goBatches() tea.Cmd {
	open := m.opt.Batches
	if open == nil {
		m.refuse("no logbook was opened with this bench")
		return nil
	}
	var poured Poured
	guest := terminal.Guest{Do: func() (err error) { poured, err = open(); return err }}
	return m.parted(tea.Exec(guest, func(err error) tea.Msg { return batchesMsg{poured, err} }))
}

// batchesLeft takes in what was learnt of the logbook meanwhile. A pour that is to be poured again comes onto the bench; an unsaved plan is a
// question first.
func (m *model) batchesLeft(msg batchesMsg) tea.Cmd {
	if msg.err != nil {
		m.refuse(reason(msg.err))
		return nil
	}
	if msg.poured.Plan == nil {
		m.say("back from the batches")
		return m.readHand(m.say)
	}
	return m.bringPoured(msg.poured)
}

// bringPoured puts the new plan of a pour onto the bench; an unsaved plan is a question first.
func (m *model) bringPoured(p Poured) tea.Cmd {
	bring := func(m *model) tea.Cmd {
		drop := m.dropJournal()
		m.bring(*p.Plan, false, "", planfile.Stamp{})
		m.say(p.Said)
		return drop
	}
	if m.session.Dirty() {
		m.unsaved("pouring again", bring)
		return nil
	}
	return bring(m)
}

// pouredAgainMsg brings the new plan of a pour that was picked from the list.
type pouredAgainMsg struct {
	poured Poured
	err    error
	rev    int
}

// openPour makes the new plan of a pour beside the keyboard.
func (m *model) openPour(id string) tea.Cmd {
	make, rev := m.opt.PourAgain, m.session.Revision()
	if make == nil {
		m.refuse("no logbook was opened with this bench")
		return nil
	}
	return func() tea.Msg {
		poured, err := make(id)
		return pouredAgainMsg{poured, err, rev}
	}
}

// pouredAgain puts it onto the bench.
func (m *model) pouredAgain(msg pouredAgainMsg) tea.Cmd {
	switch {
	case msg.err != nil:
		m.refuse(reason(msg.err))
		return nil
	case msg.rev != m.session.Revision() && m.session.Dirty():
		m.refuse("the plan on the bench was changed meanwhile; open the pour again")
		return nil
	}
	drop := m.dropJournal()
	m.bring(*msg.poured.Plan, false, "", planfile.Stamp{})
	m.say(msg.poured.Said)
	return drop
}
