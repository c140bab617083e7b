package tui

import (
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/fresh"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
)

// freshMsg brings a plan that was made of wishes.
type freshMsg struct {
	plan pour.Plan
	err  error
	rev  int
}

// newPlan asks for the wishes of a new plan; an unsaved plan is a question first.
func (m *model) newPlan() tea.Cmd {
	begin := func(m *model) tea.Cmd {
		m.askWish([]fresh.Form{fresh.NewForm(m.session.Shelf(), m.session.Plan().Show)})
		return nil
	}
	if m.session.Dirty() {
		m.unsaved("beginning a new plan", begin)
		return nil
	}
	return begin(m)
}

// askWish asks the last of a row of questions; Esc goes back to the one before. When all is asked the plan is made, beside the keyboard.
func (m *model) askWish(asked []fresh.Form) {
	form := asked[len(asked)-1]
	q, ok := form.Question()
	if !ok {
		return
	}
	answer := func(id string) (tea.Cmd, error) {
		next, err := form.Answer(id)
		if err != nil {
			return nil, err
		}
		if _, more := next.Question(); !more {
			return m.makePlan(next.Wishes), nil
		}
		m.askWish(append(asked[:len(asked):len(asked)], next))
		return nil, nil
	}
	var leave func() tea.Cmd
	if len(asked) > 1 {
		leave = func() tea.Cmd { m.askWish(asked[:len(asked)-1]); return nil }
	}
	if len(q.Choices) == 0 {
		m.dialogs.Open(&dialog.Prompt{Title: q.Ask, Text: q.Note, Typed: entry.Over(q.Typed), Done: answer, Leave: leave})
		return
	}
	m.dialogs.Open(m.wishList(q, answer, leave))
}

// wishList is the list of the answers to a question.
func (m *model) wishList(q fresh.Question, answer func(string) (tea.Cmd, error), leave func() tea.Cmd) *dialog.List {
	l := &dialog.List{Title: "New plan: " + q.Ask, Names: q.Shelf != "", Leave: leave}
	l.Choose = func(id string) tea.Cmd {
		cmd, err := answer(id)
		if err != nil {
			m.refuse(reason(err))
		}
		return cmd
	}
	told := map[string]dialog.Item{}
	if q.Shelf != "" {
		for _, it := range m.facts.Items(q.Shelf) {
			told[it.ID] = it
		}
	}
	for _, c := range q.Choices {
		it, ok := told[c.ID]
		if !ok {
			it = dialog.Item{ID: c.ID, Name: c.Name, Detail: c.Detail}
		}
		if c.Aside != "" {
			it.Aside = c.Aside
		}
		if q.SoFar != "" {
			it.Detail = slices.Insert(slices.Clone(it.Detail), min(1, len(it.Detail)), "So far: "+q.SoFar)
		}
		l.Items = append(l.Items, it)
	}
	return l
}

// makePlan makes the plan of wishes.
func (m *model) makePlan(w fresh.Wishes) tea.Cmd {
	m.say("making the plan: trying where its scents do least harm and which order stays cleanest …")
	shelf, hand, rev := m.session.Shelf(), m.session.Hand(), m.session.Revision()
	return func() tea.Msg {
		plan, err := fresh.Plan(w, shelf, hand)
		return freshMsg{plan, err, rev}
	}
}

// freshMade puts a new plan on the bench.
func (m *model) freshMade(msg freshMsg) tea.Cmd {
	switch {
	case msg.err != nil:
		m.refuse(reason(msg.err))
		return nil
	case msg.rev != m.session.Revision() && m.session.Dirty():
		m.refuse("the plan on the bench was changed while the new one was made; {new plan} makes it again")
		return nil
	}
	drop := m.dropJournal()
	m.bring(msg.plan, false, "", planfile.Stamp{})
	m.say(strings.TrimSpace(msg.plan.Name) + " is a whole plan already, in " + msg.plan.Show.Units() + ": change it; {save} saves, {checklist} prints")
	return drop
}
