package grid

import "image"

// gap is the room between two columns; margin is the marker's column before the first.
const (
	gap    = 1
	margin = 2
)

// leastGrown is the width below which a column of remarks is not worth its room.
const leastGrown = 8

// frame is where the cells of a grid stand in an area of a given size.
type frame struct {
	x, w       []int // of every column; W 0: not on screen
	head       int   // lines the head takes
	rows       int   // rows that fit below it
	more, less bool  // columns hidden to the right and to the left
}

// frame works out where everything stands.
func (g Grid) frame(c Cursor, w, h int) frame {
	f := frame{x: make([]int, len(g.Columns)), w: make([]int, len(g.Columns))}
	if g.headed() {
		f.head = 1
	}
	f.rows = max(h-f.head, 0)
	spare, parts := w-margin, 0
	for _, col := range g.Columns {
		spare -= col.W + gap
		parts += col.Grow
	}
	spare += gap
	x := margin
	for i, col := range g.Columns {
		if i >= g.Frozen && i < c.left {
			f.less = true
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
				f.more = true
				break
			}
			width = w - x
		}
		f.x[i], f.w[i] = x, width
		x += width + gap
	}
	return f
}

// anyAfter says whether a column from a place on is on screen.
func (f frame) anyAfter(from int) bool {
	for i := from; i < len(f.w); i++ {
		if f.w[i] > 0 {
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
	f := g.frame(c, w, h)
	last := max(len(g.Rows)-f.rows, 0)
	first := c.Row
	for first > 0 && g.Rows[first-1].Heading != "" {
		first-- // a heading comes along with its first row
	}
	c.Top = min(c.Top, first)
	if f.rows > 0 && c.Row >= c.Top+f.rows {
		c.Top = c.Row - f.rows + 1
	}
	c.Top = min(max(c.Top, 0), last)
	if c.Col < g.Frozen {
		c.left = 0
		return c
	}
	c.left = min(max(c.left, g.Frozen), c.Col)
	if g.frame(Cursor{left: 0}, w, h).w[min(c.Col, len(g.Columns)-1)] > 0 {
		c.left = 0 // all of it fits
		return c
	}
	for c.left < c.Col && g.frame(c, w, h).w[c.Col] == 0 {
		c.left++
	}
	return c
}

// place returns where a cell stands in the area; it says false where it is scrolled away.
func (g Grid) place(c Cursor, w, h int) (image.Rectangle, bool) {
	f := g.frame(c, w, h)
	if len(g.Columns) == 0 || c.Col >= len(g.Columns) || f.w[c.Col] == 0 || c.Row < c.Top || c.Row >= c.Top+f.rows {
		return image.Rectangle{}, false
	}
	y := f.head + c.Row - c.Top
	return image.Rect(f.x[c.Col], y, f.x[c.Col]+f.w[c.Col], y+1), true
}

// Hit returns the cursor that points at a place of the area; it says false where no cell can hold it.
func (g Grid) Hit(c Cursor, w, h int, at image.Point) (Cursor, bool) {
	f := g.frame(c, w, h)
	row := c.Top + at.Y - f.head
	if at.Y < f.head || row >= len(g.Rows) {
		return c, false
	}
	best, distance := -1, 0
	for i := range g.Columns {
		if f.w[i] == 0 || g.cell(row, i).Kind == Blank {
			continue
		}
		d := max(f.x[i]-at.X, at.X-(f.x[i]+f.w[i]-1), 0)
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
