package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/vector/vectortest"
)

// fileOf is what a paper writes into a file of a name.
func fileOf(t *testing.T, name, text string, show pour.Show) string {
	t.Helper()
	write, err := For(name, "Alpine Meadow", text, show)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The PDF of a paper holds its text, line for line and sheet for sheet, on the paper of the plan's units.
func TestAPDFHoldsThePaperLineForLine(t *testing.T) {
	sheet, shelf := workedExample(t)
	for name, text := range map[string]string{"bench": Bench(sheet, shelf, false), "large": Bench(sheet, shelf, true), "full": Checklist(sheet, shelf)} {
		if got := fileOf(t, name+".txt", text, sheet.Plan.Show); got != text {
			t.Errorf("%s: the text is written as %q", name, got)
		}
		for length, wide := range map[string]float64{pour.LengthInch: 215.9, "mm": 210} {
			show := sheet.Plan.Show
			show.Length = length
			pages, _ := vectortest.ReadPDF(t, []byte(fileOf(t, name+".PDF", text, show)))
			sheets := strings.Split(text, formFeed)
			if len(pages) != len(sheets) {
				t.Fatalf("%s: %d pages of %d sheets", name, len(pages), len(sheets))
			}
			for i, p := range pages {
				var lines []string
				for l := range strings.SplitSeq(sheets[i], "\n") {
					if l != "" {
						lines = append(lines, l)
					}
				}
				if p.Wide < wide-0.01 || p.Wide > wide+0.01 || len(p.Texts) != len(lines) {
					t.Fatalf("%s, page %d: %.2f mm wide, %d lines of %d", name, i+1, p.Wide, len(p.Texts), len(lines))
				}
				for k, l := range lines {
					if p.Texts[k].Text != l {
						t.Errorf("%s, page %d: %q is %q", name, i+1, l, p.Texts[k].Text)
					}
				}
			}
		}
	}
}
