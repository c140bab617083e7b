package tui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/whatif"
	"pourbench/tui/dialog"
)

// suggestedMsg brings what would help, for a revision of the plan.
type suggestedMsg struct {
	rev     int
	list    []whatif.Suggestion
	outside []string // the jugs that are likely outside their windows as the plan is
}

// suggest works out, beside the keyboard, which changes would bring every jug inside its window.
func (m *model) suggest() tea.Cmd {
	plan, shelf, hand, rev := m.session.Plan(), m.session.Shelf(), m.session.Hand(), m.session.Revision()
	m.say("trying cooler, weaker lye, less blending, other scents and orders …")
	return func() tea.Msg {
		return suggestedMsg{rev, whatif.Suggest(plan, shelf, hand), whatif.Outside(plan, shelf, hand)}
	}
}

// suggested lists the changes that help, each with its effect; what was worked out for a plan that has changed since is dropped.
func (m *model) suggested(msg suggestedMsg) {
	if msg.rev != m.session.Revision() {
		return
	}
	m.say(unhelped(msg))
	if len(msg.list) == 0 {
		return
	}
	l := &dialog.List{Title: "What would bring the jugs inside their windows", Choose: func(id string) tea.Cmd {
		i, err := strconv.Atoi(id)
		if err == nil && i < len(msg.list) && m.edit(msg.list[i].String(), msg.list[i].Edit) == nil {
			m.say("done: " + msg.list[i].String() + "; {undo} takes it back")
		}
		return nil
	}}
	for i, s := range msg.list {
		aside := "helps"
		if s.Solves {
			aside = "all inside"
		}
		l.Items = append(l.Items, dialog.Item{ID: strconv.Itoa(i), Name: s.String(), Aside: aside, Detail: effects(s)})
	}
	m.dialogs.Open(l)
}

// unhelped says which jugs nothing that was tried brings nearer to their windows.
func unhelped(msg suggestedMsg) string {
	if len(msg.outside) == 0 {
		return "every jug with a time is likely inside its window: nothing needs help"
	}
	left := slices.DeleteFunc(slices.Clone(msg.outside), func(jug string) bool {
		return slices.ContainsFunc(msg.list, func(s whatif.Suggestion) bool {
			return slices.ContainsFunc(s.Jugs, func(e whatif.Effect) bool {
				return e.Jug == jug && (falls(e.LateBefore, e.LateAfter) || falls(e.EarlyBefore, e.EarlyAfter))
			})
		})
	})
	switch {
	case len(msg.list) == 0:
		return "no single change and no pair of them helps " + strings.Join(left, ", ")
	case len(left) > 0:
		return "nothing that was tried helps " + strings.Join(left, ", ")
	}
	return "likely outside as it is: " + strings.Join(msg.outside, ", ")
}

func falls(before, after pour.Figure) bool { return before.Known && after.Known && after.V < before.V }

// effects says what a change does to each jug's chances.
func effects(s whatif.Suggestion) []string {
	out := []string{s.String()} // whole: the list has room for its beginning only
	chance := func(f pour.Figure) string {
		return pour.Show{}.Figure(f, func(v float64) string { return fmt.Sprintf("%.0f %%", v) })
	}
	for _, e := range s.Jugs {
		out = append(out, fmt.Sprintf("%s of the %s: too late %s, was %s; too early %s, was %s",
			e.Jug, e.Batch, chance(e.LateAfter), chance(e.LateBefore), chance(e.EarlyAfter), chance(e.EarlyBefore)))
	}
	return out
}
