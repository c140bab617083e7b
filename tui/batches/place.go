package batches

import "pourbench/tui/listing"

// place is where the parts stand now.
func (m *Model) place() listing.Place {
	return listing.Places(m.dialogs.Frame.W, m.dialogs.Frame.H, m.inside, m.board)
}

// rows is how many batches are in sight.
func (m *Model) rows() int { return m.place().Rows() }

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
