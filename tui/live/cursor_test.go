package live

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// cursor is the line the terminal's cursor stands on and the cell in it.
func (b *kitchen) cursor() (line string, x int, shape tea.CursorShape) {
	b.Helper()
	v := b.m.View()
	if v.Cursor == nil {
		b.Fatalf("there is no cursor on\n%s", b.frame())
	}
	return strings.Split(ansi.Strip(v.Content), "\n")[v.Cursor.Y], v.Cursor.X, v.Cursor.Shape
}

func TestTheTerminalsCursorStandsAtTheChosenJugAndWhereTextIsTyped(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("3")
	if l, x, shape := b.cursor(); x != 0 || !strings.HasPrefix(l, "►3") || shape != tea.CursorUnderline {
		t.Errorf("a jug is chosen and the cursor stands at %d of %q", x, l)
	}
	b.press("n")
	b.write("hay")
	if l, x, shape := b.cursor(); !strings.HasSuffix(ansi.Truncate(l, x, ""), " hay") || shape != tea.CursorBar {
		t.Errorf("a note is typed and the cursor stands at %d of %q", x, l)
	}
	b.press("esc x down down")
	if l, x, _ := b.cursor(); !strings.HasPrefix(ansi.TruncateLeft(l, x, ""), "► seizes") {
		t.Errorf("an answer is highlighted and the cursor stands at %d of %q", x, l)
	}
}
