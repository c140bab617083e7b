package vector

import (
	"strings"
	"unicode/utf8"
)

// What a sheet of typed text holds: so many letters in a line and so many lines, or half as many of each at twice the size (the sheets that printers
// of plain text take at 12 letters and 7 lines to the inch, common practice, no source).
const (
	typedWide = 80
	typedHigh = 66
)

const (
	typedEdgeMM = 12            // stays free around the text; printers leave 4 to 6 mm, and a hole or a clip wants more (common practice, no source)
	lineOfEm    = 1.12          // the least from line to line, of an em, at which the tails of one do not touch the heads of the next
	monoOfEm    = 1229.0 / 2048 // the width of every letter of the mono face, of an em (hmtx in its file)
)

// Typed sets a text as a typewriter does, upright on sheets of a paper, in letters of one width and as large as its lines allow: a form feed begins a
// sheet. A text in which no line has more than 40 letters and no sheet more than 33 lines is set twice as large as one of 80 and 66. Longer sheets
// go on over the next one, longer lines are set smaller.
func Typed(text string, on Paper) []Drawing {
	sheets := typedSheets(text)
	wide, high := typedWide, typedHigh
	if most, lines := extent(sheets); most <= typedWide/2 && lines <= typedHigh/2 {
		wide, high = typedWide/2, typedHigh/2
	} else {
		wide = max(wide, most)
	}
	across, down := on.High, on.Wide // upright
	line := (down - 2*typedEdgeMM) / float64(high)
	em := min((across-2*typedEdgeMM)/float64(wide)/monoOfEm, line/lineOfEm)
	left := (across - em*monoOfEm*float64(wide)) / 2
	out := make([]Drawing, len(sheets))
	for i, lines := range sheets {
		d := Drawing{Wide: across, High: down}
		for k, words := range lines {
			if words != "" {
				d.Texts = append(d.Texts, Text{X: left, Y: typedEdgeMM + line*float64(k) + em, Size: em, Text: words, Face: Mono})
			}
		}
		out[i] = d
	}
	return out
}

// typedSheets is the lines of each sheet.
func typedSheets(text string) [][]string {
	var out [][]string
	for sheet := range strings.SplitSeq(text, "\f") {
		lines := strings.Split(strings.TrimRight(sheet, "\n"), "\n")
		for len(lines) > typedHigh {
			out, lines = append(out, lines[:typedHigh]), lines[typedHigh:]
		}
		out = append(out, lines)
	}
	return out
}

// extent is the most letters of a line and the most lines of a sheet.
func extent(sheets [][]string) (wide, high int) {
	for _, lines := range sheets {
		high = max(high, len(lines))
		for _, l := range lines {
			wide = max(wide, utf8.RuneCountInString(l))
		}
	}
	return wide, high
}
