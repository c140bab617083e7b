package live

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/screen"
)

// trialMsg brings what a trial says of its scent.
type trialMsg struct{ text string }

// readTrial learns from the logbook with this trial in it, beside the keyboard.
func (m *Model) readTrial() tea.Cmd {
	book, shelf, id := m.opt.Book, m.opt.Shelf, m.ID()
	return func() tea.Msg {
		text, err := trialWords(book, shelf, id)
		if err != nil {
			text = err.Error()
		}
		return trialMsg{text}
	}
}

func trialWords(book logbook.Book, shelf pour.Shelf, id string) (string, error) {
	lesson, _, err := learn.FromBook(book, shelf)
	if err != nil {
		return "", err
	}
	p, err := book.Read(id, shelf)
	if err != nil {
		return "", err
	}
	r, err := learn.Trial(p, lesson)
	if err != nil {
		return "", err
	}
	name := r.Scent
	if s, ok := shelf.Scent(r.Scent); ok {
		name = s.Name
	}
	text := name + ": nothing that was seen tells its speed."
	if r.Learnt {
		text = fmt.Sprintf("%s: %s, %.2g times as fast as without it (%.2g to %.2g), from %d of your pours.",
			name, r.Behaviour, r.Finding.Factor, r.Finding.Low, r.Finding.High, r.Finding.Pours)
	} else if r.Behaviour == pour.BehaviourSeizes {
		text = name + ": it seizes."
	}
	if r.Rices {
		text += " It riced or separated."
	}
	return text, nil
}

// trialStep is the line of the guide that goes with where a trial stands.
func (m *Model) trialStep() string {
	steps := underway.TrialSteps()
	now, ok := m.now()
	least := 99
	for _, j := range m.board.Jugs {
		least = min(least, j.Reached)
	}
	i := 0
	switch {
	case !ok || len(steps) < 3:
		i = len(steps) - 1
	case now.Kind == pour.TaskEnd || now.Kind == underway.StepMakeLye || now.Kind == pour.TaskCoolLye:
		return ""
	case now.Kind == pour.TaskScent:
		i = 1
	case now.Kind == pour.TaskWatch:
		i = min(2+max(least-1, 0), len(steps)-1)
	}
	return steps[i]
}

// guidePage is what to do in a trial, in order.
func guidePage() *dialog.Page {
	p := &dialog.Page{Title: "A scent trial", LeadW: 4}
	for i, s := range underway.TrialSteps() {
		p.Lines = append(p.Lines, dialog.Line{Lead: fmt.Sprint(i + 1), Style: screen.Style{Attr: screen.Bold}, Text: s})
	}
	return p
}
