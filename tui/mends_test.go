package tui

import (
	"image"
	"reflect"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
)

// stands says whether a warning of a code stands on the bench.
func stands(m *model, code string) bool {
	for _, w := range m.session.Warnings() {
		if w.Code == code {
			return true
		}
	}
	return false
}

// mended checks that the first mend of the late poppy was made as one edit, said, and is taken back by one u.
func mended(t *testing.T, m *model, before pour.Plan) {
	t.Helper()
	name := m.session.CanUndo()
	if name == "" || reflect.DeepEqual(before, m.session.Plan()) || stands(m, "scent-fast-late") {
		t.Errorf("the mend %q was made, poppy is late: %v\n%s", name, stands(m, "scent-fast-late"), frame(m))
	}
	if got := m.status.Text(); !strings.Contains(got, "done: "+name+"; u takes it back") {
		t.Errorf("said is %q", got)
	}
	drive(m, "u")
	if !reflect.DeepEqual(before, m.session.Plan()) || !stands(m, "scent-fast-late") || m.session.CanUndo() != "" {
		t.Errorf("after one u the plan is not as it was, left to undo: %q", m.session.CanUndo())
	}
}

func TestTheWarningsTakeTheKeysAndEnterMakesAMend(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.session.Plan()
	high := m.placed.Warnings.Dy()
	drive(m, "shift+tab")
	if m.at().ID != layout.Warnings || m.placed.Warnings.Dy() <= high {
		t.Fatalf("the focus is on %s, %d lines high", m.at().ID, m.placed.Warnings.Dy())
	}
	if f := frame(m); !strings.Contains(f, "! poppy: likely past medium") || !strings.Contains(f, "→ "+m.session.Mends()[0][0].Says) {
		t.Fatalf("the first warning and its mend are not in sight:\n%s", f)
	}
	drive(m, "enter")
	if m.session.CanUndo() != "" || !strings.Contains(m.status.Text(), "go down to one of its mends") {
		t.Errorf("on a warning Enter says %q", m.status.Text())
	}
	drive(m, "down enter")
	mended(t, m, before)
}

func TestAWarningThatNoEditTakesAwaySaysSo(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "shift+tab")
	for range 40 {
		if cell, _, _ := m.cell(); strings.HasPrefix(cell.Text, "fine powder") {
			drive(m, "enter")
			if !strings.Contains(m.status.Text(), panel.NoMend) {
				t.Errorf("said is %q", m.status.Text())
			}
			return
		}
		drive(m, "down")
	}
	t.Error("the cursor does not come to the powders")
}

func TestThePageOfWarningsMakesAMend(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m := opened(t, size[0], size[1])
		before := m.session.Plan()
		drive(m, "w")
		if f := frame(m); !strings.Contains(f, "► ! caution") || !strings.Contains(f, "mend →") || !strings.Contains(f, "do it") {
			t.Fatalf("the page does not show its cursor and a mend:\n%s", f)
		}
		drive(m, "enter")
		if m.dialogs.Top() == nil || !strings.Contains(m.status.Text(), "go down to one of its mends") {
			t.Errorf("on a warning Enter says %q", m.status.Text())
		}
		drive(m, "down enter")
		if m.dialogs.Top() != nil {
			t.Error("the page stands after its mend was made")
		}
		mended(t, m, before)
	}
}

func TestThePageIsWalkedToItsLastWarning(t *testing.T) {
	m := opened(t, 80, 24)
	drive(m, "w")
	for range 60 {
		drive(m, "down")
	}
	if f := frame(m); !strings.Contains(f, "► · note     wrapped, the loaf may gel") || !strings.Contains(f, "gel: whether the loaf") {
		t.Errorf("the last warning is not in sight:\n%s", f)
	}
	for range 60 {
		drive(m, "up")
	}
	if f := frame(m); !strings.Contains(f, "► ! caution") {
		t.Errorf("the first warning is not in sight again:\n%s", f)
	}
	typeText(m, "powder")
	if f := frame(m); !strings.Contains(f, "► · note") || !strings.Contains(f, "fine powder") {
		t.Errorf("the cursor is not on what was searched for:\n%s", f)
	}
}

// Mends of a plan that has changed since are never made: they name places in it.
func TestMendsAreThoseOfThePlanOnTheBench(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "shift+tab")
	old := m.session.Mends()
	if old == nil {
		t.Fatal("no mends")
	}
	m.Update(key("u")) // nothing to undo
	if err := m.edit("share", pour.SetShare(pour.Base, 0, 30)); err != nil {
		t.Fatal(err)
	}
	m.settle()
	m.Update(mendedMsg{m.session.Revision() - 1, old})
	if m.session.Mends() != nil || len(m.facts.MendsOf(0)) != 0 {
		t.Error("mends of the plan before were taken for this one's")
	}
	m.cursors[layout.Warnings] = m.grids[layout.Warnings].Settle(m.cursors[layout.Warnings])
	m.Update(key("enter"))
	if !strings.Contains(m.status.Text(), panel.MendsAwaited) {
		t.Errorf("while they are looked for Enter says %q", m.status.Text())
	}
}

func TestMendsAreLookedForWhenTheyAreReadOrTheHandRests(t *testing.T) {
	m := opened(t, 120, 36)
	if m.session.Mends() != nil {
		t.Error("mends were looked for that nobody asked for")
	}
	m.mending.rests = true
	if m.mendSoon() == nil {
		t.Fatal("a hand that rests starts nothing")
	}
	_, cmd := m.Update(idleMsg{m.session.Revision() - 1})
	finish(m, cmd)
	if m.session.Mends() != nil {
		t.Error("a hand that rested on a plan before started the search")
	}
	_, cmd = m.Update(idleMsg{m.session.Revision()})
	finish(m, cmd)
	if m.session.Mends() == nil || !strings.Contains(frame(m), "→ "+m.session.Mends()[0][0].Says+", or:") {
		t.Errorf("the warnings do not show their mends:\n%s", frame(m))
	}
}

func TestTheMouseMakesAMend(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.session.Plan()
	click := func(y int) {
		at := m.placed.Warnings.Min.Add(image.Pt(8, 1+y))
		_, cmd := m.Update(tea.MouseClickMsg{X: at.X, Y: at.Y, Button: tea.MouseLeft})
		finish(m, cmd)
	}
	click(3) // gives the warnings the keys
	if m.at().ID != layout.Warnings || m.session.CanUndo() != "" {
		t.Fatalf("a click gives the keys to %s", m.at().ID)
	}
	click(1) // goes to the mend
	click(1) // makes it
	mended(t, m, before)
}

func TestWithoutRoomTheWarningsGiveTheKeysBack(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "shift+tab")
	resize(m, 80, 24)
	if m.at().ID != "jugs" {
		t.Errorf("the focus is on %s, which is not on the screen", m.at().ID)
	}
}

// Mends that come while the warnings are read push what stands below them down: the cursor stays with its warning, so that Enter makes no mend unasked.
func TestTheCursorStaysOnItsWarningWhenMendsCome(t *testing.T) {
	m := opened(t, 120, 36)
	search := func(names string) tea.Cmd { // the search waits while the keys go on
		var all []tea.Cmd
		for _, name := range strings.Fields(names) {
			_, cmd := m.Update(key(name))
			all = append(all, cmd)
		}
		return tea.Batch(all...)
	}
	cmd := search("shift+tab down down")
	cell, _, _ := m.cell()
	finish(m, cmd)
	if now, _, _ := m.cell(); m.session.Mends() == nil || now.Text != cell.Text || cell.Kind == grid.Tick {
		t.Errorf("the cursor of the panel was on %q and is on %q", cell.Text, now.Text)
	}
	m = opened(t, 120, 36)
	cmd = search("w down down")
	before := frame(m)
	finish(m, cmd)
	marked := func(f string) string {
		for line := range strings.SplitSeq(f, "\n") {
			if _, after, ok := strings.Cut(line, "│ ►"); ok {
				return strings.TrimRight(after, " │╯╮╰╭")
			}
		}
		return ""
	}
	if was, is := marked(before), marked(frame(m)); m.session.Mends() == nil || was != is || !strings.Contains(was, "caution") {
		t.Errorf("the cursor of the page was on %q and is on %q", was, is)
	}
}
