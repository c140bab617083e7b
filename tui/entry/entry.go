// Package entry is one line of text being typed: a cell of a grid, a filter, a file name.
//
// The editing is the text input's of Bubbles; what is added is drawing into cells, with the cursor where wide letters put it.
package entry

import (
	"strings"
	"unicode"

	"charm.land/bubbles/v2/key"
	"charm.land/bubbles/v2/textinput"
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/screen"
)

// Entry is the text typed so far and the place of the cursor in it. The zero value is empty.
type Entry struct {
	in   textinput.Model
	over bool // what is typed first takes the place of all that stands
}

// New returns an entry that holds a text, with the cursor behind it.
func New(text string) Entry {
	var e Entry
	e.Insert(text)
	return e
}

// Over returns an entry that holds a text which the first letter typed replaces; a key that edits, or moves in it, keeps it.
func Over(text string) Entry {
	e := New(text)
	e.over = text != ""
	return e
}

// open makes the zero value one that can be typed in.
func (e *Entry) open() {
	if !e.in.Focused() {
		e.in = textinput.New()
		e.in.Prompt = ""
		e.in.Focus()
	}
}

// ends says whether a character ends a line (Unicode Standard Annex 14, classes BK, CR, LF and NL), or is the tab between two columns.
func ends(r rune) bool {
	switch r {
	case '\n', '\r', '\v', '\f', '\u0085', '\u2028', '\u2029', '\t':
		return true
	}
	return false
}

// Text returns what has been typed.
func (e Entry) Text() string { return e.in.Value() }

// Insert puts typed or pasted text at the cursor. An entry is one line: a line's end becomes a blank, so that what stood on two lines
// is never joined. Control characters are left out.
func (e *Entry) Insert(text string) {
	e.open()
	if e.over && text != "" {
		e.over = false
		e.in.SetValue("")
	}
	text = strings.Map(func(r rune) rune {
		if ends(r) {
			return ' '
		}
		if unicode.IsControl(r) || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == unicode.ReplacementChar {
			return -1
		}
		return r
	}, strings.ReplaceAll(text, "\r\n", "\n"))
	whole, at := []rune(e.in.Value()), e.in.Position()
	e.in.SetValue(string(whole[:at]) + text + string(whole[at:]))
	e.in.SetCursor(at + len([]rune(text)))
}

// Press does what an editing key asks and says whether it was one; in a zero entry there is nothing to edit.
func (e *Entry) Press(k tea.KeyPressMsg) bool {
	m := e.in.KeyMap
	if !key.Matches(k, m.CharacterForward, m.CharacterBackward, m.WordForward, m.WordBackward, m.LineStart, m.LineEnd, m.DeleteWordBackward,
		m.DeleteWordForward, m.DeleteAfterCursor, m.DeleteBeforeCursor, m.DeleteCharacterBackward, m.DeleteCharacterForward) {
		return false
	}
	e.over = false
	e.in, _ = e.in.Update(k)
	return true
}

// Window returns the part of the text that fits w cells and holds the cursor, and the cursor's cell in it; the cursor may stand behind the text.
// The text input's own view scrolls by letters and is wrong where they are wide.
func (e Entry) Window(w int) (text string, cursor int) {
	if w < 1 {
		return "", 0
	}
	runes, at := []rune(e.in.Value()), e.in.Position()
	from := at
	for from > 0 && screen.Width(string(runes[from-1:at])) <= w-1 {
		from--
	}
	cursor = screen.Width(string(runes[from:at]))
	to := at
	for to < len(runes) && screen.Width(string(runes[from:to+1])) <= w {
		to++
	}
	return string(runes[from:to]), cursor
}

// Draw draws the entry over a line of an area, its cursor as a reversed cell on which the terminal's own stands.
func (e Entry) Draw(a screen.Area, x, y, w int, st screen.Style) {
	text, cursor := e.Window(w)
	a.Cut(x, y, w, 1).Fill(" ", st)
	a.Cut(x, y, w, 1).Text(0, 0, text, st)
	a.Type(x+cursor, y)
	from, wide := x+cursor, 1
	if e.over { // all that would be replaced stands out
		from, wide = x, cursor+1
	}
	a.Restyle(from, y, wide, func(s screen.Style) screen.Style {
		s.Attr = s.Attr&^screen.Underline | screen.Reverse
		return s
	})
}
