package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// under is the rest of the line that the terminal's cursor stands on, from the cursor on.
func under(m *model) (text string, shape tea.CursorShape) {
	v := m.View()
	if v.Cursor == nil {
		return "", -1
	}
	line := strings.Split(ansi.Strip(v.Content), "\n")[v.Cursor.Y]
	return ansi.TruncateLeft(line, v.Cursor.X, ""), v.Cursor.Shape
}

func TestTheTerminalsCursorStandsWhereTheFocusIsAndWhereTextIsTyped(t *testing.T) {
	m := opened(t, 80, 24)
	for _, c := range []struct {
		keys, under string
		shape       tea.CursorShape
	}{
		{"", "38.0", tea.CursorUnderline},
		{"down", "16.0", tea.CursorUnderline},
		{"4 2", "", tea.CursorBar}, // behind what is typed
		{"left", "2", tea.CursorBar},
		{"esc tab", "pot", tea.CursorUnderline}, // the clock draws itself
		{"f2", "from the shelf", tea.CursorUnderline},
		{"f5", "► The swirl", tea.CursorUnderline}, // a picture has no cell: its title
		{"?", "", tea.CursorBar},                   // the search of the list of keys
		{"esc f4 S", "", tea.CursorBar},
	} {
		drive(m, c.keys)
		got, shape := under(m)
		if shape != c.shape || !strings.HasPrefix(strings.TrimLeft(got, " "), c.under) {
			t.Errorf("after %q the cursor, shape %d, stands on %.20q, want %q", c.keys, shape, got, c.under)
		}
	}
}

func TestOnAScreenWithoutRoomTheCursorIsHidden(t *testing.T) {
	m := opened(t, 30, 8)
	if c := m.View().Cursor; c != nil {
		t.Errorf("it stands at %v", c.Position)
	}
}
