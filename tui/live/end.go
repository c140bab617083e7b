package live

import (
	"fmt"

	"pourbench/pour/logbook"
	"pourbench/tui/screen"
)

// drawEnd draws what is left when every step is done: what can still be logged, and where the file is.
func (m *Model) drawEnd(a screen.Area, s sizes) {
	title := "all done"
	if m.state.Ended {
		title = "pour over"
	}
	drawLarge(a.Cut(0, 0, a.W(), s.stepH), title, s.stepScale, m.look.Good)
	y := s.stepH
	for _, l := range m.endLines() {
		for i, part := range screen.Wrap(l.text, a.W()-pageLeadW) {
			if i == 0 {
				a.Text(0, y, l.lead, m.look.Accent)
			}
			a.Text(pageLeadW, y, part, m.look.Text)
			y++
		}
	}
}

// endLines lists what can be logged at the end. The file comes last; on a small screen the title line has its name too.
func (m *Model) endLines() []line {
	counts := map[logbook.EventKind]int{}
	for _, e := range m.state.Marks {
		counts[e.Kind]++
	}
	logged := fmt.Sprintf("w temperature or weight (%d), n note (%d), o how it came out (%d)", counts[logbook.Read]+counts[logbook.Weighed], counts[logbook.Noted], counts[logbook.Result])
	lines := []line{{lead: "log", text: logged}}
	if m.state.Ended {
		lines = append(lines, line{lead: "later", text: "pourbench logbook cut " + m.ID() + " GRAMS, and cured after the cure"})
	} else {
		lines = append(lines, line{lead: "Space", text: "the pour is over"})
	}
	if m.trialling() && m.state.Ended {
		text := m.trial
		if text == "" {
			text = "is being worked out"
		}
		lines = append(lines, line{lead: "the scent", text: text})
	}
	return append(lines, line{lead: "file", text: m.opt.Book.Path(m.ID())})
}
