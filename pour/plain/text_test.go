package plain_test

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pourbench/pour/plain"
)

func TestLineKeepsWhatPeopleWrite(t *testing.T) {
	for _, s := range []string{
		"Alpine Meadow", "Bärbels Seife, 5 % Überfettung", "savon à l’huile", "мыло", "石鹸", "صابون", "e\u0301tude",
		"🌼 meadow", "👩\u200d🔬 lab", "❤\ufe0f", "👍🏽", "36 °C · ½ bar", "a\ufffdb",
	} {
		if got := plain.Line(s); got != s {
			t.Errorf("Line(%q) = %q, want it unchanged", s, got)
		}
	}
}

func TestLineDropsWhatATerminalObeys(t *testing.T) {
	for _, c := range []struct{ what, in, want string }{
		{"an escape sequence", "\x1b[31mred\x1b[0m", "red"},
		{"a title sequence with its bell", "\x1b]0;owned\x07ok", "ok"},
		{"the one-byte escape of C1", "\u009b31mred", "red"},
		{"a lone C1 byte, which is no UTF-8", "a\x9bb", "ab"},
		{"null and backspace", "a\x00b\x08c\x7f", "abc"},
		{"direction override", "user\u202etxt.exe\u202c", "usertxt.exe"},
		{"direction isolates and marks", "\u2066a\u2069\u200eb\u200f\u061c", "ab"},
		{"zero-width space and byte order mark", "\ufeffo\u200bli\u2060ve", "olive"},
		{"a joiner between letters", "a\u200db", "ab"},
		{"soft hyphen and tag letters", "so\u00adap\U000e0041", "soap"},
		{"an invisible filler", "x\u3164y", "xy"},
		{"a pile of marks", "z" + strings.Repeat("\u0300", 20), "z\u0300\u0300\u0300"},
		{"a mark with nothing to sit on", "\u0301a", "a"},
		{"a selector on a letter", "a\ufe0f\ufe00", "a"},
		{"line breaks of every kind", "a\nb\r\nc\u2028d\u2029e\u0085f\vg", "a b c d e f g"},
		{"tabs", "a\tb", "a   b"},
		{"odd spaces and the ends", "\u00a0 a\u3000b \n", "a b"},
	} {
		if got := plain.Line(c.in); got != c.want {
			t.Errorf("%s: Line(%q) = %q, want %q", c.what, c.in, got, c.want)
		}
	}
}

func TestTextKeepsItsLines(t *testing.T) {
	got := plain.Text("first\r\nsecond\u2028third\x1b\n\n  \tindented\n")
	if want := "first\nsecond\nthird\n\n    indented\n"; got != want {
		t.Errorf("Text = %q, want %q", got, want)
	}
}

func FuzzCleanTextIsSafeAndSettled(f *testing.F) {
	for _, s := range []string{"", "a\tb", "\x1b[2J", "❤\ufe0f\u200d🔥", "\u202e\u0301\u200d", "\xff\xfe", "👩\u200d\u200d🔬", "❤\u200d\x9f0"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		line, text := plain.Line(s), plain.Text(s)
		for _, got := range []string{line, strings.ReplaceAll(text, "\n", "")} {
			if !utf8.ValidString(got) {
				t.Fatalf("%q is no UTF-8", got)
			}
			for _, r := range got {
				if r != '\u200d' && !unicode.IsGraphic(r) || unicode.Is(unicode.Bidi_Control, r) {
					t.Fatalf("%q from %q keeps %U", got, s, r)
				}
			}
		}
		if again := plain.Line(line); again != line {
			t.Fatalf("Line(%q) = %q, and again %q", s, line, again)
		}
		if again := plain.Text(text); again != text {
			t.Fatalf("Text(%q) = %q, and again %q", s, text, again)
		}
	})
}
