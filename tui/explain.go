package tui

import (
	"pourbench/pour"
	"pourbench/tui/dialog"
)

// whereFrom is the title of the page that explains.
const whereFrom = "Where it comes from"

// explain opens the page that says where the figure under the cursor comes from.
func (m *model) explain() {
	cell, _, _ := m.cell()
	if cell.Figure == "" { // what is no figure of the plan is told by its hint alone
		m.dialogs.Open(&dialog.Page{Title: whereFrom, Lines: []dialog.Line{{Text: cell.Text}, {Text: m.fill(cell.Hint)}}})
		return
	}
	a, err := m.told().Explain(cell.Figure, m.session.Shelf(), m.session.Hand())
	if err != nil {
		m.refuse(err.Error())
		return
	}
	p := &dialog.Page{Title: whereFrom, LeadW: 8}
	for i, l := range a.Tell() {
		line := dialog.Line{Lead: l.Lead, Style: m.look.Accent, Text: l.Text}
		if i == 0 {
			line = dialog.Line{Lead: l.Lead + ": " + l.Text, Style: m.look.Focus}
		}
		p.Lines = append(p.Lines, line)
	}
	m.dialogs.Open(p)
}

// told is the sheet that knows most of this plan: the clock's figures and what the colours do, once they are worked out.
func (m *model) told() *pour.Sheet {
	switch {
	case m.facts.ColoursFresh && m.facts.Colours != nil:
		return m.facts.Colours
	case m.facts.Fresh && m.facts.Timed != nil:
		return m.facts.Timed
	}
	return m.facts.Sheet
}
