package tui

import (
	"math"
	"strconv"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// clockNameW is the room for a jug's letter, swatch and name beside its bar; clockSideW for what is said after it.
const (
	clockNameW = 17
	clockSideW = 24
	clockWideW = 64 // from here on there is room to say it
)

// clockLines is how many lines a clock panel fills: its axis, two lines for each jug, its key.
func clockLines(jugs int) int { return 2*jugs + 2 }

// drawClock draws when each jug reaches each stage, on one axis of minutes, with the moment it is poured and the window that suits the technique.
func (b *bench) drawClock(a screen.Area, p layout.Panel, c grid.Cursor, focused bool) {
	batch := batchOf(b.clock, p)
	if batch == nil {
		return
	}
	if batch.Refused.Times != "" {
		for i, line := range screen.Wrap("No times: "+batch.Refused.Times, a.W()-2) {
			a.Text(1, i, line, b.look.Quiet)
		}
		return
	}
	rows := a.H() - 1
	per := 2
	if clockLines(len(batch.Jugs)) > a.H()+1 {
		per = 1
	}
	axis := b.axis(batch, a.W())
	b.drawAxis(a, axis)
	top := 0
	if shown := max(rows/per, 1); c.Row >= shown {
		top = c.Row - shown + 1
	}
	for i := top; i < len(batch.Jugs); i++ {
		y := 1 + (i-top)*per
		if y >= a.H() {
			break
		}
		b.drawJugTime(a.Cut(0, y, a.W(), min(per, a.H()-y)), batch, i, axis)
		if focused && i == c.Row {
			a.Text(0, y, "►", b.look.Focus)
			a.Restyle(7, y, clockNameW-8, func(s screen.Style) screen.Style { return s.With(screen.Reverse) })
		}
	}
	if y := 1 + (len(batch.Jugs)-top)*per; y < a.H() {
		b.drawKey(a, y)
	}
}

// axis is the minutes a clock panel shows and where.
type axis struct {
	x, w     int
	from, to float64 // run clock, min
}

// at is the column of a minute.
func (x axis) at(min float64) int {
	return x.x + int((min-x.from)/(x.to-x.from)*float64(x.w))
}

// axis spans from the batch's lye-in to a little after its last pour, and at least to where its slowest jug thickens, as far as that is not out of all proportion.
func (b *bench) axis(batch *pour.BatchSheet, w int) axis {
	from, last := batch.LyeInAtMin, batch.LyeInAtMin+10
	for _, t := range b.clock.Run {
		if t.Batch == batch.Name && t.Kind != pour.TaskBed {
			last = max(last, t.StartMin+t.LengthMin)
		}
	}
	reach := last
	for _, j := range batch.Jugs {
		if t := j.Clock.Stages[chem.Thick].Mid; t.Known {
			reach = max(reach, batch.LyeInAtMin+t.V)
		}
	}
	to := max(last+(last-from)*0.25, min(reach*1.05, from+(last-from)*2))
	room := w - clockNameW
	if w >= clockWideW {
		room -= clockSideW
	}
	return axis{x: clockNameW, w: max(room, 4), from: from, to: to}
}

func (b *bench) drawAxis(a screen.Area, x axis) {
	step := 5.0
	for _, s := range []float64{5, 10, 15, 20, 30, 60, 120, 240, 600} {
		step = s
		if (x.to-x.from)/s*6 < float64(x.w) {
			break
		}
	}
	a.Text(2, 0, "minutes", b.look.Quiet)
	for min := math.Ceil(x.from/step) * step; min < x.to; min += step {
		text := strconv.Itoa(int(min))
		if at := x.at(min); at+len(text) <= x.x+x.w {
			a.Text(at, 0, text, b.look.Quiet)
		}
	}
}

// drawJugTime draws one jug: its bar and, where there is a second line, the window below it.
func (b *bench) drawJugTime(a screen.Area, batch *pour.BatchSheet, i int, x axis) {
	j := batch.Jugs[i]
	a.Text(2, 0, look.Letter(i), b.look.Strong)
	if c, ok := screen.Hex(j.Colour.Hex); ok {
		a.Cut(4, 0, 2, 1).Fill(" ", screen.Style{Bg: c})
	}
	a.Text(7, 0, screen.Clip(j.Name, clockNameW-8), screen.Style{})
	for col := range x.w {
		min := x.from + (float64(col)+0.5)/float64(x.w)*(x.to-x.from)
		glyph, st := b.stageAt(j, min-batch.LyeInAtMin)
		a.Text(x.x+col, 0, glyph, st)
	}
	if !j.Clock.Stages[chem.Emulsion].Mid.Known && !j.Clock.Stages[chem.Light].Mid.Known {
		a.Text(x.x, 0, screen.Clip("no times can be given: see the warnings", x.w), b.look.Quiet)
	}
	if j.Clock.PourAtMin.Known {
		at := min(x.at(j.Clock.PourAtMin.V), x.x+x.w-1)
		a.Text(at, 0, "▼", b.look.Strong.With(screen.Reverse))
		if last := min(x.at(j.Clock.LastAtMin.V), x.x+x.w-1); last > at {
			a.Text(last, 0, "▼", b.look.Strong.With(screen.Reverse))
		}
	}
	b.drawSide(a, j, x.x+x.w+1)
	if a.H() > 1 {
		b.drawWindow(a, j, x)
	}
}

// stageAt is the shading of a bar so many minutes after its batch's lye-in.
func (b *bench) stageAt(j pour.JugSheet, min float64) (string, screen.Style) {
	stage := -1
	for s := range chem.Stages {
		if t := j.Clock.Stages[s].Mid; t.Known && min >= t.V {
			stage = s
		}
	}
	if stage < 0 {
		return " ", screen.Style{}
	}
	st := b.look.Stages[stage]
	if !b.fresh {
		st = b.look.Quiet
	}
	return look.StageGlyph(chem.Stage(stage)), st
}

// drawSide says in words when the jug is poured and how likely it is too late.
func (b *bench) drawSide(a screen.Area, j pour.JugSheet, x int) {
	if !j.Clock.PourAtMin.Known {
		return
	}
	end := a.Text(x, 0, "pour "+b.show.RunTime(j.Clock.PourAtMin.V), screen.Style{})
	late := j.Clock.LateChancePercent
	if !late.Known {
		return
	}
	st := b.look.Quiet
	text := " late " + percent(late.V, 0) + " %"
	if late.V >= lateWorry {
		text, st = " !"+text[1:], b.look.Caution
	}
	if !b.fresh {
		st = b.look.Stale
	}
	a.Text(end, 0, b.clockText(text), st)
}

// lateWorry is the chance of being late, percent, from which it is marked.
const lateWorry = 25

// drawWindow draws the minutes that suit the technique below the bar.
func (b *bench) drawWindow(a screen.Area, j pour.JugSheet, x axis) {
	w := j.Clock.Window
	if !w.From.Known {
		return
	}
	from, to := x.at(w.From.V), x.x+x.w
	open := "→"
	if w.To.Known && x.at(w.To.V) < to {
		to, open = x.at(w.To.V), "╯"
	}
	if from >= x.x+x.w || to <= x.x {
		return
	}
	from = max(from, x.x)
	for at := from; at < to; at++ {
		a.Text(at, 1, "─", b.look.Good)
	}
	a.Text(from, 1, "╰", b.look.Good)
	a.Text(max(to-1, from), 1, open, b.look.Good)
}

func (b *bench) drawKey(a screen.Area, y int) {
	x := 2
	for s := range chem.Stages {
		x = a.Text(x, y, look.StageGlyph(chem.Stage(s))+" ", b.look.Stages[s])
		x = a.Text(x, y, look.StageName(chem.Stage(s))+"  ", b.look.Quiet)
	}
	x = a.Text(x, y, "▼ ", b.look.Strong)
	x = a.Text(x, y, "used from, to  ", b.look.Quiet)
	x = a.Text(x, y, "╰─╯ ", b.look.Good)
	a.Text(x, y, "suits", b.look.Quiet)
}
