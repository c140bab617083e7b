package tui

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// hand presses keys as a maker does and counts them.
type hand struct {
	*model
	keys int
}

func (h *hand) press(names string) {
	h.keys += len(strings.Fields(names))
	drive(h.model, names)
}

func (h *hand) write(text string) {
	h.keys += len(text)
	typeText(h.model, text)
}

// fromNewPlanToBenchPaper enters a recipe of seven oils, four jugs and two scents and prints its paper.
func fromNewPlanToBenchPaper(t testing.TB, dir string) *hand {
	h := &hand{model: opened(t, 80, 24)}
	h.press("n enter") // the loaf of ten bars
	for _, answer := range []string{"drop", "gold mica", "rose mica", "blue mica", "", "lavender", "alp rose", "", ""} {
		h.write(answer)
		h.press("enter")
	}
	h.write("Hay Day")
	h.press("enter f3")
	for _, percent := range []string{"35", "25", "15", "5", "6"} {
		h.write(percent)
		h.press("enter")
	}
	for _, oil := range [][2]string{{"cocoa butter", "8"}, {"rice bran", "6"}} {
		h.press("a")
		h.write(oil[0])
		h.press("enter")
		h.write(oil[1])
		h.press("enter")
	}
	h.file.path = filepath.Join(dir, "plan.toml") // so that the paper is written there; the path costs no key
	h.press("x b enter")
	return h
}

func TestARecipeGoesFromNewPlanToBenchPaper(t *testing.T) {
	dir := t.TempDir()
	h := fromNewPlanToBenchPaper(t, dir)
	p := h.session.Plan()
	want := map[string]float64{"olive": 35, "coconut": 25, "shea": 15, "sunflower-ho": 5, "castor": 6, "cocoa-butter": 8, "rice-bran": 6}
	for _, o := range p.Base.Oils {
		if math.Abs(o.Percent-want[o.Oil]) > 1e-9 {
			t.Errorf("%s is %g %%, typed was %g", o.Oil, o.Percent, want[o.Oil])
		}
	}
	if len(p.Base.Oils) != 7 || len(p.Base.Jugs) != 4 || len(p.Base.Scents) != 2 || p.Name != "Hay Day" {
		t.Errorf("entered was %q: %+v", p.Name, p.Base)
	}
	papers, err := filepath.Glob(filepath.Join(dir, "hay-day*.txt"))
	if err != nil || len(papers) != 1 {
		t.Fatalf("papers %v, %v: %s", papers, err, h.status.Text())
	}
	text, err := os.ReadFile(papers[0])
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), "page 1 of 2") || !strings.Contains(string(text), "rice bran oil") {
		t.Errorf("the paper is:\n%s", text)
	}
	if h.keys > mostKeys {
		t.Errorf("it takes %d keys", h.keys)
	}
	t.Logf("from a new plan to the bench paper: %d keys", h.keys)
}

// mostKeys is what the recipe may cost: what its words and numbers are spelt with, and a key for each answer.
const mostKeys = 130

// BenchmarkFromNewPlanToBenchPaper measures how long the bench takes over all keys of a recipe, its plan made and its paper written among them.
func BenchmarkFromNewPlanToBenchPaper(b *testing.B) {
	for b.Loop() {
		h := fromNewPlanToBenchPaper(b, b.TempDir())
		b.ReportMetric(float64(h.keys), "keys")
	}
}
