// Package screen is a sheet of terminal cells: panels are drawn into rectangles of it, and it is written out once per frame.
//
// It knows nothing of plans or keys. Nothing drawn can leave its rectangle, and no control character reaches the terminal through it.
package screen

import "image"

// cell holds one grapheme; an empty text is a blank, and a wide grapheme is followed by a cell marked as its tail.
type cell struct {
	text  string
	style Style
	tail  bool
}

// Screen is a fixed number of columns and rows of cells.
type Screen struct {
	w, h   int
	cells  []cell
	cursor Cursor
	placed bool
}

// Cursor is where the terminal's own cursor stands, which screen readers and magnifiers follow.
type Cursor struct {
	image.Point
	Typing bool // text is typed there; else it only marks what has the focus
}

// Cursor is the place that was last given to the cursor; false: none was, and it stays hidden.
func (s *Screen) Cursor() (Cursor, bool) { return s.cursor, s.placed }

// The largest screen that is drawn, in cells: 3840 × 2160 pixels in letters of 6 × 10 are a little less.
const (
	MaxW = 700
	MaxH = 220
)

// Fit is the part of a terminal that is drawn: a size that cannot be true is cut to the largest there is.
func Fit(w, h int) (int, int) { return min(max(w, 0), MaxW), min(max(h, 0), MaxH) }

// New returns a blank screen; sizes below zero count as zero.
func New(w, h int) *Screen {
	w, h = max(w, 0), max(h, 0)
	return &Screen{w: w, h: h, cells: make([]cell, w*h)}
}

// Area returns the whole screen as a rectangle to draw in.
func (s *Screen) Area() Area { return Area{screen: s, rect: image.Rect(0, 0, s.w, s.h)} }

// put sets one grapheme of the given width and repairs a wide neighbour it cuts in half.
func (s *Screen) put(x, y, width int, text string, st Style) {
	at := y*s.w + x
	for i := range width {
		s.tear(x+i, y)
	}
	s.cells[at] = cell{text: text, style: st}
	if width == 2 {
		s.cells[at+1] = cell{style: st, tail: true}
	}
}

// tear blanks the other half of a wide grapheme that is about to lose this cell.
func (s *Screen) tear(x, y int) {
	at := y*s.w + x
	if s.cells[at].tail && x > 0 {
		s.cells[at-1].text = ""
	}
	if x+1 < s.w && s.cells[at+1].tail {
		s.cells[at+1].tail = false
	}
	s.cells[at].tail = false
}

// String writes the screen as lines of text with their styles, each line ending in the terminal's own style.
func (s *Screen) String() string {
	out := make([]byte, 0, s.size())
	for y := range s.h {
		if y > 0 {
			out = append(out, '\n')
		}
		out = line(out, s.cells[y*s.w:(y+1)*s.w])
	}
	return string(out)
}

// size is about how many bytes the screen takes, a little high, so that writing it needs no second buffer.
func (s *Screen) size() int {
	const perCell, perChange = 3, 26 // a box-drawing glyph; two true colours, of which often only one changes
	changes := s.h
	for i := 1; i < len(s.cells); i++ {
		if s.cells[i].style != s.cells[i-1].style {
			changes++
		}
	}
	return len(s.cells)*perCell + changes*perChange
}

func line(out []byte, row []cell) []byte {
	end := len(row)
	for end > 0 && row[end-1] == (cell{}) {
		end--
	}
	var now Style
	for _, c := range row[:end] {
		if c.tail {
			continue
		}
		if c.style != now {
			out = c.style.sgr(out, now)
			now = c.style
		}
		if c.text == "" {
			out = append(out, ' ')
			continue
		}
		out = append(out, c.text...)
	}
	if now != (Style{}) {
		out = append(out, "\x1b[0m"...)
	}
	return out
}
