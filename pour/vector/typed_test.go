package vector_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour/vector"
	"pourbench/pour/vector/vectortest"
)

// typed sets a text on A4 and reads it back.
func typed(t *testing.T, text string) []vectortest.Page {
	t.Helper()
	a4, err := vector.PaperOf("a4")
	if err != nil {
		t.Fatal(err)
	}
	file, err := vector.PDF("typed", vector.Typed(text, a4))
	if err != nil {
		t.Fatal(err)
	}
	pages, _ := vectortest.ReadPDF(t, file)
	return pages
}

// By hand, for A4 upright (210 by 297 mm) with 12 mm free on every side: 66 lines of (297 - 24) / 66 mm; the em is that over 1.12, as 80 letters of 1229 /
// 2048 of it, 177.3 mm, have room in 186; they stand in the middle.
func TestATextIsSetAsATypewriterDoes(t *testing.T) {
	ruler := strings.Repeat("1234567890", 8)
	pages := typed(t, "Pot\n"+ruler+"\n\n    1.1 [ ] olive oil\n\fgentian\n")
	if len(pages) != 2 {
		t.Fatalf("%d pages", len(pages))
	}
	line := (297.0 - 24) / 66
	em := line / 1.12
	wide := 80 * 1229.0 / 2048 * em
	left := (210 - wide) / 2
	for i, want := range [][]struct {
		text string
		line float64
	}{{{"Pot", 0}, {ruler, 1}, {"    1.1 [ ] olive oil", 3}}, {{"gentian", 0}}} {
		p := pages[i]
		same(t, "wide", p.Wide, 210)
		same(t, "high", p.High, 297)
		if len(p.Texts) != len(want) {
			t.Fatalf("page %d holds %d lines, not %d", i, len(p.Texts), len(want))
		}
		for k, w := range want {
			if p.Texts[k].Text != w.text {
				t.Errorf("%q is set as %q", w.text, p.Texts[k].Text)
			}
			same(t, "left of "+w.text, p.Texts[k].X, left)
			same(t, "foot of "+w.text, p.Texts[k].Y, 12+line*w.line+em)
			same(t, "em of "+w.text, p.Texts[k].Size, em)
		}
	}
	same(t, "80 letters wide", letters(t).Wide(vector.Mono, ruler, em), wide)
}

// However long its lines and sheets are, a text stays 12 mm off every edge; what is short and narrow is set twice as large.
func TestATextStaysOnThePage(t *testing.T) {
	for name, c := range map[string]struct {
		text  string
		pages int
		em    float64
	}{
		"large":     {strings.Repeat(strings.Repeat("x", 40)+"\n", 33), 1, 2 * (297.0 - 24) / 66 / 1.12},
		"one wider": {strings.Repeat("x", 41), 1, (297.0 - 24) / 66 / 1.12},
		"one lower": {strings.Repeat("x\n", 34), 1, (297.0 - 24) / 66 / 1.12},
		"wide":      {strings.Repeat("x", 120), 1, 186 / 120.0 * 2048 / 1229},
		"long":      {strings.Repeat("x\n", 140), 3, (297.0 - 24) / 66 / 1.12},
	} {
		pages := typed(t, c.text)
		if len(pages) != c.pages {
			t.Errorf("%s: %d pages", name, len(pages))
		}
		n := 0
		for _, p := range pages {
			for _, text := range p.Texts {
				n++
				right := text.X + letters(t).Wide(vector.Mono, text.Text, text.Size)
				if text.X < 11.99 || right > 198.01 || text.Y > 285.01 || text.Y-text.Size < 11.99 {
					t.Errorf("%s: %q from %.2f to %.2f at %.2f", name, text.Text, text.X, right, text.Y)
				}
				if math.Abs(text.Size-c.em) > 0.01 {
					t.Errorf("%s: an em of %.3f, not %.3f", name, text.Size, c.em)
				}
			}
		}
		if want := strings.Count(strings.TrimRight(c.text, "\n"), "\n") + 1; n != want {
			t.Errorf("%s: %d lines of %d", name, n, want)
		}
	}
}
