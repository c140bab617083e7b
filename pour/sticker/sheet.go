package sticker

import (
	"fmt"
	"math"

	"pourbench/pour/vector"
)

// Print is how a label is printed.
type Print struct {
	Paper    vector.Paper // zero: one label, as large as itself
	Count    int          // labels in all; 0: a sheet full
	GapMM    float64      // between two; 0: 4
	MarginMM float64      // free at the edges of the sheet; 0: 10 (printers leave 4 to 6; common practice, no source)
	Band     bool         // a band round the bar, in its own size
}

// How a sheet is laid out, mm.
const (
	usualGap    = 4.0
	usualMargin = 10.0
	leastMargin = 4.0
	mostCount   = 10000
	footHigh    = 7.0 // room of the bar to measure
	cropLong    = 3.0
	cropOff     = 0.8 // how far the crop marks stay off the label
	cropThick   = 0.1
	checkLong   = 50
)

// grid is how labels stand on a sheet.
type grid struct {
	wide, high     float64 // of the sheet
	cols, rows     int
	of             *vector.Drawing
	gap, margin    float64
	left, top      float64
	count, sheetOf int
}

// gridOf lays labels on paper, the way round that holds more of them.
func gridOf(of *vector.Drawing, p Print) (grid, error) {
	g := grid{of: of, gap: p.GapMM, margin: p.MarginMM, count: p.Count}
	if g.gap == 0 {
		g.gap = usualGap
	}
	if g.margin == 0 {
		g.margin = usualMargin
	}
	switch {
	case !(g.gap > 0 && g.gap <= 100):
		return g, fmt.Errorf("print the labels %g mm apart: write more than 0, up to 100", p.GapMM)
	case !(g.margin >= leastMargin && g.margin <= 60):
		return g, fmt.Errorf("print the labels with a margin of %g mm: write %g to 60", p.MarginMM, leastMargin)
	case g.count < 0 || g.count > mostCount:
		return g, fmt.Errorf("print %d labels: write 1 to %d", p.Count, mostCount)
	}
	fits := func(room, each float64) int {
		return max(0, int(math.Floor((room-2*g.margin+g.gap)/(each+g.gap)+1e-9)))
	}
	upright, lying := [2]float64{p.Paper.High, p.Paper.Wide}, [2]float64{p.Paper.Wide, p.Paper.High}
	for _, sheet := range [][2]float64{upright, lying} {
		cols, rows := fits(sheet[0], of.Wide), fits(sheet[1]-footHigh, of.High)
		if cols*rows > g.cols*g.rows {
			g.wide, g.high, g.cols, g.rows = sheet[0], sheet[1], cols, rows
		}
	}
	each := g.cols * g.rows
	if each == 0 {
		return g, fmt.Errorf("print the labels on %s: one of %.1f by %.1f mm does not fit on a sheet with its margins; make it smaller, or write it by itself as SVG", p.Paper.Name, of.Wide, of.High)
	}
	if g.count == 0 {
		g.count = each
	}
	g.sheetOf = (g.count + each - 1) / each
	g.left = (g.wide - float64(g.cols)*of.Wide - float64(g.cols-1)*g.gap) / 2
	g.top = g.margin
	return g, nil
}

// at is where a label of the sheet stands.
func (g *grid) at(i int) (x, y float64) {
	return g.left + float64(i%g.cols)*(g.of.Wide+g.gap), g.top + float64(i/g.cols)*(g.of.High+g.gap)
}

// sheet is one of the sheets, from 0.
func (g *grid) sheet(number int, says string) vector.Drawing {
	d := vector.Drawing{Wide: g.wide, High: g.high}
	n := min(g.cols*g.rows, g.count-number*g.cols*g.rows)
	for i := range n {
		x, y := g.at(i)
		d.Stamps = append(d.Stamps, vector.Stamp{X: x, Y: y, Of: g.of})
		g.crop(&d, x, y)
	}
	y := g.high - g.margin
	d.Line("check", g.margin, y, g.margin+checkLong, y, 0.35)
	d.Line("check", g.margin, y-1, g.margin, y+1, 0.2)
	d.Line("check", g.margin+checkLong, y-1, g.margin+checkLong, y+1, 0.2)
	d.Write(g.margin+checkLong+2, y+0.8, 2.2, vector.Start, fmt.Sprintf("This line is %d mm: measure it. Print at 100 %%, not fit to page. Sheet %d of %d.", checkLong, number+1, g.sheetOf))
	d.Write(g.margin, y-2.2, 2.2, vector.Start, says)
	return d
}

// crop marks the corners of a label, from outside and off it, no further than half the way to its neighbour.
func (g *grid) crop(d *vector.Drawing, x, y float64) {
	right, foot := x+g.of.Wide, y+g.of.High
	off := min(cropOff, g.gap/4)
	long := min(cropLong, g.gap/2) - off
	for _, at := range []float64{x, right} {
		d.Line("crop", at, y-off, at, y-off-long, cropThick)
		d.Line("crop", at, foot+off, at, foot+off+long, cropThick)
	}
	for _, at := range []float64{y, foot} {
		d.Line("crop", x-off, at, x-off-long, at, cropThick)
		d.Line("crop", right+off, at, right+off+long, at, cropThick)
	}
}
