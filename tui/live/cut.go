package live

import (
	"fmt"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// noJugs is why what is done with a jug cannot be done at the cut.
const noJugs = "this is the cut: nothing is left in jugs"

// ofJugs says whether an action is one on a jug or its batter.
func ofJugs(id keys.ID) bool {
	return slices.Contains([]keys.ID{
		keys.PickJug, keys.NextJug, keys.PrevJug, keys.SeeStage, keys.NotYet, keys.Trouble, keys.Rescue, keys.NotUsed, keys.Blender,
	}, id)
}

// event is what is under way, in a word.
func (m *Model) event() string {
	if m.cutting() {
		return "cut"
	}
	return "pour"
}

// masses are the pieces of the loaf, planned and true.
func (m *Model) masses() []underway.Mass { return underway.Masses(m.sheet(), m.state.Marks) }

// mass is the piece a step weighs; false where it weighs none.
func (m *Model) mass(s underway.Step) (underway.Mass, bool) {
	if !m.cutting() {
		return underway.Mass{}, false
	}
	for _, x := range m.masses() {
		if x.Step == s.Key {
			return x, true
		}
	}
	return underway.Mass{}, false
}

// weighsBar reports whether an event is the weight of a bar; trims and slice may weigh nothing.
func (m *Model) weighsBar(e logbook.Event) bool {
	return m.cutting() && slices.ContainsFunc(m.masses(), func(x underway.Mass) bool { return x.Bar > 0 && x.Step == e.Step })
}

// pieceName is what a step of the cut weighs.
func (m *Model) pieceName(step string) string {
	for _, x := range m.masses() {
		if x.Step == step {
			return x.Name
		}
	}
	return step
}

// startsMass says whether a key begins a weight: with gloves on, a digit is all it takes where a piece is to be weighed.
func (m *Model) startsMass(key string) bool {
	now, ok := m.now()
	if !ok || len(key) != 1 || key[0] < '0' || key[0] > '9' {
		return false
	}
	_, weighs := m.mass(now.Step)
	return weighs && !m.state.Ended
}

// typeMass opens the line for the weight of the piece under way, with what was typed of it.
func (m *Model) typeMass(typed string) {
	m.status.Clear()
	m.typeMeasure()
	m.dialogs.Paste(typed)
}

// measureTitle asks what is to be typed.
func (m *Model) measureTitle() string {
	if m.cutting() {
		return "What it really weighs"
	}
	return "What it really weighs, or how warm it is"
}

// cutCaption says what the clock counts at the cut.
func (m *Model) cutCaption() string {
	if _, ok := m.elapsed(); ok {
		return "since the cut began"
	}
	met, ok := logbook.LyeInAt(m.state.Marks, pour.Base)
	if !ok {
		return "not begun"
	}
	return fmt.Sprintf("not begun; %.0f h since lye met oil, planned %.4g h", (m.live.Run() - met).Hours(), m.sheet().Plan.Bed.CutAfterH)
}

// askLeaveCut asks before the cut is left.
func (m *Model) askLeaveCut() {
	m.dialogs.Open(&dialog.Question{Title: "Leave the screen?", Answers: []dialog.Answer{
		{Keys: "yq", Text: "Leave. What was marked is kept; the cut is taken up again with: pourbench logbook cut " + m.ID(), Do: m.leave},
		{Keys: "n", Text: "Stay."},
		{Keys: "e", Text: "End it here: the cut is over, what was not weighed stays unknown.", Do: func() tea.Cmd {
			if m.told(m.run.Mark(logbook.Event{Kind: logbook.Ended}), "the cut is over") != nil {
				return nil
			}
			return m.leave()
		}},
	}})
}

// cutEndLines says what came of the cut, and what is still to come.
func (m *Model) cutEndLines() []dialog.Line {
	lines := []dialog.Line{{Lead: "bars", Text: m.sumText()}}
	if !m.state.Ended {
		lines = append(lines, dialog.Line{Lead: m.key(keys.Finish), Text: "the cut is over"})
	}
	later := "pourbench logbook cured " + m.ID() + " GRAMS after the cure"
	s := m.sheet()
	for _, st := range s.CutStints() {
		if s.Cured(st) {
			later += "; then " + s.Tell(st)
		}
	}
	return append(lines, dialog.Line{Lead: "later", Text: later}, dialog.Line{Lead: "file", Text: m.opt.Book.Path(m.ID())})
}

// sumText says what all pieces weighed so far weigh, beside what was planned for them.
func (m *Model) sumText() string {
	show := m.sheet().Plan.Show
	var all, planned float64
	n, list := 0, m.masses()
	known := true
	for _, x := range list {
		if x.TrueG.Known {
			n++
			all += x.TrueG.V
			planned += x.PlannedG.V
			known = known && x.PlannedG.Known
		}
	}
	if n == 0 {
		return fmt.Sprintf("none of %d pieces weighed yet", len(list))
	}
	text := fmt.Sprintf("%d of %d pieces weighed, %s", n, len(list), show.Weight(all))
	if known {
		text += fmt.Sprintf(", planned %s (%s)", show.Weight(planned), signed(show, all-planned))
	}
	return text
}

// signed draws a difference of masses with its sign.
func signed(show pour.Show, g float64) string {
	text := show.Weight(g)
	if g >= 0 {
		text = "+" + text
	}
	return text
}

// massWords is a piece with its planned and its true mass.
func (m *Model) massWords(x underway.Mass) string {
	show := m.sheet().Plan.Show
	text := x.Name + "  " + show.Figure(x.PlannedG, show.Weight)
	if x.TrueG.Known {
		text += " → " + show.Weight(x.TrueG.V)
	}
	if off := x.OffG(); off.Known {
		text += "  " + signed(show, off.V)
	}
	return text
}

// massW is how wide a piece is drawn.
const massW = 39

// drawMasses lists the pieces, planned and true, in as many columns as there is room for, those about the one under way.
func (m *Model) drawMasses(a screen.Area) {
	list := m.masses()
	columns := max(a.W()/massW, 1)
	rows := max(a.H(), 1)
	now, _ := m.now()
	at := max(slices.IndexFunc(list, func(x underway.Mass) bool { return x.Step == now.Key }), 0)
	from := min(max(at/rows-columns+1, 0)*rows, max(len(list)-1, 0)) // whole columns, so that none jumps while bars are typed
	for i, x := range list[from:] {
		col, row := i/rows, i%rows
		if col >= columns {
			break
		}
		st := m.look.Quiet
		if x.TrueG.Known {
			st = m.look.Text
		}
		if x.Step == now.Key {
			st = m.look.Focus
			a.Text(col*massW, row, "►", st)
		}
		a.Text(col*massW+2, row, screen.Clip(m.massWords(x), massW-3), st)
	}
}

// What planned and true mass mean, in short and in full.
const (
	cutShort   = "Planned is before anything dries; a day old it is some percent lighter."
	cutMeaning = "Planned: what the plan puts into the piece, with its icing, embeds and topping, before anything dries. True: what your scale says; a loaf that has stood a day " +
		"is usually some percent lighter (common practice, no source)."
)

// drawCutMeaning sums up what was weighed and says what the figures of the cut mean, in full where there is room.
func (m *Model) drawCutMeaning(a screen.Area) {
	a.Text(0, 0, screen.Clip(m.sumText(), a.W()), m.look.Strong)
	lines := screen.Wrap(cutMeaning, a.W())
	if len(lines) > a.H()-1 {
		lines = []string{screen.Clip(cutShort, a.W())}
	}
	for y, l := range lines {
		if y+1 < a.H() {
			a.Text(0, y+1, l, m.look.Quiet)
		}
	}
}
