package live

import (
	"fmt"
	"math"

	"pourbench/chem"
	"pourbench/pour"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/screen"
)

// barMin is how many minutes the whole width of the bars stands for: as long as the longest window is from lye-in, to the next five.
func (m *Model) barMin() float64 {
	longest := 10.0
	for _, j := range m.outlook.Jugs {
		if to := m.window(j).To; to.Known {
			longest = max(longest, to.V)
		}
	}
	const step, most = 5, 120
	return min(math.Ceil(longest/step)*step, most)
}

// window is what a jug's bar shows: when the technique suits it, or in a trial from light to thick.
func (m *Model) window(j underway.JugOutlook) pour.Window {
	if m.trialling() {
		return pour.Window{From: j.Stages[chem.Light], To: j.Stages[chem.Thick]}
	}
	return j.Window
}

// drawJug draws a jug on one or two rows: number, colour, name, its shrinking window, and in words how it stands.
func (m *Model) drawJug(a screen.Area, i int) {
	j := m.board.Jugs[i]
	st := m.jugStyle(j)
	nameW := 11
	if a.W() >= 100 {
		nameW = 16
	}
	if i == m.jug {
		a.Text(0, 0, "►", m.look.Focus)
		a.Focus(0, 0)
	}
	a.Text(1, 0, fmt.Sprint(i+1), m.look.Accent)
	if b := m.sheet().Batch(j.Batch); b != nil {
		if c, ok := screen.Hex(jugSheet(b, j.Jug).Colour.Hex); ok {
			a.Cut(4, 0, 2, a.H()).Fill(" ", screen.Style{Bg: c})
		}
	}
	name := m.look.Strong
	if i == m.jug {
		name = name.With(screen.Reverse)
	}
	a.Text(7, 0, screen.Clip(j.Jug, nameW-1), name)
	barX, wordsW := 7+nameW, wordsRoom(a.W())
	bar := a.Cut(barX, 0, a.W()-barX-wordsW-1, a.H())
	m.drawBar(bar, j, st)
	a.Text(a.W()-wordsW, 0, screen.Clip(m.jugWords(j, wordsW-2), wordsW), st)
	if stages := m.stageWords(j); a.H() > 1 && j.Verdict != underway.Used {
		a.Text(a.W()-wordsW, 1, screen.Clip(stages, wordsW), m.look.Quiet)
	}
}

// wordsRoom is the room at the right for how a jug stands: from 100 columns on half of the screen, as far as the longest words go.
func wordsRoom(w int) int {
	const narrow, wide, longest, wideFrom = 38, 60, 100, 100
	if w < wideFrom {
		return narrow
	}
	return min(max(wide, w/2), longest)
}

func (m *Model) jugStyle(j underway.JugBoard) screen.Style {
	switch {
	case m.unused(j.Batch, j.Jug) || j.Verdict == underway.Unknown || !m.running(j.Batch):
		return m.look.Quiet
	case m.trialling() && j.Verdict != underway.Used:
		return m.look.Note
	case j.Verdict == underway.Used:
		return m.look.Good
	case j.Verdict == underway.Over:
		return m.look.Wrong
	case j.Verdict == underway.TooLate || j.Verdict == underway.Soon || len(j.Troubles) > 0:
		return m.look.Caution
	}
	return m.look.Text
}

// drawBar draws what is left of a jug's window from now on: dots until it opens, solid while it is open, "│" where its turn comes. A
// shade instead of solid says that the turn comes too late.
func (m *Model) drawBar(a screen.Area, j underway.JugBoard, st screen.Style) {
	window, since := m.window(j.JugOutlook), 0.0
	now, running := m.sinceIn(j)
	if running {
		since = now
	}
	if j.Verdict == underway.Used || m.unused(j.Batch, j.Jug) || j.Seized || !window.To.Known || a.W() < 4 {
		return
	}
	perCell := m.barMin() / float64(a.W())
	solid := "█"
	if j.Verdict == underway.TooLate {
		solid = "▒"
	}
	for x := range a.W() {
		at := since + (float64(x)+0.5)*perCell
		mark, style := "", st
		switch {
		case at >= window.To.V:
		case !running || window.From.Known && at < window.From.V:
			mark, style = "·", m.look.Quiet
		default:
			mark = solid
		}
		for y := range a.H() {
			a.Text(x, y, mark, style)
		}
	}
	if elapsed, ok := m.elapsed(); ok && running && j.TurnMin.Known && !m.trialling() {
		if x := int(max(0, j.TurnMin.V-elapsed) / perCell); x < a.W() {
			a.Text(x, 0, "│", m.look.Strong)
		}
	}
}

// The most lines a jug takes, and how many of them are its bar.
const (
	mostRows = 3
	barRows  = 2
)

// shownJugs is how many lines each jug has in so many lines, the first that is shown, and how many are: the chosen one is in sight.
func (m *Model) shownJugs(h int) (per, top, rows int) {
	n := len(m.board.Jugs)
	per = min(max(h/max(n, 1), 1), mostRows)
	rows = max(h/per, 1)
	return per, min(max(m.jug-rows+1, 0), max(n-rows, 0)), rows
}

// drawJugs draws every jug, two rows each and one between them where there is room, and keeps the chosen one in sight.
func (m *Model) drawJugs(a screen.Area) {
	n := len(m.board.Jugs)
	per, top, rows := m.shownJugs(a.H())
	for i := top; i < min(top+rows, n); i++ {
		m.drawJug(a.Cut(0, (i-top)*per, a.W(), min(per, barRows)), i)
	}
	switch last := top + rows - 1; {
	case last >= n-1:
	case last == m.jug: // its mark stands where the arrow would
		a.Right(a.W(), a.H()-1, "↓", m.look.Accent)
	default:
		a.Text(0, a.H()-1, "↓", m.look.Accent)
	}
}
