package tui

import (
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/layout"
	"pourbench/tui/lines"
)

// scene is what a maker has been told: what a later telling compares with.
type scene struct {
	opened   int // which plan is on the bench
	panel    layout.ID
	revision int
	totals   string
	rows     []lines.Row
	warnings []pour.Warning
}

func (t *talk) scene() scene {
	return scene{t.m.file.opened, t.m.at().ID, t.m.session.Revision(), t.totals(), t.rows(), slices.Clone(t.m.facts.Warnings)}
}

// changingMsg is a change that comes with no key: [model.Update] works out everything that follows from it.
type changingMsg struct{ do func() tea.Cmd }

// update does something to the model as a key would, and waits for all that follows.
func (t *talk) update(do func() tea.Cmd) {
	_, cmd := t.m.Update(changingMsg{do})
	t.finish(cmd)
}

func (t *talk) finish(cmd tea.Cmd) {
	t.left = lines.Finish(t.m, cmd) || t.left
	t.m.settle()
}

// tellChanges tells, after an edit, what it changed: rows in sight, totals, warnings. On another panel it tells that, and of another plan where it stands.
func (t *talk) tellChanges() {
	before := t.told
	t.told = t.scene()
	switch {
	case t.told.opened != before.opened: // another plan altogether
		t.out.Say(t.m.session.Plan().Name + ": " + t.told.totals)
		t.tellPanel(false)
		return
	case t.told.panel != before.panel:
		t.tellPanel(false)
	case t.told.revision != before.revision:
		t.tellRowChanges(before.rows)
	}
	if t.told.revision == before.revision {
		return
	}
	if t.told.totals != before.totals {
		t.out.Say(t.told.totals)
	}
	t.tellWarningChanges(before.warnings)
}

// mostChanges is how many changed rows are told at once.
const mostChanges = 12

func (t *talk) tellRowChanges(before []lines.Row) {
	n := 0
	for _, r := range t.told.rows {
		at := slices.IndexFunc(before, func(b lines.Row) bool { return b.Name == r.Name && b.At == r.At })
		if at < 0 {
			at = slices.IndexFunc(before, func(b lines.Row) bool { return b.Name == r.Name })
		}
		changed := r.Brief()
		if at >= 0 {
			if changed.Parts = changed.Changed(before[at]); len(changed.Parts) == 0 {
				continue
			}
		}
		if n++; n <= mostChanges {
			t.out.Sayf("%d %s", r.N, changed.Line())
		}
	}
	if n > mostChanges {
		t.out.Sayf("%d rows more have changed; Enter tells all", n-mostChanges)
	}
}

// tellWarningChanges tells which warnings an edit has brought and which it has taken away.
func (t *talk) tellWarningChanges(before []pour.Warning) {
	same := func(a pour.Warning) func(pour.Warning) bool {
		return func(b pour.Warning) bool { return a.Code == b.Code && a.Where == b.Where }
	}
	for _, w := range t.told.warnings {
		if !slices.ContainsFunc(before, same(w)) {
			t.out.Sayf("New %s, %s: %s. Do: %s", w.Severity, w.Where, w.Text, w.Do)
		}
	}
	for _, w := range before {
		if !slices.ContainsFunc(t.told.warnings, same(w)) {
			t.out.Sayf("Gone: %s, %s: %s", w.Severity, w.Where, w.Text)
		}
	}
}
