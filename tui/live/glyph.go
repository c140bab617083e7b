package live

import (
	"strings"

	"pourbench/tui/screen"
)

// glyphRows is how many pixels high a letter of the block alphabet is.
const glyphRows = 5

// glyph is a letter of the block alphabet: five rows from the top, "#" is ink. It says false for what the alphabet does not have.
func glyph(r rune) (string, bool) {
	if r >= '0' && r <= '9' {
		return [10]string{
			"###/#.#/#.#/#.#/###", ".#./##./.#./.#./###", "###/..#/###/#../###", "###/..#/.##/..#/###", "#.#/#.#/###/..#/..#",
			"###/#../###/..#/###", "###/#../###/#.#/###", "###/..#/..#/..#/..#", "###/#.#/###/#.#/###", "###/#.#/###/..#/###",
		}[r-'0'], true
	}
	if r >= 'A' && r <= 'Z' {
		return [26]string{
			".##./#..#/####/#..#/#..#", "###./#..#/###./#..#/###.", ".###/#.../#.../#.../.###", "###./#..#/#..#/#..#/###.", "####/#.../###./#.../####",
			"####/#.../###./#.../#...", ".###/#.../#.##/#..#/.###", "#..#/#..#/####/#..#/#..#", "#/#/#/#/#", "..##/...#/...#/#..#/.##.",
			"#..#/#.#./##../#.#./#..#", "#.../#.../#.../#.../####", "#...#/##.##/#.#.#/#...#/#...#", "#..#/##.#/#.##/#..#/#..#", ".##./#..#/#..#/#..#/.##.",
			"###./#..#/###./#.../#...", ".##./#..#/#..#/#.##/.###", "###./#..#/###./#.#./#..#", ".###/#.../.##./...#/###.", "###/.#./.#./.#./.#.",
			"#..#/#..#/#..#/#..#/.##.", "#.#/#.#/#.#/#.#/.#.", "#...#/#...#/#.#.#/##.##/#...#", "#.#/#.#/.#./#.#/#.#", "#.#/#.#/.#./.#./.#.", "####/..#./.#../#.../####",
		}[r-'A'], true
	}
	switch r {
	case ' ':
		return "../../../../..", true
	case ':':
		return "./#/./#/.", true
	case '.':
		return "././././#", true
	case ',':
		return "../../../.#/#.", true
	case '-', '–':
		return ".../.../###/.../...", true
	case '+':
		return ".../.#./###/.#./...", true
	case '\'':
		return "#/#/././.", true
	}
	return "", false
}

// blockWidth is how many cells a text takes in block letters with pixels that many cells wide; false: it has other letters.
func blockWidth(text string, scale int) (int, bool) {
	w := 0
	for _, r := range text {
		g, ok := glyph(r)
		if !ok {
			return 0, false
		}
		w += (strings.IndexByte(g, '/') + 1) * scale
	}
	return max(w-scale, 0), true
}

// blockHeight is how many rows block letters take; a pixel is scale cells wide and half that many rows high, which makes it square.
func blockHeight(scale int) int { return (glyphRows*scale + 1) / 2 }

// drawBlocks draws a text in block letters, two pixels' halves to a cell. The alphabet must have every letter.
func drawBlocks(a screen.Area, x, y int, text string, scale int, st screen.Style) {
	for _, r := range text {
		g, _ := glyph(r)
		rows := strings.Split(g, "/")
		for row := range blockHeight(scale) {
			upper, lower := 2*row/scale, (2*row+1)/scale
			for col := range len(rows[0]) * scale {
				up := rows[upper][col/scale] == '#'
				down := lower < glyphRows && rows[lower][col/scale] == '#'
				if mark := [4]string{"", "▀", "▄", "█"}[bit(up)+2*bit(down)]; mark != "" {
					a.Text(x+col, y+row, mark, st)
				}
			}
		}
		x += (len(rows[0]) + 1) * scale
	}
}

func bit(set bool) int {
	if set {
		return 1
	}
	return 0
}

// drawLarge draws a text as large as the area holds, at most at a scale: in block letters, else in capitals set apart, else as it is.
// It is set in the middle of the area's height.
func drawLarge(a screen.Area, text string, most int, st screen.Style) {
	upper := strings.ToUpper(text)
	for scale := most; scale > 0; scale-- {
		if w, ok := blockWidth(upper, scale); ok && w <= a.W() && blockHeight(scale) <= a.H() {
			drawBlocks(a, 0, (a.H()-blockHeight(scale))/2, upper, scale, st)
			return
		}
	}
	line := spaced(upper)
	if screen.Width(line) > a.W() {
		line = screen.Clip(text, a.W())
	}
	a.Text(0, (a.H()-1)/2, line, st.With(screen.Bold))
}

// spaced sets letters apart.
func spaced(text string) string {
	words := strings.Fields(text)
	for i, w := range words {
		words[i] = strings.Join(strings.Split(w, ""), " ")
	}
	return strings.Join(words, "   ")
}
