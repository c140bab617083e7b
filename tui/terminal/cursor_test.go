package terminal

import (
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/screen"
)

func TestTheCursorIsABarWhereTextIsTypedAndALineUnderTheFocus(t *testing.T) {
	s := screen.New(9, 4)
	if c := Cursor(s); c != nil {
		t.Errorf("a cursor at %v that nobody put there", c.Position)
	}
	s.Area().Focus(5, 2)
	if c := Cursor(s); c == nil || c.X != 5 || c.Y != 2 || c.Shape != tea.CursorUnderline || c.Blink {
		t.Errorf("at the focus: %+v", c)
	}
	s.Area().Type(1, 3)
	if c := Cursor(s); c == nil || c.X != 1 || c.Y != 3 || c.Shape != tea.CursorBar || !c.Blink {
		t.Errorf("where text is typed: %+v", c)
	}
}
