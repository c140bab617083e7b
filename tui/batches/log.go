package batches

import (
	"errors"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/dialog"
)

// writtenMsg says what became of something that was logged.
type writtenMsg struct {
	id   string
	log  life.Logged
	err  error
	said string
	undo undone       // how it is undone
	form *dialog.Form // what it was typed into: it opens again when nothing was written
}

// undone is how something that was logged is undone.
type undone struct {
	id    string
	event logbook.Event // what is logged to undo it
	said  string
	was   string // id of the mark that event is again; empty: it is none again
}

// write logs an event beside the keyboard.
func (m *Model) write(id string, e logbook.Event, said string, form *dialog.Form) tea.Cmd {
	m.busy = true
	log := m.opt.Log
	return func() tea.Msg {
		logged, err := log(id, e)
		undo := undone{id, logbook.Event{Kind: logbook.TakenBack, What: logged.Event.ID}, "undone: " + said, ""}
		return writtenMsg{id: id, log: logged, err: err, said: said, undo: undo, form: form}
	}
}

// written says what came of it. What was typed is not lost when nothing was written.
func (m *Model) written(msg writtenMsg) tea.Cmd {
	m.busy = false
	if msg.err != nil {
		m.refuse("not written: " + msg.err.Error())
		if msg.form != nil {
			msg.form.Refuse("not written: " + msg.err.Error())
			m.dialogs.Open(msg.form)
		}
		return nil
	}
	if msg.undo.id != "" {
		m.undo = append(m.undo, msg.undo)
	}
	m.follow, m.kept = msg.log.Event.ID, msg.form != nil
	m.say(msg.said)
	for _, doubt := range msg.log.Doubts {
		m.status.WarnBeside(doubt)
	}
	return tea.Batch(m.load(), m.open(msg.id))
}

// correct opens the form of the chosen mark as it stands.
func (m *Model) correct() tea.Cmd {
	b, _ := m.chosen()
	mk, ok := m.chosenMark()
	if !ok {
		return nil
	}
	m.openFormOf(b, life.Correction(mk.Event), mk.Event.ID)
	return nil
}

// takeBack takes the chosen mark back, so that undoing logs it again.
func (m *Model) takeBack() tea.Cmd {
	b, _ := m.chosen()
	mk, ok := m.chosenMark()
	if !ok {
		return nil
	}
	again := mk.Event
	again.ID = ""
	said := m.words(again)
	m.busy = true
	log, id := m.opt.Log, b.ID
	return func() tea.Msg {
		logged, err := log(id, logbook.Event{Kind: logbook.TakenBack, What: mk.Event.ID})
		return writtenMsg{id: id, log: logged, err: err, said: "taken back: " + said + "; {undo} undoes that", undo: undone{id, again, "back again: " + said, mk.Event.ID}}
	}
}

// undoLast undoes what was logged last.
func (m *Model) undoLast() tea.Cmd {
	last := m.undo[len(m.undo)-1]
	m.busy = true
	log := m.opt.Log
	return func() tea.Msg {
		logged, err := log(last.id, last.event)
		return undoneMsg{last, logged, err}
	}
}

// undoneMsg says what came of undoing something.
type undoneMsg struct {
	undone
	log life.Logged
	err error
}

func (m *Model) takenIn(msg undoneMsg) tea.Cmd {
	m.busy = false
	if msg.err != nil {
		m.refuse("not undone: " + msg.err.Error())
		if !errors.Is(msg.err, disk.ErrLocked) { // it will be as impossible the next time
			m.undo = m.undo[:len(m.undo)-1]
		}
		return nil
	}
	m.undo = m.undo[:len(m.undo)-1]
	for i := range m.undo { // what was logged again has another id now
		if u := &m.undo[i]; msg.was != "" && u.event.What == msg.was && u.event.Kind == logbook.TakenBack {
			u.event.What = msg.log.Event.ID
		}
	}
	m.say(msg.said)
	return tea.Batch(m.load(), m.open(msg.id))
}
