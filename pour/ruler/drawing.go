package ruler

import "unicode/utf8"

// drawing is one sheet as what is drawn on it, the same for every kind of file.
type drawing struct {
	left, wide, high float64 // its left edge stands at x = left
	strokes          []stroke
	signs            []sign
	labels           []label
}

// stroke is a straight line.
type stroke struct {
	x1, y1, x2, y2, thick float64
	class                 string // what it is: names it in the SVG
}

// sign is a filled shape.
type sign struct {
	points [][2]float64
	class  string
}

// label is words; y is their foot.
type label struct {
	x, y, size float64
	anchor     anchor
	text       string
}

type anchor int

const (
	start anchor = iota
	middle
	end
)

// What the strokes are, thickest last.
const (
	classTick    = "tick"
	classHatch   = "hatch"
	classCross   = "cross"
	classEdge    = "edge"
	classCentre  = "centre"
	classCut     = "cut"
	classCheck   = "check"
	classArrow   = "arrow"
	fine         = 0.1
	thin         = 0.2
	bold         = 0.35
	letterWide   = 0.62 // of a letter's size, a generous mean of a sans-serif face
	smallText    = 2.8
	plainText    = 3.2
	titleText    = 5
	signHalfWide = 1.2
)

func (d *drawing) line(class string, x1, y1, x2, y2, thick float64) {
	d.strokes = append(d.strokes, stroke{x1, y1, x2, y2, thick, class})
}

func (d *drawing) write(x, y, size float64, at anchor, text string) {
	d.labels = append(d.labels, label{x, y, size, at, text})
}

// diamond is the sign of a middle; its lower tip points at the place.
func (d *drawing) diamond(x, tip float64) {
	const h = signHalfWide
	d.signs = append(d.signs, sign{[][2]float64{{x, tip}, {x + h, tip - 2*h}, {x, tip - 4*h}, {x - h, tip - 2*h}}, classCentre})
}

// arrow points to the right from x.
func (d *drawing) arrow(x, y, long float64) {
	d.line(classArrow, x, y, x+long, y, bold)
	d.signs = append(d.signs, sign{[][2]float64{{x + long, y}, {x + long - 3, y - 1.2}, {x + long - 3, y + 1.2}}, classArrow})
}

// wideOf is about how wide a text is.
func wideOf(text string, size float64) float64 {
	return letterWide * size * float64(utf8.RuneCountInString(text))
}

// fitted is as much of a text as there is room for.
func fitted(text string, size, room float64) string {
	most := int(room / (letterWide * size))
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:max(1, most-1)]) + "…"
}
