package stockroom

import (
	"errors"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/disk"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/tui/dialog"
)

// deed makes the entries of what is done, out of what the ledger holds.
type deed func(stock.State) (desk.Deed, error)

// undone is how something that was written is undone.
type undone struct {
	back  []string      // names of the entries that are taken back, the last first
	again []stock.Entry // entries that are written again
	said  string
	was   string // name of the entry that is written again
}

// writtenMsg says what became of something that was written.
type writtenMsg struct {
	entries []stock.Entry
	said    []string
	err     error
	form    *dialog.Form // what it was typed into: it opens again when nothing was written
	pad     string       // what was typed onto a pad, which opens again then
	undo    undone
	undoing bool // it undid the last of what was written
}

// write does something to the ledger beside the keyboard.
func (m *Model) write(do deed, msg writtenMsg) tea.Cmd {
	m.busy = true
	decide := m.opt.Decide
	return func() tea.Msg {
		msg.entries, msg.err = decide(func(s stock.State) ([]stock.Entry, error) {
			d, err := do(s)
			msg.said = d.Said
			return d.Entries, err
		})
		return msg
	}
}

// written says what came of it. What was typed is not lost when nothing was written.
func (m *Model) written(msg writtenMsg) tea.Cmd {
	m.busy = false
	if msg.err != nil {
		m.notWritten(msg)
		return nil
	}
	if msg.undoing {
		m.undo = m.undo[:len(m.undo)-1]
		for i := range m.undo { // what was written again has another name now
			for k := range m.undo[i].back {
				if msg.undo.was != "" && m.undo[i].back[k] == msg.undo.was && len(msg.entries) > 0 {
					m.undo[i].back[k] = msg.entries[0].ID
				}
			}
		}
	} else {
		u := msg.undo
		if len(u.again) == 0 {
			for _, e := range msg.entries {
				u.back = append([]string{e.ID}, u.back...)
			}
		}
		m.undo = append(m.undo, u)
	}
	m.kept = msg.form != nil
	for _, e := range msg.entries {
		if e.Pack != "" {
			m.follow = e.Pack
		}
	}
	for i, said := range msg.said {
		if i == 0 {
			m.say(said)
		} else {
			m.status.Say(m.status.Text() + "; " + said)
		}
	}
	return m.load()
}

func (m *Model) notWritten(msg writtenMsg) {
	if errors.Is(msg.err, desk.ErrReceived) && msg.pad != "" {
		m.askAgain(msg.pad, msg.err)
		return
	}
	why := "not written: " + msg.err.Error()
	m.refuse(why)
	switch {
	case msg.form != nil:
		msg.form.Refuse(why)
		m.dialogs.Open(msg.form)
	case msg.pad != "":
		m.openPad(msg.pad)
	case msg.undoing && !errors.Is(msg.err, disk.ErrLocked): // it will be as impossible the next time
		m.undo = m.undo[:len(m.undo)-1]
	}
}

// takeBack takes the chosen entry back, so that undoing writes it again.
func (m *Model) takeBack() tea.Cmd {
	e, _ := m.chosenMark()
	id, again := e.ID, e.Entry
	again.ID = ""
	undo := undone{again: []stock.Entry{again}, said: "back again: " + desk.Tell(again), was: id}
	return m.write(func(s stock.State) (desk.Deed, error) { return desk.TakeBack(s, id, "") }, writtenMsg{undo: undo})
}

// undoLast undoes what was written last.
func (m *Model) undoLast() tea.Cmd {
	last := m.undo[len(m.undo)-1]
	return m.write(func(s stock.State) (desk.Deed, error) {
		d := desk.Deed{Entries: append([]stock.Entry(nil), last.again...), Said: []string{last.said}}
		for _, id := range last.back {
			one, err := desk.TakeBack(s, id, "undone")
			if err != nil {
				return desk.Deed{}, err
			}
			d.Entries = append(d.Entries, one.Entries...)
		}
		return d, nil
	}, writtenMsg{undo: last, undoing: true})
}
