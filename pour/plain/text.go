// Package plain makes text that came from a file safe to draw: nothing in it can move a cursor, hide, or turn the
// direction of a line.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// tabStop is how wide a tab is drawn, in columns.
const tabStop = 4

// maxMarks is how many combining marks one letter keeps. Written languages need two or three; piles of more spill over other lines.
const maxMarks = 3

const (
	joiner        = '\u200d' // joins emoji into one
	emojiSelector = '\ufe0f' // asks for the coloured picture
)

// Line returns s as one line: line breaks of every kind become one space, tabs become spaces, the ends are trimmed, and
// control characters, escapes with what they drag along, direction overrides, invisible characters and bytes that are no UTF-8 are dropped.
// Accents, other scripts and emoji stay. Cleaning twice changes nothing.
func Line(s string) string {
	if printable(s) {
		return s
	}
	return strings.Trim(clean(s, ' '), " ")
}

// Text is [Line] for text of several lines: line breaks of every kind become a newline, and the ends are not trimmed.
func Text(s string) string { return clean(s, '\n') }

// cleaner gathers what is kept.
type cleaner struct {
	out    strings.Builder
	last   rune // the last rune kept; 0 at the start of a line
	marks  int  // combining marks kept since the last letter
	column int
	breaks rune // what a line break becomes
}

func clean(s string, breaks rune) string {
	c := cleaner{breaks: breaks}
	for i := 0; i < len(s); {
		if n := escaped(s[i:]); n > 0 {
			i += n
			continue
		}
		r, size := utf8.DecodeRuneInString(s[i:])
		i += size
		if r == utf8.RuneError && size == 1 {
			continue
		}
		if r == '\r' && strings.HasPrefix(s[i:], "\n") {
			continue
		}
		next, size := utf8.DecodeRuneInString(s[i:])
		if size == 1 && next == utf8.RuneError {
			next = 0 // it will be dropped
		}
		c.take(r, next)
	}
	return c.out.String()
}

func (c *cleaner) take(r, next rune) {
	switch {
	case isBreak(r):
		c.newline()
	case r == '\t':
		c.keep(' ')
		for c.column%tabStop != 0 {
			c.keep(' ')
		}
	case r == joiner:
		if c.afterEmoji() && unicode.Is(unicode.So, next) {
			c.keep(r)
		}
	case unicode.Is(unicode.Zs, r):
		c.keep(' ')
	case isHidden(r) || !unicode.IsGraphic(r):
	case r == emojiSelector:
		if unicode.Is(unicode.So, c.last) {
			c.keep(r)
		}
	case unicode.Is(unicode.M, r):
		if c.last != 0 && c.last != ' ' && c.marks < maxMarks {
			c.keep(r)
			c.marks++
		}
	default:
		c.keep(r)
		c.marks = 0
	}
}

func (c *cleaner) keep(r rune) {
	c.out.WriteRune(r)
	c.last = r
	c.column++
}

func (c *cleaner) newline() {
	c.out.WriteRune(c.breaks)
	c.last, c.marks, c.column = 0, 0, 0
}

func (c *cleaner) afterEmoji() bool {
	skin := c.last >= 0x1f3fb && c.last <= 0x1f3ff // skin tones
	return skin || c.last == emojiSelector || unicode.Is(unicode.So, c.last)
}

// isBreak reports whether r ends a line somewhere: a terminal, a printer or a browser.
func isBreak(r rune) bool {
	switch r {
	case '\n', '\r', '\v', '\f', '\u0085', '\u2028', '\u2029':
		return true
	}
	return false
}

// isHidden reports whether r counts as a letter or mark but shows nothing: fillers, and selectors other than the emoji one.
func isHidden(r rune) bool {
	switch r {
	case '\u034f', '\u115f', '\u1160', '\u17b4', '\u17b5', '\u3164', '\uffa0':
		return true
	}
	mongolian := r >= 0x180b && r <= 0x180f
	selector := r >= 0xfe00 && r < emojiSelector || r >= 0xe0100 && r <= 0xe01ef
	return mongolian || selector
}

// printable says whether a text is nothing but plain ASCII without a space at its ends, as most text is: then there is nothing to clean.
func printable(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return s == "" || s[0] != ' ' && s[len(s)-1] != ' '
}
