package tui

import (
	"errors"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
)

// What another terminal did to shelf, stock or costs is on the bench once its window has the focus, and nothing of the plan or its undo is lost.
func TestWhatAnotherTerminalDidToTheShelfIsSeen(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "3 9 enter")
	shelf, changed := m.session.Shelf(), false
	m.opt.Restock = func() (pour.Shelf, bool, error) { return shelf, changed, nil }
	look := func() {
		_, cmd := m.Update(tea.FocusMsg{})
		finish(m, cmd)
	}
	rev := m.session.Revision()
	look()
	if m.session.Revision() != rev {
		t.Error("it was worked out again though nothing changed")
	}
	shelf.Oils = append([]pour.Oil(nil), shelf.Oils...)
	for i := range shelf.Oils {
		if shelf.Oils[i].ID == "olive" {
			shelf.Oils[i].Name = "olive oil of the new drum"
		}
	}
	changed = true
	look()
	if got := m.session.Sheet().Base.Oils[0].Name; got != "olive oil of the new drum" {
		t.Errorf("the sheet still has %q", got)
	}
	drive(m, "u")
	if m.session.Dirty() {
		t.Error("the edit before it cannot be undone")
	}
}

func TestAShelfWithoutWhatThePlanUsesIsNotTaken(t *testing.T) {
	m := opened(t, 120, 36)
	was := len(m.session.Shelf().Oils)
	m.opt.Restock = func() (pour.Shelf, bool, error) {
		s := m.session.Shelf()
		s.Oils = s.Oils[1:]
		return s, true, nil
	}
	_, cmd := m.Update(tea.FocusMsg{})
	finish(m, cmd)
	if len(m.session.Shelf().Oils) != was || !strings.Contains(m.status.Text(), "not taken") {
		t.Errorf("%d oils, and it says %q", len(m.session.Shelf().Oils), m.status.Text())
	}
	m.opt.Restock = func() (pour.Shelf, bool, error) { return pour.Shelf{}, false, errors.New("read ledger.toml: line 3") }
	_, cmd = m.Update(tea.FocusMsg{})
	finish(m, cmd)
	if !strings.Contains(m.status.Text(), "line 3") {
		t.Errorf("a file that cannot be read is not told of: %q", m.status.Text())
	}
}
