package paper

import (
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/mattn/go-runewidth"
	"pgregory.net/rapid"
)

func TestWrapKeepsEveryWordAndTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zA-Zéüß漢字 ]{0,120}`).Draw(t, "text")
		limit := rapid.IntRange(2, 40).Draw(t, "limit")
		lines := wrap(text, limit)
		for _, l := range lines {
			if w := runewidth.StringWidth(l); w > limit {
				t.Fatalf("%q is %d columns wide, over %d", l, w, limit)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if squeeze(strings.Join(lines, " ")) != squeeze(text) {
			t.Fatalf("%q became %q", text, lines)
		}
	})
}

func TestWrapKeepsANumberWithItsUnit(t *testing.T) {
	got := wrap("from a room at 21 deg C and 100 % full", 19)
	want := []string{"from a room at", "21 deg C and 100 %", "full"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestPlainTurnsTheProgramsOwnSignsIntoASCII(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"36 °C", "36 deg C"},
		{"97 °F", "97 deg F"},
		{"–", "-"},
		{"40 × 30, ± 2 …", "40 x 30, +/- 2 ..."},
		{"Crème brûlée 漢字", "Crème brûlée 漢字"},
		{"two\nlines\tand\x1b[31mred\u202ediov", "two lines and[31mreddiov"},
		{"bad \xff byte", "bad ? byte"},
	} {
		if got := plain(c.in); got != c.want {
			t.Errorf("plain(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

func TestPlainLetsNothingThroughThatMovesAPrintHead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, r := range plain(rapid.String().Draw(t, "text")) {
			if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
				t.Fatalf("%U got through", r)
			}
		}
	})
}

func TestARowWithAnOverlongFigureStaysOnThePaper(t *testing.T) {
	for _, f := range []format{fullFormat(), benchFormat(), largeFormat()} {
		p := &page{format: f, section: 12, item: 99}
		figure := strings.Repeat("9", f.wide-15) + " g"
		p.tick(row{text: "oil that has a name", figure: figure, write: true})
		for line := range strings.Lines(p.text()) {
			if w := runewidth.StringWidth(strings.TrimSuffix(line, "\n")); w > f.wide {
				t.Errorf("%d columns: %s", w, line)
			}
		}
		if !strings.Contains(p.text(), figure) {
			t.Error("the figure was cut")
		}
	}
}
