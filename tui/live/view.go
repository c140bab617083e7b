package live

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"

	tea "charm.land/bubbletea/v2"

	underway "pourbench/pour/logbook/live"
	"pourbench/pour/plain"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// The smallest screen with jugs on it, and the size from which everything is drawn to be read from across the room.
const (
	minW   = 60
	minH   = 16
	largeW = 110
	largeH = 32
)

// View draws the run. It writes nothing to the model.
func (m *Model) View() tea.View {
	s := screen.New(m.dialogs.Frame.W, m.dialogs.Frame.H)
	m.draw(s.Area())
	v := tea.NewView(s.String())
	v.AltScreen = true
	v.WindowTitle = m.windowTitle()
	if m.dialogs.Top() != nil { // elsewhere the terminal may select text
		v.MouseMode = tea.MouseModeCellMotion
	}
	return v
}

// windowTitle is the jug that needs a hand, or the step under way. A terminal acts on what stands in a title, so it is made plain.
func (m *Model) windowTitle() string {
	text := m.worstWords()
	if text == "" {
		text = "pour"
		if now, ok := m.now(); ok {
			text = m.title(now.Step)
		}
	} else {
		text = "! " + text
	}
	return plain.Line(text) + " – " + plain.Line(m.sheet().Plan.Name)
}

func (m *Model) draw(a screen.Area) {
	if a.W() < minW || a.H() < minH {
		m.drawTiny(a)
		return
	}
	m.drawRun(a)
	m.dialogs.Draw(a, m.look)
}

// drawTiny says the most important things on a screen without room for more.
func (m *Model) drawTiny(a screen.Area) {
	lines := []string{m.elapsedText() + " " + m.lateText(), "now: nothing is left to do"}
	if now, ok := m.now(); ok {
		lines[1] = "now: " + m.title(now.Step)
	}
	if m.unkept != nil {
		lines = append(lines, m.unwrittenNotice())
	}
	lines = append(lines, m.worstWords(), m.status.Text(), fmt.Sprintf("%d × %d; wants %d × %d", a.W(), a.H(), minW, minH))
	y := 0
	for _, l := range lines {
		if l != "" {
			a.Text(0, y, screen.Clip(l, a.W()), screen.Style{})
			y++
		}
	}
}

// sizes is how high the parts of the screen are.
type sizes struct {
	clockScale, stepScale, clockH, stepH, detailH, nextH, gap, bottomH int
}

func (m *Model) sizes(a screen.Area) sizes {
	s := sizes{clockScale: 2, stepScale: 1, detailH: 2, nextH: 2, bottomH: 2}
	switch {
	case a.W() >= largeW && a.H() >= largeH:
		s = sizes{clockScale: 3, stepScale: 2, detailH: 2, nextH: 3, gap: 1, bottomH: 4}
	case a.H() < 22:
		s = sizes{clockScale: 1, stepScale: 0, detailH: 1, nextH: 1, bottomH: 1}
	}
	s.clockH, s.stepH = blockHeight(s.clockScale), max(blockHeight(s.stepScale), 1)
	jugs := a.H() - 2 - s.bottomH - (1 + s.gap + s.clockH + s.gap + 1 + s.stepH + s.detailH + s.nextH + s.gap)
	s.detailH += min(max(len(m.detailLines(a.W()-2))-s.detailH, 0), max(jugs-leastJugs, 0)) // a round of many jugs takes more lines
	return s
}

// leastJugs is how many lines the jugs keep when the step needs more.
const leastJugs = 3

func (m *Model) drawRun(a screen.Area) {
	s := m.sizes(a)
	w := a.W()
	m.drawTitle(a.Cut(0, 0, w, 1))
	y := 1 + s.gap
	m.drawClock(a.Cut(1, y, w-2, s.clockH), s)
	y += s.clockH + s.gap
	if _, ok := m.now(); ok {
		m.drawStep(a.Cut(1, y, w-2, 1+s.stepH+s.detailH), s)
		m.drawNext(a.Cut(1, y+1+s.stepH+s.detailH, w-2, s.nextH))
	} else {
		m.drawEnd(a.Cut(1, y, w-2, 1+s.stepH+s.detailH+s.nextH), s)
	}
	y += 1 + s.stepH + s.detailH + s.nextH + s.gap
	bottom := a.H() - 2 - s.bottomH
	m.drawJugs(a.Cut(0, y, w, bottom-y))
	m.drawBottom(a.Cut(1, bottom, w-2, s.bottomH))
	m.status.Draw(a.Cut(0, a.H()-2, w, 1), m.look)
	dialog.Footer(a.Cut(0, a.H()-1, w, 1), m.footKeys(), m.look)
}

// drawTitle names the pour and says where it is written.
func (m *Model) drawTitle(a screen.Area) {
	x := a.Text(1, 0, screen.Clip(m.sheet().Plan.Name, a.W()/2), m.look.Focus)
	journal, st := "written to "+filepath.Base(m.opt.Book.Path(m.ID())), m.look.Good
	if m.unkept != nil {
		journal, st = "■ NOT WRITTEN", m.look.Stop
	}
	a.Right(a.W()-1, 0, screen.Clip(journal, a.W()-x-3), st)
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
	case !started || !left || m.trialling():
		return ""
	case m.board.LateMin >= 1:
		return fmt.Sprintf("%.0f min late", math.Floor(m.board.LateMin))
	}
	return "on time"
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
	caption := "since lye met oil"
	if _, ok := m.elapsed(); !ok {
		caption = "lye has not met oil; open for " + m.sheet().Plan.Show.Span(m.live.Run().Minutes())
	}
	if s.clockH < 4 {
		side.Text(0, 0, screen.Clip(caption, side.W()), m.look.Quiet)
		side.Text(0, 1, screen.Clip(late, side.W()), st.With(screen.Bold))
		side.Text(0, 2, screen.Clip(m.worstWords(), side.W()), m.look.Caution)
		return
	}
	row := 1
	if s.clockH >= 7 {
		row = 3
	}
	side.Text(0, 0, screen.Clip(caption, side.W()), m.look.Quiet)
	drawLarge(side.Cut(0, 1, side.W(), 3), late, 1, st)
	drawLarge(side.Cut(0, side.H()-row, side.W(), row), m.worstWords(), 1, m.look.Wrong)
}

// drawStep draws the step under way: its words large, then what it needs.
func (m *Model) drawStep(a screen.Area, s sizes) {
	now, _ := m.now()
	done := 0
	for _, step := range m.state.Steps {
		if step.Done {
			done++
		}
	}
	x := a.Text(0, 0, "NOW", m.look.Focus)
	x = a.Text(x+2, 0, fmt.Sprintf("step %d of %d", done+1, len(m.state.Steps)), m.look.Quiet)
	if m.chosen != "" {
		a.Text(x+2, 0, "out of its turn", m.look.Caution)
	} else {
		text, st := m.timing(now)
		a.Text(x+2, 0, text, st)
	}
	drawLarge(a.Cut(0, 1, a.W(), s.stepH), m.large(now.Step), s.stepScale, m.look.Strong)
	lines := m.detailLines(a.W())
	if len(lines) > s.detailH {
		lines[s.detailH-1] = screen.Clip(lines[s.detailH-1]+" "+lines[s.detailH], a.W()) // says that it goes on
	}
	for y, l := range lines {
		a.Text(0, 1+s.stepH+y, l, m.look.Text)
	}
}

// timing says how long the step has been under way and how long it takes, or how long there is still to wait for it.
func (m *Model) timing(d underway.Due) (string, screen.Style) {
	show := m.sheet().Plan.Show
	min, started := m.elapsed()
	if !started || d.LengthMin == 0 && d.StartMin <= min {
		if !started && d.LengthMin > 0 {
			return "takes about " + show.Minutes(d.LengthMin), m.look.Quiet
		}
		return "now", m.look.Quiet
	}
	if d.StartMin > min {
		return "starts in " + show.Span(d.StartMin-min), m.look.Note
	}
	st := m.look.Text
	if min-d.StartMin > d.LengthMin {
		st = m.look.Caution
	}
	return fmt.Sprintf("%s of %s", show.Span(min-d.StartMin), show.Span(d.LengthMin)), st
}

// drawNext lists the steps that follow, as replanned.
func (m *Model) drawNext(a screen.Area) {
	show := m.sheet().Plan.Show
	for y, d := range m.after() {
		if y >= a.H() {
			break
		}
		lead := "then"
		if y == 0 {
			lead = "next"
		}
		a.Text(0, y, lead, m.look.Quiet)
		a.Right(15, y, show.RunTime(d.StartMin), m.look.Accent)
		x := a.Text(17, y, screen.Clip(m.title(d.Step), a.W()-17), m.look.Strong)
		if off := d.StartMin - d.PlannedMin; off >= 1 {
			a.Text(x+2, y, screen.Clip(fmt.Sprintf("planned %s, %s later", show.RunTime(d.PlannedMin), show.Minutes(off)), a.W()-x-2), m.look.Caution)
		}
	}
}

// drawBottom draws notices, what still can be done, or else what the clock makes of the chosen jug.
func (m *Model) drawBottom(a screen.Area) {
	y := 0
	for _, n := range m.notices() {
		for _, l := range screen.Wrap(n, a.W()) {
			a.Text(0, y, l, m.look.Caution)
			y++
		}
	}
	if i := m.lost(); i >= 0 {
		m.drawRescues(a.Cut(0, y, a.W(), a.H()-y), i)
		return
	}
	if y < a.H() && m.jug < len(m.board.Jugs) {
		j := m.board.Jugs[m.jug]
		text := m.jugName(m.jug) + ": " + m.stageWords(j)
		if j.Refusal != "" {
			text = m.jugName(m.jug) + ": no times: " + j.Refusal
		}
		for _, l := range screen.Wrap(text, a.W()) {
			a.Text(0, y, l, m.look.Quiet)
			y++
		}
	}
}

// drawRescues lists what still can be done for a jug, a line for each way where there is room.
func (m *Model) drawRescues(a screen.Area, jug int) {
	ways := m.rescues(m.board.Jugs[jug])
	text := m.jugName(jug) + " will not make it as planned. What still can be done (r): "
	if a.H() > len(ways) {
		a.Text(0, 0, screen.Clip(text, a.W()), m.look.Caution)
		for y, w := range ways {
			a.Text(2, 1+y, screen.Clip(w.Do, a.W()-2), m.look.Text)
		}
		return
	}
	for i, w := range ways {
		if i > 0 {
			text += " · "
		}
		text += string(w.Kind)
	}
	for y, l := range screen.Wrap(text, a.W()) {
		a.Text(0, y, l, m.look.Caution)
	}
}

// footKeys lists the keys that can act now, the most useful first.
func (m *Model) footKeys() []keys.Binding {
	if top := m.dialogs.Top(); top != nil {
		return top.Keys()
	}
	return slices.DeleteFunc(keys.Footer(keys.Pouring, 0), func(b keys.Binding) bool { return m.cannot(b.ID) != "" })
}
