package grid

import (
	"image"

	"pourbench/tui/entry"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Typed is a cell being typed in.
type Typed struct {
	Entry   entry.Entry
	Refused string // why what stands there cannot be; empty: nothing was refused
}

// Draw draws the grid. Where focused, the cell under the cursor is reversed and its row is marked; where typed is not nil, that cell shows what is typed.
func (g Grid) Draw(a screen.Area, c Cursor, l look.Look, focused bool, typed *Typed) {
	if len(g.Rows) == 0 {
		for i, line := range screen.Wrap(g.Empty, a.W()-margin) {
			a.Text(margin, i, line, l.Quiet)
		}
		return
	}
	f := g.frame(c, a.W(), a.H())
	g.drawHead(a, f, l)
	for i := range min(f.rows, len(g.Rows)-c.Top) {
		g.drawRow(a, f, c.Top+i, f.head+i, l)
	}
	g.drawBar(a, f, c, l)
	if focused {
		g.drawCursor(a, c, l, typed)
	}
}

func (g Grid) drawHead(a screen.Area, f frame, l look.Look) {
	if f.head == 0 {
		return
	}
	for i, col := range g.Columns {
		if f.w[i] == 0 {
			continue
		}
		text := screen.Clip(col.Head, f.w[i])
		if col.Right {
			a.Right(f.x[i]+f.w[i], 0, text, l.Quiet)
			continue
		}
		a.Text(f.x[i], 0, text, l.Quiet)
	}
	if f.more {
		a.Text(a.W()-1, 0, "›", l.Accent)
	}
	if f.less {
		a.Text(0, 0, "‹", l.Accent)
	}
}

func (g Grid) drawRow(a screen.Area, f frame, row, y int, l look.Look) {
	r := g.Rows[row]
	if r.Heading != "" {
		a.Text(margin-1, y, screen.Clip(r.Heading, a.W()-margin), l.Quiet.With(screen.Italic))
		return
	}
	for i, cell := range r.Cells {
		if i >= len(f.w) || f.w[i] == 0 {
			continue
		}
		w := f.w[i]
		if r.Total && !g.Columns[i].Right {
			w = g.roomy(f, r, i)
		}
		cell.draw(a, f.x[i], y, w, g.Columns[i].Right)
		if cell.Marked {
			a.Text(min(f.x[i]+f.w[i], a.W()-1), y, markSign, l.Accent)
		}
	}
}

// roomy is the width of a cell of a row of totals: it has the room of the empty ones behind it too.
func (g Grid) roomy(f frame, r Row, col int) int {
	w := f.w[col]
	for i := col + 1; i < len(f.w) && f.w[i] > 0 && (i >= len(r.Cells) || r.Cells[i].Text == ""); i++ {
		w = f.x[i] + f.w[i] - f.x[col]
	}
	return w
}

// markSign stands behind a cell of which something is to be told.
const markSign = "*"

// swatchW is how many cells a colour sample takes.
const swatchW = 2

// swatched is how many of a cell's columns are painted.
func (c Cell) swatched() int {
	if c.Swatch != 0 {
		return swatchW
	}
	return swatchW * len(c.Swatches)
}

func (c Cell) draw(a screen.Area, x, y, w int, right bool) {
	if c.Swatch != 0 {
		a.Cut(x, y, min(swatchW, w), 1).Fill(" ", screen.Style{Bg: c.Swatch})
		a.Text(x+swatchW, y, screen.Clip(c.Mark, max(w-swatchW, 0)), c.MarkStyle)
		x, w = x+swatchW+1, w-swatchW-1
	}
	for i, colour := range c.Swatches {
		a.Cut(x+i*swatchW, y, min(swatchW, w-i*swatchW), 1).Fill(" ", screen.Style{Bg: colour})
	}
	text := screen.Clip(c.Text, w)
	if right {
		a.Right(x+w, y, text, c.Style)
		return
	}
	a.Text(x, y, text, c.Style)
}

// drawBar shows beside the rows that there are more above or below.
func (g Grid) drawBar(a screen.Area, f frame, c Cursor, l look.Look) {
	if c.Top > 0 {
		a.Text(0, f.head, "↑", l.Accent)
	}
	if c.Top+f.rows < len(g.Rows) {
		a.Text(0, f.head+f.rows-1, "↓", l.Accent)
	}
}

func (g Grid) drawCursor(a screen.Area, c Cursor, l look.Look, typed *Typed) {
	at, ok := g.place(c, a.W(), a.H())
	if !ok {
		return
	}
	a.Text(0, at.Min.Y, "►", l.Focus)
	a.Focus(at.Min.X, at.Min.Y)
	if typed == nil {
		cell, _ := g.On(c)
		from := at.Min.X + min(cell.swatched(), at.Dx()-1) // colours stay what they are under the cursor
		a.Restyle(from, at.Min.Y, at.Max.X-from, func(s screen.Style) screen.Style { return s.With(screen.Reverse) })
		return
	}
	x, w := g.typingAt(at, c, a.W(), typed)
	st := l.Typing
	if typed.Refused != "" {
		st = l.Wrong
	}
	typed.Entry.Draw(a, x, at.Min.Y, w, st)
	if typed.Refused != "" {
		g.drawReason(a, x, at.Min.Y, l, typed.Refused)
	}
}

// typingAt is where the text of a cell stands while it is typed in: a narrow cell opens to the right.
func (g Grid) typingAt(at image.Rectangle, c Cursor, room int, typed *Typed) (x, w int) {
	x, w = at.Min.X, at.Dx()
	if cell, _ := g.On(c); cell.Swatch != 0 {
		x, w = x+swatchW+1, w-swatchW-1
	}
	if need := screen.Width(typed.Entry.Text()) + 1; need > w {
		w = min(need, room-x)
	}
	return x, w
}

// Caret is the cell of an area of that size where the terminal's cursor belongs: on the cell under the cursor, or in what is typed there.
func (g Grid) Caret(c Cursor, w, h int, typed *Typed) (image.Point, bool) {
	at, ok := g.place(c, w, h)
	if !ok || typed == nil {
		return at.Min, ok
	}
	x, room := g.typingAt(at, c, w, typed)
	_, caret := typed.Entry.Window(room)
	return image.Pt(x+caret, at.Min.Y), true
}

// drawReason hangs the reason of a refusal below the cell, or above it on the last line.
func (g Grid) drawReason(a screen.Area, x, y int, l look.Look, reason string) {
	at := y + 1
	if at >= a.H() {
		at = y - 1
	}
	text := screen.Clip(" × "+reason+" ", a.W())
	x = max(min(x, a.W()-screen.Width(text)), 0)
	a.Text(x, at, text, l.Wrong.With(screen.Reverse))
}
