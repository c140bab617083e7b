package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour/relief"
)

// peak is how high what is on the loaf stands, which decides the shape of its pictures.
type peak struct {
	mm     float64        // above the bar
	of     *relief.Recipe // what is on it; nil: nothing
	kept   *relief.Kept   // shared with the pictures
	known  bool
	due    bool // what is on the loaf has changed since
	ticket int
}

// peakedMsg brings how high it stands.
type peakedMsg struct {
	ticket int
	mm     float64
}

// peakOf builds what is on the loaf, which takes longer than a key may, and says how high it stands, mm.
func peakOf(on *relief.Recipe, kept *relief.Kept) float64 {
	if on == nil {
		return 0
	}
	return kept.Field(on).PeakMM()
}

// raise notes what is on the loaf now. The first time its height is found at once, so that the first frame is as it will stay.
func (p *peak) raise(on *relief.Recipe) {
	if p.known {
		p.of, p.due = on, true
		return
	}
	p.mm, p.known = peakOf(on, p.kept), true
}

// climb has the height found beside the keyboard where it is due; until then the one before stands in.
func (p *peak) climb() tea.Cmd {
	if !p.due {
		return nil
	}
	p.due = false
	p.ticket++
	of, kept, ticket := p.of, p.kept, p.ticket
	return func() tea.Msg { return peakedMsg{ticket, peakOf(of, kept)} }
}

// reached takes a height; that of what has changed since is dropped.
func (p *peak) reached(msg peakedMsg) {
	if msg.ticket == p.ticket {
		p.mm = msg.mm
	}
}
