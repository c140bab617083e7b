package sticker_test

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"pourbench/pour/sticker"
	"pourbench/pour/vector"
	"pourbench/pour/vector/vectortest"
)

// stands is whether a page has a line from one point to another.
func stands(p vectortest.Page, x1, y1, x2, y2 float64) bool {
	for _, l := range p.Lines {
		a := math.Max(math.Hypot(l.X1-x1, l.Y1-y1), math.Hypot(l.X2-x2, l.Y2-y2))
		b := math.Max(math.Hypot(l.X2-x1, l.Y2-y1), math.Hypot(l.X1-x2, l.Y1-y2))
		if math.Min(a, b) < 0.02 {
			return true
		}
	}
	return false
}

// 24 labels of 60 by 30, 4 apart: upright A4 has room for 3 columns (188 of 190 mm) and, over the line to measure, 8 rows (268 of 270); Letter,
// 195.9 by 252.4, for 3 by 7, so that 24 take two sheets.
func TestLabelsStandOnASheetAtTrueScale(t *testing.T) {
	for _, paper := range sticker.Papers() {
		l := plain(t, "eu", 60, 30, 100)
		l.Title = "M"
		pages, catalog := vectortest.ReadPDF(t, written(t, l, ".pdf", sticker.Print{Paper: paper, Count: 24}))
		sheets := map[string]int{"a4": 1, "letter": 2}[paper.Name]
		if len(pages) != sheets || !bytes.Contains([]byte(catalog), []byte("/PrintScaling /None")) {
			t.Fatalf("%s: %d sheets; %s", paper.Name, len(pages), catalog)
		}
		all := 0
		for i, page := range pages {
			near(t, paper.Name+" wide", page.Wide, paper.High)
			near(t, paper.Name+" high", page.High, paper.Wide)
			page.Says(t, "check the current text, ask locally")
			page.Says(t, fmt.Sprintf("Sheet %d of %d", i+1, sheets))
			if !stands(page, 10, paper.Wide-10, 60, paper.Wide-10) {
				t.Errorf("%s: no line of 50 mm to measure", paper.Name)
			}
			all += sheetOf(t, page)
		}
		if all != 24 {
			t.Errorf("%s: %d labels", paper.Name, all)
		}
	}
}

// sheetOf counts the labels of a sheet of labels of 60 by 30 and measures their crop marks: none stands nearer to another than 4 mm, and none in
// the margins.
func sheetOf(t *testing.T, page vectortest.Page) int {
	t.Helper()
	var corners [][2]float64
	for _, w := range page.Texts {
		if w.Text == "M" {
			em := w.Size
			corners = append(corners, [2]float64{w.X - 3, w.Y - 0.8*em - 3})
		}
	}
	for i, c := range corners {
		x, y := c[0], c[1]
		if x < 9.98 || y < 9.98 || x+60 > page.Wide-9.98 || y+30 > page.High-16.98 {
			t.Errorf("a label stands at %.2f %.2f", x, y)
		}
		for _, edge := range []float64{x, x + 60} {
			if !stands(page, edge, y-0.8, edge, y-2) || !stands(page, edge, y+30.8, edge, y+32) {
				t.Errorf("label %d has no crop marks at %.2f", i, edge)
			}
		}
		for _, edge := range []float64{y, y + 30} {
			if !stands(page, x-0.8, edge, x-2, edge) || !stands(page, x+60.8, edge, x+62, edge) {
				t.Errorf("label %d has no crop marks at height %.2f", i, edge)
			}
		}
		for _, o := range corners[i+1:] {
			if math.Abs(o[0]-x) < 63.98 && math.Abs(o[1]-y) < 33.98 {
				t.Errorf("labels at %v and %v stand too near", c, o)
			}
		}
	}
	return len(corners)
}

func TestASheetHoldsAsManyAsItCan(t *testing.T) {
	for _, c := range []struct {
		wide, high float64
		p          sticker.Print
		want       int
	}{
		{80, 55, sticker.Print{}, 9},                          // lying: 3 columns of 84 in 281, 3 rows of 59 in 187
		{60, 30, sticker.Print{}, 24},                         // upright: 3 by 8
		{60, 30, sticker.Print{GapMM: 1, MarginMM: 5}, 3 * 9}, // upright: 3 of 61 in 201, 9 of 31 in 281
		{190, 270, sticker.Print{}, 1},                        // upright
		{277, 50, sticker.Print{}, 3},                         // lying: 3 of 54 in 187
		{60, 30, sticker.Print{GapMM: 100, MarginMM: 60}, 2},  // upright: 1 by 2
		{60, 30, sticker.Print{Count: 2}, 2},                  // no more than are asked for
	} {
		l := plain(t, "eu", c.wide, c.high, 100)
		l.Title = "M"
		c.p.Paper = sticker.Papers()[0]
		page := vectortest.ReadSVG(t, written(t, l, ".svg", c.p))
		n := 0
		for _, w := range page.Texts {
			if w.Text == "M" {
				n++
			}
		}
		if n != c.want {
			t.Errorf("%gx%g, %+v: %d on a sheet, not %d", c.wide, c.high, c.p, n, c.want)
		}
	}
}

func TestTheSameLabelIsTheSameFile(t *testing.T) {
	l := plain(t, "ca", 90, 80, 100)
	for _, form := range []string{".pdf", ".svg"} {
		p := sticker.Print{Paper: vector.Papers()[1]}
		if !bytes.Equal(written(t, l, form, p), written(t, l, form, p)) {
			t.Errorf("two prints of one label differ, %s", form)
		}
	}
}

func BenchmarkSheetOf24(b *testing.B) {
	l := plain(b, "eu", 60, 30, 100)
	l.List = "Ingredients: Sodium Olivate, Aqua, Sodium Cocoate, Glycerin, Sodium Shea Butterate, Sodium Castorate, Parfum, Linalool, Limonene, CI 77891"
	for _, form := range []string{".pdf", ".svg"} {
		b.Run(form, func(b *testing.B) {
			for b.Loop() {
				if _, err := l.For("label"+form, sticker.Print{Paper: vector.Papers()[0], Count: 24}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
