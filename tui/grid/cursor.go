package grid

// Cursor is a place in a grid and how far the grid is scrolled. The zero value rests on the first cell that can hold it.
type Cursor struct {
	Row, Col  int
	Top, left int // first row and first column shown
}

// On returns the cell under the cursor; it says false where the grid has none.
func (g Grid) On(c Cursor) (Cell, bool) {
	cell := g.cell(c.Row, c.Col)
	return cell, cell.Kind != Blank
}

// Settle moves the cursor to the nearest cell that can hold it, after the grid has changed below it.
func (g Grid) Settle(c Cursor) Cursor {
	c.Row = min(max(c.Row, 0), max(len(g.Rows)-1, 0))
	c.Col = min(max(c.Col, 0), max(len(g.Columns)-1, 0))
	for off := range len(g.Rows) + 1 {
		for _, row := range [2]int{c.Row + off, c.Row - off} {
			if col, ok := g.nearest(row, c.Col); ok {
				c.Row, c.Col = row, col
				return c
			}
		}
	}
	return c
}

// nearest finds the column of a row that can hold the cursor, nearest to col.
func (g Grid) nearest(row, col int) (int, bool) {
	for off := range len(g.Columns) + 1 {
		for _, k := range [2]int{col + off, col - off} {
			if g.cell(row, k).Kind != Blank {
				return k, true
			}
		}
	}
	return 0, false
}

// Down moves the cursor by rows: first along its own column, and where that has no further cell to the nearest one of the next row that has any.
func (g Grid) Down(c Cursor, by int) Cursor {
	step := 1
	if by < 0 {
		step, by = -1, -by
	}
	for range by {
		next, ok := g.below(c, step)
		if !ok {
			break
		}
		c = next
	}
	return c
}

func (g Grid) below(c Cursor, step int) (Cursor, bool) {
	for row := c.Row + step; row >= 0 && row < len(g.Rows); row += step {
		if g.cell(row, c.Col).Kind != Blank {
			c.Row = row
			return c, true
		}
	}
	for row := c.Row + step; row >= 0 && row < len(g.Rows); row += step {
		if col, ok := g.nearest(row, c.Col); ok {
			c.Row, c.Col = row, col
			return c, true
		}
	}
	return c, false
}

// Right moves the cursor along its row.
func (g Grid) Right(c Cursor, step int) Cursor {
	for col := c.Col + step; col >= 0 && col < len(g.Columns); col += step {
		if g.cell(c.Row, col).Kind != Blank {
			c.Col = col
			return c
		}
	}
	return c
}

// NextEdit moves the cursor to the next cell that can be changed, along its row and then to the rows below.
func (g Grid) NextEdit(c Cursor) Cursor {
	for row := c.Row; row < len(g.Rows); row++ {
		from := 0
		if row == c.Row {
			from = c.Col + 1
		}
		for col := from; col < len(g.Columns); col++ {
			if g.cell(row, col).Edits() {
				c.Row, c.Col = row, col
				return c
			}
		}
	}
	return c
}

// FigureOf moves the cursor from a name, or what is picked from a list, to the first figure behind it in its row; it says false where none is typed there.
func (g Grid) FigureOf(c Cursor) (Cursor, bool) {
	if k := g.cell(c.Row, c.Col).Kind; k != Choice && k != Words {
		return c, false
	}
	for col := c.Col + 1; col < len(g.Columns); col++ {
		if g.cell(c.Row, col).Kind == Number {
			c.Col = col
			return c, true
		}
	}
	return c, false
}

// Seek moves the cursor to the first row of an item and its part, keeping the column.
func (g Grid) Seek(c Cursor, item, sub int) Cursor {
	for i, r := range g.Rows {
		if r.Item == item && (sub < 0 || r.Sub == sub) && r.Heading == "" && !r.Total {
			c.Row = i
			return g.Settle(c)
		}
	}
	return g.Settle(c)
}
