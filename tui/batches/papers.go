package batches

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/plain"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/terminal"
)

// Messages of what is read, written and done beside the page.
type (
	backMsg struct { // the terminal was given away and is back
		what string
		err  error
	}
	pageMsg struct { // a page to read was worked out
		title, text string
		file        string // where it can be written to; empty: it is only read
		err         error
	}
	saidMsg struct { // something was done that is only said
		text string
		err  error
	}
)

// cutLive hands the terminal to the cut of the loaf and takes it back when that is left.
func (m *Model) cutLive() tea.Cmd {
	b, _ := m.chosen()
	id, cut := b.ID, m.opt.Cut
	return tea.Exec(terminal.Guest{Do: func() error { return cut(id) }}, func(err error) tea.Msg { return backMsg{"the cut", err} })
}

// back says how what had the terminal ended, and looks at the logbook again.
func (m *Model) back(msg backMsg) tea.Cmd {
	if msg.err != nil {
		m.refuse(msg.err.Error())
	} else {
		m.say("back from " + msg.what + "; what was marked is in the logbook")
	}
	return tea.Batch(m.load(), m.backdrop.Ask())
}

// pourAgain leaves the page with the pour as a new plan.
func (m *Model) pourAgain() tea.Cmd {
	b, _ := m.chosen()
	plan, said, err := m.opt.Again(b.ID)
	if err != nil {
		m.refuse(err.Error())
		return nil
	}
	m.again = &Poured{plan, said}
	return m.leave()
}

// seeScent reads what all pours say of a scent; of several it asks which.
func (m *Model) seeScent() tea.Cmd {
	b, _ := m.chosen()
	ids, read := m.opt.Scents(b.ID), m.opt.Scent
	page := func(id string) tea.Cmd {
		return func() tea.Msg {
			title, text, err := read(id)
			return pageMsg{title: title, text: text, err: err}
		}
	}
	if len(ids) == 1 {
		return page(ids[0])
	}
	l := &dialog.List{Title: "Which scent", Choose: page}
	for _, id := range ids {
		l.Items = append(l.Items, dialog.Item{ID: id, Name: plain.Line(id)})
	}
	m.dialogs.Open(l)
	return nil
}

// readRecord works out the record of the batch.
func (m *Model) readRecord() tea.Cmd {
	b, _ := m.chosen()
	id, name, read := b.ID, b.Name, m.opt.Record
	return func() tea.Msg {
		text, err := read(id)
		return pageMsg{"Record of " + name, text, id + "-record.txt", err}
	}
}

// paged shows a page that was worked out. One that can be written to a file says so in its first line.
func (m *Model) paged(msg pageMsg) {
	if msg.err != nil {
		m.refuse(msg.err.Error())
		return
	}
	p := dialog.NewPage(msg.title, msg.text)
	if msg.file != "" && m.opt.Write != nil {
		write := dialog.Line{Lead: "  ", Text: "write this to a file", Do: func() tea.Cmd { m.askWrite(msg.title, msg.file, msg.text); return nil }}
		p.Lines = append([]dialog.Line{write, {}}, p.Lines...)
		p.Picks = true
	}
	m.dialogs.Open(p)
}

// askWrite asks for the file a paper goes to.
func (m *Model) askWrite(title, start, text string) {
	m.askFile("Write "+title+" to", start, func(path string) (string, error) {
		if err := m.opt.Write(path, text); err != nil {
			return "", err
		}
		return "written to " + path, nil
	})
}

// askCalendar asks for the file that what is due goes to.
func (m *Model) askCalendar() {
	m.askFile("Write what is due to the calendar file", "pourbench.ics", m.opt.Calendar)
}

// askFile asks for a file and writes it beside the keyboard. One that could not be written is asked for again.
func (m *Model) askFile(title, start string, write func(path string) (string, error)) {
	m.dialogs.Open(&dialog.Prompt{
		Title: title, Typed: entry.New(start),
		Done: func(typed string) (tea.Cmd, error) {
			if strings.TrimSpace(typed) == "" {
				return nil, errors.New("a file needs a name")
			}
			return func() tea.Msg {
				said, err := write(typed)
				if errors.Is(err, fs.ErrExist) {
					err = fmt.Errorf("there is a file %s already: take another name", typed)
				}
				return saidMsg{said, err}
			}, nil
		},
	})
}

// heard says what was done beside the keyboard.
func (m *Model) heard(msg saidMsg) {
	if msg.err != nil {
		m.refuse(msg.err.Error())
		return
	}
	m.say(msg.text)
}
