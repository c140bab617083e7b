package live

import (
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
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

// lost is the jug to rescue: the chosen one if it needs it, else the first that does and for which nothing was chosen yet; below 0: none.
func (m *Model) lost() int {
	if m.jug < len(m.board.Jugs) && len(m.rescues(m.board.Jugs[m.jug])) > 0 {
		return m.jug
	}
	return slices.IndexFunc(m.board.Jugs, func(j underway.JugBoard) bool {
		return len(m.rescues(j)) > 0 && !slices.ContainsFunc(m.state.Marks, func(e logbook.Event) bool {
			return e.Kind == logbook.Rescued && e.Batch == j.Batch && e.Jug == j.Jug
		})
	})
}

// rescues is what still can be done for a jug. In a trial, and before its lye is in, nothing needs saving.
func (m *Model) rescues(j underway.JugBoard) []underway.Rescue {
	if m.trialling() || m.leftInJug(j.Batch, j.Jug) || !m.running(j.Batch) {
		return nil
	}
	return j.Rescues
}

// askRescue asks which of the ways to take.
func (m *Model) askRescue() {
	m.jug = m.lost()
	j, name := m.board.Jugs[m.jug], m.jugName(m.jug)
	q := &dialog.Question{Title: "What still can be done for " + name, At: -1}
	for i, r := range m.rescues(j) {
		q.Answers = append(q.Answers, dialog.Answer{Keys: fmt.Sprint(i + 1), Text: sentence(string(r.Kind)) + " " + r.Do, Do: func() tea.Cmd {
			m.takeRescue(j, r)
			return nil
		}})
	}
	m.dialogs.Open(q)
}

// takeRescue notes what she does instead of the plan and brings up the step it needs.
func (m *Model) takeRescue(j underway.JugBoard, r underway.Rescue) {
	e := logbook.Event{Kind: logbook.Rescued, Batch: j.Batch, Jug: j.Jug, What: string(r.Kind)}
	if m.told(m.run.Mark(e), j.Jug+": "+string(r.Kind)) != nil {
		return
	}
	if r.Kind != underway.LeaveScent {
		m.chosen = r.Step
	}
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

// sentence makes a sentence of words.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}
