package tui

import (
	"fmt"
	"image"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/plain"
	"pourbench/tui/grid"
	"pourbench/tui/layout"
	"pourbench/tui/screen"
)

// View draws the bench. It writes nothing to the model.
func (m *Model) View() tea.View {
	s := screen.New(m.w, m.h)
	m.draw(s.Area())
	v := tea.NewView(s.String())
	v.AltScreen = true
	v.ReportFocus = true
	v.WindowTitle = m.windowTitle()
	if at, ok := m.cursorOf(); ok {
		v.Cursor = tea.NewCursor(at.X, at.Y)
		v.Cursor.Shape, v.Cursor.Blink = tea.CursorUnderline, false
	}
	if m.mouse {
		v.MouseMode = tea.MouseModeCellMotion
	}
	return v
}

func (m *Model) windowTitle() string {
	name := m.session.Plan().Name
	if m.file.path != "" {
		name = filepath.Base(m.file.path)
	}
	name = plain.Line(name) // a terminal acts on what stands in a title
	if m.session.Dirty() {
		name += " •"
	}
	return name + " – pourbench"
}

func (m *Model) draw(a screen.Area) {
	if m.placed.TooSmall {
		m.drawTooSmall(a)
		return
	}
	m.drawTitle(a.At(m.placed.Title))
	m.drawTabs(a.At(m.placed.Tabs))
	for _, p := range m.placed.Panels {
		m.drawPanel(a.At(p.Rect), p.Panel)
		if p.Panel.Kind == layout.Face {
			m.drawFace(a)
		}
	}
	m.drawPinned(a)
	m.drawWarnings(a.At(m.placed.Warnings))
	m.drawStatus(a.At(m.placed.Status))
	m.drawFooter(a.At(m.placed.Footer))
	m.dialogs.Draw(a, m.look)
}

func (m *Model) drawTooSmall(a screen.Area) {
	lines := []string{
		"pourbench needs more room",
		fmt.Sprintf("this screen is %d × %d", m.w, m.h),
		fmt.Sprintf("make it %d × %d or larger", layout.MinW, layout.MinH),
		"the plan is safe; Ctrl+C quits",
	}
	y := max((a.H()-len(lines))/2, 0)
	for i, l := range lines {
		l = screen.Clip(l, a.W())
		a.Text(max((a.W()-screen.Width(l))/2, 0), y+i, l, screen.Style{})
	}
}

// drawPanel draws a panel with its border; the one that has the keys is marked by its border, a sign and a bold title.
func (m *Model) drawPanel(a screen.Area, p layout.Panel) {
	focused := m.at() == p
	rule, title := m.look.Rule, m.look.Quiet
	name := " " + m.bench.title(p) + " "
	if focused {
		rule, title = m.look.Accent, m.look.Focus
		name = " ►" + name
	}
	in := a.Box(rule)
	end := a.Text(2, 0, screen.Clip(name, a.W()-4), title)
	m.drawPages(a, p, end)
	g, c := m.grids[p], m.cursors[p]
	switch p.Kind {
	case layout.Clock:
		m.bench.drawClock(in, p, c, focused)
	case layout.Face: // stands where the easel says
	case layout.Filling:
		m.bench.drawFilling(in)
	case layout.Behaviour:
		m.bench.drawBehaviour(in)
	case layout.NoIcing:
		m.drawNoIcing(in)
	default:
		var typed *grid.Typed
		if focused && m.typing != nil {
			typed = &m.typing.Typed
		}
		g.Draw(in, c, m.look, focused, typed)
	}
}

// drawPages names on the border of the panel in focus the station's panels that have no room now.
func (m *Model) drawPages(a screen.Area, p layout.Panel, end int) {
	if p != m.at() {
		return
	}
	var hidden []string
	for _, other := range layout.Panels(m.station, m.session.Plan().Icing != nil) {
		if _, ok := m.placed.Find(other); !ok {
			hidden = append(hidden, m.bench.title(other))
		}
	}
	if len(hidden) == 0 {
		return
	}
	text := screen.Clip(" Tab: "+strings.Join(hidden, " · ")+" ", a.W()-end-3)
	a.Right(a.W()-2, 0, text, m.look.Quiet)
}

func (m *Model) drawNoIcing(a screen.Area) {
	for i, l := range screen.Wrap("This plan has no icing: a piped or spooned topping batter with its own oils, lye, jugs and scent.", a.W()-4) {
		a.Text(2, 1+i, l, screen.Style{})
	}
	x := a.Text(2, 4, "a", m.look.Accent)
	a.Text(x+1, 4, "adds one", m.look.Quiet)
}

// tabs is the column of every station's tab.
func tabs() []int {
	out := make([]int, layout.Stations)
	x := 0
	for s := range layout.Stations {
		out[s] = x
		x += screen.Width(layout.Station(s).String()) + 3
	}
	return out
}

func (m *Model) drawTabs(a screen.Area) {
	for s, x := range tabs() {
		name := " " + layout.Station(s).String() + " "
		st := m.look.Quiet
		if layout.Station(s) == m.station {
			st = m.look.Focus.With(screen.Reverse)
			name = "►" + name[1:]
		}
		a.Text(x, 0, name, st)
	}
	a.Right(a.W()-1, 0, "[ ] stations", m.look.Quiet)
}

// cursorOf is where the terminal's cursor is parked for readers that follow it; nothing while a dialog is open.
func (m *Model) cursorOf() (image.Point, bool) {
	r, ok := m.placed.Find(m.at())
	if !ok || m.dialogs.Top() != nil {
		return image.Point{}, false
	}
	var typed *grid.Typed
	if m.typing != nil {
		typed = &m.typing.Typed
	}
	at, ok := m.grids[m.at()].Caret(m.cursors[m.at()], r.Dx()-2, r.Dy()-2, typed)
	return at.Add(r.Min).Add(image.Pt(1, 1)), ok
}
