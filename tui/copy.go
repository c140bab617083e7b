package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"
)

// sent is said of what was copied. A terminal takes it or does not, and never says which.
const sent = "sent to the terminal's clipboard"

// copyCell gives the cell under the cursor to the clipboard.
func (m *model) copyCell() tea.Cmd {
	cell, _, _ := m.cell()
	m.say(sent + ": " + cell.Copy())
	return tea.SetClipboard(cell.Copy())
}

// copyPanel gives the whole panel to the clipboard, tab-separated.
func (m *model) copyPanel() tea.Cmd {
	g := m.grids[m.at().ID]
	var b strings.Builder
	for _, row := range g.Rows {
		if row.Heading != "" {
			b.WriteString(row.Heading)
		}
		for i, c := range row.Cells {
			if i > 0 {
				b.WriteByte('\t')
			}
			b.WriteString(c.Text)
		}
		b.WriteByte('\n')
	}
	m.say(sent + ": " + m.at().Title)
	return tea.SetClipboard(b.String())
}
