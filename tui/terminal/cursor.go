package terminal

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/screen"
)

// Cursor is the terminal's own cursor for a screen: a bar where text is typed, a still line under what has the focus, and none where
// nothing has it.
func Cursor(s *screen.Screen) *tea.Cursor {
	at, ok := s.Cursor()
	if !ok {
		return nil
	}
	c := tea.NewCursor(at.X, at.Y)
	c.Shape, c.Blink = tea.CursorUnderline, false
	if at.Typing {
		c.Shape, c.Blink = tea.CursorBar, true
	}
	return c
}
