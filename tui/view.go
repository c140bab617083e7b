package tui

import (
	"fmt"
	"image"
	"path/filepath"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/plain"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
	"pourbench/tui/screen"
	"pourbench/tui/terminal"
)

// View draws the bench. It writes nothing to the model.
func (m *model) View() tea.View {
	s := screen.New(m.w, m.h)
	m.draw(s.Area())
	v := tea.NewView(s.String())
	v.AltScreen = true
	v.ReportFocus = true
	v.WindowTitle = m.windowTitle()
	v.Cursor = terminal.Cursor(s)
	if m.mouse {
		v.MouseMode = tea.MouseModeCellMotion
	}
	return v
}

func (m *model) windowTitle() string {
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

func (m *model) draw(a screen.Area) {
	if m.placed.TooSmall {
		m.drawTooSmall(a)
		return
	}
	m.drawTitle(a.At(m.placed.Title))
	m.drawTabs(a.At(m.placed.Tabs))
	for _, p := range m.placed.Panels {
		m.drawPanel(a.At(p.Rect), m.panel(p.ID))
	}
	m.drawPinned(a)
	if m.placed.Boxed {
		m.drawPanel(a.At(m.placed.Warnings), &m.warnings)
	} else {
		m.facts.DrawWorst(a.At(m.placed.Warnings))
	}
	m.drawStatus(a.At(m.placed.Status))
	m.drawFooter(a.At(m.placed.Footer))
	m.dialogs.Draw(a, m.look)
}

func (m *model) drawTooSmall(a screen.Area) {
	lines := []string{
		"pourbench needs more room",
		fmt.Sprintf("this screen is %d × %d", m.w, m.h),
		fmt.Sprintf("make it %d × %d or larger", layout.MinW, layout.MinH),
		"your plan is kept as it is; Ctrl+C quits",
	}
	y := max((a.H()-len(lines))/2, 0)
	for i, l := range lines {
		l = screen.Clip(l, a.W())
		a.Text(max((a.W()-screen.Width(l))/2, 0), y+i, l, screen.Style{})
	}
}

// drawPanel draws a panel with its border; the one that has the keys is marked by its border, a sign and a bold title.
func (m *model) drawPanel(a screen.Area, p *panel.Panel) {
	focused := m.at() == p
	if p.Aside != nil && !focused {
		p.Aside(m.facts, a)
		return
	}
	rule, title := m.look.Rule, m.look.Quiet
	name := " " + p.Title + " "
	if focused {
		rule, title = m.look.Accent, m.look.Focus
		name = " ►" + name
	}
	in := a.Box(rule)
	end := a.Text(2, 0, screen.Clip(name, a.W()-4), title)
	if focused {
		a.Focus(2, 0) // until something in it has the focus
		m.drawPages(a, end)
	}
	switch {
	case p.Draw != nil:
		p.Draw(m.facts, in, m.cursors[p.ID], focused)
	case focused && m.typing != nil:
		m.grids[p.ID].Draw(in, m.cursors[p.ID], m.look, focused, &m.typing.Typed)
	default:
		m.grids[p.ID].Draw(in, m.cursors[p.ID], m.look, focused, nil)
	}
}

// drawPages names on the border of the panel in focus the station's panels that have no room now, in the order in which the key for the next panel comes
// to them; the key stands before them where the next panel is the first of them, and not one that is seen.
func (m *model) drawPages(a screen.Area, end int) {
	var hidden []string
	lead, at := "more", slices.Index(m.panels, m.at())
	for i := 1; i < len(m.panels); i++ {
		p := m.panels[(at+i)%len(m.panels)]
		if _, ok := m.placed.Find(p.ID); ok {
			continue
		}
		if hidden = append(hidden, p.Title); i == 1 {
			lead = m.key(keys.NextPanel)
		}
	}
	if len(hidden) == 0 {
		return
	}
	text := screen.Clip(" "+lead+": "+strings.Join(hidden, " · ")+" ", a.W()-end-3)
	a.Right(a.W()-2, 0, text, m.look.Quiet)
}

// tabApart is how far names of tabs stand from each other where there is room: their own two blanks and one between.
const tabApart = 3

// tabs is the column of every station's tab. On narrow screens they stand closer, sharing the blanks between them.
func (m *model) tabs() []int {
	names := 0
	for _, s := range m.stations {
		names += screen.Width(s.Name)
	}
	apart := tabApart
	for apart > 1 && names+apart*len(m.stations)+screen.Width(m.tabHint()) > m.w {
		apart--
	}
	out := make([]int, len(m.stations))
	x := 0
	for i, s := range m.stations {
		out[i] = x
		x += screen.Width(s.Name) + apart
	}
	return out
}

// tabHint is the keys that go to the station before and after.
func (m *model) tabHint() string { return m.key(keys.PrevPlace) + " " + m.key(keys.NextPlace) }

func (m *model) drawTabs(a screen.Area) {
	end := 0
	for i, x := range m.tabs() {
		name := " " + m.stations[i].Name + " "
		st := m.look.Quiet
		if panel.Place(i) == m.station {
			st = m.look.Focus.With(screen.Reverse)
			name = "►" + name[1:]
		}
		a.Text(x, 0, name, st)
		end = x + screen.Width(name)
	}
	hint := m.tabHint()
	if named := hint + " stations"; end+screen.Width(named) < a.W() {
		hint = named
	}
	if end+screen.Width(hint) < a.W() {
		a.Right(a.W()-1, 0, hint, m.look.Quiet)
	}
}

// cursorOf is the cell under the cursor, or the place in it that is typed at; nothing while a dialog is open.
func (m *model) cursorOf() (image.Point, bool) {
	r, ok := m.placed.Find(m.at().ID)
	if !ok || m.dialogs.Top() != nil {
		return image.Point{}, false
	}
	var typed *grid.Typed
	if m.typing != nil {
		typed = &m.typing.Typed
	}
	at, ok := m.grids[m.at().ID].Caret(m.cursors[m.at().ID], r.Dx()-2, r.Dy()-2, typed)
	return at.Add(r.Min).Add(image.Pt(1, 1)), ok
}
