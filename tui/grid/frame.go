package grid

import "image"

// gap is the room between two columns; margin is the marker's column before the first.
const (
	gap    = 1
	margin = 2
)

// leastGrown is the width below which a column of remarks is not worth its room.
const leastGrown = 8

// Frame is where the cells of a grid stand in an area of a given size.
type Frame struct {
	X, W       []int // of every column; W 0: not on screen
	Head       int   // lines the head takes
	Rows       int   // rows that fit below it
	More, Less bool  // columns hidden to the right and to the left
}

// Frame works out where everything stands.
func (g Grid) Frame(c Cursor, w, h int) Frame {
	f := Frame{X: make([]int, len(g.Columns)), W: make([]int, len(g.Columns))}
	if g.headed() {
		f.Head = 1
	}
	f.Rows = max(h-f.Head, 0)
	spare, parts := w-margin, 0
	for _, col := range g.Columns {
		spare -= col.W + gap
		parts += col.Grow
	}
	spare += gap
	x := margin
	for i, col := range g.Columns {
		if i >= g.Frozen && i < c.Left {
			f.Less = true
			continue
		}
		width := col.W
		if spare > 0 && col.Grow > 0 {
			width += spare * col.Grow / parts
		}
		if col.W == 0 && width < leastGrown {
			continue
		}
		if x+width > w {
			if i >= g.Frozen && f.anyAfter(g.Frozen) || w-x < min(width, 4) {
				f.More = true
				break
			}
			width = w - x
		}
		f.X[i], f.W[i] = x, width
		x += width + gap
	}
	return f
}

// anyAfter says whether a column from a place on is on screen.
func (f Frame) anyAfter(from int) bool {
	for i := from; i < len(f.W); i++ {
		if f.W[i] > 0 {
			return true
		}
	}
	return false
}

// Scroll changes how far the grid is scrolled as little as it takes to show the cursor in an area of that size.
func (g Grid) Scroll(c Cursor, w, h int) Cursor {
	if len(g.Rows) == 0 || len(g.Columns) == 0 {
		return Cursor{}
	}
	f := g.Frame(c, w, h)
	last := max(len(g.Rows)-f.Rows, 0)
	first := c.Row
	for first > 0 && g.Rows[first-1].Heading != "" {
		first-- // a heading comes along with its first row
	}
	c.Top = min(c.Top, first)
	if f.Rows > 0 && c.Row >= c.Top+f.Rows {
		c.Top = c.Row - f.Rows + 1
	}
	c.Top = min(max(c.Top, 0), last)
	if c.Col < g.Frozen {
		c.Left = 0
		return c
	}
	c.Left = min(max(c.Left, g.Frozen), c.Col)
	if g.Frame(Cursor{Left: 0}, w, h).W[min(c.Col, len(g.Columns)-1)] > 0 {
		c.Left = 0 // all of it fits
		return c
	}
	for c.Left < c.Col && g.Frame(c, w, h).W[c.Col] == 0 {
		c.Left++
	}
	return c
}

// Place returns where a cell stands in the area; it says false where it is scrolled away.
func (g Grid) Place(c Cursor, w, h int) (image.Rectangle, bool) {
	f := g.Frame(c, w, h)
	if len(g.Columns) == 0 || c.Col >= len(g.Columns) || f.W[c.Col] == 0 || c.Row < c.Top || c.Row >= c.Top+f.Rows {
		return image.Rectangle{}, false
	}
	y := f.Head + c.Row - c.Top
	return image.Rect(f.X[c.Col], y, f.X[c.Col]+f.W[c.Col], y+1), true
}

// Hit returns the cursor that points at a place of the area; it says false where no cell can hold it.
func (g Grid) Hit(c Cursor, w, h int, at image.Point) (Cursor, bool) {
	f := g.Frame(c, w, h)
	row := c.Top + at.Y - f.Head
	if at.Y < f.Head || row >= len(g.Rows) {
		return c, false
	}
	best, distance := -1, 0
	for i := range g.Columns {
		if f.W[i] == 0 || g.cell(row, i).Kind == Blank {
			continue
		}
		d := max(f.X[i]-at.X, at.X-(f.X[i]+f.W[i]-1), 0)
		if best < 0 || d < distance {
			best, distance = i, d
		}
	}
	if best < 0 {
		return c, false
	}
	c.Row, c.Col = row, best
	return c, true
}
