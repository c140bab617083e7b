package entry

import (
	"testing"

	tea "charm.land/bubbletea/v2"
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

func TestControlCharactersAreNeverTyped(t *testing.T) {
	e := New("a\x1b]0;x\x07\nb\u202ec\u009bd")
	if got, want := e.Text(), "a]0;xbcd"; got != want {
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
