// Package grid is a table of cells with a cursor: jugs, oils, a form of fields. A cell knows how it is drawn and which edit changes it;
// the grid knows where the cursor may rest. It works no figure out.
package grid

import (
	"pourbench/pour"
	"pourbench/tui/screen"
)

// Kind is what a cell can do.
type Kind int

// The kinds of cells.
const (
	Blank   Kind = iota // the cursor never rests on it
	Shown               // a figure, to read and to copy
	Number              // typed over with digits
	Words               // free text
	Choice              // picked from a list
	Tick                // on or off
	Numbers             // a list of numbers on one line, typed over with digits
)

// Cell is one field of a grid.
type Cell struct {
	Kind     Kind
	Text     string
	Style    screen.Style
	Swatch   screen.Colour                          // painted as two cells before the text
	Swatches []screen.Colour                        // painted as two cells each in place of the text
	Figure   string                                 // which figure it shows, named by its path in what `pourbench figures` writes or, a number of the plan, in its file; empty: none
	Plain    string                                 // what typing starts from and what is copied; empty: Text
	Hint     string                                 // what it is, for the status line
	Name     string                                 // what an edit of it is called, for undo
	Set      func(text string) (pour.Edit, error)   // Number, Words, Numbers: reads what was typed
	Nudge    func(steps float64) (pour.Edit, error) // Number: one step up is 1
	Flip     pour.Edit                              // Tick
	Round    []string                               // Tick: the values that flipping and nudging go round, the one now first; empty: it has none that are known
	List     string                                 // Choice: which list it is picked from
	Pick     func(id string) pour.Edit              // Choice
	Adds     func(id string) string                 // Choice: what is picked is added and the cursor goes on to its figure; says what to type there. nil: it replaces what stands there
	ID       string                                 // Choice: what is chosen now

	Keep func(text string) (pour.ShelfChange, error) // Number, Words, Tick: it is of an entry on the shelf, and this is what it comes to there; nil: it is of the plan
	Step float64                                     // Number of an entry: one step up

	Field     string // the field of the plan it stands for, where it shows no figure: of a jug or a scent its name; empty: none
	Marked    bool   // something is to be told of it, in its hint: a sign stands beside it
	Said      string // Tick: said once it is done
	Mark      string // a sign of one cell between the swatch and the text: whose colour it is
	MarkStyle screen.Style
}

// Copy returns what the cell gives to the clipboard.
func (c Cell) Copy() string {
	if c.Plain != "" {
		return c.Plain
	}
	return c.Text
}

// Edits says whether the cell can be changed.
func (c Cell) Edits() bool { return c.Kind >= Number }

// Column is how the cells of a column stand.
type Column struct {
	Head  string
	W     int
	Grow  int // parts of the room that is left, 0: keeps its width
	Right bool
}

// Row is one line of cells, or a heading over the ones below.
type Row struct {
	Heading string
	Cells   []Cell
	Item    int // what it is of: the place of a jug, an oil, a scent, a task
	Sub     int // the place in that item's own list; -1: none
	Total   bool
}

// Grid is a table.
type Grid struct {
	Columns []Column
	Rows    []Row
	Frozen  int    // columns that stay when the rest scrolls sideways
	Empty   string // said where there are no rows
}

// headed says whether any column has a head.
func (g Grid) headed() bool {
	for _, c := range g.Columns {
		if c.Head != "" {
			return true
		}
	}
	return false
}

// Lines is how many lines the grid fills, its head included.
func (g Grid) Lines() int {
	n := max(len(g.Rows), 1)
	if g.headed() {
		n++
	}
	return n
}

// cell returns a cell, blank where the row is shorter.
func (g Grid) cell(row, col int) Cell {
	if row < 0 || row >= len(g.Rows) || col < 0 || col >= len(g.Rows[row].Cells) {
		return Cell{}
	}
	return g.Rows[row].Cells[col]
}
