package batches

import (
	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/drying"
	"pourbench/pour/logbook/life"
)

// Detail is what a batch's own file says besides: what is read of one batch, when it is looked at.
type Detail struct {
	Plan  pour.Plan
	Marks []life.Mark
}

// openedMsg brings the detail of a batch.
type openedMsg struct {
	id     string
	detail Detail
	err    error
}

// open reads the file of a batch beside the keyboard.
func (m *Model) open(id string) tea.Cmd {
	if m.opt.Detail == nil {
		return nil
	}
	read := m.opt.Detail
	return func() tea.Msg {
		d, err := read(id)
		return openedMsg{id, d, err}
	}
}

// reopen reads the chosen batch's file when another one was read last.
func (m *Model) reopen() tea.Cmd {
	b, ok := m.chosen()
	if !ok || b.ID == m.detailOf || b.Fault != nil {
		return nil
	}
	m.detailOf, m.detail, m.plot = b.ID, Detail{}, drying.Plot{}
	return m.open(b.ID)
}

// opened takes in what was read, if it is of the chosen batch still.
func (m *Model) opened(msg openedMsg) {
	if msg.id != m.detailOf {
		return
	}
	if msg.err != nil {
		m.refuse(msg.err.Error())
		return
	}
	m.detail = msg.detail
	if b, ok := m.chosen(); ok && b.ID == msg.id {
		m.plot = m.plotOf(b)
		m.followMark(b)
	}
	m.settleBatch()
}

// planOf is the plan of a batch, as far as its file was read.
func (m *Model) planOf(b *life.Batch) pour.Plan {
	if b.ID == m.detailOf {
		return m.detail.Plan
	}
	return pour.Plan{}
}
