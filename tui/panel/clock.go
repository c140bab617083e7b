package panel

import (
	"fmt"
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

// leastClock is the lines a clock can do with: its axis and one line for each jug in place of two. Many jugs stand in fewer, which go
// along with the cursor: the first of them are better in sight than none beside a long list.
func leastClock(want int) int {
	const all, few = 7, 5
	if least := want/2 + 1; least <= all {
		return least
	}
	return few
}

// clock is when each jug of a batch reaches each stage. Its grid has a row for each jug, with what its bar says in words.
func clock(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "clock")), Title: ofBatch(n, "Clock"),
		Grid: gridOf(n, (*Facts).clockGrid), tell: func(f *Facts) []string { return f.tellClock(n) },
		want: func(f *Facts) int {
			if batch := f.batch(n); batch != nil { // as many jugs as there are now: its room does not jump once they are timed
				return clockLines(len(batch.Jugs))
			}
			return 1
		},
		least: leastClock,
		Draw:  func(f *Facts, a screen.Area, c grid.Cursor, focused bool) { f.drawClock(n, a, c, focused) },
	}
}

// drawClock draws the stages of every jug on one axis of minutes, with the moment it is poured and the window that suits the technique.
func (f *Facts) drawClock(n pour.BatchName, a screen.Area, c grid.Cursor, focused bool) {
	batch := batchOf(f.Timed, n)
	if batch == nil {
		return
	}
	if batch.Refused.Times != "" {
		for i, line := range screen.Wrap("No times: "+batch.Refused.Times, a.W()-2) {
			a.Text(1, i, line, f.Look.Quiet)
		}
		return
	}
	rows := a.H() - 1
	per := 2
	if clockLines(len(batch.Jugs)) > a.H()+1 {
		per = 1
	}
	axis := f.axis(batch, a.W())
	f.drawAxis(a, axis)
	top := 0
	if shown := max(rows/per, 1); c.Row >= shown {
		top = c.Row - shown + 1
	}
	for i := top; i < len(batch.Jugs); i++ {
		y := 1 + (i-top)*per
		if y >= a.H() {
			break
		}
		f.drawJugTime(a.Cut(0, y, a.W(), min(per, a.H()-y)), batch, i, axis)
		if focused && i == c.Row {
			a.Text(0, y, "►", f.Look.Focus)
			a.Focus(7, y)
			a.Restyle(7, y, clockNameW-8, func(s screen.Style) screen.Style { return s.With(screen.Reverse) })
		}
	}
	y := 1 + (len(batch.Jugs)-top)*per
	if y < a.H() {
		f.drawKey(a, y)
	}
	if top > 0 {
		a.Text(0, 1, "↑", f.Look.Accent)
	}
	if y > a.H() {
		a.Text(0, a.H()-1, "↓", f.Look.Accent)
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
func (f *Facts) axis(batch *pour.BatchSheet, w int) axis {
	from, last := batch.LyeInAtMin, batch.LyeInAtMin+10
	for _, t := range f.Timed.Run {
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

func (f *Facts) drawAxis(a screen.Area, x axis) {
	step := 5.0
	for _, s := range []float64{5, 10, 15, 20, 30, 60, 120, 240, 600} {
		step = s
		if (x.to-x.from)/s*6 < float64(x.w) {
			break
		}
	}
	a.Text(2, 0, "minutes", f.Look.Quiet)
	for min := math.Ceil(x.from/step) * step; min < x.to; min += step {
		text := strconv.Itoa(int(min))
		if at := x.at(min); at+len(text) <= x.x+x.w {
			a.Text(at, 0, text, f.Look.Quiet)
		}
	}
}

// drawJugTime draws one jug: its bar and, where there is a second line, the window below it.
func (f *Facts) drawJugTime(a screen.Area, batch *pour.BatchSheet, i int, x axis) {
	j := batch.Jugs[i]
	a.Text(2, 0, look.Letter(i), f.Look.Strong)
	if c, ok := screen.Hex(j.Colour.Hex); ok {
		a.Cut(4, 0, 2, 1).Fill(" ", screen.Style{Bg: c})
	}
	a.Text(7, 0, screen.Clip(j.Name, clockNameW-8), screen.Style{})
	for col := range x.w {
		min := x.from + (float64(col)+0.5)/float64(x.w)*(x.to-x.from)
		glyph, st := f.stageAt(j, min-batch.LyeInAtMin)
		a.Text(x.x+col, 0, glyph, st)
	}
	if !j.Clock.Stages[chem.Emulsion].Mid.Known && !j.Clock.Stages[chem.Light].Mid.Known {
		a.Text(x.x, 0, screen.Clip("no times can be given: see the warnings", x.w), f.Look.Quiet)
	}
	if known := j.Clock.Stages[chem.Emulsion].Mid.Known || j.Clock.Stages[chem.Light].Mid.Known; known && j.Clock.PourAtMin.Known { // no mark over the words
		at := min(x.at(j.Clock.PourAtMin.V), x.x+x.w-1)
		a.Text(at, 0, "▼", f.Look.Strong.With(screen.Reverse))
		if last := min(x.at(j.Clock.LastAtMin.V), x.x+x.w-1); last > at {
			a.Text(last, 0, "▼", f.Look.Strong.With(screen.Reverse))
		}
	}
	f.drawSide(a, j, x.x+x.w+1)
	if a.H() > 1 {
		f.drawWindow(a, j, x)
	}
}

// stageAt is the shading of a bar so many minutes after its batch's lye-in.
func (f *Facts) stageAt(j pour.JugSheet, min float64) (string, screen.Style) {
	stage := -1
	for s := range chem.Stages {
		if t := j.Clock.Stages[s].Mid; t.Known && min >= t.V {
			stage = s
		}
	}
	if stage < 0 {
		return " ", screen.Style{}
	}
	st := f.Look.Stages[stage]
	if !f.Fresh {
		st = f.Look.Quiet
	}
	return look.StageGlyph(chem.Stage(stage)), st
}

// drawSide says in words when the jug is poured and how likely it is too late.
func (f *Facts) drawSide(a screen.Area, j pour.JugSheet, x int) {
	turn := f.turnWords(j)
	late, worry := f.lateWords(j)
	if turn == "" {
		return
	}
	end := a.Text(x, 0, turn, screen.Style{})
	st := f.Look.Quiet
	if worry {
		st = f.Look.Caution
	}
	if !f.Fresh {
		st = f.Look.Stale
	}
	a.Text(end, 0, late, st)
}

// turnWords says when a jug is poured; "" where that is not known.
func (f *Facts) turnWords(j pour.JugSheet) string {
	if !j.Clock.PourAtMin.Known {
		return ""
	}
	return "pour " + f.Show.RunTime(j.Clock.PourAtMin.V)
}

// lateWords says how likely a jug is too late, with a blank before it, and whether that is a worry.
func (f *Facts) lateWords(j pour.JugSheet) (text string, worry bool) {
	late := j.Clock.LateChancePercent
	if !late.Known {
		return "", false
	}
	text = " late " + f.percent(late.V, 0) + " %"
	if worry = late.V >= lateWorry; worry {
		text = " !" + text[1:]
	}
	return f.timed(text), worry
}

// lateWorry is the chance of being late, percent, from which it is marked.
const lateWorry = 25

// drawWindow draws the minutes that suit the technique below the bar.
func (f *Facts) drawWindow(a screen.Area, j pour.JugSheet, x axis) {
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
		a.Text(at, 1, "─", f.Look.Good)
	}
	a.Text(from, 1, "╰", f.Look.Good)
	a.Text(max(to-1, from), 1, open, f.Look.Good)
}

func (f *Facts) drawKey(a screen.Area, y int) {
	x := 2
	for s := range chem.Stages {
		x = a.Text(x, y, look.StageGlyph(chem.Stage(s))+" ", f.Look.Stages[s])
		x = a.Text(x, y, chem.Stage(s).String()+"  ", f.Look.Quiet)
	}
	x = a.Text(x, y, "▼ ", f.Look.Strong)
	x = a.Text(x, y, "used from, to  ", f.Look.Quiet)
	x = a.Text(x, y, "╰─╯ ", f.Look.Good)
	a.Text(x, y, "suits", f.Look.Quiet)
}

func (f *Facts) clockGrid(n pour.BatchName) grid.Grid {
	g := grid.Grid{Columns: []grid.Column{{W: 10, Grow: 1}}}
	batch := batchOf(f.Timed, n)
	if batch == nil {
		return g
	}
	for i, j := range batch.Jugs {
		c := f.shown(look.Letter(i)+" "+j.Name, at(string(n)+".jugs", i)+"stage_min.medium[1]", f.timed(f.stagesText(j)))
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{c}})
	}
	return g
}

// stagesText says when a jug reaches each stage, with the band.
func (f *Facts) stagesText(j pour.JugSheet) string {
	text := j.Name + ":"
	for s := range chem.Stages {
		t := j.Clock.Stages[s]
		if chem.Stage(s) == chem.Emulsion || !t.Mid.Known {
			continue
		}
		minutes := func(at pour.Figure) string {
			return f.Show.Figure(at, func(v float64) string { return f.percent(pour.RoundMinutes(v), 0) })
		}
		text += fmt.Sprintf(" %s %s (%s to %s)", chem.Stage(s).String(), minutes(t.Mid), minutes(t.Low), minutes(t.High))
	}
	if text == j.Name+":" {
		return text + " no times can be given"
	}
	return text + " min after lye-in"
}
