package entry

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"pourbench/tui/screen"
)

// pressed is the key press of that name.
func pressed(name string) tea.KeyPressMsg {
	codes := map[string]tea.KeyPressMsg{
		"left": {Code: tea.KeyLeft}, "right": {Code: tea.KeyRight}, "home": {Code: tea.KeyHome}, "end": {Code: tea.KeyEnd},
		"backspace": {Code: tea.KeyBackspace}, "delete": {Code: tea.KeyDelete},
		"ctrl+u": {Code: 'u', Mod: tea.ModCtrl}, "ctrl+k": {Code: 'k', Mod: tea.ModCtrl}, "ctrl+w": {Code: 'w', Mod: tea.ModCtrl},
	}
	return codes[name]
}

func TestTypingInTheMiddleKeepsBothEnds(t *testing.T) {
	e := New("fern leaf")
	e.Press(pressed("home"))
	e.Press(pressed("delete"))
	e.Insert("F")
	e.Press(pressed("end"))
	e.Press(pressed("ctrl+w"))
	e.Insert("漢 tip")
	if got, want := e.Text(), "Fern 漢 tip"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestTheFirstDigitTakesThePlaceOfAFigure(t *testing.T) {
	for _, c := range []struct{ press, typed, want string }{{"", "1", "1"}, {"end", "1", "251"}, {"backspace", "1", "21"}, {"", "", "25"}} {
		e := Over("25")
		if c.press != "" {
			e.Press(pressed(c.press))
		}
		e.Insert(c.typed)
		if e.Text() != c.want {
			t.Errorf("25, then %q and %q: got %q, want %q", c.press, c.typed, e.Text(), c.want)
		}
	}
}

func TestControlCharactersAreNeverTyped(t *testing.T) {
	e := New("a\x1b]0;x\x07\nb\u202ec\u009bd")
	if got, want := e.Text(), "a]0;x bcd"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestTheCursorIsAlwaysInsideTheWindow(t *testing.T) {
	keys := []string{"left", "right", "home", "end", "backspace", "delete", "ctrl+u", "ctrl+k", "ctrl+w"}
	rapid.Check(t, func(t *rapid.T) {
		e := New(rapid.String().Draw(t, "text"))
		for range rapid.IntRange(0, 12).Draw(t, "n") {
			e.Press(pressed(rapid.SampledFrom(keys).Draw(t, "key")))
			e.Insert(rapid.SampledFrom([]string{"", "é", "漢", "x"}).Draw(t, "typed"))
		}
		w := rapid.IntRange(2, 20).Draw(t, "w")
		text, cursor := e.Window(w)
		if cursor < 0 || cursor >= w || screen.Width(text) > w {
			t.Fatalf("window %q of %d with the cursor at %d", text, w, cursor)
		}
	})
}

func TestTheWindowScrollsByCellsNotByLetters(t *testing.T) {
	for _, c := range []struct {
		text, keys string
		w          int
		want       string
		cursor     int
	}{
		{"gentian", "", 20, "gentian", 7},
		{"gentian", "", 5, "tian", 4},      // the cursor stands behind the text and needs a cell
		{"gentian", "home", 5, "genti", 0}, //
		{"gentian", "home right right", 5, "genti", 2},
		{"漢字漢字", "", 5, "漢字", 4}, // each is two cells wide
		{"漢字漢字", "", 4, "字", 2},
		{"漢字漢字", "home", 3, "漢", 0},
		{"gentian", "", 0, "", 0},
		{"", "", 3, "", 0},
	} {
		e := New(c.text)
		for _, k := range strings.Fields(c.keys) {
			e.Press(pressed(k))
		}
		if got, cursor := e.Window(c.w); got != c.want || cursor != c.cursor {
			t.Errorf("%q after %q in %d cells: %q with the cursor at %d, want %q at %d", c.text, c.keys, c.w, got, cursor, c.want, c.cursor)
		}
	}
}

func TestTheCursorIsDrawnAsAReversedCell(t *testing.T) {
	s := screen.New(12, 1)
	e := New("fern")
	e.Press(pressed("left"))
	e.Draw(s.Area(), 2, 0, 8, screen.Style{Attr: screen.Underline})
	text := s.String()
	if got := ansi.Strip(text); !strings.HasPrefix(got, "  fern") {
		t.Errorf("drawn %q", got)
	}
	before, after, ok := strings.Cut(text, "7m")
	if !ok || !strings.HasSuffix(ansi.Strip(before+"7m"), "fer") || !strings.HasPrefix(after, "n") {
		t.Errorf("the cell of the n is not reversed: %q", text)
	}
}

func TestWhatStoodOnTwoLinesIsNeverJoined(t *testing.T) {
	for pasted, want := range map[string]string{
		"38\n15": "38 15", "38\r\n15": "38 15", "olive\roil": "olive oil", "olive\u2028oil": "olive oil", "olive\toil": "olive oil", "a\vb\fc\u0085d\u2029e": "a b c d e",
		"ol\x1bive\x00": "olive",
	} {
		if got := New(pasted).Text(); got != want {
			t.Errorf("%q becomes %q, want %q", pasted, got, want)
		}
	}
}

func TestOnlyEditingKeysAreTaken(t *testing.T) {
	e := New("fern leaf")
	for name, want := range map[string]bool{"left": true, "home": true, "ctrl+k": true, "tab": false, "": false} {
		if got := e.Press(pressed(name)); got != want {
			t.Errorf("%q is taken: %v", name, got)
		}
	}
	var zero Entry
	if zero.Text() != "" {
		t.Errorf("nothing typed is %q", zero.Text())
	}
	zero.Insert("a")
	zero.Insert("b")
	if zero.Text() != "ab" {
		t.Errorf("typed into nothing: %q", zero.Text())
	}
}
