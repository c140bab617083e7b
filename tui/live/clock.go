package live

import (
	"fmt"
	"math"

	"pourbench/pour/logbook"
	"pourbench/tui/screen"
)

// elapsed is the time since the base's lye met its oils; at the end of the pour it stands still.
func (m *Model) elapsed() (min float64, ok bool) {
	run := m.live.Run()
	for _, e := range m.state.Marks {
		if e.Kind == logbook.Ended && m.state.Ended { // the end of its pour is none of a cut that goes on
			run = e.Run
		}
	}
	e, ok := m.state.Elapsed(run)
	return e.Minutes(), ok
}

// elapsedText is the time since lye met oil as a clock shows it.
func (m *Model) elapsedText() string {
	min, ok := m.elapsed()
	if !ok {
		return "-:--"
	}
	s := int(math.Floor(min*60 + 1e-6))
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// lateText says how far the run is behind its plan.
func (m *Model) lateText() string {
	_, started := m.elapsed()
	_, left := m.now()
	switch {
	case !started || !left || m.trialling() || m.state.Ended:
		return ""
	case m.board.LateMin >= 1:
		return fmt.Sprintf("%.0f min late", math.Floor(m.board.LateMin))
	}
	return "on time"
}

// captionText says what the clock counts.
func (m *Model) captionText() string {
	if m.cutting() {
		return m.cutCaption()
	}
	if _, ok := m.elapsed(); !ok {
		return "lye has not met oil; open for " + m.sheet().Plan.Show.Span(m.live.Run().Minutes())
	}
	return "since lye met oil"
}

// drawClock draws the time since lye met oil, and beside it what is late and which jug needs a hand.
func (m *Model) drawClock(a screen.Area, s sizes) {
	text := m.elapsedText()
	drawLarge(a, text, s.clockScale, m.look.Strong)
	w, _ := blockWidth(text, s.clockScale)
	side := a.Cut(w+4, 0, a.W()-w-4, a.H())
	late, st := m.lateText(), m.look.Good
	if m.board.LateMin >= 1 {
		st = m.look.Caution
	}
	caption := m.captionText()
	if s.clockH < 4 {
		side.Text(0, 0, screen.Clip(caption, side.W()), m.look.Quiet)
		side.Text(0, 1, screen.Clip(late, side.W()), st.With(screen.Bold))
		side.Text(0, 2, screen.Clip(m.worstWords(), side.W()), m.look.Caution)
		return
	}
	large, lateH, worstH := 1, 3, 1
	switch { // what is large and under the other needs as many rows as letters of its size have
	case s.clockH >= 10:
		large, lateH, worstH = 2, 5, 3
	case s.clockH >= 7:
		worstH = 3
	}
	side.Text(0, 0, screen.Clip(caption, side.W()), m.look.Quiet)
	drawLarge(side.Cut(0, 1, side.W(), lateH), late, large, st)
	drawLarge(side.Cut(0, side.H()-worstH, side.W(), worstH), m.worstWords(), 1, m.look.Wrong)
}
