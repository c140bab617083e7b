package tui

import (
	"image"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// item is one entry of a list.
type item struct {
	id     string
	name   string
	aside  string        // said in the list, beside the name
	detail []string      // said of the highlighted entry, one paragraph each
	swatch screen.Colour // painted before the name
}

// list is a list that is searched by typing.
type list struct {
	title  string
	items  []item
	free   string // what Enter does with typed text that matches nothing; empty: it is refused
	typed  entry.Entry
	at     int // the highlighted entry of those that match
	choose func(m *Model, id string) tea.Cmd
}

// The size a list likes.
const (
	listW = 96
	listH = 24
)

func (l *list) mode() keys.Mode { return keys.List }

func (l *list) paste(text string) { l.typed.Insert(text); l.at = 0 }

func (l *list) wheel(by int) { l.move(by) }

// matches lists the entries that hold every word typed, in their name, aside or details.
func (l *list) matches() []item {
	words := strings.Fields(strings.ToLower(l.typed.Text()))
	var first, rest []item
	for _, it := range l.items {
		name := strings.ToLower(it.name)
		all := strings.ToLower(it.id+" "+it.aside+" "+strings.Join(it.detail, " ")) + " " + name
		hit, inName := true, true
		for _, w := range words {
			hit = hit && strings.Contains(all, w)
			inName = inName && strings.Contains(name, w)
		}
		switch {
		case hit && inName:
			first = append(first, it)
		case hit:
			rest = append(rest, it)
		}
	}
	return append(first, rest...)
}

func (l *list) move(by int) {
	l.at = min(max(l.at+by, 0), max(len(l.matches())-1, 0))
}

func (l *list) press(m *Model, k tea.KeyPressMsg) tea.Cmd {
	b, _ := keys.Lookup(keys.List, 0, k.String())
	switch b.ID {
	case keys.Close:
		m.pop()
	case keys.Choose:
		return l.take(m)
	case keys.Up:
		l.move(-1)
	case keys.Down:
		l.move(1)
	case keys.PageUp:
		l.move(-listH / 2)
	case keys.PageDown:
		l.move(listH / 2)
	default:
		if k.Text != "" {
			l.typed.Insert(k.Text)
			l.at = 0
		} else if l.typed.Press(k) {
			l.at = 0
		}
	}
	return nil
}

// take closes the list with the highlighted entry, or with the typed text where that is allowed.
func (l *list) take(m *Model) tea.Cmd {
	found := l.matches()
	if len(found) == 0 {
		if l.free == "" || l.typed.Text() == "" {
			m.refuse("nothing matches " + l.typed.Text() + ": take letters away, or Esc leaves the list")
			return nil
		}
		m.pop()
		return l.choose(m, l.typed.Text())
	}
	m.pop()
	return l.choose(m, found[min(l.at, len(found)-1)].id)
}

func (l *list) rect(a screen.Area) image.Rectangle {
	return middle(a, min(listW, a.W()-4), min(listH, a.H()-4))
}

// rows is where the entries stand, in screen coordinates.
func (l *list) rows(a screen.Area) image.Rectangle {
	r := l.rect(a)
	w := r.Dx() - 4
	if r.Dx() >= listW-20 {
		w = w * 45 / 100
	}
	bottom := r.Max.Y - 1
	if r.Dx() < listW-20 {
		bottom -= 4 // the details stand below the entries
	}
	return image.Rect(r.Min.X+2, r.Min.Y+2, r.Min.X+2+w, bottom)
}

// first is the first entry shown so that the highlighted one is in sight.
func (l *list) first(rows int) int { return max(l.at-rows+1, 0) }

func (l *list) click(m *Model, at image.Point) tea.Cmd {
	r := l.rows(screen.New(m.w, m.h).Area())
	if !at.In(r) {
		return nil
	}
	i := l.first(r.Dy()) + at.Y - r.Min.Y
	if i >= len(l.matches()) {
		return nil
	}
	if i == l.at {
		return l.take(m)
	}
	l.at = i
	return nil
}

func (l *list) draw(m *Model, a screen.Area) {
	in := m.boxed(a, l.rect(a), l.title)
	in.Text(0, 0, "search", m.look.Quiet)
	l.typed.Draw(in, 7, 0, in.W()-7, m.look.Typing)
	r := l.rows(a)
	found := l.matches()
	if len(found) == 0 {
		text := "nothing matches"
		if l.free != "" {
			text = "Enter: " + l.free
		}
		a.At(r).Text(0, 0, text, m.look.Quiet)
		return
	}
	first := l.first(r.Dy())
	rows := a.At(r)
	for y := range min(r.Dy(), len(found)-first) {
		it := found[first+y]
		x := 2
		if it.swatch != 0 {
			rows.Cut(x, y, 2, 1).Fill(" ", screen.Style{Bg: it.swatch})
			x += 3
		}
		end := rows.Text(x, y, screen.Clip(it.name, rows.W()-x), screen.Style{})
		if room := rows.W() - end - 2; room > 3 {
			aside := screen.Clip(it.aside, room)
			rows.Right(rows.W(), y, aside, m.look.Quiet)
		}
		if first+y == l.at {
			rows.Text(0, y, "►", m.look.Focus)
			rows.Restyle(2, y, rows.W()-2, func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
		}
	}
	l.drawDetail(m, a, found[min(l.at, len(found)-1)])
}

// drawDetail says all about the highlighted entry: beside the list, or below it on a narrow screen.
func (l *list) drawDetail(m *Model, a screen.Area, it item) {
	box, rows := l.rect(a), l.rows(a)
	r := image.Rect(rows.Max.X+3, rows.Min.Y, box.Max.X-2, box.Max.Y-1)
	if rows.Max.Y < box.Max.Y-1 {
		r = image.Rect(rows.Min.X, rows.Max.Y, box.Max.X-2, box.Max.Y-1)
		for x := range r.Dx() {
			a.At(r).Text(x, 0, "─", m.look.Rule)
		}
		r.Min.Y++
	}
	out := a.At(r)
	y := 0
	for i, par := range it.detail {
		st := screen.Style{}
		if i == 0 {
			st = m.look.Strong
		}
		for _, line := range screen.Wrap(par, out.W()) {
			out.Text(0, y, line, st)
			y++
		}
	}
}
