package tui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
)

// rowByNumber takes a line that begins with the number of a row.
func (t *talk) rowByNumber(n int, rest string) {
	rows := t.rows()
	at := slices.IndexFunc(rows, func(r lines.Row) bool { return r.N == n })
	if n < 1 || at < 0 {
		t.m.refuse(fmt.Sprintf("there is no row %d here; Enter tells the rows", n))
		return
	}
	t.row(at, rest)
}

// row takes a line about a row: nothing tells it, a column asks for its value, a value sets it.
func (t *talk) row(i int, rest string) {
	r := t.rows()[i]
	col, text, named := r.Column(rest)
	if !named {
		col = t.main(r)
	}
	t.put(r, col)
	switch {
	case rest == "":
		t.tellRow(r)
	case text == "":
		t.act(lines.Asked{Binding: t.binding(keys.Change)})
	default:
		t.set(text)
	}
}

// binding is a row of the table of keys by its name.
func (t *talk) binding(id keys.ID) keys.Binding {
	table := t.table()
	return table[slices.IndexFunc(table, func(b keys.Binding) bool { return b.ID == id })]
}

// put takes the cursor to a cell.
func (t *talk) put(r lines.Row, col int) {
	p := t.m.at().ID
	t.m.cursors[p] = t.m.grids[p].Settle(grid.Cursor{Row: r.At, Col: col})
}

// main is the cell of a row that a value without a column is for: the number the panel begins with, else the first number, else the first
// cell that can be changed.
func (t *talk) main(r lines.Row) int {
	p := t.m.at()
	cells := t.m.grids[p.ID].Rows[r.At].Cells
	if p.Start < len(cells) && cells[p.Start].Kind == grid.Number {
		return p.Start
	}
	for _, is := range []func(grid.Cell) bool{
		func(c grid.Cell) bool { return c.Kind == grid.Number }, grid.Cell.Edits, func(c grid.Cell) bool { return c.Kind == grid.Shown },
	} {
		if col := slices.IndexFunc(cells, is); col >= 0 {
			return col
		}
	}
	return 0
}

// aim takes the cursor to the row and the cell that a line begins with, and returns what follows.
func (t *talk) aim(line string) (rest string, ok bool) {
	rows := t.rows()
	first, rest, _ := strings.Cut(line, " ")
	var at int
	var others []string
	if n, err := strconv.Atoi(first); err == nil {
		at = slices.IndexFunc(rows, func(r lines.Row) bool { return r.N == n })
	} else {
		at, rest, others = lines.Find(rows, line)
	}
	switch {
	case len(others) > 0:
		t.m.refuse(line + " could be " + strings.Join(others, ", ") + ": give the number of the row")
		return "", false
	case at < 0 || rows[at].N == 0:
		t.m.refuse("there is no row " + line + " here; Enter tells the rows")
		return "", false
	}
	col, rest, named := rows[at].Column(strings.TrimSpace(rest))
	if !named {
		col = t.main(rows[at])
	}
	t.put(rows[at], col)
	return rest, true
}

// set gives the cell under the cursor a value.
func (t *talk) set(text string) {
	cell, _, _ := t.m.cell()
	defer t.confirm(t.m.session.Revision())
	switch {
	case cell.Kind == grid.Number || cell.Kind == grid.Words || cell.Kind == grid.Numbers:
		t.m.begin("")
		t.keep(text)
		if typing := t.m.typing; typing != nil { // refused, with the reason: nothing hangs open for it
			t.m.typing = nil
		}
	case cell.Kind == grid.Tick && len(cell.Round) > 0:
		t.turn(cell, text)
	case cell.Kind == grid.Choice:
		t.update(func() tea.Cmd { t.m.changeCell(cell); return nil })
		t.answer(text)
	default:
		t.m.refuse(t.cellName() + " is worked out from the plan; it cannot be typed")
	}
}

// confirm says what the cell under the cursor holds, after an edit of it, or that it held that already.
func (t *talk) confirm(rev int) {
	cell, _, ok := t.m.cell()
	switch {
	case !ok:
	case t.m.session.Revision() != rev:
		t.out.Say(t.cellName() + ": " + lines.Value(cell))
	case t.m.status.Text() == "" && t.m.dialogs.Top() == nil && t.m.typing == nil:
		t.out.Say(t.cellName() + " is " + lines.Value(cell) + " already")
	}
}

// turn takes a switch to the value that is named.
func (t *talk) turn(cell grid.Cell, text string) {
	i := slices.IndexFunc(cell.Round, func(v string) bool { return strings.EqualFold(v, text) })
	if i < 0 {
		i = slices.IndexFunc(cell.Round, func(v string) bool { return strings.HasPrefix(strings.ToLower(v), strings.ToLower(text)) })
	}
	switch {
	case i < 0:
		t.m.refuse(t.cellName() + " is one of " + strings.Join(cell.Round, ", "))
	case i == 0:
		t.m.say(t.cellName() + " is " + cell.Round[0] + " already")
	case cell.Keep != nil:
		t.update(func() tea.Cmd { t.m.keepTurned(cell, float64(i)); return nil })
	case cell.Nudge == nil:
		t.update(func() tea.Cmd { _ = t.m.edit(cell.Name, cell.Flip); return nil })
	default:
		t.update(func() tea.Cmd {
			e, err := cell.Nudge(float64(i))
			if err != nil {
				t.m.refuse(reason(err))
				return nil
			}
			_ = t.m.edit(cell.Name, e) // a refusal is in the status line
			return nil
		})
	}
}

// tellRow tells every cell of a row, with what can be done to it.
func (t *talk) tellRow(r lines.Row) {
	t.out.Sayf("%d %s", r.N, r.Name)
	cells := t.m.grids[t.m.at().ID].Rows[r.At].Cells
	for _, p := range r.All {
		if kind := kindWords(cells[p.Col]); p.Name != "" || kind != "" || len(r.All) == len(r.Parts) {
			t.out.Say(p.String() + kind)
		}
	}
	if cell, _, ok := t.m.cell(); ok && cell.Hint != "" {
		t.out.Say(t.m.fill(cell.Hint))
	}
}

// kindWords says what can be done to a cell.
func kindWords(c grid.Cell) string {
	switch c.Kind {
	case grid.Number:
		return " (a number)"
	case grid.Numbers:
		return " (numbers with blanks between them)"
	case grid.Words:
		return " (text)"
	case grid.Choice:
		return " (from the " + c.List + " on the shelf)"
	case grid.Tick:
		if len(c.Round) > 0 {
			return " (" + strings.Join(c.Round, ", ") + ")"
		}
		return " (change takes it)"
	}
	return ""
}

// cellName is the row and the column of the cell under the cursor.
func (t *talk) cellName() string {
	c := t.m.cursors[t.m.at().ID]
	for _, r := range t.rows() {
		if r.At != c.Row {
			continue
		}
		for _, p := range r.All {
			if p.Col == c.Col && p.Name != "" {
				return p.Name + " of " + r.Name
			}
		}
		return r.Name
	}
	return "this cell"
}

// tellCell tells the cell that is being typed in.
func (t *talk) tellCell() {
	cell, _, _ := t.m.cell()
	t.out.Say(t.cellName() + ", now " + lines.Value(cell) + ". " + t.m.fill(cell.Hint))
}
