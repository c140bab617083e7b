package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/grid"
)

// shelfList opens a list of the shelf for a cell: choosing makes the cell's edit.
func (m *model) shelfList(cell grid.Cell) *dialog.List {
	l := &dialog.List{Title: "Pick from the " + cell.List + " on the shelf", Items: m.facts.Items(cell.List)}
	l.Choose = func(id string) tea.Cmd {
		_ = m.edit(cell.Name, cell.Pick(id)) // a refusal is in the status line
		return nil
	}
	for i, it := range l.Items {
		if it.ID == cell.ID {
			l.At = i
		}
	}
	return l
}
