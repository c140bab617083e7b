package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/panel"
)

// clickOn clicks on the first place of the frame where a text stands.
func clickOn(t *testing.T, m *model, text string) {
	t.Helper()
	for y, l := range strings.Split(frame(m), "\n") {
		if i := strings.Index(l, text); i >= 0 {
			_, cmd := m.Update(tea.MouseClickMsg{X: len([]rune(l[:i])), Y: y, Button: tea.MouseLeft})
			finish(m, cmd)
			return
		}
	}
	t.Fatalf("%q is not on the screen", text)
}

func TestAClickGoesToATabAndToACell(t *testing.T) {
	m := opened(t, 120, 36)
	clickOn(t, m, "Batch")
	if m.station != panel.Batch {
		t.Fatalf("the station is %v, want Batch", m.station)
	}
	clickOn(t, m, "coconut oil")
	if cell, row, _ := m.cell(); row.Item != 1 || cell.Text != "coconut oil" {
		t.Errorf("the cursor is on %q of row %d", cell.Text, row.Item)
	}
	clickOn(t, m, "coconut oil")
	if m.dialogs.Top() == nil {
		t.Error("a second click did not open the list")
	}
}

func TestAClickOnAnAnswerGivesIt(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "+ q")
	clickOn(t, m, "cancel")
	if m.dialogs.Top() != nil || m.quitting {
		t.Error("the question is still open, or the bench was left")
	}
}

func TestAClickWhileARefusedNumberIsTypedKeepsTheNumber(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "9 9 9")
	clickOn(t, m, "buttercup")
	if m.typing == nil || m.typing.Refused == "" {
		t.Error("a click threw away what was typed")
	}
}

func TestTheWheelMovesThePanelUnderThePointer(t *testing.T) {
	m := opened(t, 120, 36)
	r, ok := m.placed.Find("weigh")
	if !ok {
		t.Fatal("no list of weighings at 120×36")
	}
	m.Update(tea.MouseWheelMsg{X: r.Min.X + 3, Y: r.Min.Y + 2, Button: tea.MouseWheelDown})
	if got := m.cursors["weigh"].Row; got != wheelRows {
		t.Errorf("the list is on row %d, want %d", got, wheelRows)
	}
}

func TestTheMouseIsReleasedAndTakenBack(t *testing.T) {
	m := opened(t, 120, 36)
	if m.View().MouseMode == tea.MouseModeNone {
		t.Error("the mouse is off at the start")
	}
	drive(m, "m")
	if m.View().MouseMode != tea.MouseModeNone {
		t.Error("m did not release the mouse")
	}
}

func TestTheWheelScrollsTheDialogAboveThePanels(t *testing.T) {
	m := opened(t, 120, 36)
	drive(m, "?")
	m.Update(tea.MouseWheelMsg{X: 60, Y: 10, Button: tea.MouseWheelDown})
	if f := frame(m); strings.Contains(f, "at the bench") || !strings.Contains(f, "go to the first cell of the row") {
		t.Errorf("one notch down shows:\n%s", f)
	}
}
