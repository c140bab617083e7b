// Package chart draws plots as terminal cells. Each is one pure function into an area of any size; what it shows is told apart by signs
// and letters, and colour only adds to them.
package chart

import (
	"math"

	"pourbench/pour/drying"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// The least area that has axes, cells. What is smaller shows the curve alone.
const (
	axesW = 28
	axesH = 7
)

// The signs of the drawing.
const (
	weighedSign = "●"
	bandSign    = "░"
	todaySign   = "T"
	readySign   = "R"
)

// Drying draws how a batch dries: ● weighed, dots the fitted curve, ░ its 80 % band, T today, R the ready day on its band ├──┤.
func Drying(a screen.Area, l look.Look, p drying.Plot) {
	p = p.Sound()
	if a.W() < 1 || a.H() < 1 {
		return
	}
	if p.Empty() {
		a.Text(0, a.H()/2, screen.Clip("nothing was weighed yet", a.W()), l.Quiet)
		return
	}
	if a.W() < axesW || a.H() < axesH {
		f := field{Area: a, days: p.Days(1), mass: p.Mass(2)}
		f.draw(l, p)
		return
	}
	mass := p.Mass(max((a.H()-3)/3, 2))
	left := 0
	for _, t := range mass.Ticks {
		left = max(left, screen.Width(t.Text))
	}
	left++ // the axis itself
	f := field{Area: a.Cut(left, 1, a.W()-left, a.H()-4), mass: mass}
	f.days = p.Days(max(f.W()/10, 1))
	f.draw(l, p)
	legend(a, l, p, mass.Label)
	f.upright(a.Cut(0, 1, left, f.H()), l)
	f.level(a.Cut(left-1, a.H()-3, a.W()-left+1, 2), l)
	f.marks(a.Cut(left, a.H()-1, f.W(), 1), l, p)
}

// field is the place of the drawing inside its axes.
type field struct {
	screen.Area
	days, mass drying.Axis
}

// Dots of a cell, as braille has them.
const (
	dotsX = 2
	dotsY = 4
)

// dot is where a day and a mass stand, in dots from the top left.
func (f field) dot(day, g float64) (x, y int) {
	return int(math.Round(f.days.Along(day) * float64(f.W()*dotsX-1))), int(math.Round((1 - f.mass.Along(g)) * float64(f.H()*dotsY-1)))
}

// cell is where a day and a mass stand, in cells.
func (f field) cell(day, g float64) (x, y int) {
	x, y = f.dot(day, g)
	return floorDiv(x, dotsX), floorDiv(y, dotsY)
}

func floorDiv(a, b int) int { return int(math.Floor(float64(a) / float64(b))) }

// draw draws band, today, ready day, curve and weighings, each over what comes before it.
func (f field) draw(l look.Look, p drying.Plot) {
	f.band(l, p)
	f.line(p.Today.Known, p.Today.V, "┊", l.Accent)
	f.line(p.Ready.Known, p.Ready.Day, "│", l.Good)
	f.curve(l, p)
	for _, x := range p.Points {
		cx, cy := f.cell(x.Day, x.G)
		f.Text(cx, cy, weighedSign, l.Strong)
	}
}

// line draws a day from top to bottom.
func (f field) line(known bool, day float64, sign string, st screen.Style) {
	if !known || day < f.days.Low || day > f.days.High {
		return
	}
	x, _ := f.cell(day, f.mass.Low)
	for y := range f.H() {
		f.Text(x, y, sign, st)
	}
}

// band shades what lies in the band, column by column.
func (f field) band(l look.Look, p drying.Plot) {
	for x := range f.W() {
		s, ok := p.On(f.dayAt(float64(x*dotsX) + 0.5))
		if !ok {
			continue
		}
		_, top := f.dot(s.Day, s.HighG)
		_, low := f.dot(s.Day, s.LowG)
		if low-top < dotsY { // thinner than a cell is no more than the curve itself
			continue
		}
		for y := max(floorDiv(top, dotsY), 0); y <= min(floorDiv(low, dotsY), f.H()-1); y++ {
			f.Text(x, y, bandSign, l.Quiet)
		}
	}
}

// dayAt is the day of a column of dots.
func (f field) dayAt(x float64) float64 {
	return f.days.Low + x/float64(max(f.W()*dotsX-1, 1))*(f.days.High-f.days.Low)
}

// curve draws the fitted curve in dots, without a gap where it is steep.
func (f field) curve(l look.Look, p drying.Plot) {
	cells := make([]uint8, max(f.W()*f.H(), 0))
	set := func(x, y int) {
		if x >= 0 && x < f.W()*dotsX && y >= 0 && y < f.H()*dotsY {
			cells[y/dotsY*f.W()+x/dotsX] |= brailleBit(x%dotsX, y%dotsY)
		}
	}
	before, drawn := 0, false
	for x := range f.W() * dotsX {
		s, ok := p.On(f.dayAt(float64(x)))
		if !ok {
			drawn = false
			continue
		}
		_, y := f.dot(s.Day, s.G)
		from := y
		if drawn {
			from = before + sign(y-before)
		}
		for v := min(from, y); v <= max(from, y); v++ {
			set(x, v)
		}
		before, drawn = y, true
	}
	for i, bits := range cells {
		if bits != 0 {
			f.Text(i%f.W(), i/f.W(), string(rune(0x2800+int(bits))), l.Text)
		}
	}
}

func sign(v int) int {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// brailleBit is the dot of a column and row in Unicode's braille patterns (Unicode, block 2800).
func brailleBit(x, y int) uint8 {
	return [dotsY][dotsX]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}[y][x]
}
