package tui

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/layout"
	"pourbench/tui/screen"
)

// wheelRows is how far one notch of the wheel goes.
const wheelRows = 3

// click takes a click to a dialog, a tab, the warnings or a cell. A click on the cell under the cursor changes it.
func (m *Model) click(msg tea.MouseClickMsg) tea.Cmd {
	at := image.Pt(msg.X, msg.Y)
	if msg.Button != tea.MouseLeft || m.placed.TooSmall {
		return nil
	}
	if m.dialogs.Top() != nil {
		return m.answered(m.dialogs.Click(msg))
	}
	if m.typing != nil && !m.commit() {
		return nil
	}
	if at.In(m.placed.Tabs) {
		m.clickTab(at.X)
		return nil
	}
	if at.In(m.placed.Warnings) {
		m.dialogs.Open(m.warningsPage())
		return nil
	}
	if at.In(m.placed.Face) {
		m.station = layout.Swirl
		return nil
	}
	hit, ok := m.placed.Hit(at)
	if !ok {
		return nil
	}
	m.clickPanel(hit, at)
	return nil
}

func (m *Model) clickTab(x int) {
	for s, from := range tabs() {
		if x >= from && x < from+screen.Width(layout.Station(s).String())+2 {
			m.station = layout.Station(s)
		}
	}
}

func (m *Model) clickPanel(hit layout.Placed, at image.Point) {
	p := hit.Panel
	was := m.at() == p
	m.focus[m.station] = p
	if p.Kind == layout.Face {
		m.clickFace(at)
		return
	}
	g := m.grids[p]
	in := image.Rect(hit.Rect.Min.X+1, hit.Rect.Min.Y+1, hit.Rect.Max.X-1, hit.Rect.Max.Y-1)
	if !at.In(in) || p.Kind == layout.Clock {
		return
	}
	c, ok := g.Hit(m.cursors[p], in.Dx(), in.Dy(), at.Sub(in.Min))
	if !ok {
		return
	}
	again := was && c == m.cursors[p]
	m.cursors[p] = c
	if cell, _, ok := m.cell(); ok && again && cell.Edits() {
		m.changeCell(cell)
	}
}

// wheel scrolls the dialog or the panel under the pointer.
func (m *Model) wheel(msg tea.MouseWheelMsg) tea.Cmd {
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
		if hit.Panel.Kind == layout.Face {
			m.turnBar(by / wheelRows)
			return nil
		}
		m.cursors[hit.Panel] = m.grids[hit.Panel].Down(m.cursors[hit.Panel], by)
	}
	return nil
}
