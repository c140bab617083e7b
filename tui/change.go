package tui

import (
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// bigNudge is how many steps a big nudge is.
const bigNudge = 10

// change changes the plan at the cursor and says whether the key was one that does. [Model.cannot] has said that it can.
func (m *Model) change(id keys.ID, key string) bool {
	cell, row, _ := m.cell()
	switch id {
	case keys.Digits:
		m.begin(key)
	case keys.Change, keys.Flip:
		m.changeCell(cell)
	case keys.More:
		m.nudge(cell, 1)
	case keys.Less:
		m.nudge(cell, -1)
	case keys.MuchMore:
		m.nudge(cell, bigNudge)
	case keys.MuchLess:
		m.nudge(cell, -bigNudge)
	case keys.Hold:
		m.hold(cell, row)
	case keys.Add:
		m.add(m.at())
	case keys.Colour:
		m.addColourant(m.at(), row.Item)
	case keys.Remove:
		m.remove(m.at(), row)
	case keys.Earlier:
		m.reorder(m.at(), row, -1)
	case keys.Later:
		m.reorder(m.at(), row, 1)
	case keys.Rename:
		m.cursors[m.at()] = m.grids[m.at()].Seek(grid.Cursor{Row: m.cursors[m.at()].Row, Col: jugName}, row.Item, -1)
		if c, _, ok := m.cell(); ok {
			m.begin(c.Plain)
		}
	case keys.IcingOnOff:
		m.toggleIcing()
	default:
		return false
	}
	return true
}

func (m *Model) changeCell(cell grid.Cell) {
	switch cell.Kind {
	case grid.Number, grid.Words:
		m.begin(cell.Plain)
	case grid.Tick:
		_ = m.edit(cell.Name, cell.Flip) // a refusal is in the status line
	case grid.Choice:
		m.dialogs.Open(m.shelfList(cell))
	}
	if m.at().Kind == layout.NoIcing {
		m.toggleIcing()
	}
}

func (m *Model) nudge(cell grid.Cell, steps float64) {
	e, err := cell.Nudge(steps)
	if err == nil {
		err = m.session.Nudge(cell.Name, e)
	}
	if err != nil {
		m.refuse(reason(err))
	}
}

// hold holds the share of the jug under the cursor, or switches the cell that can be switched.
func (m *Model) hold(cell grid.Cell, row grid.Row) {
	if cell.Kind == grid.Tick {
		_ = m.edit(cell.Name, cell.Flip)
		return
	}
	n := batchName(m.at())
	jug := m.batch(m.at()).Jugs[row.Item]
	if m.edit("hold of "+jug.Name, pour.HoldShare(n, row.Item, !jug.Held)) == nil {
		m.say(map[bool]string{true: jug.Name + " keeps its share", false: jug.Name + " gives way again"}[!jug.Held])
	}
}

func (m *Model) add(p layout.Panel) {
	n := batchName(p)
	switch p.Kind {
	case layout.NoIcing:
		m.toggleIcing()
	case layout.Grid:
		after := len(m.batch(p).Jugs) - 1
		if _, row, ok := m.cell(); ok && row.Item >= 0 {
			after = row.Item
		}
		if m.edit("new jug", pour.AddJug(n, after, "jug")) == nil {
			m.rebuild()
			m.cursors[p] = m.grids[p].Seek(grid.Cursor{Col: jugName}, after+1, -1)
			m.say("a new jug: type r to name it, c to colour it")
		}
	case layout.Bursts:
		bursts := append([]pour.Burst(nil), m.batch(p).Blend...)
		at := 0.0
		if len(bursts) > 0 {
			at = bursts[len(bursts)-1].AtMin + 1
		}
		_ = m.edit("new burst", pour.SetBursts(n, append(bursts, pour.Burst{AtMin: at, S: 10})))
	default:
		m.dialogs.Open(m.addList(p))
	}
}

func (m *Model) addColourant(p layout.Panel, jug int) {
	n := batchName(p)
	j := m.batch(p).Jugs[jug]
	cell := grid.Cell{List: listColourants, Name: "colourant of " + j.Name, Pick: func(id string) pour.Edit {
		c, _ := m.session.Shelf().Colourant(id)
		return pour.SetColourant(n, jug, len(j.Colourants), c)
	}}
	m.dialogs.Open(m.shelfList(cell))
}

func (m *Model) remove(p layout.Panel, row grid.Row) {
	n, i := batchName(p), row.Item
	b := m.batch(p)
	switch p.Kind {
	case layout.Grid:
		jug := b.Jugs[i]
		if c := m.cursors[p].Col; row.Sub >= 0 && c >= jugDye && c <= jugDye+4 {
			_ = m.edit("removal of a colourant from "+jug.Name, pour.RemoveColourant(n, i, row.Sub))
			return
		}
		if m.edit("removal of "+jug.Name, pour.RemoveJug(n, i)) == nil {
			m.say(jug.Name + " is gone; u brings it back")
		}
	case layout.Oils:
		_ = m.edit("removal of "+b.Oils[i].Oil, pour.RemoveOil(n, i))
	case layout.Extras:
		_ = m.edit("removal of "+b.Extras[i].Extra, pour.RemoveExtra(n, i))
	case layout.Scents:
		_ = m.edit("removal of "+b.Scents[i].Scent, pour.RemoveScent(n, i))
	case layout.Bursts:
		bursts := append([]pour.Burst(nil), b.Blend[:i]...)
		_ = m.edit("removal of a burst", pour.SetBursts(n, append(bursts, b.Blend[i+1:]...)))
	}
}

// reorder moves a jug or a task and takes the cursor along.
func (m *Model) reorder(p layout.Panel, row grid.Row, by int) {
	n, i := batchName(p), row.Item
	c := m.cursors[p]
	if p.Kind == layout.Grid {
		jug := m.batch(p).Jugs[i]
		if m.edit("place of "+jug.Name, pour.MoveJug(n, i, i+by)) == nil {
			m.rebuild()
			m.cursors[p] = m.grids[p].Seek(c, i+by, row.Sub)
		}
		return
	}
	sheet := *m.session.Sheet()
	tasks := sheet.Stints()[i].Tasks
	key := tasks[0].Key
	if by > 0 {
		key = tasks[len(tasks)-1].Key
	}
	if m.edit("order of the run", pour.MoveTask(sheet, key, by)) != nil {
		return
	}
	m.rebuild()
	for k, st := range m.session.Sheet().Stints() {
		if slices.ContainsFunc(st.Tasks, func(t pour.Task) bool { return t.Key == key }) {
			m.cursors[p] = m.grids[p].Seek(c, k, -1)
		}
	}
}

// rebuild brings the grids in step with the plan at once, so that the cursor can follow what moved.
func (m *Model) rebuild() { m.settle() }

func (m *Model) toggleIcing() {
	if m.session.Plan().Icing == nil {
		if m.edit("new icing", pour.AddIcing()) == nil {
			m.station = layout.Icing
			m.say("an icing that leans on the base; u takes it away")
		}
		return
	}
	if m.edit("removal of the icing", pour.RemoveIcing()) == nil {
		m.say("the icing is gone; u brings it back")
	}
}

// toggleUnits turns between metric and avoirdupois with inches and Fahrenheit. The plan itself stays metric.
func (m *Model) toggleUnits() {
	mass, temp, length := "oz", "F", "in"
	if m.session.Plan().Show.Mass == "oz" {
		mass, temp, length = "g", "C", "mm"
	}
	err := m.edit("units", func(p pour.Plan) (pour.Plan, error) {
		for path, word := range map[string]string{"show.mass": mass, "show.temperature": temp, "show.length": length} {
			next, err := pour.SetWord(path, word)(p)
			if err != nil {
				return p, fmt.Errorf("change units: %w", err)
			}
			p = next
		}
		return p, nil
	})
	if err == nil {
		m.say("figures in " + mass + ", °" + temp + " and " + length)
	}
}

func (m *Model) undo() {
	if name, err := m.session.Undo(); err == nil {
		m.say("undone: " + name)
	}
}

func (m *Model) redo() {
	if name, err := m.session.Redo(); err == nil {
		m.say("done again: " + name)
	}
}

func (m *Model) toggleMouse() {
	m.mouse = !m.mouse
	if m.mouse {
		m.say("the mouse points at cells; m gives it back to the terminal")
		return
	}
	m.say("the mouse is the terminal's: select text with it; m takes it back")
}
