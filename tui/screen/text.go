package screen

import (
	"strings"
	"unicode/utf8"

	"github.com/clipperhouse/displaywidth"
)

// Width is how many cells a line of text takes; what [Area.Text] does not draw takes none.
func Width(text string) int {
	if ascii(text) {
		return len(text)
	}
	w := 0
	for g := displaywidth.StringGraphemes(text); g.Next(); {
		if gw := g.Width(); gw > 0 && !control(g.Value()) {
			w += gw
		}
	}
	return w
}

// Clip shortens a line to w cells; a line that was cut ends in "…".
func Clip(text string, w int) string {
	if Width(text) <= w {
		return text
	}
	if w < 1 {
		return ""
	}
	used := 0
	var b strings.Builder
	for g := displaywidth.StringGraphemes(text); g.Next(); {
		gw := g.Width()
		if gw < 1 || control(g.Value()) {
			continue
		}
		if used+gw > w-1 {
			break
		}
		used += gw
		b.WriteString(g.Value())
	}
	return b.String() + "…"
}

// Wrap breaks a text into lines of at most w cells at its spaces, but not between a number and its unit; a longer word is broken where it must be.
func Wrap(text string, w int) []string {
	if w < 1 {
		return nil
	}
	var lines []string
	now, used := "", 0
	for _, word := range glued(strings.Fields(text), w) {
		ww := Width(word)
		if used > 0 && used+1+ww > w {
			lines = append(lines, now)
			now, used = "", 0
		}
		for ww > w {
			head := takeCells(word, w)
			lines = append(lines, head)
			word = word[len(head):]
			ww = Width(word)
		}
		if used > 0 {
			now += " "
			used++
		}
		now += word
		used += ww
	}
	if used > 0 {
		lines = append(lines, now)
	}
	return lines
}

// unitW is the longest word that counts as the unit of the number before it, cells.
const unitW = 3

// glued keeps a number and the short word after it together where both fit into a line, so that no amount is torn from its unit.
func glued(words []string, room int) []string {
	out := make([]string, 0, len(words))
	for _, w := range words {
		if n := len(out); n > 0 && endsInDigit(out[n-1]) && Width(strings.TrimRight(w, ".,;:)")) <= unitW && Width(out[n-1])+1+Width(w) <= room {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func endsInDigit(w string) bool { return w != "" && w[len(w)-1] >= '0' && w[len(w)-1] <= '9' }

// takeCells returns the longest start of a text that fits w cells, at least one grapheme of it.
func takeCells(text string, w int) string {
	used, at := 0, 0
	for g := displaywidth.StringGraphemes(text); g.Next(); {
		if used+g.Width() > w && at > 0 {
			break
		}
		used += g.Width()
		at += len(g.Value())
	}
	return text[:at]
}

// ascii says whether a text is printable ASCII alone, so that bytes are cells.
func ascii(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// control says whether a grapheme starts with something a terminal would act on: C0, DEL, C1 or a bidirectional override.
func control(g string) bool {
	r, _ := utf8.DecodeRuneInString(g)
	return r < ' ' || r >= 0x7f && r < 0xa0 || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == utf8.RuneError
}
