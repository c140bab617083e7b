package stockroom

import (
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/plain"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
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
	if r, ok := m.chosen(); ok && m.inside {
		return plain.Line(r.name+" "+r.pack.ID) + " – stock"
	}
	return "stock"
}

// place is where the parts stand now.
func (m *Model) place() listing.Place {
	return listing.Places(m.dialogs.Frame.W, m.dialogs.Frame.H, m.inside, false)
}

// settle brings what is chosen into sight.
func (m *Model) settle() {
	p := m.place()
	m.list.Settle(len(m.shown), p.Rows())
	r, ok := m.chosen()
	if m.inside = m.inside && ok; !m.inside {
		m.story.Mark = 0
	}
	if area := listing.Within(p.Chosen); ok && !area.Empty() {
		m.story.Settle(m.told(r, area.Dx()), len(m.marks(r)), area.Dy())
	}
}

func (m *Model) draw(a screen.Area) {
	p := m.place()
	if p.TooSmall {
		listing.DrawTooSmall(a, "the page of stock", m.status.Text())
		return
	}
	title := a.At(p.Title)
	x := title.Text(1, 0, "Stock", m.look.Focus.With(screen.Underline))
	title.Right(title.W()-1, 0, screen.Clip(m.opt.Today.Weekday().String()+", "+m.opt.Today.String(), title.W()-x-3), m.look.Quiet)
	m.search.Draw(a.At(p.Search), m.counted(), m.fill("{search} and letters"), m.look)
	if !p.List.Empty() {
		m.drawList(a.At(p.List), a.At(listing.Within(p.List)))
	}
	if !p.Chosen.Empty() {
		box := a.At(p.Chosen)
		box.Box(listing.Edge(m.inside, m.look))
		if r, ok := m.chosen(); ok {
			in := a.At(listing.Within(p.Chosen))
			m.story.Draw(box, in, heading(r), m.told(r, in.W()), m.inside, m.look)
		}
	}
	m.status.Draw(a.At(p.Status), m.opt.Keys.Name(keys.Stocking, keys.Said), m.look)
	m.dialogs.Draw(a, m.look)
	dialog.Footer(a.At(p.Footer), m.footKeys(), m.look)
}

// heading is what stands over what is told of a line.
func heading(r row) string {
	if r.isPack {
		return r.name + ", " + r.pack.ID
	}
	return r.name
}

// counted says how much there is and what it cost.
func (m *Model) counted() string {
	n := len(m.shelves.state.Held)
	text := fmt.Sprintf("%d %s, %d %s", n, noun(n, "material"), m.shelves.packs, noun(m.shelves.packs, "pack"))
	if m.shelves.value.Sign() != 0 {
		text += ", " + m.money(m.shelves.value)
	}
	if m.search.Text() != "" {
		return "found of " + text
	}
	return text
}

func noun(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

// cents is how many digits after the point money is shown with.
const cents = 2

// money writes an amount as it is shown: rounded to the cent, half up, with the ledger's currency.
func (m *Model) money(a money.Amount) string {
	return strings.TrimSpace(a.Over(1, cents).String() + " " + m.shelves.state.Currency)
}

// amount is a quantity with its unit.
func amount(q lot.Quantity, k lot.Kind) string {
	if k.Counted() {
		return q.String() + " pcs"
	}
	return q.String() + " " + k.Unit()
}

// columns are the list's columns in a width; those that are 0 wide are left out.
type columns struct{ name, lot, left, reserved, opened, expires, value column }

type column struct{ x, w int }

// The widths of the columns that do not grow, and the widths from which the others have room.
const (
	mark       = 2
	lotW       = 10
	leftW      = 12
	openedW    = 10
	expiresW   = 12
	valueW     = 12
	lotFrom    = 56
	valueFrom  = 74
	openedFrom = 96
)

// columnsIn lays the columns out; the name takes what is left.
func columnsIn(w int) columns {
	var c columns
	fixed := []struct {
		col   *column
		w     int
		where int // the width from which it is there
	}{{&c.lot, lotW, lotFrom}, {&c.left, leftW, 0}, {&c.reserved, leftW, openedFrom}, {&c.opened, openedW, openedFrom}, {&c.expires, expiresW, 0}, {&c.value, valueW, valueFrom}}
	rest := w - mark
	for _, f := range fixed {
		if w >= f.where {
			rest -= f.w + 1
		}
	}
	c.name = column{mark, max(rest, 1)}
	x := mark + c.name.w + 1
	for _, f := range fixed {
		if w >= f.where {
			*f.col = column{x, f.w}
			x += f.w + 1
		}
	}
	return c
}

// drawList draws the lines that are in sight, under the names of the columns.
func (m *Model) drawList(box, a screen.Area) {
	box.Box(listing.Edge(!m.inside, m.look))
	c := columnsIn(a.W())
	a.Text(c.name.x, 0, "material, pack", m.look.Quiet)
	for _, h := range []struct {
		col  column
		name string
		end  bool // it stands at the end of the column
	}{{c.lot, "lot", false}, {c.left, "left", true}, {c.reserved, "reserved", true}, {c.opened, "opened", false}, {c.expires, "expires", false}, {c.value, "cost", true}} {
		switch {
		case h.col.w == 0:
		case h.end:
			a.Right(h.col.x+h.col.w, 0, h.name, m.look.Quiet)
		default:
			a.Text(h.col.x, 0, h.name, m.look.Quiet)
		}
	}
	body := a.Cut(0, 1, a.W(), a.H()-1)
	if len(m.shown) == 0 {
		for y, l := range screen.Wrap(m.nothing(), body.W()) {
			body.Text(0, y, l, m.look.Quiet)
		}
		return
	}
	for y := range min(body.H(), len(m.shown)-m.list.Top) {
		m.drawRow(body.Cut(0, y, body.W(), 1), c, m.shown[m.list.Top+y], m.list.Top+y == m.list.At)
	}
	m.list.DrawMore(box, len(m.shown), body.H(), m.look)
}

// nothing says why the list is empty.
func (m *Model) nothing() string {
	switch {
	case m.fault != nil && len(m.shelves.rows) == 0:
		return "The ledger cannot be read: " + m.fault.Error()
	case !m.read:
		return "reading the ledger …"
	case len(m.shelves.rows) == 0:
		return m.fill("Nothing lies on the shelves yet. {receive} writes in what came, a line for each thing: olive 5 kg 38.50 lot A12 exp 2027-05-31")
	}
	return m.fill("Nothing holds “" + m.search.Text() + "”. {search} changes the search, {back to the list} lets it go.")
}

// drawRow draws a line of the list.
func (m *Model) drawRow(a screen.Area, c columns, r row, at bool) {
	cells := m.cells(r)
	name := cells.name
	if r.isPack {
		name = "  " + name
	}
	a.Text(c.name.x, 0, screen.Clip(name, c.name.w), cells.style)
	if c.lot.w > 0 {
		a.Text(c.lot.x, 0, screen.Clip(cells.lot, c.lot.w), cells.style)
	}
	a.Right(c.left.x+c.left.w, 0, screen.Clip(cells.left, c.left.w), cells.style)
	if c.reserved.w > 0 {
		a.Right(c.reserved.x+c.reserved.w, 0, screen.Clip(cells.reserved, c.reserved.w), m.look.Quiet)
		a.Text(c.opened.x, 0, cells.opened, m.look.Quiet)
	}
	a.Text(c.expires.x, 0, screen.Clip(cells.expires, c.expires.w), cells.dated)
	if c.value.w > 0 {
		a.Right(c.value.x+c.value.w, 0, screen.Clip(cells.value, c.value.w), m.look.Quiet)
	}
	if at {
		a.Text(0, 0, "►", m.look.Focus)
		a.Focus(0, 0)
		a.Restyle(c.name.x, 0, a.W()-c.name.x, func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
	}
}

// cells is what stands in the columns of a line.
type cells struct {
	name, lot, left, reserved, opened, expires, value string
	style, dated                                      screen.Style
}

func (m *Model) cells(r row) cells {
	today, kind := m.shelves.state.Today, r.material.Kind
	if !r.isPack {
		usable, blocked := r.holding.Left(today)
		_, cost := r.holding.Layers.Total()
		c := cells{name: r.name, left: amount(usable, kind), value: cost.Over(1, cents).String(), style: m.look.Strong, dated: m.look.Wrong}
		if blocked > 0 {
			c.expires = "× past date"
		}
		if r.holding.Reserved > 0 {
			c.reserved = amount(r.holding.Reserved, kind)
		}
		return c
	}
	p := r.pack
	c := cells{name: p.ID, lot: p.Lot, left: amount(p.Left, kind), style: m.look.Text, dated: m.look.Text}
	if p.Opened != 0 {
		c.opened = p.Opened.String()
	}
	if p.Left <= 0 {
		c.style, c.dated = m.look.Quiet, m.look.Quiet
	}
	switch e := expiryOf(p, today); {
	case e == undated:
	case e == past && p.Left > 0:
		c.expires, c.dated, c.style = "× "+p.Expires.String(), m.look.Wrong, m.look.Quiet
	case e == soon && p.Left > 0:
		c.expires, c.dated = "! "+p.Expires.String(), m.look.Caution
	default:
		c.expires = "  " + p.Expires.String()
	}
	return c
}

// footKeys lists the keys that can act now, the most useful first.
func (m *Model) footKeys() []keys.Binding {
	switch top := m.dialogs.Top(); {
	case top != nil:
		return top.Keys(m.dialogs.Frame)
	case m.search.On:
		return slices.DeleteFunc(m.opt.Keys.Footer(keys.List, 0), func(b keys.Binding) bool { return b.ID == keys.Find })
	}
	return slices.DeleteFunc(m.opt.Keys.Footer(keys.Stocking, 0), func(b keys.Binding) bool {
		return m.cannot(b.ID) != "" || m.inside && b.ID == keys.LookAt // there it is the key for what is named beside it
	})
}

// plural is so many of something.
func plural(n int, word string) string { return fmt.Sprintf("%d %s", n, noun(n, word)) }
