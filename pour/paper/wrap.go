package paper

import (
	"strings"

	"github.com/clipperhouse/displaywidth"
)

// leader fills a line with dots up to a width, so that the eye finds its figure.
func leader(line string, to int) string {
	free := to - width(line)
	if free < 5 {
		return padded(line, to)
	}
	return line + " " + strings.Repeat(".", free-2) + " "
}

func padded(line string, to int) string { return line + strings.Repeat(" ", max(0, to-width(line))) }

func width(s string) int { return displaywidth.String(s) }

// wrap breaks text into lines of at most that many columns, at spaces where there are any.
// It gives at least one line. Nothing is left out; limit must be at least 2, the widest letter.
func wrap(text string, limit int) []string {
	var lines []string
	line := ""
	for _, word := range words(text, limit) {
		for _, part := range pieces(word, limit) {
			switch {
			case line == "":
				line = part
			case width(line)+1+width(part) <= limit:
				line += " " + part
			default:
				lines, line = append(lines, line), part
			}
		}
	}
	return append(lines, line)
}

// trail is as wrap, with a last line of at most so many columns, so that something can stand behind it.
func trail(text string, limit, last int) []string {
	lines := wrap(text, limit)
	if at := len(lines) - 1; width(lines[at]) > last {
		lines = append(lines[:at], wrap(lines[at], last)...)
	}
	return lines
}

// words parts a text at its spaces, but keeps a number and its unit together.
func words(text string, limit int) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		if last := len(out) - 1; last >= 0 && belongs(out[last], word) && width(out[last])+1+width(word) <= limit {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

// belongs says whether a word is the unit of the number before it.
func belongs(before, word string) bool {
	switch strings.TrimRight(word, ".,:;)") {
	case "%", "g", "oz", "mL", "mm", "in", "min", "h", "d", "s", "deg":
		return strings.ContainsAny(before[len(before)-1:], "0123456789")
	case "C", "F":
		return strings.HasSuffix(before, " deg")
	}
	return false
}

// pieces cuts a word that is wider than the limit between its letters, accents kept with the letter they stand on.
func pieces(word string, limit int) []string {
	if width(word) <= limit {
		return []string{word}
	}
	var parts []string
	part := ""
	letters := displaywidth.StringGraphemes(word)
	for letters.Next() {
		if part != "" && width(part+letters.Value()) > limit {
			parts, part = append(parts, part), ""
		}
		part += letters.Value()
	}
	return append(parts, part)
}
