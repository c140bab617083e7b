package tui

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/grid"
	"pourbench/tui/panel"
)

// shelfList opens a list of the shelf for a cell: what choosing comes to is carried out.
func (m *model) shelfList(cell grid.Cell, picked func(id string) panel.Do) *dialog.List {
	l := &dialog.List{Title: "Pick from the " + cell.List + " on the shelf", Names: true, Items: m.facts.Items(cell.List)}
	l.Choose = func(id string) tea.Cmd {
		m.do(picked(id))
		return nil
	}
	for i, it := range l.Items {
		if it.ID == cell.ID {
			l.At = i
		}
	}
	return l
}
