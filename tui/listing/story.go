package listing

import (
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Line is a line of what is told of an entry.
type Line struct {
	Lead  string // words before it
	Text  string
	Style screen.Style
	Head  bool                // its lead begins a part
	Mark  int                 // which of the marks it tells, from 1; 0: none
	Draw  func(a screen.Area) // draws it in the place of its text, which says the same in words; nil: the text is drawn
	Rows  int                 // so many lines are drawn by Draw, those after it are empty; 0: one
}

// LeadW is the room that the words before a line have.
const LeadW = 12

// Broken breaks a line to a width, what goes on under its text.
func (l Line) Broken(w int) []Line {
	if l.Draw != nil || l.Head {
		return []Line{l}
	}
	parts := screen.Wrap(l.Text, max(w-LeadW, 10))
	if len(parts) == 0 {
		return []Line{l}
	}
	out := make([]Line, len(parts))
	for i, p := range parts {
		out[i] = Line{Text: p, Style: l.Style, Mark: l.Mark}
	}
	out[0].Lead = l.Lead
	return out
}

// Story is where in what is told of an entry somebody reads: the chosen mark, and the first line in sight.
type Story struct{ Mark, Scroll int }

// Settle brings mark and scroll into what is told, with so many marks, on a height.
func (s *Story) Settle(lines []Line, marks, h int) {
	s.Mark = min(max(s.Mark, 0), max(marks-1, 0))
	s.Scroll = max(min(s.Scroll, len(lines)-h), 0)
}

// Bring scrolls so that the chosen mark is in sight.
func (s *Story) Bring(lines []Line, h int) {
	first, last := -1, -1
	for i, l := range lines {
		if l.Mark == s.Mark+1 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first >= 0 {
		s.Scroll = min(max(s.Scroll, last-h+1), first)
	}
}

// Move goes to another mark; above the first one and below the last it scrolls.
func (s *Story) Move(id keys.ID, lines []Line, marks, h int) {
	by := map[keys.ID]int{keys.Up: -1, keys.Down: 1, keys.First: -far, keys.Last: far}[id]
	h = max(h, 1)
	last := marks - 1
	switch {
	case id == keys.PageUp:
		s.Scroll -= h
	case id == keys.PageDown:
		s.Scroll += h
	case s.Mark+by < 0 || s.Mark+by > last:
		s.Mark = min(max(s.Mark+by, 0), max(last, 0))
		s.Scroll += by
	default:
		s.Mark += by
		s.Bring(lines, h)
	}
	s.Scroll = max(s.Scroll, 0)
	s.Settle(lines, marks, h)
}

// Draw draws the part that is in sight inside a box, under its title; the chosen mark is reversed while the keys go here.
func (s Story) Draw(box, a screen.Area, title string, lines []Line, inside bool, l look.Look) {
	box.Text(2, 0, screen.Clip(" "+title+" ", box.W()-4), l.Focus)
	for y := range min(a.H(), max(len(lines)-s.Scroll, 0)) {
		at := lines[s.Scroll+y]
		if rows := max(at.Rows, 1); at.Draw != nil && y+rows <= a.H() {
			at.Draw(a.Cut(0, y, a.W(), rows))
			continue
		}
		s.drawLine(a.Cut(0, y, a.W(), 1), at, inside, s.Scroll+y == 0 || lines[s.Scroll+y-1].Mark != at.Mark, l)
	}
	if s.Scroll+a.H() < len(lines) {
		box.Right(box.W()-2, box.H()-1, " ↓ more ", l.Accent)
	}
	if s.Scroll > 0 {
		box.Right(box.W()-2, 0, " ↑ more ", l.Accent)
	}
}

// drawLine draws a line of text; first says whether it is the first one of its mark in sight.
func (s Story) drawLine(a screen.Area, l Line, inside, first bool, look look.Look) {
	if l.Head {
		a.Text(0, 0, l.Lead, look.Strong)
		return
	}
	if l.Draw != nil { // there is no room to draw it whole
		return
	}
	a.Text(0, 0, screen.Clip(l.Lead, LeadW-1), look.Quiet)
	a.Text(LeadW, 0, l.Text, l.Style)
	if inside && l.Mark > 0 && l.Mark == s.Mark+1 {
		a.Restyle(0, 0, a.W(), func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
		if first {
			a.Focus(0, 0)
		}
	}
}
