package tui

import (
	"image"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
	"pourbench/tui/screen"
)

// wheelRows is how far one notch of the wheel goes.
const wheelRows = 3

// click takes a click to a dialog, a tab, the warnings or a cell. A click on the cell under the cursor changes it.
func (m *model) click(msg tea.MouseClickMsg) tea.Cmd {
	at := image.Pt(msg.X, msg.Y)
	if msg.Button != tea.MouseLeft || m.placed.TooSmall {
		return nil
	}
	switch {
	case at.In(m.placed.Footer):
		return m.clickFooter(at.X)
	case at.In(m.placed.Status):
		return m.clickStatus()
	case m.dialogs.Top() != nil:
		return m.dialogs.Click(msg, m.refuse)
	}
	if m.typing != nil && !m.commit() {
		return nil
	}
	if at.In(m.placed.Tabs) {
		m.clickTab(at.X)
		return nil
	}
	if at.In(m.placed.Warnings) && !m.placed.Boxed {
		m.readWarnings()
		return nil
	}
	if at.In(m.placed.Face) {
		m.station = panel.Swirl
		return nil
	}
	hit, ok := m.placed.Hit(at)
	if !ok {
		return nil
	}
	m.clickPanel(hit, at)
	return nil
}

// clickFooter does what the footer names under the pointer, as its key would.
func (m *model) clickFooter(x int) tea.Cmd {
	id, nth, ok := dialog.FootAt(m.placed.Footer.Dx(), m.footKeys(), x)
	switch {
	case !ok:
	case m.dialogs.Top() != nil:
		return m.dialogs.Act(id, m.refuse)
	case m.typing != nil:
		m.actTyping(id)
	default:
		b, _ := m.opt.Keys.Find(keys.Bench, id)
		return m.perform(b.InFooter()+" ("+string(b.ID)+")", b, nth)
	}
	return nil
}

// clickStatus reads in full what the line says: the messages, or where the figure under the cursor comes from that it hints at.
func (m *model) clickStatus() tea.Cmd {
	cell, _, _ := m.cell()
	switch {
	case m.status.Text() != "":
		m.dialogs.Open(m.status.Page(m.look))
	case cell.Hint != "" && m.dialogs.Top() == nil && m.typing == nil:
		m.explain()
	}
	return nil
}

func (m *model) clickTab(x int) {
	for s, from := range m.tabs() {
		if x >= from && x < from+screen.Width(m.stations[s].Name)+2 {
			m.station = panel.Place(s) // where tabs share a blank, it is the later one's, as it is drawn
		}
	}
}

func (m *model) clickPanel(hit layout.Placed, at image.Point) {
	p := m.panel(hit.ID)
	was := m.at() == p
	m.focus[m.station] = p
	if p.Easel {
		m.clickFace(at)
		return
	}
	in := hit.Rect.Inset(1)
	if p.Grab != nil && at.In(in) {
		m.grab(p, in, at)
		return
	}
	if !at.In(in) || p.Draw != nil || p.Aside != nil && !was { // what it shows with the keys stands elsewhere
		return
	}
	c, ok := m.grids[p.ID].Hit(m.cursors[p.ID], in.Dx(), in.Dy(), at.Sub(in.Min))
	if !ok {
		return
	}
	again := was && c == m.cursors[p.ID]
	m.cursors[p.ID] = c
	if cell, _, ok := m.cell(); ok && again && cell.Edits() {
		m.changeCell(cell)
	}
}

// panel is a panel of the station by its name.
func (m *model) panel(id layout.ID) *panel.Panel {
	return m.panels[slices.IndexFunc(m.panels, func(p *panel.Panel) bool { return p.ID == id })]
}

// wheel scrolls the dialog or the panel under the pointer.
func (m *model) wheel(msg tea.MouseWheelMsg) tea.Cmd {
	by := wheelRows
	if msg.Button == tea.MouseWheelUp {
		by = -wheelRows
	}
	if m.dialogs.Top() != nil {
		m.dialogs.Wheel(msg)
		return nil
	}
	if m.typing != nil {
		return nil
	}
	if hit, ok := m.placed.Hit(image.Pt(msg.X, msg.Y)); ok {
		if m.panel(hit.ID).Easel {
			m.turnBar(by / wheelRows)
			return nil
		}
		m.cursors[hit.ID] = m.grids[hit.ID].Down(m.cursors[hit.ID], by)
	}
	return nil
}
