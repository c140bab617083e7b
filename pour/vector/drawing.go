// Package vector is what is drawn on paper at true scale: lines, filled shapes, words and pictures, written as PDF and as SVG, and how wide and
// how high the letters are that stand in them. It knows nothing of what is drawn, and it is the only one that knows the PDF library.
//
// Everything here is in mm, x from the left and y from the top.
package vector

// Drawing is one sheet as what is drawn on it, the same for every kind of file.
type Drawing struct {
	Left, Wide, High float64 // its left edge stands at x = Left
	Pictures         []Picture
	Strokes          []Stroke
	Signs            []Sign
	Texts            []Text
	Stamps           []Stamp
}

// Stroke is a straight line.
type Stroke struct {
	X1, Y1, X2, Y2, Thick float64
	Class                 string // what it is: names it in the SVG
}

// Sign is a filled shape.
type Sign struct {
	Points [][2]float64
	Class  string
}

// Text is words in one line; Y is their foot.
type Text struct {
	X, Y, Size float64 // Size is the letters' em
	At         Anchor
	Text       string
	Face       Face
}

// Picture is pixels in a box, in the form of PNG, which [Photo] makes of what a maker has.
type Picture struct {
	X, Y, Wide, High float64
	PNG              []byte
}

// Stamp is another drawing put onto this one, its upper left corner at X, Y. It is written once, however often it is put down.
type Stamp struct {
	X, Y float64
	Of   *Drawing
}

// Anchor is which end of a text stands at its place.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Line draws a straight line.
func (d *Drawing) Line(class string, x1, y1, x2, y2, thick float64) {
	d.Strokes = append(d.Strokes, Stroke{x1, y1, x2, y2, thick, class})
}

// Write writes words in the face that is not bold.
func (d *Drawing) Write(x, y, size float64, at Anchor, text string) {
	d.Texts = append(d.Texts, Text{X: x, Y: y, Size: size, At: at, Text: text})
}

// faces are those that are written in, here or on what is stamped.
func (d *Drawing) faces(used *[faces]bool) {
	for i := range d.Texts {
		used[d.Texts[i].Face] = true
	}
	for _, s := range d.Stamps {
		s.Of.faces(used)
	}
}
