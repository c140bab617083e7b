package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour/swirl"
	"pourbench/tui/picture"
)

// measured is what was counted on the face of one bar.
type measured struct {
	shot   picture.Shot // what it was counted on; its size says nothing
	ticket int
	known  bool
	of     swirl.Measure
}

// measuredMsg brings what was counted.
type measuredMsg struct {
	ticket int
	of     swirl.Measure
	err    error
}

// measure has the face counted beside the keyboard, once its picture is drawn with smooth edges and the counts are in sight.
func (m *model) measure() tea.Cmd {
	f := &m.studio.mounts[placeNow]
	if !m.atPicture() || m.studio.play.running || f.print == nil || !f.print.Plate.Fine || f.stop == nil || !f.print.Plate.Shot.Same(f.shot) {
		return nil
	}
	shot := f.shot
	shot.View, shot.Done, shot.W, shot.H, shot.Letters, shot.Flat = picture.Bar, picture.Whole, 0, 0, false, false
	shot.Stands, shot.Cuts, shot.Mosaic = nil, nil, 0
	if m.studio.measured.shot.Same(shot) {
		return nil
	}
	m.studio.measured.shot = shot
	m.studio.measured.ticket++
	ticket := m.studio.measured.ticket
	return func() tea.Msg {
		of, err := picture.Measure(shot)
		return measuredMsg{ticket, of, err}
	}
}

// counted takes what was counted; the counts of a face that has changed since are dropped.
func (m *model) counted(msg measuredMsg) {
	c := &m.studio.measured
	if msg.ticket != c.ticket {
		return
	}
	c.known, c.of = msg.err == nil, msg.of
}
