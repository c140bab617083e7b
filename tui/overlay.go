package tui

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// overlay is what stands over the bench and takes the keys first: a list, a page, a question, a line to type.
type overlay interface {
	mode() keys.Mode
	press(m *Model, k tea.KeyPressMsg) tea.Cmd
	paste(text string)
	click(m *Model, at image.Point) tea.Cmd // in the coordinates of what it drew in
	wheel(by int)
	draw(m *Model, a screen.Area) // the whole screen, the bench below it
}

// overlay returns the topmost overlay, or nil.
func (m *Model) overlay() overlay {
	if len(m.overlays) == 0 {
		return nil
	}
	return m.overlays[len(m.overlays)-1]
}

func (m *Model) push(d overlay) { m.overlays = append(m.overlays, d) }

// pop closes the topmost overlay.
func (m *Model) pop() { m.overlays = m.overlays[:max(len(m.overlays)-1, 0)] }

// middle is a box of at most the given size in the middle of the screen, a little above it.
func middle(a screen.Area, w, h int) image.Rectangle {
	w, h = min(w, a.W()), min(h, a.H())
	x, y := (a.W()-w)/2, (a.H()-h)*2/5
	return image.Rect(x, y, x+w, y+h)
}

// boxed clears a box and draws its border and title; what is inside has a blank column on either side.
func (m *Model) boxed(a screen.Area, r image.Rectangle, title string) screen.Area {
	box := a.At(r)
	box.Clear()
	in := box.Box(m.look.Focus)
	box.Text(2, 0, screen.Clip(" "+title+" ", box.W()-4), m.look.Focus)
	return in.Cut(1, 0, in.W()-2, in.H())
}
