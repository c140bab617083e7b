package panel

import (
	"fmt"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// fillingLines is how many lines the drawing of the mould likes.
const fillingLines = 20

// leastFilling is the number of lines below which the jugs of a mould cannot be told apart.
const leastFilling = 8

// heightsUnknown is said where a batch cannot be sized.
const heightsUnknown = "how high it stands cannot be worked out"

// filling is how high the jugs stand in the mould.
func filling() Panel {
	return Panel{
		ID: "filling", Title: "In the mould", want: func(*Facts) int { return fillingLines }, least: func(int) int { return leastFilling + 2 },
		Draw: (*Facts).drawFilling, tell: (*Facts).tellFilling,
	}
}

// drawFilling draws the mould from its end: walls, the planned fill, and the jugs in it in proportion, in the order they are poured.
// It is a measure, not the swirl.
func (f *Facts) drawFilling(a screen.Area, _ grid.Cursor, _ bool) {
	const scaleW = 9
	rows := a.H() - 2
	if rows < 3 || a.W() < 24 {
		return
	}
	m := f.Plan.Mould
	stands, icing := f.Sheet.Base.Size.HeightMM, 0.0
	if f.Sheet.Icing != nil {
		icing = f.Sheet.Icing.Size.HeightMM
	}
	if !pour.AsFigure(stands + icing).Known {
		a.Text(1, 0, screen.Clip(heightsUnknown, a.W()-2), f.Look.Quiet)
		return
	}
	top := max(m.HeightMM, stands+icing)
	// A cell is about twice as high as it is wide; the drawing keeps the mould's proportions as far as it has room.
	rows = min(rows, max(int(float64(a.W()-scaleW-2)/2*top/m.WidthMM), leastFilling))
	y := func(mm float64) int { return rows - int(mm/top*float64(rows)+0.5) }
	w := min(a.W()-scaleW-2, max(int(m.WidthMM/top*float64(rows)*2), 16))
	box := a.Cut(scaleW, 0, w+2, rows+1)
	f.drawWalls(box, y(m.HeightMM))
	f.drawLayers(box.Cut(1, y(stands), w, rows-y(stands)), f.Sheet.Base.Jugs)
	if f.Sheet.Icing != nil {
		f.drawLayers(box.Cut(1, y(stands+icing), w, y(stands)-y(stands+icing)), f.Sheet.Icing.Jugs)
	}
	f.tick(a, scaleW-1, y(m.HeightMM), f.Show.Len(m.HeightMM), "rim")
	if at := y(stands); at != y(m.HeightMM) {
		f.tick(a, scaleW-1, at, f.Show.Len(stands), "")
	}
	a.Text(scaleW, rows+1, screen.Clip(f.mouldSize(), a.W()-scaleW), f.Look.Quiet)
}

// mouldSize is how wide and long the mould is.
func (f *Facts) mouldSize() string {
	m := f.Plan.Mould
	switch m.Shape {
	case pour.ShapeTube:
		return f.Show.Len(m.LengthMM) + " across, round"
	case pour.ShapeCavity:
		return fmt.Sprintf("%d of %s wide, %s long", m.Cavities, f.Show.Len(m.WidthMM), f.Show.Len(m.LengthMM))
	}
	return f.Show.Len(m.WidthMM) + " wide, " + f.Show.Len(m.LengthMM) + " long"
}

func (f *Facts) tick(a screen.Area, end, y int, text, word string) {
	a.Right(end, y, text, f.Look.Quiet)
	if word != "" && y+1 < a.H() {
		a.Right(end, y+1, word, f.Look.Quiet)
	}
}

func (f *Facts) drawWalls(a screen.Area, rim int) {
	for y := rim; y < a.H()-1; y++ {
		a.Text(0, y, "║", f.Look.Quiet)
		a.Text(a.W()-1, y, "║", f.Look.Quiet)
	}
	for x := range a.W() {
		a.Text(x, a.H()-1, "═", f.Look.Quiet)
	}
	a.Text(0, a.H()-1, "╚", f.Look.Quiet)
	a.Text(a.W()-1, a.H()-1, "╝", f.Look.Quiet)
}

// drawLayers stacks jugs from the bottom in proportion to their batter, in half lines; each layer that is high enough says its letter and name.
func (f *Facts) drawLayers(a screen.Area, jugs []pour.JugSheet) {
	halves := a.H() * 2
	if halves < 1 {
		return
	}
	sum := 0.0
	for _, j := range jugs {
		sum += j.BatterG
	}
	of := make([]int, halves) // the jug in each half line, from the bottom
	at, done := 0.0, 0
	for i, j := range jugs {
		at += j.BatterG / sum * float64(halves)
		for ; done < int(at+0.5) && done < halves; done++ {
			of[done] = i
		}
	}
	named := -1
	for y := range a.H() {
		low, high := of[halves-2*y-2], of[halves-2*y-1]
		f.drawLayerLine(a.Cut(0, y, a.W(), 1), jugs, low, high, named != low)
		if low == high {
			named = low
		}
	}
}

// drawLayerLine draws one line of the loaf: one jug, or two that meet in its middle. The first line of a jug is named.
func (f *Facts) drawLayerLine(a screen.Area, jugs []pour.JugSheet, low, high int, first bool) {
	lowC, lowOK := screen.Hex(jugs[low].Colour.Hex)
	highC, highOK := screen.Hex(jugs[high].Colour.Hex)
	if low != high {
		if lowOK && highOK { // without colours the line stays blank: its jugs are named above and below
			a.Fill("▄", screen.Style{Fg: lowC, Bg: highC})
		}
		return
	}
	st := screen.Style{}
	if lowOK {
		st = screen.Style{Bg: lowC, Fg: look.Readable(lowC)}
	}
	a.Fill(" ", st)
	if first {
		a.Text(1, 0, layerText(look.Letter(low)+" "+jugs[low].Name, f.percent(jugs[low].SharePercent, 1)+" %", a.W()-2), st)
	}
}

// layerText names a jug and its share in a room. Where both have none, the name stands alone: the share is in the jugs' own panel.
func layerText(name, share string, room int) string {
	if whole := name + "  " + share; screen.Width(whole) <= room {
		return whole
	}
	return screen.Clip(name, room)
}
