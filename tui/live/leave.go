package live

import (
	"fmt"
	"io"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	"pourbench/tui/dialog"
)

// hangupMsg says that the terminal is gone.
type hangupMsg struct{}

// A screen that was taken away leaves nobody to ask: marks that wait are then tried for this long before they are given up.
const (
	lastTries  = 30
	betweenTry = time.Second
)

// leave leaves the screen. There is nothing to save: all is in the journal; where it is not, leaving is asked about.
func (m *Model) leave() tea.Cmd {
	_ = m.run.WriteOut(0) // what comes of it is asked for next
	m.settle()
	if len(m.waiting) == 0 {
		return tea.Quit
	}
	m.askUnwritten()
	return nil
}

// askUnwritten asks what becomes of marks that are in no file.
func (m *Model) askUnwritten() {
	m.dialogs.Clear()
	m.dialogs.Open(&dialog.Question{Title: "NOT WRITTEN", Text: m.unwrittenNotice(), At: -1, Answers: []dialog.Answer{
		{Keys: "t", Text: "Try again, and leave once they are written.", Do: m.leave},
		{Keys: "x", Text: "Leave without. They are printed below, to be put into the file by hand.", Do: func() tea.Cmd { return tea.Quit }},
	}})
}

// part says what is to be known once the screen is gone: marks that could not be written, after some more tries, and how the pour is
// taken up again. A run in which nothing that stands was marked leaves nothing behind.
func (m *Model) part(notes io.Writer, tries int, sleep func(time.Duration)) {
	for n := range tries {
		if n > 0 {
			sleep(betweenTry)
		}
		_ = m.run.WriteOut(0) // asked for next
		if m.settle(); len(m.waiting) == 0 {
			break
		}
	}
	if len(m.waiting) > 0 {
		_, _ = fmt.Fprintf(notes, "pourbench: %s\n%s", m.unwrittenNotice(), m.byHand())
	}
	if m.state.Kept() == 0 && !m.cutting() {
		_ = m.run.Forget() // a file that cannot go holds nothing that counts
	}
	switch {
	case m.ID() == "" && len(m.waiting) == 0:
		_, _ = fmt.Fprintln(notes, "pourbench: no lye met oil; no pour is kept")
	case m.ID() == "" || m.state.Ended:
	case len(m.waiting) > 0:
		m.goesOn(notes, "what was marked before is in")
	default:
		m.goesOn(notes, "everything marked is in")
	}
}

func (m *Model) goesOn(notes io.Writer, kept string) {
	if m.cutting() {
		_, _ = fmt.Fprintf(notes, "pourbench: the cut is not over; %s %s\nTake it up again with: pourbench logbook cut %s\n", kept, m.opt.Book.Path(m.ID()), m.ID())
		return
	}
	_, _ = fmt.Fprintf(notes, "pourbench: the pour goes on; %s %s\nTake it up again with: pourbench run --resume %s\n", kept, m.opt.Book.Path(m.ID()), m.ID())
}

// byHand is what could not be written, to be put by hand where it belongs.
func (m *Model) byHand() string {
	if m.ID() != "" {
		return fmt.Sprintf("Put these lines at the end of %s once it can be written:\n%s\n", m.opt.Book.Path(m.ID()), logbook.Lines(m.waiting))
	}
	text, err := m.run.FileText()
	if err != nil {
		text = logbook.Lines(m.waiting)
	}
	return fmt.Sprintf("Put these lines into a new file in %s, under a name that ends in %s, once it can be written:\n%s\n", m.opt.Book.Folder(), logbook.Suffix, text)
}
