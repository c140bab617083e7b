package panel

import (
	"strings"
	"testing"

	"pourbench/pour"
)

func TestWithoutColourTheMixesAndTheColourantsAreWords(t *testing.T) {
	f := worked(t, meadow, nil)
	f.Colourless = true
	g := f.pairGrid()
	if len(g.Rows) == 0 {
		t.Fatal("no jugs touch")
	}
	for _, r := range g.Rows {
		if hint := r.Cells[pairJugs].Hint; !strings.HasSuffix(hint, ": their equal mix looks "+r.Cells[pairMixed].Text) {
			t.Errorf("the status line says %q", hint) // where the word is clipped
		}
		if c := r.Cells[pairMixed]; c.Text == "" || len(c.Swatches) > 0 {
			t.Errorf("%s mixed is shown as %q and %d samples", r.Cells[pairJugs].Text, c.Text, len(c.Swatches))
		}
	}
	f.Colourless = false
	if c := f.pairGrid().Rows[0].Cells[pairMixed]; c.Text != "" || len(c.Swatches) != 5 {
		t.Errorf("in colour it is %q and %d samples", c.Text, len(c.Swatches))
	}
	it := f.colourantItem(pour.Colourant{Name: "sky", Class: "mineral", Colour: "#0000ff"}) // pure blue, whatever the bounds between words
	if !strings.Contains(it.Aside, "blue") || !strings.Contains(it.Aside, "mineral") {
		t.Errorf("the list says %q", it.Aside)
	}
	if it := f.colourantItem(pour.Colourant{Name: "sky", Class: "mineral"}); it.Aside != "mineral" {
		t.Errorf("of a colourant without a colour the list says %q", it.Aside)
	}
}

// The status line says which mixtures it shows: of a pale jug beside a strong one those of its line.
func TestAPairSaysWhichMixturesItShows(t *testing.T) {
	f := worked(t, meadow, nil)
	p := pour.Pair{Parts: [3]float64{0.05, 0.15, 0.5}, Swatches: [3]string{"#c0b0a0", "#a0b090", "#70a070"}}
	if got := f.mixes(p); !strings.Contains(got, "5, 15 and 50 %") {
		t.Errorf("in colour: %q", got)
	}
	f.Colourless = true
	if got := f.mixes(p); !strings.Contains(got, "where they meet") {
		t.Errorf("in words: %q", got)
	}
}
