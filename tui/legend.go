package tui

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/tui/look"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// The room of a line of the legend: its sign, its share, and the longest name that is not clipped.
const (
	inkW         = 3
	legendSignW  = inkW + 1
	legendShareW = 5
	legendNameW  = 16
)

// legendW is how wide a line of the legend is, with or without its share.
func (m *model) legendW(share bool) int {
	w := 4
	for _, x := range m.legend() {
		w = max(w, screen.Width(x.name))
	}
	w = min(w, legendNameW) + legendSignW
	if share {
		w += 1 + legendShareW
	}
	return w
}

// flow is how a legend stands below a picture: in columns of one width, row by row.
type flow struct {
	w, columns, rows int
}

// legendFlow lays the legend out in a width; the shares are left out where that saves rows.
func (m *model) legendFlow(room int) flow {
	n := len(m.legend())
	in := func(share bool) flow {
		f := flow{w: m.legendW(share) + legendGap}
		f.columns = max((room+legendGap-1)/f.w, 1)
		f.rows = (n + f.columns - 1) / f.columns
		return f
	}
	with, without := in(true), in(false)
	if without.rows < with.rows {
		return without
	}
	return with
}

// legendEntry is one line of the legend.
type legendEntry struct {
	ink   picture.Ink
	name  string
	aside string
}

// legend lists the jugs in pour order, then those of the icing.
func (m *model) legend() []legendEntry {
	var out []legendEntry
	f := m.studio.mounts[placeNow].print
	add := func(inks []picture.Ink, i int, j pour.JugSheet, letter string) {
		x := legendEntry{ink: picture.Ink{Letter: letter}, name: j.Name, aside: m.facts.Show.Number(j.SharePercent, 0) + " %"}
		if i < len(inks) {
			x.ink = inks[i]
		}
		out = append(out, x)
	}
	var base, top []picture.Ink
	if f != nil {
		base, top = f.Base, f.Top
	}
	for _, jug := range m.inPourOrder() {
		add(base, jug, m.session.Sheet().Base.Jugs[jug], look.Letter(jug))
	}
	d := &m.studio.design
	jugs := len(d.Top) - len(d.Stuffs)
	if icing := m.session.Sheet().Icing; icing != nil {
		for i, j := range icing.Jugs[:min(jugs, len(icing.Jugs))] {
			add(top, i, j, strings.ToLower(look.Letter(i)))
			out[len(out)-1].aside = "icing"
		}
	}
	for i, s := range d.Stuffs {
		x := legendEntry{ink: picture.Ink{Letter: stuffLetter(i)}, name: s.Name, aside: stuffAside(s.Kind)}
		if jugs+i < len(top) {
			x.ink = top[jugs+i]
		}
		out = append(out, x)
	}
	return out
}

// stuffLetter is the sign of something on the loaf beside its jugs: a digit, and small letters from the end where those run out.
func stuffLetter(i int) string {
	if i < 9 {
		return fmt.Sprint(i + 1)
	}
	return string(rune('z' - (i-9)%20))
}

// stuffAside says in a word what a stuff of the picture is.
func stuffAside(k pour.StuffKind) string {
	if k == pour.StuffEmbed {
		return "set"
	}
	return "top"
}

// drawLegend lists letter, colour, name and share, in the order the jugs are poured; the icing's jugs have small letters.
func (m *model) drawLegend(a screen.Area) {
	if a.W() < 8 {
		return
	}
	f := m.legendFlow(a.W())
	for i, x := range m.legend() {
		m.drawEntry(a.Cut(i/f.rows*f.w, i%f.rows, f.w-legendGap, 1), x)
	}
}

func (m *model) drawEntry(a screen.Area, x legendEntry) {
	end := m.drawInk(a, 0, x.ink)
	w := a.W()
	if w >= m.legendW(true) {
		a.Right(w, 0, x.aside, m.look.Quiet)
		w -= legendShareW + 1
	}
	a.Text(end+1, 0, screen.Clip(x.name, w-end-1), screen.Style{})
}

// drawInk draws a letter on its colour; without colour the sign that stands for it and the letter.
func (m *model) drawInk(a screen.Area, x int, k picture.Ink) int {
	if k.Colour == 0 {
		sign := k.Glyph
		if sign == k.Letter {
			sign = ""
		}
		return a.Text(x, 0, screen.Clip(sign+" "+k.Letter, inkW), m.look.Strong)
	}
	return a.Text(x, 0, " "+k.Letter+" ", screen.Style{Fg: k.On, Bg: k.Colour})
}
