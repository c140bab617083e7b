package screen

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestTextStaysInsideItsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(0, 12).Draw(t, "w"), rapid.IntRange(0, 4).Draw(t, "h")
		s := New(w, h)
		a := s.Area().Cut(rapid.IntRange(-2, 5).Draw(t, "x"), rapid.IntRange(-2, 3).Draw(t, "y"), rapid.IntRange(0, 9).Draw(t, "cw"), 2)
		for range 4 {
			a.Text(rapid.IntRange(-3, 9).Draw(t, "tx"), rapid.IntRange(-1, 3).Draw(t, "ty"), rapid.String().Draw(t, "text"), Style{Attr: Bold})
		}
		lines := strings.Split(s.String(), "\n")
		if h > 0 && len(lines) != h {
			t.Fatalf("%d lines on a screen of %d", len(lines), h)
		}
		for _, l := range lines {
			if got := ansi.StringWidth(l); got > w {
				t.Fatalf("line %q is %d wide on a screen of %d", l, got, w)
			}
		}
	})
}

// The terminal's cursor stands where it was put last, on the whole screen's count, and never outside the area that put it.
func TestTheCursorStandsWhereItWasPutLast(t *testing.T) {
	s := New(20, 5)
	if at, ok := s.Cursor(); ok {
		t.Errorf("a screen nobody put it on has it at %v", at)
	}
	a := s.Area().Cut(3, 1, 10, 2)
	a.Focus(4, 1)
	if at, ok := s.Cursor(); !ok || at.X != 7 || at.Y != 2 || at.Typing {
		t.Errorf("it stands at %v, %v", at, ok)
	}
	a.Type(0, 0)
	for _, out := range [][2]int{{-1, 0}, {10, 0}, {0, 2}, {0, -1}} {
		a.Focus(out[0], out[1])
	}
	if at, _ := s.Cursor(); at.X != 3 || at.Y != 1 || !at.Typing {
		t.Errorf("outside its area it went to %v", at)
	}
}

func TestHostileTextNeverReachesTheTerminal(t *testing.T) {
	s := New(40, 1)
	s.Area().Text(0, 0, "a\x1b]52;c;aGk=\x07b\u009bc\u202ed\re\tf", Style{})
	got := s.String()
	for _, bad := range []string{"\x1b", "\x07", "\u009b", "\u202e", "\r", "\t"} {
		if strings.Contains(got, bad) {
			t.Errorf("%q holds %q", got, bad)
		}
	}
}

func TestOverwritingHalfAWideGlyphBlanksTheOtherHalf(t *testing.T) {
	s := New(4, 1)
	s.Area().Text(0, 0, "漢字", Style{})
	s.Area().Text(1, 0, "x", Style{})
	if got := s.String(); got != " x字" {
		t.Errorf("got %q, want %q", got, " x字")
	}
}

func TestClipEndsInAnEllipsisAndFits(t *testing.T) {
	for _, c := range []struct {
		text string
		w    int
		want string
	}{
		{"buttercup", 9, "buttercup"},
		{"buttercup", 5, "butt…"},
		{"漢字漢字", 4, "漢…"},
		{"x", 0, ""},
	} {
		if got := Clip(c.text, c.w); got != c.want {
			t.Errorf("Clip(%q, %d) = %q, want %q", c.text, c.w, got, c.want)
		}
	}
}

func TestWrapKeepsEveryWordAndFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`([a-zäé漢]{1,9} ){0,8}`).Draw(t, "text")
		w := rapid.IntRange(2, 20).Draw(t, "w")
		lines := Wrap(text, w)
		for _, l := range lines {
			if Width(l) > w {
				t.Fatalf("line %q is wider than %d", l, w)
			}
		}
		flat := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
		if want := strings.ReplaceAll(text, " ", ""); flat != want {
			t.Fatalf("wrapping %q lost text: %q", text, flat)
		}
	})
}

func TestHexReadsSixDigitsAndNothingElse(t *testing.T) {
	if c, ok := Hex("#5566b0"); !ok || c != RGB(0x55, 0x66, 0xb0) {
		t.Errorf("Hex gave %x, %v", c, ok)
	}
	for _, bad := range []string{"", "5566b0", "#5566b", "#55 6b0", "#gg0000"} {
		if _, ok := Hex(bad); ok {
			t.Errorf("Hex(%q) was read", bad)
		}
	}
}

func TestOnlyWhatChangesInAStyleIsWritten(t *testing.T) {
	red, blue := RGB(200, 30, 7), RGB(0, 0, 255)
	for _, c := range []struct {
		name     string
		from, to Style
		want     string
	}{
		{"text colour", Style{}, Style{Fg: red}, "\x1b[38;2;200;30;7m"},
		{"ground alone", Style{Fg: red, Bg: blue}, Style{Fg: red, Bg: red}, "\x1b[48;2;200;30;7m"},
		{"both", Style{Fg: red, Bg: blue}, Style{Fg: blue, Bg: red}, "\x1b[38;2;0;0;255;48;2;200;30;7m"},
		{"a colour goes", Style{Fg: red, Bg: blue}, Style{Fg: red}, "\x1b[0;38;2;200;30;7m"},
		{"an attribute comes", Style{Fg: red}, Style{Fg: red, Attr: Bold}, "\x1b[0;1;38;2;200;30;7m"},
		{"all goes", Style{Fg: red, Attr: Reverse}, Style{}, "\x1b[0m"},
		{"basic colours", Style{}, Style{Fg: Index(3), Bg: Index(12)}, "\x1b[33;104m"},
		{"palette colours", Style{}, Style{Fg: Index(230), Bg: Index(16)}, "\x1b[38;5;230;48;5;16m"},
	} {
		if got := string(c.to.sgr(nil, c.from)); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestAnAmountIsNotTornFromItsUnit(t *testing.T) {
	if got := Wrap("poppy 93.3 g (far left), 20 s", 12); strings.Join(got, "|") != "poppy 93.3 g|(far left),|20 s" {
		t.Errorf("wrapped %q", got)
	}
	if got := Wrap("poppy 93.3 g", 11); strings.Join(got, "|") != "poppy|93.3 g" {
		t.Errorf("wrapped %q", got)
	}
	if got := Wrap("1234 mL", 5); strings.Join(got, "|") != "1234|mL" {
		t.Errorf("where both do not fit: %q", got)
	}
}

func TestASizeThatCannotBeTrueIsCut(t *testing.T) {
	for _, c := range [][4]int{{80, 24, 80, 24}, {0, 0, 0, 0}, {-1, 5, 0, 5}, {5000, 5000, MaxW, MaxH}, {MaxW, 1 << 40, MaxW, MaxH}} {
		if w, h := Fit(c[0], c[1]); w != c[2] || h != c[3] {
			t.Errorf("%d × %d is drawn as %d × %d, want %d × %d", c[0], c[1], w, h, c[2], c[3])
		}
	}
}
