package tui

import (
	"errors"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/tui/dialog"
	"pourbench/tui/entry"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/panel"
	"pourbench/tui/terminal"
)

// press takes a key to whatever has the keys: the topmost dialog, the cell being typed in, or the bench.
func (m *model) press(k tea.KeyPressMsg) tea.Cmd {
	if k.String() == keys.Leaves {
		m.typing = nil
		m.dialogs.Clear()
	}
	if m.placed.TooSmall {
		return m.pressTooSmall(k)
	}
	if m.dialogs.Top() != nil {
		m.status.Answered()
		return m.dialogs.Press(k, m.refuse)
	}
	if m.typing != nil {
		return m.pressTyping(k)
	}
	return m.pressBench(k)
}

// pressTooSmall takes a key while nothing can be drawn: only leaving is possible, and what is unsaved is kept by [Open].
func (m *model) pressTooSmall(k tea.KeyPressMsg) tea.Cmd {
	if k.String() != keys.Leaves {
		return nil
	}
	m.quitting = !m.session.Dirty()
	return tea.Quit
}

func (m *model) pressBench(k tea.KeyPressMsg) tea.Cmd {
	key := k.String()
	b, _ := m.opt.Keys.Lookup(keys.Bench, m.at().Has(), key)
	if b.ID == "" {
		m.refuse(keys.Shown(key) + " does nothing here; {help} lists every key, {palette} searches every action")
		return nil
	}
	return m.perform(keys.Shown(key)+" ("+string(b.ID)+")", b, b.Nth(key))
}

// perform does what an action of the table asks, or says why it cannot be: the one way for keys, palette, help and footer. It is named as
// it was asked for; nth is which of its keys it was, below 0: none.
func (m *model) perform(named string, b keys.Binding, nth int) tea.Cmd {
	why := m.cannot(b.ID)
	switch {
	case b.Mode != keys.Bench:
		why = m.whyNot(b, nth)
	case !b.Acts(m.at().Has()):
		why = "there is nothing in this panel to " + string(b.ID)
	}
	if why != "" {
		m.refuse(named + ": " + why)
		return nil
	}
	m.status.Clear()
	return m.act(b, nth)
}

// act does what an action asks, which is known to be possible.
func (m *model) act(b keys.Binding, nth int) tea.Cmd {
	if m.turnPicture(b.ID) || m.move(b.ID) || m.change(b, nth) {
		return nil
	}
	switch b.ID {
	case keys.Undo:
		m.undo()
	case keys.Redo:
		m.redo()
	case keys.Save:
		return m.save(nil)
	case keys.SaveAs:
		m.askSaveAs(nil)
	case keys.NewPlan:
		return m.newPlan()
	case keys.Template:
		m.toggleTemplate()
	case keys.Open:
		return m.open()
	case keys.Recipe:
		m.writeRecipe("")
	case keys.Checklist:
		m.askPaper()
	case keys.Copy:
		return m.copyCell()
	case keys.CopyPanel:
		return m.copyPanel()
	case keys.Units:
		m.toggleUnits()
	case keys.Mouse:
		m.toggleMouse()
	case keys.Pour:
		return m.pourNow()
	case keys.Batches:
		return m.goBatches()
	case keys.Stock:
		return m.goStock()
	case keys.Replay:
		return m.replay()
	case keys.Help:
		m.dialogs.Open(dialog.NewHelp(keys.OfBench(), m.actions(), m.look))
	case keys.Palette:
		m.dialogs.Open(dialog.NewPalette(m.actions()))
	case keys.Said:
		m.dialogs.Open(m.status.Page(m.look))
	case keys.Suspend:
		return m.parted(terminal.Suspend())
	case keys.Quit:
		return m.quit()
	default:
		return m.read(b.ID)
	}
	return nil
}

// read opens what is read about the plan, or does what is worked out about it.
func (m *model) read(id keys.ID) tea.Cmd {
	switch id {
	case keys.ReadAll:
		m.readWarnings()
	case keys.Explain:
		m.explain()
	case keys.WhatHelps:
		return m.suggest()
	case keys.Happened:
		return m.readPast()
	case keys.Shopping:
		return m.provide()
	case keys.Largest:
		return m.enlarge()
	case keys.Learned:
		return tea.Batch(m.readLearned(), m.readHand(m.say))
	}
	return nil
}

// move moves the cursor, the focus or the station and says whether the key was one that does.
func (m *model) move(id keys.ID) bool {
	p := m.at().ID
	g, c := m.grids[p], m.cursors[p]
	switch id {
	case keys.Up:
		c = g.Down(c, -1)
	case keys.Down:
		c = g.Down(c, 1)
	case keys.Left:
		c = g.Right(c, -1)
	case keys.Right:
		c = g.Right(c, 1)
	case keys.RowStart:
		c = g.Settle(grid.Cursor{Row: c.Row, Top: c.Top})
	case keys.RowEnd:
		c.Col = max(len(g.Columns)-1, 0)
		c = g.Settle(c)
	case keys.PageUp:
		c = g.Down(c, -m.pageRows())
	case keys.PageDown:
		c = g.Down(c, m.pageRows())
	default:
		return m.goTo(id)
	}
	m.cursors[p] = c
	return true
}

func (m *model) pageRows() int {
	if r, ok := m.placed.Find(m.at().ID); ok {
		return max(r.Dy()-3, 1)
	}
	return 1
}

// goTo moves to another panel or station.
func (m *model) goTo(id keys.ID) bool {
	switch id {
	case keys.NextPanel:
		m.turn(1)
	case keys.PrevPanel:
		m.turn(-1)
	case keys.NextPlace:
		m.station = (m.station + 1) % panel.Place(panel.Places)
	case keys.PrevPlace:
		m.station = (m.station + panel.Place(panel.Places) - 1) % panel.Place(panel.Places)
	default:
		at := slices.IndexFunc(m.stations, func(s panel.Station) bool { return s.Go == id })
		if at < 0 {
			return false
		}
		m.station = panel.Place(at)
	}
	return true
}

func (m *model) turn(by int) {
	at := slices.Index(m.panels, m.at())
	m.focus[m.station] = m.panels[(at+by+len(m.panels))%len(m.panels)]
}

// pressTyping takes a key while a cell is typed in.
func (m *model) pressTyping(k tea.KeyPressMsg) tea.Cmd {
	b, ok := m.opt.Keys.Lookup(keys.Typing, 0, k.String())
	switch {
	case ok:
		m.actTyping(b.ID)
	case k.Text != "" && !k.Mod.Contains(tea.ModAlt):
		m.typing.Entry.Insert(k.Text)
		m.typing.Refused = ""
	case m.typing.Entry.Press(k):
		m.typing.Refused = ""
	default:
		m.refuse(m.opt.Keys.Fill(keys.Typing, keys.Shown(k.String())+": a cell is being typed in; {commit} keeps it, {restore} puts back what stood there"))
	}
	return nil
}

// actTyping does what a key of the cell being typed in comes to.
func (m *model) actTyping(id keys.ID) {
	switch id {
	case keys.Restore:
		m.typing = nil
		m.say("as it was")
	case keys.Commit:
		cell, _, _ := m.cell()
		if m.commit() && (cell.Kind == grid.Number || cell.Kind == grid.Numbers) { // figures are typed down a column; who names a jug goes on with that jug
			m.cursors[m.at().ID] = m.grids[m.at().ID].Down(m.cursors[m.at().ID], 1)
		}
	case keys.CommitRight:
		if m.commit() {
			m.cursors[m.at().ID] = m.grids[m.at().ID].NextEdit(m.cursors[m.at().ID])
		}
	}
}

// commit keeps what was typed; a refusal stays at the cell with its reason.
func (m *model) commit() bool {
	cell, _, ok := m.cell()
	if !ok || cell.Set == nil && cell.Keep == nil {
		m.typing = nil
		return false
	}
	err := m.keepTyped(cell, m.typing.Entry.Text())
	if err != nil {
		m.typing.Refused = reason(err)
		m.refuse(m.typing.Refused)
		return false
	}
	m.typing = nil
	m.status.Clear()
	return true
}

// keepTyped makes what was typed in a cell an edit of the plan, or a change of the shelf.
func (m *model) keepTyped(cell grid.Cell, text string) error {
	if cell.Keep != nil {
		c, err := cell.Keep(text)
		if err == nil {
			err = m.shelve(c)
		}
		return err
	}
	e, err := cell.Set(text)
	if err == nil {
		err = m.session.Apply(cell.Name, e)
	}
	return err
}

// begin starts typing in the cell under the cursor.
func (m *model) begin(text string) {
	m.typing = &typing{Typed: grid.Typed{Entry: entry.New(text)}}
	m.status.Clear()
}

// paste puts pasted text where text is typed.
func (m *model) paste(text string) tea.Cmd {
	if m.dialogs.Paste(text) || m.typing == nil && m.pasteRecipe(text) {
		return nil
	}
	if m.typing == nil {
		cell, _, _ := m.cell()
		if cell.Kind != grid.Number && cell.Kind != grid.Words && cell.Kind != grid.Numbers {
			m.refuse("paste: go to a number or a name first")
			return nil
		}
		m.begin("")
	}
	m.typing.Entry.Insert(strings.TrimSpace(text))
	return nil
}

// reason is an error for the status line: without the word that every refusal starts with, with the key that puts it right where there is one,
// and where the system failed, its reason first.
func reason(err error) string {
	if errors.Is(err, pour.ErrRefused) {
		why := strings.TrimPrefix(err.Error(), pour.ErrRefused.Error()+": ")
		if errors.Is(err, pour.ErrHeld) {
			why = strings.TrimSuffix(why, pour.ErrHeld.Error()) + "{hold} lets one go"
		}
		return why
	}
	text, why := err.Error(), disk.Reason(err).Error()
	if what, ok := strings.CutSuffix(text, ": "+why); ok {
		return why + ": " + what
	}
	return text
}
