package live

import (
	"strings"

	"pourbench/tui/screen"
)

// boxW is the width a box likes.
const boxW = 84

// boxed clears a box over the jugs, which leaves clock and step in sight where it can, and returns what is inside.
func (m *Model) boxed(a screen.Area, lines int, title string) screen.Area {
	w, h := min(boxW, a.W()-4), min(lines+2, a.H()-2)
	box := a.Cut((a.W()-w)/2, a.H()-1-h, w, h)
	box.Clear()
	in := box.Box(m.look.Focus)
	box.Text(2, 0, screen.Clip(" "+title+" ", box.W()-4), m.look.Focus)
	return in.Cut(1, 0, in.W()-2, in.H())
}

// drawQuestion draws a question with one line or more for each answer, its key in front.
func (m *Model) drawQuestion(a screen.Area) {
	const keyW = 4
	w := min(boxW, a.W()-4) - 4 - keyW
	lines := 1
	for _, c := range m.question.choices {
		lines += len(screen.Wrap(c.text, w))
	}
	in := m.boxed(a, lines+1, m.question.title)
	y := 0
	for _, c := range m.question.choices {
		in.Text(0, y, c.keys[0], m.look.Accent.With(screen.Bold))
		for _, l := range screen.Wrap(c.text, w) {
			in.Text(keyW, y, l, m.look.Text)
			y++
		}
	}
	in.Text(0, in.H()-1, screen.Clip(m.status.text, in.W()), m.status.styled(m.look))
}

// drawTyping draws the line being typed, what it is about, and why it was refused.
func (m *Model) drawTyping(a screen.Area) {
	t := m.typing
	w := min(boxW, a.W()-4) - 4
	var refused []string
	if t.refused != "" {
		refused = screen.Wrap("× "+t.refused, w)
	}
	in := m.boxed(a, 3+len(refused), t.title)
	lead := ""
	if len(t.things) > 0 {
		lead = m.thingWords(t.things[t.at])
	}
	in.Text(0, 0, screen.Clip(lead, in.W()), m.look.Strong)
	t.text.Draw(in, 0, 1, in.W(), m.look.Typing)
	for y, l := range refused {
		in.Text(0, 2+y, l, m.look.Wrong)
	}
}

// thingWords names what is measured, its unit and what the plan says.
func (m *Model) thingWords(t thing) string {
	show := m.sheet().Plan.Show
	_, unit := show.ToUnit(0, t.unit)
	planned := show.Figure(t.planned, show.Weight)
	if strings.HasPrefix(unit, "°") {
		planned = show.Figure(t.planned, show.Temp)
	}
	return t.name + " in " + unit + ", planned " + planned
}
