package ruler

import (
	"unicode/utf8"

	"pourbench/pour/vector"
)

// drawing is one sheet of the ruler.
type drawing struct{ vector.Drawing }

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

// diamond is the sign of a middle; its lower tip points at the place.
func (d *drawing) diamond(x, tip float64) {
	const h = signHalfWide
	d.Signs = append(d.Signs, vector.Sign{Points: [][2]float64{{x, tip}, {x + h, tip - 2*h}, {x, tip - 4*h}, {x - h, tip - 2*h}}, Class: classCentre})
}

// arrow points to the right from x.
func (d *drawing) arrow(x, y, long float64) {
	d.Line(classArrow, x, y, x+long, y, bold)
	d.Signs = append(d.Signs, vector.Sign{Points: [][2]float64{{x + long, y}, {x + long - 3, y - 1.2}, {x + long - 3, y + 1.2}}, Class: classArrow})
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
