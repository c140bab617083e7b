package calendar

import (
	"strings"
	"unicode/utf8"
)

const (
	lineEnd   = "\r\n"
	lineLimit = 75 // octets without the line's end; RFC 5545, 3.1
)

// fold breaks every line of more than 75 octets after as many as fit, never within a letter; what follows begins with a space that is not
// part of it.
func fold(lines string) string {
	var out strings.Builder
	out.Grow(len(lines) + len(lines)/lineLimit*len(lineEnd+" "))
	for line := range strings.SplitSeq(strings.TrimSuffix(lines, lineEnd), lineEnd) {
		for room := lineLimit; len(line) > room; room = lineLimit - 1 {
			n := room
			for !utf8.RuneStart(line[n]) {
				n--
			}
			out.WriteString(line[:n] + lineEnd + " ")
			line = line[n:]
		}
		out.WriteString(line + lineEnd)
	}
	return out.String()
}
