package tui

import (
	"fmt"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
)

// journalAfter is how long after a change the recovery journal is written, well inside the two seconds that may be lost.
const journalAfter = 1500 * time.Millisecond

// journal is this bench's recovery journal. What is ordered of it runs beside the keyboard; the turn says in which order it was.
type journal struct {
	file    *planfile.Journal // nil: none is kept
	turn    int               // of the last order
	due     bool              // the plan is to be journalled
	written bool              // something was, and is not dropped
}

type (
	journalDueMsg struct{}
	journaledMsg  struct{ err error }
	hangupMsg     struct{}
)

// lostMsg brings lost work of the plan at a path: one after the other is offered.
type lostMsg struct {
	path  string
	found []planfile.Recovery
}

// journalSoon has the plan journalled a little later, unless that is due already.
func (m *model) journalSoon() tea.Cmd {
	if m.journal.file == nil || m.journal.due {
		return nil
	}
	if m.opt.Plain {
		return m.writeJournal()
	}
	m.journal.due = true
	return tea.Tick(journalAfter, func(time.Time) tea.Msg { return journalDueMsg{} })
}

// writeJournal keeps the plan as it is now; a plan that is saved needs none.
func (m *model) writeJournal() tea.Cmd {
	m.journal.due = false
	if m.journal.file == nil {
		return nil
	}
	if !m.session.Dirty() {
		return m.dropJournal()
	}
	write := m.journalling()
	return func() tea.Msg { return journaledMsg{write()} }
}

// journalling is the writing of the journal, to be done at once or beside.
func (m *model) journalling() func() error {
	m.journal.written = true
	m.journal.turn++
	j, file, plan := m.journal, m.file, m.session.Plan().Clone()
	return func() error { return j.file.Write(j.turn, plan, file.path, file.stamp) }
}

func (m *model) journaled(msg journaledMsg) {
	if msg.err != nil {
		m.refuse(msg.err.Error())
	}
}

// enlist puts the file of the plan onto the list of plans that a backup keeps.
func (m *model) enlist() tea.Cmd {
	dir, path := m.opt.StateDir, m.file.path
	if dir == "" || path == "" {
		return nil
	}
	return func() tea.Msg {
		if err := planfile.Remember(dir, path); err != nil {
			return journaledMsg{err}
		}
		return nil
	}
}

// dropJournal removes the journal of the plan on the bench.
func (m *model) dropJournal() tea.Cmd {
	if m.journal.file == nil || !m.journal.written {
		return nil
	}
	m.journal.written = false
	m.journal.turn++
	j := m.journal
	return func() tea.Msg { return journaledMsg{j.file.Drop(j.turn)} }
}

// hangUp keeps the plan and ends: the terminal is gone. [Open] keeps it once more, for an end that comes in between.
func (m *model) hangUp() tea.Cmd {
	return tea.Sequence(m.writeJournal(), tea.Quit)
}

// rescue writes the journal at once, for a bench that was ended from outside. It returns "" when there was nothing to keep.
func (m *model) rescue() (kept string, err error) {
	if m.journal.file == nil || !m.session.Dirty() {
		return "", nil
	}
	return m.opt.StateDir, m.journalling()()
}

// close lets go of the journal: what is in it is lost work from now on, for the next bench to offer.
func (m *model) close() error {
	if m.journal.file == nil {
		return nil
	}
	return m.journal.file.Abandon()
}

// findLostWork looks for journals of this file, or of plans that never had one, whose benches are gone.
func (m *model) findLostWork() tea.Cmd {
	if m.journal.file == nil {
		return nil
	}
	dir, path := m.opt.StateDir, m.file.path
	return func() tea.Msg {
		all, err := planfile.Recoveries(dir)
		lost := lostMsg{path: path}
		for _, r := range all {
			switch {
			case r.Living || !r.Of(path):
			case r.Err != nil:
				err = r.Err
			default:
				lost.found = append(lost.found, r)
			}
		}
		if len(lost.found) == 0 {
			return journaledMsg{err}
		}
		return lost
	}
}

// offerLostWork asks whether to take up work that was never saved. Whatever is not answered stays where it is.
func (m *model) offerLostWork(msg lostMsg) {
	if len(msg.found) == 0 || msg.path != m.file.path {
		return
	}
	if m.session.Dirty() {
		m.say("there is work that was never saved; it is offered when the plan is opened again")
		return
	}
	r := msg.found[0]
	name := r.Path
	if name == "" {
		name = r.Plan.Name
	}
	others := lostMsg{msg.path, msg.found[1:]}
	changes := pour.Differences(m.session.Plan(), r.Plan)
	m.ask("Work that was never saved", "A journal from "+r.At.Format("2006-01-02 15:04")+" holds changes to "+name+" that are in no file. "+inShort(changes),
		dialog.Answer{Text: "take it up", Do: func() tea.Cmd { return m.takeUp(r) }},
		dialog.Answer{Text: "show what differs", Do: func() tea.Cmd {
			m.offerLostWork(msg)
			m.dialogs.Open(m.differing(changes))
			return nil
		}},
		dialog.Answer{Text: "discard it", Do: func() tea.Cmd {
			m.offerLostWork(others)
			return func() tea.Msg { return journaledMsg{r.Drop()} }
		}},
		dialog.Answer{Text: "leave it for later", Do: func() tea.Cmd { m.offerLostWork(others); return nil }})
}

// inShort says in how many places recovered work differs from the plan on the bench, and the first of them.
func inShort(changes []pour.Change) string {
	if len(changes) == 0 {
		return "It is the plan on the bench, to the last figure."
	}
	c := changes[0]
	text := c.Where + " " + c.Was + " → " + c.Now
	if more := len(changes) - 1; more > 0 {
		text += fmt.Sprintf(", and %d more", more)
	}
	return "Against the plan on the bench: " + text + "."
}

// differing is the page of all places in which recovered work differs from the plan on the bench.
func (m *model) differing(changes []pour.Change) *dialog.Page {
	p := &dialog.Page{Title: "What differs: on the bench → in the journal", LeadW: 2}
	for _, c := range changes {
		p.Lines = append(p.Lines, dialog.Line{Lead: "·", Style: m.look.Note, Text: c.Where + " " + c.Was + " → " + c.Now})
	}
	return p
}

// takeUp puts a journalled plan on the bench, unsaved, as made from the file as it was then: if that has changed since, saving asks. One
// that no longer fits the shelf is left where it is. The old journal goes once this bench's own holds the plan.
func (m *model) takeUp(r planfile.Recovery) tea.Cmd {
	if faults := r.Plan.Check(m.session.Shelf()); len(faults) > 0 {
		m.refuse(faults[0].Error() + ": take up the journal " + r.File)
		return nil
	}
	m.bring(r.Plan, false, m.file.path, r.Made)
	m.say("taken up where it was left; it is not saved yet")
	write := m.journalling()
	own := func() tea.Msg {
		err := write()
		if err == nil {
			err = r.Drop()
		}
		return journaledMsg{err}
	}
	return tea.Sequence(own, m.checkFile())
}
