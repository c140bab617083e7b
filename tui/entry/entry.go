// Package entry is one line of text being typed: a cell of a grid, a filter, a file name.
package entry

import (
	"strings"
	"unicode"

	"github.com/clipperhouse/displaywidth"

	"pourbench/tui/screen"
)

// Entry is the text typed so far and the place of the cursor in it, in graphemes.
type Entry struct {
	glyphs []string
	at     int
}

// New returns an entry that holds a text, with the cursor behind it.
func New(text string) Entry {
	e := Entry{}
	e.Insert(text)
	return e
}

// Text returns what has been typed.
func (e Entry) Text() string { return strings.Join(e.glyphs, "") }

// Insert puts typed or pasted text at the cursor. Control characters and line ends are left out: an entry is one line.
func (e *Entry) Insert(text string) {
	text = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == unicode.ReplacementChar {
			return -1
		}
		return r
	}, text)
	glyphs := append([]string{}, e.glyphs[:e.at]...)
	for g := displaywidth.StringGraphemes(text); g.Next(); {
		glyphs = append(glyphs, g.Value())
	}
	at := len(glyphs)
	e.glyphs = append(glyphs, e.glyphs[e.at:]...)
	e.at = at
}

// Press does what an editing key asks and says whether it was one.
func (e *Entry) Press(key string) bool {
	switch key {
	case "left", "ctrl+b":
		e.at = max(e.at-1, 0)
	case "right", "ctrl+f":
		e.at = min(e.at+1, len(e.glyphs))
	case "home", "ctrl+a":
		e.at = 0
	case "end", "ctrl+e":
		e.at = len(e.glyphs)
	case "backspace":
		e.cut(e.at-1, e.at)
	case "delete", "ctrl+d":
		e.cut(e.at, e.at+1)
	case "ctrl+u":
		e.cut(0, e.at)
	case "ctrl+k":
		e.cut(e.at, len(e.glyphs))
	case "ctrl+w", "alt+backspace":
		e.cut(e.wordStart(), e.at)
	default:
		return false
	}
	return true
}

func (e *Entry) cut(from, to int) {
	from, to = max(from, 0), min(to, len(e.glyphs))
	if from >= to {
		return
	}
	e.glyphs = append(append([]string{}, e.glyphs[:from]...), e.glyphs[to:]...)
	if e.at > from {
		e.at = max(e.at-(to-from), from)
	}
}

func (e Entry) wordStart() int {
	at := e.at
	for at > 0 && e.glyphs[at-1] == " " {
		at--
	}
	for at > 0 && e.glyphs[at-1] != " " {
		at--
	}
	return at
}

// Window returns the part of the text that fits w cells and holds the cursor, and the cursor's cell in it; the cursor may stand behind the text.
func (e Entry) Window(w int) (text string, cursor int) {
	if w < 1 {
		return "", 0
	}
	from, used := e.at, 0
	for from > 0 {
		gw := screen.Width(e.glyphs[from-1])
		if used+gw > w-1 {
			break
		}
		used += gw
		from--
	}
	cursor = used
	to := e.at
	for to < len(e.glyphs) {
		gw := screen.Width(e.glyphs[to])
		if used+gw > w {
			break
		}
		used += gw
		to++
	}
	return strings.Join(e.glyphs[from:to], ""), cursor
}

// Draw draws the entry over a line of an area, its cursor as a reversed cell.
func (e Entry) Draw(a screen.Area, x, y, w int, st screen.Style) {
	text, cursor := e.Window(w)
	a.Cut(x, y, w, 1).Fill(" ", st)
	a.Cut(x, y, w, 1).Text(0, 0, text, st)
	a.Restyle(x+cursor, y, 1, func(s screen.Style) screen.Style {
		s.Attr = s.Attr&^screen.Underline | screen.Reverse
		return s
	})
}
