package screen

import (
	"image"

	"charm.land/lipgloss/v2"

	"github.com/clipperhouse/displaywidth"
)

// Area is a rectangle of a screen with its own coordinates from its top left corner. What is drawn outside it is not drawn.
type Area struct {
	screen *Screen
	rect   image.Rectangle
}

// W is the area's width in cells.
func (a Area) W() int { return a.rect.Dx() }

// H is the area's height in cells.
func (a Area) H() int { return a.rect.Dy() }

// At returns the part of the screen that a rectangle in screen coordinates covers, as far as it lies inside the area.
func (a Area) At(r image.Rectangle) Area { return Area{screen: a.screen, rect: r.Intersect(a.rect)} }

// Cut returns a rectangle of the area, in the area's coordinates, as far as it lies inside.
func (a Area) Cut(x, y, w, h int) Area {
	return a.At(image.Rect(x, y, x+w, y+h).Add(a.rect.Min))
}

// Text draws a line of text and returns the column after it. Graphemes that do not fit are left out; control characters are never drawn.
func (a Area) Text(x, y int, text string, st Style) int {
	if y < 0 || y >= a.H() {
		return x + Width(text)
	}
	if ascii(text) {
		for i := range len(text) {
			if x >= 0 && x < a.W() {
				a.screen.put(a.rect.Min.X+x, a.rect.Min.Y+y, 1, text[i:i+1], st)
			}
			x++
		}
		return x
	}
	for g := displaywidth.StringGraphemes(text); g.Next(); {
		w := g.Width()
		if w < 1 || control(g.Value()) {
			continue
		}
		if x >= 0 && x+w <= a.W() {
			a.screen.put(a.rect.Min.X+x, a.rect.Min.Y+y, min(w, 2), g.Value(), st)
		}
		x += w
	}
	return x
}

// Focus puts the terminal's cursor on a cell of the area: what is drawn last has it.
func (a Area) Focus(x, y int) { a.place(x, y, false) }

// Type is Focus for a cell that text is typed at.
func (a Area) Type(x, y int) { a.place(x, y, true) }

func (a Area) place(x, y int, typing bool) {
	if at := image.Pt(x, y).Add(a.rect.Min); at.In(a.rect) {
		a.screen.cursor, a.screen.placed = Cursor{at, typing}, true
	}
}

// Right draws a line of text that ends before column end.
func (a Area) Right(end, y int, text string, st Style) { a.Text(end-Width(text), y, text, st) }

// Fill draws one narrow glyph over the whole area.
func (a Area) Fill(glyph string, st Style) {
	for y := range a.H() {
		for x := range a.W() {
			a.screen.put(a.rect.Min.X+x, a.rect.Min.Y+y, 1, glyph, st)
		}
	}
}

// Clear makes the whole area blank.
func (a Area) Clear() { a.Fill("", Style{}) }

// Restyle changes the style of a run of cells and leaves their text.
func (a Area) Restyle(x, y, w int, change func(Style) Style) {
	r := a.Cut(x, y, w, 1)
	for i := range max(r.W(), 0) {
		if r.H() < 1 {
			return
		}
		c := &a.screen.cells[r.rect.Min.Y*a.screen.w+r.rect.Min.X+i]
		c.style = change(c.style)
	}
}

// Box draws a rounded border on the area's edge and returns the area inside.
func (a Area) Box(st Style) Area {
	w, h := a.W(), a.H()
	if w < 2 || h < 2 {
		return a.Cut(0, 0, 0, 0)
	}
	b := lipgloss.RoundedBorder()
	for x := 1; x < w-1; x++ {
		a.Text(x, 0, b.Top, st)
		a.Text(x, h-1, b.Bottom, st)
	}
	for y := 1; y < h-1; y++ {
		a.Text(0, y, b.Left, st)
		a.Text(w-1, y, b.Right, st)
	}
	a.Text(0, 0, b.TopLeft, st)
	a.Text(w-1, 0, b.TopRight, st)
	a.Text(0, h-1, b.BottomLeft, st)
	a.Text(w-1, h-1, b.BottomRight, st)
	return a.Cut(1, 1, w-2, h-2)
}
