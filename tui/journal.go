package tui

import (
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
)

// journalAfter is how long after a change the recovery journal is written, well inside the two seconds that may be lost.
const journalAfter = 1500 * time.Millisecond

type (
	journalDueMsg struct{}
	journaledMsg  struct{ err error }
	hangupMsg     struct{}
	lostMsg       struct{ found planfile.Recovery }
)

// journalSoon has the plan journalled a little later, unless that is due already.
func (m *Model) journalSoon() tea.Cmd {
	if m.opt.StateDir == "" || m.file.due {
		return nil
	}
	m.file.due = true
	return tea.Tick(journalAfter, func(time.Time) tea.Msg { return journalDueMsg{} })
}

// writeJournal keeps the plan as it is now in the state directory; a plan that is saved needs none.
func (m *Model) writeJournal() tea.Cmd {
	m.file.due = false
	if m.opt.StateDir == "" {
		return nil
	}
	if !m.session.Dirty() {
		return m.dropJournal()
	}
	m.file.written = true
	dir, key, path, plan := m.opt.StateDir, m.file.key, m.file.path, m.session.Plan().Clone()
	return func() tea.Msg { return journaledMsg{planfile.WriteJournal(dir, key, plan, path)} }
}

func (m *Model) journaled(msg journaledMsg) {
	if msg.err != nil {
		m.refuse("the recovery journal could not be written: " + msg.err.Error())
	}
}

// dropJournal removes the journal of the plan on the bench.
func (m *Model) dropJournal() tea.Cmd {
	if m.opt.StateDir == "" || !m.file.written {
		return nil
	}
	m.file.written = false
	dir, key := m.opt.StateDir, m.file.key
	return func() tea.Msg { return journaledMsg{planfile.DropJournal(dir, key)} }
}

// hangUp keeps the plan and ends: the terminal is gone.
func (m *Model) hangUp() tea.Cmd {
	m.quitting = true
	return tea.Sequence(m.writeJournal(), tea.Quit)
}

// Rescue writes the journal at once, for a bench that was ended from outside. It returns "" when there was nothing to keep.
func (m *Model) Rescue() (kept string, err error) {
	if m.opt.StateDir == "" || !m.session.Dirty() {
		return "", nil
	}
	return m.opt.StateDir, planfile.WriteJournal(m.opt.StateDir, m.file.key, m.session.Plan(), m.file.path)
}

// lookForLostWork looks for a journal of this file, or of a plan that never had one.
func (m *Model) lookForLostWork() tea.Cmd {
	if m.opt.StateDir == "" {
		return nil
	}
	dir, key, path := m.opt.StateDir, m.file.key, m.file.path
	return func() tea.Msg {
		all, err := planfile.ReadJournals(dir)
		if err != nil {
			return journaledMsg{err}
		}
		for _, r := range all {
			if r.Err == nil && (r.Key == key || path == "" && r.Path == "") {
				return lostMsg{r}
			}
		}
		return nil
	}
}

// offerLostWork asks whether to take up work that was never saved.
func (m *Model) offerLostWork(msg lostMsg) {
	r := msg.found
	name := r.Path
	if name == "" {
		name = r.Plan.Name
	}
	dir := m.opt.StateDir
	m.ask("Work that was never saved", "A journal from "+r.At.Format("2006-01-02 15:04")+" holds changes to "+name+" that are in no file.",
		dialog.Answer{Text: "take it up", Do: func() tea.Cmd { return m.takeUp(r) }},
		dialog.Answer{Text: "discard it", Do: func() tea.Cmd {
			return func() tea.Msg { return journaledMsg{planfile.DropJournal(dir, r.Key)} }
		}},
		dialog.Answer{Text: "leave it for later"})
}

// takeUp puts a journalled plan on the bench, unsaved. One that no longer fits the shelf is left where it is.
func (m *Model) takeUp(r planfile.Recovery) tea.Cmd {
	if faults := r.Plan.Check(m.session.Shelf()); len(faults) > 0 {
		m.refuse("the journal cannot be taken up: " + faults[0].Error())
		return nil
	}
	m.session.Replace(r.Plan, false)
	m.file.key, m.file.written = r.Key, true
	m.say("taken up where it was left; it is not saved yet")
	return nil
}
