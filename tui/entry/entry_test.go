package entry

import (
	"testing"

	"pgregory.net/rapid"

	"pourbench/tui/screen"
)

func TestTypingInTheMiddleKeepsBothEnds(t *testing.T) {
	e := New("fern leaf")
	e.Press("home")
	e.Press("delete")
	e.Insert("F")
	e.Press("end")
	e.Press("ctrl+w")
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
			e.Press(rapid.SampledFrom(keys).Draw(t, "key"))
			e.Insert(rapid.SampledFrom([]string{"", "é", "漢", "x"}).Draw(t, "typed"))
		}
		w := rapid.IntRange(2, 20).Draw(t, "w")
		text, cursor := e.Window(w)
		if cursor < 0 || cursor >= w || screen.Width(text) > w {
			t.Fatalf("window %q of %d with the cursor at %d", text, w, cursor)
		}
	})
}
