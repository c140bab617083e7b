package live

import (
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
)

// question waits for a key.
type question struct {
	title   string
	choices []choice
}

// choice is an answer and the keys that give it.
type choice struct {
	keys []string
	text string
	do   func(m *Model) tea.Cmd
}

func (m *Model) pressQuestion(k tea.KeyPressMsg) tea.Cmd {
	if b, ok := lookup(keys.Asking, k.String()); ok && b.ID == keys.Close {
		m.question = nil
		return nil
	}
	for _, c := range m.question.choices {
		if slices.Contains(c.keys, k.String()) {
			m.question = nil
			return c.do(m)
		}
	}
	m.refuse("press one of the keys shown, or Esc for none of them")
	return nil
}

// askTrouble asks which trouble the chosen jug makes.
func (m *Model) askTrouble() {
	j, name := m.board.Jugs[m.jug], m.jugName(m.jug)
	m.question = &question{title: "Trouble in " + name}
	for _, t := range []struct{ key, what, looks string }{
		{"r", logbook.Rices, "grains like cooked rice"},
		{"s", logbook.Seizes, "sets within seconds"},
		{"b", logbook.Browns, "darkens"},
		{"p", logbook.Separates, "oil or water stands apart"},
	} {
		m.question.choices = append(m.question.choices, choice{[]string{t.key}, t.what + ": " + t.looks, func(m *Model) tea.Cmd {
			_ = m.told(m.run.Mark(logbook.Event{Kind: logbook.Troubled, Batch: j.Batch, Jug: j.Jug, What: t.what}), name+" "+t.what)
			return nil
		}})
	}
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
	m.question = &question{title: "What still can be done for " + name}
	for i, r := range m.rescues(j) {
		m.question.choices = append(m.question.choices, choice{[]string{fmt.Sprint(i + 1)}, sentence(string(r.Kind)) + " " + r.Do, func(m *Model) tea.Cmd {
			m.takeRescue(j, r)
			return nil
		}})
	}
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
	m.question = &question{title: "The clock jumped: " + m.jumpWords(e), choices: []choice{
		{[]string{"y", "enter"}, "No time had passed: do not count it.", func(m *Model) tea.Cmd {
			_ = m.told(m.run.Discount(e.ID), "the jump is not counted")
			return nil
		}},
		{[]string{"n"}, "It had: lye does not pause.", func(*Model) tea.Cmd { return nil }},
	}}
}

// askLeave asks before the screen is left. Space, the key that is pressed most, does not answer it.
func (m *Model) askLeave() {
	m.question = &question{title: "Leave the screen?", choices: []choice{
		{[]string{"y", "enter", "q"}, "Leave. Lye does not pause: the run goes on and can be taken up again with: pourbench run --resume " + m.ID(), (*Model).leave},
		{[]string{"n"}, "Stay.", func(*Model) tea.Cmd { return nil }},
	}}
}

// sentence makes a sentence of words.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}
