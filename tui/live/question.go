package live

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	"pourbench/tui/dialog"
)

// askTrouble asks which trouble the chosen jug makes.
func (m *Model) askTrouble() {
	j, name := m.board.Jugs[m.jug], m.jugName(m.jug)
	q := &dialog.Question{Title: "Trouble in " + name, At: -1}
	for _, t := range []struct{ key, what, looks string }{
		{"r", logbook.Rices, "grains like cooked rice"},
		{"s", logbook.Seizes, "sets within seconds"},
		{"b", logbook.Browns, "darkens"},
		{"p", logbook.Separates, "oil or water stands apart"},
	} {
		q.Answers = append(q.Answers, dialog.Answer{Keys: t.key, Text: t.what + ": " + t.looks, Do: func() tea.Cmd {
			_ = m.told(m.run.Mark(logbook.Event{Kind: logbook.Troubled, Batch: j.Batch, Jug: j.Jug, What: t.what}), name+" "+t.what)
			return nil
		}})
	}
	m.dialogs.Open(q)
}

// askDiscount asks whether a jump that the run followed was none.
func (m *Model) askDiscount() {
	e, _ := m.lastJump()
	m.dialogs.Open(&dialog.Question{Title: "The clock jumped: " + m.jumpWords(e), Answers: []dialog.Answer{
		{Keys: "y", Text: "No time had passed: do not count it.", Do: func() tea.Cmd {
			_ = m.told(m.run.Discount(e.ID), "the jump is not counted")
			return nil
		}},
		{Keys: "n", Text: "It had: lye does not pause."},
	}})
}

// askLeave asks before the screen is left. Space, the key that is pressed most, does not answer it.
func (m *Model) askLeave() {
	m.dialogs.Open(&dialog.Question{Title: "Leave the screen?", Answers: []dialog.Answer{
		{Keys: "yq", Text: "Leave. Lye does not pause: the run goes on and can be taken up again with: pourbench run --resume " + m.ID(), Do: m.leave},
		{Keys: "n", Text: "Stay."},
	}})
}
