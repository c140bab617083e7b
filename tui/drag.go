package tui

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/panel"
)

// held is what the mouse drags: a cell of a drawing.
type held struct {
	panel *panel.Panel
	in    image.Rectangle // within the panel's border
	at    image.Point     // where the pointer was
}

// grab takes the cursor to the cell of a drawing that a click takes hold of; until the button is let go, it follows the pointer.
func (m *model) grab(p *panel.Panel, in image.Rectangle, at image.Point) {
	c, ok := p.Grab(m.facts, in.Size(), at.Sub(in.Min), m.cursors[p.ID])
	if !ok {
		return
	}
	m.cursors[p.ID] = c
	m.held = &held{p, in, at}
}

// drag moves what is held to where the pointer is. All of one drag is one edit to undo.
func (m *model) drag(msg tea.MouseMotionMsg) {
	h, at := m.held, image.Pt(msg.X, msg.Y)
	if h == nil || at == h.at || m.dialogs.Top() != nil {
		return
	}
	do := h.panel.Drag(m.facts, h.in.Size(), h.at.Sub(h.in.Min), at.Sub(h.in.Min), m.cursors[h.panel.ID])
	h.at = at
	if do.Edit == nil {
		return
	}
	if err := m.session.Nudge(do.Name, do.Edit); err != nil {
		m.refuse(reason(err))
		return
	}
	m.status.Clear()
}
