package batches

import (
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook/life"
	"pourbench/pour/plain"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/look"
	"pourbench/tui/screen"
	"pourbench/tui/terminal"
)

// View draws the page. It writes nothing to the model.
func (m *Model) View() tea.View {
	s := screen.New(m.dialogs.Frame.W, m.dialogs.Frame.H)
	m.draw(s.Area())
	v := tea.NewView(s.String())
	v.AltScreen = true
	v.WindowTitle = m.windowTitle()
	v.Cursor = terminal.Cursor(s)
	v.ReportFocus = true
	if !m.opt.NoMouse {
		v.MouseMode = tea.MouseModeCellMotion
	}
	return v
}

func (m *Model) windowTitle() string {
	if b, ok := m.chosen(); ok && m.inside {
		return plain.Line(b.Name) + " – batches"
	}
	return "batches"
}

func (m *Model) draw(a screen.Area) {
	p := m.place()
	if p.TooSmall {
		listing.DrawTooSmall(a, "the page of batches", m.status.Text())
		return
	}
	m.drawTitle(a.At(p.Title))
	m.drawSearch(a.At(p.Search))
	switch {
	case m.board:
		m.drawBoard(a.At(p.Whole), a.At(listing.Within(p.Whole)))
	default:
		if !p.List.Empty() {
			m.drawList(a.At(p.List), a.At(listing.Within(p.List)))
		}
		if !p.Chosen.Empty() {
			m.drawBatch(a.At(p.Chosen), a.At(listing.Within(p.Chosen)))
		}
	}
	m.status.Draw(a.At(p.Status), m.key(keys.Said), m.look)
	m.drawPhoto(a)
	m.dialogs.Draw(a, m.look)
	dialog.Footer(a.At(p.Footer), m.footKeys(), m.look)
}

// drawTitle names the two pages and today.
func (m *Model) drawTitle(a screen.Area) {
	x := 1
	for i, name := range []string{"Batches", "Season"} {
		st := m.look.Quiet
		if (i == 1) == m.board {
			st = m.look.Focus.With(screen.Underline)
		}
		x = a.Text(x, 0, name, st) + 2
	}
	a.Right(a.W()-1, 0, screen.Clip(m.opt.Today.Weekday().String()+", "+m.opt.Today.String(), a.W()-x-3), m.look.Quiet)
}

// drawSearch draws what is searched for, or how many batches there are and in which order.
func (m *Model) drawSearch(a screen.Area) {
	if m.board {
		return
	}
	m.search.Draw(a, m.counted(), m.fill("{search} and letters"), m.look)
}

// counted says how many batches are shown and in which order.
func (m *Model) counted() string {
	n := fmt.Sprint(len(m.shown))
	if len(m.shown) != len(m.all) {
		n += " of " + fmt.Sprint(len(m.all))
	}
	word := " batches"
	if len(m.all) == 1 {
		word = " batch"
	}
	return n + word + ", by " + orderWords(m.order)
}

// drawList draws the batches that are in sight.
func (m *Model) drawList(box, a screen.Area) {
	box.Box(listing.Edge(!m.inside, m.look))
	c := columnsIn(a.W())
	a.Text(c.name.x, 0, "batch", m.look.Quiet)
	a.Text(c.state.x, 0, "state", m.look.Quiet)
	if c.poured.w > 0 {
		a.Text(c.poured.x, 0, "poured", m.look.Quiet)
	}
	a.Text(c.due.x, 0, screen.Clip("due", c.due.w), m.look.Quiet)
	body := a.Cut(0, 1, a.W(), a.H()-1)
	if len(m.shown) == 0 {
		for y, l := range screen.Wrap(m.nothing(), body.W()) {
			body.Text(0, y, l, m.look.Quiet)
		}
		return
	}
	for y := range min(body.H(), len(m.shown)-m.top) {
		m.drawRow(body.Cut(0, y, body.W(), 1), c, m.shown[m.top+y], m.top+y == m.at)
	}
	if m.top+body.H() < len(m.shown) {
		box.Right(box.W()-2, box.H()-1, fmt.Sprintf(" ↓ %d more ", len(m.shown)-m.top-body.H()), m.look.Accent)
	}
	if m.top > 0 {
		box.Right(box.W()-2, 0, fmt.Sprintf(" ↑ %d more ", m.top), m.look.Accent)
	}
}

// nothing says why the list is empty.
func (m *Model) nothing() string {
	switch {
	case m.fault != nil && len(m.all) == 0:
		return "The logbook cannot be read: " + m.fault.Error()
	case !m.read:
		return "reading the logbook …"
	case len(m.all) == 0:
		return "No pour is in the logbook yet. A plan is poured from the bench; its batch then stands here."
	}
	return m.fill("No batch holds “" + m.search.Text() + "”. {search} changes the search, {back to the list} lets it go.")
}

// drawRow draws a batch on one line.
func (m *Model) drawRow(a screen.Area, c columns, b life.Batch, at bool) {
	m.drawSwatches(a.Cut(c.colours.x, 0, c.colours.w, 1), b.Swatches)
	st := m.look.Text
	if b.State == life.Failed || b.State == life.SoldOut || b.State == life.Trial {
		st = m.look.Quiet
	}
	a.Text(c.name.x, 0, screen.Clip(b.Name, c.name.w), st)
	state, stateSt := string(b.State), m.stateStyle(b.State)
	if b.Fault != nil {
		state, stateSt = "× faulty file", m.look.Wrong
	}
	a.Text(c.state.x, 0, screen.Clip(state, c.state.w), stateSt)
	if c.poured.w > 0 && b.Fault == nil {
		a.Text(c.poured.x, 0, b.Poured.String(), m.look.Quiet)
	}
	text, dueSt := m.dueWords(b)
	a.Text(c.due.x, 0, screen.Clip(text, c.due.w), dueSt)
	if at {
		a.Text(0, 0, "►", m.look.Focus)
		a.Focus(0, 0)
		a.Restyle(c.name.x, 0, a.W()-c.name.x, func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
	}
}

// dueWords is what is due first, and how it is drawn: what is late or of today wants an eye.
func (m *Model) dueWords(b life.Batch) (string, screen.Style) {
	if len(b.Due) == 0 {
		return "", m.look.Quiet
	}
	st := m.look.Text
	if b.Due[0].Day <= m.opt.Today && b.Due[0].Kind != life.DueReady {
		st = m.look.Caution
	}
	return b.Due[0].Text, st
}

// stateStyle is how a state is drawn. It always stands there in words.
func (m *Model) stateStyle(s life.State) screen.Style {
	switch s {
	case life.Ready:
		return m.look.Good
	case life.Failed:
		return m.look.Wrong
	case life.UnderWay, life.InMould:
		return m.look.Accent
	case life.SoldOut, life.Trial:
		return m.look.Quiet
	}
	return m.look.Text
}

// drawSwatches paints the colours of the jugs, the letter of each on its colour; of more than there is room for, the first.
func (m *Model) drawSwatches(a screen.Area, colours []string) {
	for i, hex := range colours {
		if i == a.W()-1 && len(colours) > a.W() {
			a.Text(i, 0, "…", m.look.Quiet)
			return
		}
		st := m.look.Quiet
		if c, ok := screen.Hex(hex); ok {
			st = screen.Style{Fg: look.Readable(c), Bg: c}
		}
		a.Text(i, 0, look.Letter(i), st)
	}
}

// footKeys lists the keys that can act now, the most useful first.
func (m *Model) footKeys() []keys.Binding {
	switch top := m.dialogs.Top(); {
	case top != nil:
		return top.Keys(m.dialogs.Frame)
	case m.search.On:
		return slices.DeleteFunc(m.opt.Keys.Footer(keys.List, 0), func(b keys.Binding) bool { return b.ID == keys.Find })
	}
	return slices.DeleteFunc(m.opt.Keys.Footer(keys.Batching, 0), func(b keys.Binding) bool {
		return m.cannot(b.ID) != "" || m.inside && b.ID == keys.LookAt // there it is the key for what is named beside it
	})
}

// joined writes words one after the other, those that are empty left out.
func joined(by string, words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), by)
}
