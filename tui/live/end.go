package live

import (
	"fmt"

	"pourbench/pour/logbook"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// endLeadW is the room for what stands in front of a line at the end.
const endLeadW = 16

// drawEnd draws what is left when every step is done: what can still be logged, and where the file is.
func (m *Model) drawEnd(a screen.Area, s sizes) {
	title := "all done"
	if m.state.Ended {
		title = m.event() + " over"
	}
	drawLarge(a.Cut(0, 0, a.W(), s.stepH), title, s.stepScale, m.look.Good)
	y := s.stepH
	for _, l := range m.endLines() {
		for i, part := range screen.Wrap(l.Text, a.W()-endLeadW) {
			if i == 0 {
				a.Text(0, y, l.Lead, m.look.Accent)
			}
			a.Text(endLeadW, y, part, m.look.Text)
			y++
		}
	}
}

// endLines lists what can be logged at the end. The file comes last; on a small screen the title line has its name too.
func (m *Model) endLines() []dialog.Line {
	if m.cutting() {
		return m.cutEndLines()
	}
	counts := map[logbook.EventKind]int{}
	for _, e := range m.state.Marks {
		counts[e.Kind]++
	}
	logged := m.fill(fmt.Sprintf("{measure} temperature or weight (%d), {note} note (%d), {outcome} how it came out (%d)", counts[logbook.Read]+counts[logbook.Weighed], counts[logbook.Noted], counts[logbook.Result]))
	lines := []dialog.Line{{Lead: "log", Text: logged}}
	if m.state.Ended {
		lines = append(lines, dialog.Line{Lead: "later", Text: "pourbench logbook cut " + m.ID() + ", when it is firm; cured after the cure"})
	} else {
		lines = append(lines, dialog.Line{Lead: m.key(keys.Finish), Text: "the pour is over"})
	}
	for _, f := range m.superfats {
		if text := m.lyeWords(f.Batch); text != "" {
			lines = append(lines, dialog.Line{Lead: "as weighed", Text: text})
		}
	}
	if m.trialling() && m.state.Ended {
		text := m.trial
		if text == "" {
			text = "is being worked out"
		}
		lines = append(lines, dialog.Line{Lead: "the scent", Text: text})
	}
	return append(lines, dialog.Line{Lead: "file", Text: m.opt.Book.Path(m.ID())})
}
