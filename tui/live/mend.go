package live

import (
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// measureHint says what can be typed besides a number, in words that hold for the screen or for plain mode.
func (m *Model) measureHint() string {
	switch {
	case m.opt.Plain && m.cutting():
		return `A number or a part of a name chooses, with what it weighs behind it. "" behind one that was weighed takes it back.`
	case m.opt.Plain:
		return `A number or a part of a name chooses, with the weight behind it: olive 356. "" behind one that was weighed takes it back or says of what it was.`
	case m.cutting():
		return m.opt.Keys.Fill(keys.Line, "{commit} alone on a ✓ piece takes its weight back")
	}
	return m.opt.Keys.Fill(keys.Line, "Letters search; {commit} alone on a ✓ weight takes it back or renames it")
}

// weighed is the weighing that counts of a thing; false where there is none.
func (m *Model) weighed(t underway.Thing) (logbook.Event, bool) {
	for _, e := range slices.Backward(m.state.Marks) {
		if e.Kind == t.Event.Kind && e.Kind != logbook.Read && logbook.OfOneThing(e, t.Event) {
			return e, true
		}
	}
	return logbook.Event{}, false
}

// listWeighings lists every weighing that stands, the last one first, slips that were weighed again among them.
func (m *Model) listWeighings() {
	weighed := m.live.Scaled()
	l := &dialog.List{Title: "Which weight is wrong?", Below: true, Choose: func(id string) tea.Cmd {
		for _, e := range weighed {
			if e.ID == id {
				m.askWeighing(e)
			}
		}
		return nil
	}}
	for _, e := range weighed {
		at, _ := e.When() // what was put right stands where it was weighed
		aside := at.Format("15:04")
		if !m.counts(e) {
			aside += ", does not count: weighed again"
		}
		l.Items = append(l.Items, dialog.Item{ID: e.ID, Name: m.markWords(e), Aside: aside, Detail: []string{"Taken back, or said to be of another thing: what is chosen here is asked about first."}})
	}
	m.dialogs.Open(l)
}

// counts reports whether a mark counts.
func (m *Model) counts(e logbook.Event) bool {
	return slices.ContainsFunc(m.state.Marks, func(x logbook.Event) bool { return x.ID == e.ID })
}

// askWeighing asks what was wrong with a weighing. Neither Space nor Enter answers it.
func (m *Model) askWeighing(e logbook.Event) {
	q := &dialog.Question{Title: m.markWords(e), At: -1, Answers: []dialog.Answer{
		{Keys: "t", Text: "Take it back: it was not weighed.", Do: func() tea.Cmd {
			m.mended(m.run.Unweigh(e.ID), "taken back: "+m.markWords(e), e.Batch)
			return nil
		}},
		{Keys: "o", Text: "Of another thing: it was weighed, but of something else.", Do: func() tea.Cmd {
			m.listOthers(e)
			return nil
		}},
		{Keys: "nl", Text: "Leave it as it is."},
	}}
	if m.cutting() {
		q.Answers = slices.Delete(q.Answers, 1, 2)
	}
	m.dialogs.Open(q)
}

// listOthers lists of what a weighing can have been, those that were not weighed first.
func (m *Model) listOthers(e logbook.Event) {
	now, _ := m.now()
	things := slices.DeleteFunc(m.state.Things(m.sheet(), now.Step), func(t underway.Thing) bool {
		return t.Event.Kind != logbook.Weighed || logbook.OfOneThing(t.Event, e)
	})
	slices.SortStableFunc(things, func(a, b underway.Thing) int {
		was := map[bool]int{true: 1}
		return was[a.Measured.Known] - was[b.Measured.Known]
	})
	l := &dialog.List{Title: "Of what was " + m.sheet().Plan.Show.Dose(e.Value) + "?", Below: true, Choose: func(name string) tea.Cmd {
		for _, t := range things {
			if m.weighedWords(t.Event) == name {
				m.reweigh(e, t.Event)
				break
			}
		}
		return nil
	}}
	for _, t := range things {
		words := m.thingWords(t)
		says := strings.TrimPrefix(words.Says, " in g, ")
		if words.Had {
			says = "✓ " + says
		}
		detail := []string{words.Name + words.Says}
		if words.Also != words.Name {
			detail = append(detail, words.Also) // what plain mode tells is found by that
		}
		l.Items = append(l.Items, dialog.Item{ID: words.Name, Name: words.Name, Aside: says, Detail: detail})
	}
	m.dialogs.Open(l)
}

// reweigh says that a weighing was of another thing.
func (m *Model) reweigh(e, of logbook.Event) {
	err := m.run.Reweigh(e.ID, of)
	done := m.weighedWords(of) + " " + m.sheet().Plan.Show.Dose(e.Value)
	if left, _ := logbook.Counting(logbook.Standing(m.run.Live().Events), m.sheet()); !slices.ContainsFunc(left, func(x logbook.Event) bool {
		return x.Kind == logbook.Weighed && logbook.OfOneThing(x, e)
	}) {
		done += "; " + m.weighedWords(e) + " is not weighed"
	}
	m.mended(err, done, of.Batch, e.Batch)
}

// mended says what was put right, what counts since, and what the superfats of its batches are by that.
func (m *Model) mended(err error, done string, batches ...pour.BatchName) {
	before := m.state
	m.settle()
	for _, e := range m.state.Marks {
		if e.Kind == logbook.Weighed && hidden(before, e.ID) {
			done += "; " + m.markWords(e) + " counts again"
		}
	}
	say := m.say
	for i, n := range batches {
		if judged := m.lyeWords(n); judged != "" && !slices.Contains(batches[:i], n) {
			say, done = m.warn, done+"; "+judged
		}
	}
	_ = m.toldBy(say, err, done)
}

// hidden reports whether a weighing did not count because another of the same thing came after it.
func hidden(s underway.State, id string) bool {
	for _, before := range s.Again {
		if slices.ContainsFunc(before, func(e logbook.Event) bool { return e.ID == id }) {
			return true
		}
	}
	return false
}
