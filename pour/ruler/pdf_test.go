package ruler_test

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/ruler"
	"pourbench/pour/vector/vectortest"
)

// e1 is the first worked example of the cuts: 250 mm in bars of 25, a wire of 0.6, what is left to both trims.
func e1() ruler.Ruler {
	e := ruler.Edge{Along: "along the loaf", EndA: "end A", LengthMM: 250, Cuts: []float64{9.8, 35.4, 61.0, 86.6, 112.2, 137.8, 163.4, 189.0, 214.6, 240.2}}
	for _, mm := range []float64{22.6, 48.2, 73.8, 99.4, 125.0, 150.6, 176.2, 201.8, 227.4} {
		e.Centres = append(e.Centres, ruler.Centre{Name: "moon", MM: mm})
	}
	e.Spans = append(e.Spans, ruler.Span{Kind: ruler.Trim, To: 9.5}, ruler.Span{Kind: ruler.Trim, From: 240.5, To: 250})
	for i := range 9 {
		e.Spans = append(e.Spans, ruler.Span{Number: i + 1, From: e.Cuts[i] + 0.3, To: e.Cuts[i+1] - 0.3})
	}
	return ruler.Ruler{Plan: "Meadow", KerfMM: 0.6, Edges: []ruler.Edge{e}}
}

// metre is a loaf of 1000 mm with a cut every 26.
func metre() ruler.Ruler {
	e := ruler.Edge{Along: "along the loaf", EndA: "end A", LengthMM: 1000}
	for mm := 6.3; mm < 1000; mm += 26 {
		e.Cuts = append(e.Cuts, mm)
		if mm+13 < 1000 {
			e.Centres = append(e.Centres, ruler.Centre{Name: "moon", MM: mm + 13})
		}
	}
	return ruler.Ruler{Plan: "Long (one) metre \\ мыло", KerfMM: 0.6, Edges: []ruler.Edge{e}}
}

func pdfOf(t *testing.T, r ruler.Ruler, p ruler.Paper) []vectortest.Page {
	t.Helper()
	var b bytes.Buffer
	if err := r.PDF(&b, p); err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("POURBENCH_LOOK"); dir != "" {
		_ = os.WriteFile(dir+"/"+strings.ReplaceAll(t.Name(), "/", "-")+p.Name+".pdf", b.Bytes(), 0o600)
	}
	pages, catalog := vectortest.ReadPDF(t, b.Bytes())
	if !strings.Contains(catalog, "/ViewerPreferences << /PrintScaling /None >>") {
		t.Errorf("the catalog does not ask for printing without scaling: %s", catalog)
	}
	return pages
}

func TestThePagesAreThePapers(t *testing.T) {
	for _, p := range ruler.Papers() {
		got := pdfOf(t, e1(), p)[0]
		if math.Abs(got.Wide-p.Wide) > 0.002 || math.Abs(got.High-p.High) > 0.002 {
			t.Errorf("%s is %g by %g mm", p.Name, got.Wide, got.High)
		}
		for _, l := range got.Lines {
			for _, x := range []float64{l.X1, l.X2} {
				if x < 9.99 || x > p.Wide-9.99 {
					t.Errorf("%s: a line runs into the margin at %g", p.Name, x)
				}
			}
			for _, y := range []float64{l.Y1, l.Y2} {
				if y < 9.99 || y > p.High-9.99 {
					t.Errorf("%s: a line runs into the margin at height %g", p.Name, y)
				}
			}
		}
	}
}

func TestEverySheetHasABarOf100MM(t *testing.T) {
	for _, p := range ruler.Papers() {
		for i, page := range pdfOf(t, metre(), p) {
			found := 0
			for _, l := range page.Lines {
				if l.Y1 == l.Y2 && math.Abs(math.Hypot(l.X2-l.X1, l.Y2-l.Y1)-100) < 0.0005 {
					found++
				}
			}
			if found != 1 {
				t.Errorf("%s, sheet %d: %d lines are 100.000 mm long", p.Name, i+1, found)
			}
		}
	}
}

// standing is every upright line at least so high whose lower end stands at foot, by its distance from the margin of 10.
func standing(p vectortest.Page, foot, high, thick float64) (out []float64) {
	for _, l := range p.Lines {
		if l.X1 == l.X2 && math.Abs(math.Max(l.Y1, l.Y2)-foot) < 0.02 && math.Abs(l.Y1-l.Y2) > high && math.Abs(l.Thick-thick) < 0.01 {
			out = append(out, l.X1-10)
		}
	}
	return out
}

// tips is where the lowest corners of the four-cornered signs point.
func tips(p vectortest.Page, left float64) (out []float64) {
	for _, f := range p.Fills {
		low := f[0]
		for _, at := range f {
			if at[1] > low[1] {
				low = at
			}
		}
		if len(f) >= 5 { // a path comes back to its first corner
			out = append(out, low[0]-left)
		}
	}
	return out
}

func TestEveryMarkStandsAtItsDistance(t *testing.T) {
	r := e1()
	page := pdfOf(t, r, ruler.Papers()[0])[0]
	const foot = 96 // of the first strip
	near(t, "cuts", standing(page, foot, 20, 0.35), r.Edges[0].Cuts)
	near(t, "ends", standing(page, foot, 20, 0.2), []float64{0, 250})
	var centres []float64
	for _, c := range r.Edges[0].Centres {
		centres = append(centres, c.MM)
	}
	near(t, "middles", tips(page, 10), centres)
	for _, want := range []string{"1: 9.8", "10: 240.2", "22.6", "Meadow: ruler", "trim", "other end", "sheet 1 of 1"} {
		page.Says(t, want)
	}
	page.Says(t, "This bar is 100 mm: measure it.")
	page.Says(t, "Print at 100 %")
	page.Says(t, "one cut takes 0.6 mm")
	page.Says(t, "end A here")
}

// The same ruler beside inches of 25.4 mm: 9.8 mm is 0.386 in, 240.2 is 9.457, 22.6 is 0.890. Its marks stand where they stood, its ticks half an inch apart.
func TestARulerInInchesSaysInchesAtTheSamePlaces(t *testing.T) {
	r := e1()
	r.Show = pour.Avoirdupois()
	on, err := r.PaperOf("")
	if err != nil || on.Name != "letter" {
		t.Fatalf("it is printed on %+v: %v", on, err)
	}
	page := pdfOf(t, r, on)[0]
	near(t, "cuts", standing(page, 96, 20, 0.35), r.Edges[0].Cuts)
	var half []float64
	for i := range 20 {
		half = append(half, float64(i)*12.7)
	}
	near(t, "ticks", standing(page, 96, 1.5, 0.1), half)
	for _, want := range []string{"1: 0.39", "10: 9.46", "0.89", "All in inches", "one cut takes 0.0236 in", "100 mm, 3.94 in"} {
		page.Says(t, want)
	}
}

func near(t *testing.T, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d are drawn, %d there: %v, %v", what, len(got), len(want), got, want)
		return
	}
	for i := range want {
		if math.Abs(got[i]-want[i]) > 0.01 {
			t.Errorf("%s: %.4f is drawn for %g", what, got[i], want[i])
		}
	}
}

// A metre is four strips of 245 new mm each (worked out in shape); every mark lies on all strips that hold it, at one distance from end A.
func TestStripsOfALongLoafFitTogether(t *testing.T) {
	r := metre()
	pages := pdfOf(t, r, ruler.Papers()[0])
	from, to := []float64{0, 245, 490, 735}, []float64{265, 510, 755, 1000}
	for i := range from {
		page, foot := pages[i/3], 96+50*float64(i%3)
		var want, crosses []float64
		for _, mm := range r.Edges[0].Cuts {
			if mm >= from[i] && mm <= to[i] {
				want = append(want, mm-from[i])
			}
		}
		near(t, "cuts", standing(page, foot, 20, 0.35), want)
		for _, l := range page.Lines {
			if l.Y1 == l.Y2 && math.Abs(math.Abs(l.X2-l.X1)-5) < 0.02 && l.Y1 < foot && l.Y1 > foot-50 {
				crosses = append(crosses, (l.X1+l.X2)/2-10+from[i])
			}
		}
		joints := []float64{255, 500, 745}
		var due []float64
		for _, at := range joints[max(0, i-1):min(3, i+1)] {
			due = append(due, at, at)
		}
		near(t, "crosses", crosses, due)
	}
	if len(pages) != 2 {
		t.Errorf("four strips stand on %d sheets", len(pages))
	}
	pages[1].Says(t, "strip 4 of 4, 735 to 1000 mm.")
	pages[0].Says(t, "Long (one) metre \\ мыло: ruler")
}

// e2 is the second worked example, with a sample slice of 5 mm between two cuts that stand 5.6 apart, and a second kind of embed.
func e2() ruler.Ruler {
	e := ruler.Edge{Along: "along the loaf", EndA: "end A", LengthMM: 250}
	e.Cuts = []float64{3.3, 8.9, 35.3222, 61.7444, 88.1667, 114.5889, 141.0111, 167.4333, 193.8556, 220.2778, 246.7}
	e.Spans = []ruler.Span{{Kind: ruler.Trim, To: 3}, {Kind: ruler.Trim, From: 247, To: 250}, {Kind: ruler.Slice, From: 3.6, To: 8.6}}
	for i := range 9 {
		mm := 9.2 + 25.82222/2 + float64(i)*26.42222
		e.Spans = append(e.Spans, ruler.Span{Number: i + 1, From: mm - 12.911, To: mm + 12.911})
		e.Centres = append(e.Centres, ruler.Centre{Name: "moon", MM: mm - 6}, ruler.Centre{Name: "star", MM: mm + 5})
	}
	return ruler.Ruler{Plan: "Meadow", Day: "2026-12-01", KerfMM: 0.6, Edges: []ruler.Edge{e}}
}

func TestWordsOfCutsAndMiddlesDoNotRunIntoEachOther(t *testing.T) {
	page := pdfOf(t, e2(), ruler.Papers()[0])[0]
	var marks []vectortest.Text
	for _, l := range page.Texts {
		if l.Y > 50 && l.Y < 96 && !strings.Contains(l.Text, " along") && strings.ContainsAny(l.Text, "0123456789") {
			marks = append(marks, l)
		}
	}
	if len(marks) < 11+18 {
		t.Fatalf("only %d words were looked at", len(marks))
	}
	for i, a := range marks {
		for _, b := range marks[i+1:] {
			if wide := 0.5 * 2.8 * float64(len(a.Text)); math.Abs(a.Y-b.Y) < 2.8 && b.X > a.X && b.X < a.X+wide {
				t.Errorf("%q at %.1f runs into %q at %.1f", a.Text, a.X, b.Text, b.X)
			}
		}
	}
	page.Says(t, "a: moon, b: star")
	page.Says(t, "a 16.1")
	page.Says(t, "poured 2026-12-01")
}

func TestTheSamePlanGivesTheSameFile(t *testing.T) {
	var a, b bytes.Buffer
	if err := e1().PDF(&a, ruler.Papers()[0]); err != nil {
		t.Fatal(err)
	}
	if err := e1().PDF(&b, ruler.Papers()[0]); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two prints of one ruler differ")
	}
}

func TestNothingToLayARulerAlongIsSaid(t *testing.T) {
	var b bytes.Buffer
	if err := (ruler.Ruler{Plan: "Meadow"}).PDF(&b, ruler.Papers()[0]); err == nil || b.Len() > 0 {
		t.Errorf("a PDF of nothing: %v, %d bytes", err, b.Len())
	}
	if err := (ruler.Ruler{Plan: "Meadow"}).SVG(&b); err == nil || b.Len() > 0 {
		t.Errorf("an SVG of nothing: %v, %d bytes", err, b.Len())
	}
}
