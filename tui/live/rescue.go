package live

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// lost is the jug to rescue: the chosen one if it needs it, else the first that does and for which nothing was chosen yet; below 0: none.
func (m *Model) lost() int {
	if m.jug < len(m.board.Jugs) && len(m.rescues(m.board.Jugs[m.jug])) > 0 {
		return m.jug
	}
	return slices.IndexFunc(m.board.Jugs, func(j underway.JugBoard) bool {
		return len(m.rescues(j)) > 0 && !slices.ContainsFunc(m.state.Marks, func(e logbook.Event) bool {
			return e.Kind == logbook.Rescued && e.Batch == j.Batch && (e.Jug == j.Jug || m.state.Whole(e))
		})
	})
}

// rescues is what still can be done for a jug. In a trial, and before its lye is in, nothing needs saving.
func (m *Model) rescues(j underway.JugBoard) []underway.Rescue {
	if m.trialling() || m.unused(j.Batch, j.Jug) || !m.running(j.Batch) {
		return nil
	}
	return j.Rescues
}

// lostWords says why a jug needs to be rescued.
func (m *Model) lostWords(i int) string {
	if list := m.board.Jugs[i].Troubles; len(list) > 0 {
		return cmp.Or(m.state.AllOf(m.board.Jugs[i].Batch), m.jugName(i)) + " " + strings.Join(list, " and ")
	}
	return m.jugName(i) + " will not make it as planned"
}

// askRescue asks which of the ways to take.
func (m *Model) askRescue() {
	m.jug = m.lost()
	j, name := m.board.Jugs[m.jug], m.jugName(m.jug)
	q := &dialog.Question{Title: "What still can be done for " + cmp.Or(m.state.AllOf(j.Batch), name), At: -1}
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
	of := j.Jug
	if r.All {
		of = m.state.AllOf(j.Batch)
	}
	if m.told(m.run.Mark(r.Mark(j)), of+": "+string(r.Kind)) != nil {
		return
	}
	if r.Kind != underway.LeaveScent {
		m.chosen = r.Step
	}
}

// sentence makes a sentence of words.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// drawRescues lists what still can be done for a jug, a line for each way where there is room.
func (m *Model) drawRescues(a screen.Area, jug int) {
	ways := m.rescues(m.board.Jugs[jug])
	text := m.lostWords(jug) + ". What still can be done (" + m.key(keys.Rescue) + "): "
	if a.H() > len(ways) {
		a.Text(0, 0, screen.Clip(text, a.W()), m.look.Caution)
		for y, w := range ways {
			a.Text(2, 1+y, screen.Clip(w.Do, a.W()-2), m.look.Text)
		}
		return
	}
	for i, w := range ways {
		if i > 0 {
			text += " · "
		}
		text += string(w.Kind)
	}
	for y, l := range screen.Wrap(text, a.W()) {
		a.Text(0, y, l, m.look.Caution)
	}
}
