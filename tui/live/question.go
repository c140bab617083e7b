package live

import (
	"fmt"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	"pourbench/tui/dialog"
)

// askTrouble asks which trouble the chosen jug makes.
func (m *Model) askTrouble() {
	j, name := m.board.Jugs[m.jug], m.jugName(m.jug)
	q := &dialog.Question{Title: "Trouble in " + name, At: -1}
	if m.state.OnePot(j.Batch, m.live.Run()) {
		name = fmt.Sprintf("all of the %s", j.Batch)
		q.Title, q.Text = "Trouble in "+name, "It is still one pot: what is marked now holds for every jug of it."
	}
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

// askNotUsed asks before the chosen jug is passed over, or taken in again. Neither Space nor Enter answers it.
func (m *Model) askNotUsed() {
	j, name := m.board.Jugs[m.jug], m.jugName(m.jug)
	out, is := m.leftInJug(j.Batch, j.Jug)
	if is {
		m.dialogs.Open(&dialog.Question{Title: name + " stays in its jug", At: -1, Answers: []dialog.Answer{
			{Keys: "y", Text: "Use it after all: its steps come again.", Do: func() tea.Cmd {
				_ = m.told(m.run.Mark(logbook.Event{Kind: logbook.TakenBack, What: out.ID}), name+" is used after all")
				return nil
			}},
			{Keys: "n", Text: "Leave it in its jug."},
		}})
		return
	}
	m.dialogs.Open(&dialog.Question{Title: "Leave " + name + " in its jug?", At: -1, Answers: []dialog.Answer{
		{Keys: "y", Text: "Yes: it is not used, and its steps are passed over.", Do: func() tea.Cmd {
			_ = m.told(m.run.Mark(logbook.Event{Kind: logbook.Unpoured, Batch: j.Batch, Jug: j.Jug}), name+" stays in its jug")
			return nil
		}},
		{Keys: "n", Text: "No: it is poured as planned."},
	}})
}

// askSkip asks before the step under way is marked as not done. Neither Space nor Enter answers it.
func (m *Model) askSkip() {
	now, _ := m.now()
	title := m.title(now.Step)
	m.dialogs.Open(&dialog.Question{Title: title + ": not done?", At: -1, Answers: []dialog.Answer{
		{Keys: "y", Text: "Yes: the pour goes on without it, and the record says so.", Do: func() tea.Cmd {
			if m.told(m.run.Mark(logbook.Event{Kind: logbook.Skipped, Step: now.Key}), title+": not done") == nil {
				m.chosen = ""
			}
			return nil
		}},
		{Keys: "n", Text: "No: it is still to be done."},
	}})
}

// askLeave asks before the screen is left. Space, the key that is pressed most, does not answer it.
func (m *Model) askLeave() {
	if m.cutting() {
		m.askLeaveCut()
		return
	}
	if !m.state.Begun() {
		m.askLeaveEarly()
		return
	}
	m.dialogs.Open(&dialog.Question{Title: "Leave the screen?", Answers: []dialog.Answer{
		{Keys: "yq", Text: "Leave. Lye does not pause: the run goes on and can be taken up again with: pourbench run" + m.resuming(), Do: m.leave},
		{Keys: "n", Text: "Stay."},
		{Keys: "e", Text: "End it here: the pour is over and is not taken up again.", Do: func() tea.Cmd {
			if m.told(m.run.Mark(logbook.Event{Kind: logbook.Ended}), "the pour is over") != nil {
				return nil
			}
			return m.leave()
		}},
	}})
}

// resuming is how a pour is taken up again by its name, once it has one.
func (m *Model) resuming() string {
	if m.ID() == "" {
		return ""
	}
	return " --resume " + m.ID()
}

// askLeaveEarly asks before a run is left in which no lye has met oil: what was marked is kept, or no pour is left behind. Pressing q once
// more keeps what was measured or written, and forgets steps that were only pressed through.
func (m *Model) askLeaveEarly() {
	if m.state.Kept() == 0 {
		m.dialogs.Open(&dialog.Question{Title: "Leave the screen?", Answers: []dialog.Answer{
			{Keys: "yq", Text: "Leave. Nothing was marked: no pour is kept.", Do: m.leave},
			{Keys: "n", Text: "Stay."},
		}})
		return
	}
	forget := dialog.Answer{Keys: "f", Text: "Forget it: no lye has met oil, and no pour is kept.", Do: m.forget}
	keep := dialog.Answer{Keys: "k", Text: "Keep what was marked (" + m.keptWords() + "): the run goes on and can be taken up again.", Do: m.leave}
	first, second := &forget, &keep
	if m.measuredAny() {
		first, second = second, first
	}
	first.Keys += "q"
	m.dialogs.Open(&dialog.Question{Title: "No lye has met oil yet. Leave?", At: -1, Answers: []dialog.Answer{*first, *second, {Keys: "n", Text: "Stay."}}})
}

// forget leaves without a pour. Where its file cannot be removed the run stays, with the reason.
func (m *Model) forget() tea.Cmd {
	if m.told(m.run.Forget(), "no pour is kept") != nil {
		return nil
	}
	return tea.Quit
}

// measuredAny says whether anything stands that pressing Space again would not bring back: a weight, a temperature, words.
func (m *Model) measuredAny() bool {
	return slices.ContainsFunc(m.state.Marks, func(e logbook.Event) bool { return e.Kind.ByHand() && e.Kind != logbook.Done })
}

// keptWords counts what was marked.
func (m *Model) keptWords() string {
	steps, others := 0, 0
	for _, e := range m.state.Marks {
		switch {
		case e.Kind == logbook.Done:
			steps++
		case e.Kind.ByHand():
			others++
		}
	}
	return fmt.Sprintf("steps done: %d, weights, temperatures and notes: %d", steps, others)
}
