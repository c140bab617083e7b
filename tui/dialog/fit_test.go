package dialog

import (
	"errors"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// each is one dialog of every kind, with texts of all lengths.
func each() []Dialog {
	nothing := func() tea.Cmd { return nil }
	long := strings.Repeat("a text that is longer than any line 漢字 ", 20)
	var chosen string
	return []Dialog{
		numbered(50), NewPage(long, long), &Page{LeadW: 30, Lines: []Line{{Lead: long, Text: long}, {}}},
		&Question{Title: long, Text: long, Answers: []Answer{{Text: "save", Do: nothing}, {Text: "cancel"}}},
		&Question{Title: "?", At: -1, Answers: []Answer{{Keys: "y", Text: long, Do: nothing}, {Keys: "n", Text: "no"}}},
		&Prompt{Title: long, Text: long, Done: func(string) (tea.Cmd, error) { return nil, nil }},
		&Prompt{Things: []Thing{{Name: long}, {Name: "b"}}, Done: func(string) (tea.Cmd, error) { return nil, nil }},
		oils(&chosen, 30), oils(&chosen, 0),
		padOn("", func(string) (tea.Cmd, error) { return nil, errors.New(long) }), padOn(strings.Repeat(long+"\n", 20), func(string) (tea.Cmd, error) { return nil, nil }),
	}
}

func TestNoDialogLeavesItsScreenWhateverItsSize(t *testing.T) {
	pressed := []string{"up", "down", "left", "right", "tab", "shift+tab", "pgup", "pgdown", "backspace", "a", "e", "space", "漢", "enter", "esc", "y"}
	rapid.Check(t, func(rt *rapid.T) {
		w, h := rapid.IntRange(0, 130).Draw(rt, "w"), rapid.IntRange(0, 40).Draw(rt, "h")
		s := onStage(t, w, h, rapid.SampledFrom(each()).Draw(rt, "dialog"))
		s.Frame.Low = rapid.Bool().Draw(rt, "low")
		for range rapid.IntRange(0, 12).Draw(rt, "n") {
			switch rapid.IntRange(0, 3).Draw(rt, "what") {
			case 0:
				s.click(rapid.IntRange(-2, 140).Draw(rt, "x"), rapid.IntRange(-2, 50).Draw(rt, "y"))
			case 1:
				s.Wheel(tea.MouseWheelMsg{Button: rapid.SampledFrom([]tea.MouseButton{tea.MouseWheelUp, tea.MouseWheelDown, tea.MouseWheelLeft}).Draw(rt, "wheel")})
			default:
				s.press(rapid.SampledFrom(pressed).Draw(rt, "key"))
			}
			fits(rt, s)
		}
		fits(rt, s)
	})
}

// fits draws what is open and looks whether it keeps to the screen and leaves its feet free.
func fits(t *rapid.T, s *stage) {
	scr := screen.New(s.Frame.W, s.Frame.H)
	s.Draw(scr.Area(), look.New(true))
	rows := strings.Split(ansi.Strip(scr.String()), "\n")
	if s.Frame.H > 0 && len(rows) != s.Frame.H {
		t.Fatalf("%d rows on a screen of %d", len(rows), s.Frame.H)
	}
	if text := strings.TrimSpace(strings.Join(rows, "")); s.Top() != nil && s.Frame.W >= 8 && s.Frame.H >= 8 && !strings.HasPrefix(text, "╭") {
		t.Fatalf("the top of the box is cut off: %q", text)
	}
	for y, row := range rows {
		if screen.Width(row) > s.Frame.W {
			t.Fatalf("row %d is %d wide on a screen of %d: %q", y, screen.Width(row), s.Frame.W, row)
		}
		if y >= s.Frame.H-feet && strings.TrimSpace(row) != "" {
			t.Fatalf("row %d belongs to what is said and to the keys: %q", y, row)
		}
	}
}

func TestALowBoxLeavesWhatIsAboveInSight(t *testing.T) {
	q := func() *Question {
		return &Question{Title: "Leave?", Answers: []Answer{{Keys: "y", Text: "Leave."}, {Keys: "n", Text: "Stay."}}}
	}
	s := onStage(t, 80, 24, q())
	if _, y := s.at("Leave?"); y < 4 || y > 10 {
		t.Errorf("a box in the middle stands in row %d", y)
	}
	s.Frame.Low = true
	if _, y := s.at("Leave?"); y != 24-feet-4 {
		t.Errorf("a low box stands in row %d", y)
	}
}
