package batches

import (
	"image"

	"pourbench/tui/screen"
)

// The smallest screen with a list on it, and the width from which list and batch stand beside each other.
const (
	minW  = 44
	minH  = 12
	wideW = 100
)

// place is where the parts of the page stand. What is not there is empty.
type place struct {
	title, search, list, batch, board, status, footer image.Rectangle

	tooSmall bool
}

// places lays the page out: list and batch beside each other where both have room, else the one that has the keys; the season's board has
// the place of both.
func places(w, h int, inside, board bool) place {
	if w < minW || h < minH {
		return place{tooSmall: true}
	}
	const top, feet = 2, 2
	p := place{
		title: image.Rect(0, 0, w, 1), search: image.Rect(0, 1, w, top),
		status: image.Rect(0, h-feet, w, h-1), footer: image.Rect(0, h-1, w, h),
	}
	body := image.Rect(0, top, w, h-feet)
	switch {
	case board:
		p.board = body
	case w < wideW && inside:
		p.batch = body
	case w < wideW:
		p.list = body
	default:
		p.list, p.batch = body, body
		p.list.Max.X = listW(w)
		p.batch.Min.X = p.list.Max.X
	}
	return p
}

// listW is the width of a list that has a batch beside it: a little more than half, as far as that is of use.
func listW(w int) int {
	const most = 110
	return min(w*11/20, most)
}

// place is where the parts stand now.
func (m *Model) place() place {
	return places(m.dialogs.Frame.W, m.dialogs.Frame.H, m.inside, m.board)
}

// within is the place inside a box's border, with a blank column at either side.
func within(r image.Rectangle) image.Rectangle {
	if r.Empty() {
		return r
	}
	return image.Rect(r.Min.X+2, r.Min.Y+1, r.Max.X-2, r.Max.Y-1)
}

// rows is how many batches are in sight.
func (m *Model) rows() int { return max(within(m.place().list).Dy()-1, 1) } // the head

// settle brings what is chosen into sight.
func (m *Model) settle() {
	m.at = min(max(m.at, 0), max(len(m.shown)-1, 0))
	rows := m.rows()
	m.top = min(max(m.top, m.at-rows+1), m.at)
	m.top = max(min(m.top, len(m.shown)-rows), 0)
	m.settleBatch()
}

// column is a column of the list: where it begins and how wide it is; 0: it is left out.
type column struct{ x, w int }

// columns is the list's columns in a width: colours, name, state, day, what is due.
type columns struct{ colours, name, state, poured, due column }

// The widths of the columns that do not grow, and the width from which the day has room.
const (
	mark     = 2
	coloursW = 8
	stateW   = 13 // of most states
	longW    = 16 // of the longest one, "out of the mould"
	withWide = 60
	dayW     = 10
	withDayW = 74
)

// columnsIn lays the columns out; name and due share what is left.
func columnsIn(w int) columns {
	var c columns
	x := mark
	next := func(col *column, width int) {
		*col = column{x, width}
		x += width + 1
	}
	state := stateW
	if w >= withWide {
		state = longW
	}
	rest := w - mark - coloursW - 1 - state - 1 - 1
	if w >= withDayW {
		rest -= dayW + 1
	}
	name := rest * 52 / 100
	next(&c.colours, coloursW)
	next(&c.name, name)
	next(&c.state, state)
	if w >= withDayW {
		next(&c.poured, dayW)
	}
	next(&c.due, rest-name)
	return c
}

// drawTooSmall says what room the page wants.
func drawTooSmall(a screen.Area, status string) {
	for y, l := range append(screen.Wrap("the page of batches wants "+wanted(a.W(), a.H()), a.W()), screen.Wrap(status, a.W())...) {
		a.Text(0, y, l, screen.Style{})
	}
}
