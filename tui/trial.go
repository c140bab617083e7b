package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/panel"
)

// trying is a scent of the shelf that is tried in the place of one of the plan's, beside the plan.
type trying struct {
	of     *panel.Swap // nil: none is
	opened int         // the plan on the bench that it is of, as [file] counts them
	asked  int         // the revision it was last worked out for; 0: for none
	sheet  *pour.Sheet // the plan with it; nil: not yet
	rev    int         // the revision that sheet belongs to
	why    string      // why it cannot be
}

// triedMsg brings the plan with a scent that is tried, for a revision of the plan.
type triedMsg struct {
	of    panel.Swap
	rev   int
	sheet pour.Sheet
	err   error
}

// tried is what the panels are told of the trial. One that became the plan, or whose place is gone, is over.
func (m *model) tried() *panel.Trial {
	t := &m.trying
	if t.of == nil {
		return nil
	}
	if now, ok := t.of.Stands(m.session.Plan()); !ok || now == t.of.ID || t.opened != m.file.opened {
		m.trying = trying{}
		return nil
	}
	return &panel.Trial{Swap: *t.of, Sheet: t.sheet, Fresh: t.rev == m.session.Revision(), Why: t.why}
}

// try works the trial out beside the keyboard, once for each plan, while its station is in sight.
func (m *model) try() tea.Cmd {
	t, rev := &m.trying, m.session.Revision()
	if t.of == nil || m.station != panel.Label || t.asked == rev {
		return nil
	}
	t.asked = rev
	of, work := *t.of, m.session.Tried(t.of.Edit())
	return func() tea.Msg {
		sheet, err := work()
		return triedMsg{of, rev, sheet, err}
	}
}

// tryDone takes what was worked out; that of another trial or of an earlier plan is dropped.
func (m *model) tryDone(msg triedMsg) {
	t := &m.trying
	if t.of == nil || *t.of != msg.of || msg.rev != m.session.Revision() {
		return
	}
	t.rev, t.why, t.sheet = msg.rev, "", &msg.sheet
	if msg.err != nil {
		t.why, t.sheet = reason(msg.err), nil
	}
}
