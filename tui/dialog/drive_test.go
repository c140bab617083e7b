package dialog

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// stage is a screen with dialogs on it, as their owners keep them.
type stage struct {
	testing.TB
	Stack
	refused string
}

// onStage opens dialogs on a screen of a size.
func onStage(t testing.TB, w, h int, open ...Dialog) *stage {
	s := &stage{TB: t, Stack: Stack{Frame: Frame{W: w, H: h, Keys: keys.BuiltIn()}}}
	for _, d := range open {
		s.Open(d)
	}
	return s
}

// key is the message of a key by its name; a name that is none is typed as text.
func key(name string) tea.KeyPressMsg {
	codes := map[string]rune{
		"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "enter": tea.KeyEnter, "esc": tea.KeyEscape,
		"tab": tea.KeyTab, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace,
	}
	if rest, ok := strings.CutPrefix(name, "shift+"); ok {
		return tea.KeyPressMsg{Code: codes[rest], Mod: tea.ModShift}
	}
	if code, ok := codes[name]; ok {
		return tea.KeyPressMsg{Code: code}
	}
	if name == "space" {
		return tea.KeyPressMsg{Code: ' ', Text: " "}
	}
	return tea.KeyPressMsg{Code: []rune(name)[0], Text: name}
}

// press presses keys one after the other, as long as a dialog is open.
func (s *stage) press(names string) {
	for _, name := range strings.Fields(names) {
		if s.Top() != nil {
			s.refused = ""
			s.Press(key(name), s.refuse)
		}
	}
}

func (s *stage) refuse(why string) { s.refused = why }

func (s *stage) click(x, y int) {
	s.refused = ""
	s.Click(tea.MouseClickMsg{X: x, Y: y, Button: tea.MouseLeft}, s.refuse)
}

// rows is the screen as lines of text without styles.
func (s *stage) rows() []string {
	scr := screen.New(s.Frame.W, s.Frame.H)
	s.Draw(scr.Area(), look.New(true))
	return strings.Split(ansi.Strip(scr.String()), "\n")
}

func (s *stage) shows(words ...string) {
	s.Helper()
	text := strings.Join(s.rows(), "\n")
	for _, w := range words {
		if !strings.Contains(text, w) {
			s.Errorf("the screen does not show %q:\n%s", w, text)
		}
	}
}

func (s *stage) hides(words ...string) {
	s.Helper()
	text := strings.Join(s.rows(), "\n")
	for _, w := range words {
		if strings.Contains(text, w) {
			s.Errorf("the screen shows %q:\n%s", w, text)
		}
	}
}

// at is the cell where words start on the screen.
func (s *stage) at(words string) (x, y int) {
	s.Helper()
	for y, row := range s.rows() {
		if before, _, ok := strings.Cut(row, words); ok {
			return screen.Width(before), y
		}
	}
	s.Fatalf("the screen does not show %q:\n%s", words, strings.Join(s.rows(), "\n"))
	return 0, 0
}
