package tui

import (
	"fmt"

	"pourbench/pour"
	"pourbench/tui/entry"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/panel"
)

// bigNudge is how many steps a big nudge is.
const bigNudge = 10

// change changes the plan at the cursor and says whether the key was one that does. [model.cannot] has said that it can.
func (m *model) change(b keys.Binding, nth int) bool {
	cell, _, _ := m.cell()
	switch b.ID {
	case keys.Digits:
		typed := ""
		if nth >= 0 {
			typed = b.Keys[nth]
		}
		m.beginFigure(typed)
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
	case keys.IcingOnOff:
		m.toggleIcing()
	default:
		do, ok := m.asked(b.ID)
		if ok {
			m.do(do)
		}
		return ok
	}
	return true
}

// beginFigure starts typing a figure: of a name, the one behind it in its row.
func (m *model) beginFigure(typed string) {
	id := m.at().ID
	if to, ok := m.grids[id].FigureOf(m.cursors[id]); ok {
		m.cursors[id] = to
		cell, _, _ := m.cell()
		m.begin(typed)
		m.say(cell.Name + ": its figure, to the right of the name")
		return
	}
	m.begin(typed)
}

// asked is what a key comes to on the panel in focus; false: the panel has nothing for it.
func (m *model) asked(id keys.ID) (panel.Do, bool) {
	cell, row, _ := m.cell()
	return m.at().Press(id, m.facts, panel.On{Cell: cell, Row: row, Col: m.cursors[m.at().ID].Col})
}

// do carries out what a key comes to, and says whether it could.
func (m *model) do(do panel.Do) bool {
	if do.Why != "" {
		m.refuse(do.Why)
		return false
	}
	if do.Pick != nil {
		m.dialogs.Open(m.shelfList(*do.Pick, do.Picked))
	}
	if do.Try != nil {
		m.trying = trying{of: do.Try, opened: m.file.opened}
	}
	if do.Form != nil {
		m.askEntry(*do.Form)
	}
	if do.Shelf != nil && m.reshelve(*do.Shelf, do.Said) != nil {
		return false
	}
	if do.Edit != nil && m.make(do.Name, do.Edit, m.withUnread(do)) != nil {
		return false // the reason is in the status line
	}
	if do.Edit == nil && do.Shelf == nil && do.Said != "" {
		m.say(do.Said)
	}
	if do.Seek != nil {
		m.settle() // so that the cursor can follow what moved
		m.seek(do.Seek)
	}
	if cell, _, ok := m.cell(); ok && do.Begin {
		m.beginOver(cell)
	}
	return true
}

// seek takes the cursor of the panel in focus to a row.
func (m *model) seek(where func(*panel.Facts) (panel.To, bool)) {
	to, ok := where(m.facts)
	if !ok {
		return
	}
	id := m.at().ID
	c := m.cursors[id]
	if to.Col >= 0 {
		c = grid.Cursor{Col: to.Col}
	}
	m.cursors[id] = m.grids[id].Seek(c, to.Item, to.Sub)
}

// beginOver starts typing in a cell over what stands there: a figure, or a name, is mostly typed anew.
func (m *model) beginOver(cell grid.Cell) {
	m.begin("")
	m.typing.Entry = entry.Over(cell.Plain)
}

func (m *model) changeCell(cell grid.Cell) {
	switch cell.Kind {
	case grid.Number, grid.Words:
		m.beginOver(cell)
	case grid.Numbers:
		m.begin(cell.Plain)
	case grid.Tick:
		if cell.Keep != nil {
			m.keepTurned(cell, 1)
			return
		}
		_ = m.make(cell.Name, cell.Flip, cell.Said) // a refusal is in the status line
	case grid.Choice:
		m.dialogs.Open(m.shelfList(cell, func(id string) panel.Do { return m.chosen(cell, id) }))
	default:
		if do, ok := m.asked(keys.Change); ok {
			m.do(do)
		}
	}
}

// chosen is what a choice in a cell comes to: its edit, and where something was added the cursor goes on to its figure.
func (m *model) chosen(cell grid.Cell, id string) panel.Do {
	do := panel.Do{Name: cell.Name, Edit: cell.Pick(id)}
	if cell.Adds != nil {
		do.Said = cell.Adds(id)
		do.Seek = func(*panel.Facts) (panel.To, bool) {
			p := m.at().ID
			next := m.grids[p].NextEdit(m.cursors[p])
			row := m.grids[p].Rows[next.Row]
			return panel.To{Item: row.Item, Sub: row.Sub, Col: next.Col}, true
		}
	}
	return do
}

func (m *model) nudge(cell grid.Cell, steps float64) {
	if cell.Keep != nil {
		m.keepTurned(cell, steps)
		return
	}
	e, err := cell.Nudge(steps)
	if err == nil {
		err = m.session.Nudge(cell.Name, e)
	}
	if err == nil && cell.Said != "" {
		m.say(cell.Said)
	}
	if err != nil {
		m.refuse(reason(err))
	}
}

func (m *model) toggleIcing() {
	if m.session.Plan().Icing == nil {
		if m.do(panel.NewIcing()) {
			m.station = panel.Icing
		}
		return
	}
	if m.edit("removal of the icing", pour.RemoveIcing()) == nil {
		m.say("the icing is gone; {undo} brings it back")
	}
}

// toggleUnits turns between metric and avoirdupois with inches and Fahrenheit. The plan itself stays metric.
func (m *model) toggleUnits() {
	to := pour.Avoirdupois()
	if m.session.Plan().Show.Mass == pour.MassOunce {
		to = pour.Metric()
	}
	err := m.edit("units", func(p pour.Plan) (pour.Plan, error) {
		for path, word := range map[string]string{"show.mass": to.Mass, "show.temperature": to.Temperature, "show.length": to.Length} {
			next, err := pour.SetWord(path, word)(p)
			if err != nil {
				return p, fmt.Errorf("change units: %w", err)
			}
			p = next
		}
		return p, nil
	})
	if err == nil {
		m.say("figures in " + to.Units())
	}
}

func (m *model) undo() {
	name, err := m.session.Undo()
	if err != nil {
		m.refuse("undo " + name + ": " + reason(err))
		return
	}
	m.lookAtShelf()
	m.say("undone: " + name)
}

func (m *model) redo() {
	name, err := m.session.Redo()
	if err != nil {
		m.refuse("do " + name + " again: " + reason(err))
		return
	}
	m.lookAtShelf()
	m.say("done again: " + name)
}

func (m *model) toggleMouse() {
	m.mouse = !m.mouse
	if m.mouse {
		m.say("the mouse points at cells; {mouse} gives it back to the terminal")
		return
	}
	m.say("the mouse is the terminal's: select text with it; {mouse} takes it back")
}
