package stockroom

import (
	"runtime"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/terminal"
)

// press gives a key to what is open, to the search, or to the page.
func (m *Model) press(k tea.KeyPressMsg) tea.Cmd {
	switch {
	case k.String() == keys.Leaves:
		return tea.Quit
	case m.dialogs.Top() != nil:
		return m.dialogs.Press(k, m.refuse)
	case m.search.On:
		m.pressSearch(k)
		return nil
	}
	b, ok := m.opt.Keys.Lookup(keys.Stocking, 0, k.String())
	if !ok {
		m.refuse("the key " + keys.Shown(k.String()) + " does nothing here; {help} lists the keys, {palette} searches every action")
		return nil
	}
	return m.perform(b, b.Nth(k.String()))
}

// perform does what an action of the table asks, or says why it cannot be: the one way for keys, palette, help and footer.
func (m *Model) perform(b keys.Binding, nth int) tea.Cmd {
	if why := m.whyNot(b, nth); why != "" {
		m.refuse(string(b.ID) + ": " + why)
		return nil
	}
	m.status.Clear()
	m.kept = m.kept && b.ID == keys.LookAt
	if m.goes(b.ID) {
		return nil
	}
	return m.do(b.ID)
}

// goes moves about the page and says whether the action was one that does.
func (m *Model) goes(id keys.ID) bool {
	switch id {
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last:
		m.move(id)
	case keys.Search:
		m.search.On, m.inside = true, false
	case keys.ToList:
		if m.inside {
			m.inside = false
			m.settle()
		} else {
			m.clearSearch()
		}
	case keys.Emptied:
		m.emptied = !m.emptied
		m.sift()
		m.say(map[bool]string{true: "packs that are used up are in the list, too", false: "packs that are used up are left out"}[m.emptied])
	default:
		return false
	}
	return true
}

// move goes about in what has the keys.
func (m *Model) move(id keys.ID) {
	if m.inside {
		r, _ := m.chosen()
		area := listing.Within(m.place().Chosen)
		m.story.Move(id, m.told(r, area.Dx()), len(m.marks(r)), area.Dy())
		return
	}
	m.list.Move(id, len(m.shown), m.place().Rows())
	m.story = listing.Story{}
	m.settle()
}

// do does what an action asks, which is known to be possible.
func (m *Model) do(id keys.ID) tea.Cmd {
	switch id {
	case keys.LookAt:
		return m.lookAt()
	case keys.Receive:
		m.openPad("")
	case keys.ReceiveForm:
		m.receiveForm()
	case keys.OpenPack:
		m.openForm()
	case keys.CountPack:
		m.countForm()
	case keys.LosePack:
		m.loseForm()
	case keys.Correct:
		m.correctForm()
	case keys.TakeBack:
		return m.takeBack()
	case keys.Undo:
		return m.undoLast()
	case keys.Shopping:
		return m.seePage("What to get", m.opt.Shopping)
	case keys.Expiring:
		return m.seePage("What expires", m.opt.Expiring)
	case keys.Trace:
		return m.traced()
	case keys.CostRule:
		m.ruleForm()
	case keys.Mouse:
		m.releaseMouse()
	case keys.Help:
		m.dialogs.Open(dialog.NewHelp(keys.OfStock(), m.actions(), m.look))
	case keys.Palette:
		m.dialogs.Open(dialog.NewPalette(m.actions()))
	case keys.Said:
		m.dialogs.Open(m.status.Page(m.look))
	case keys.Suspend:
		return terminal.Suspend()
	case keys.Quit:
		return tea.Quit
	}
	return nil
}

// lookAt goes into the chosen line, to its newest entry; inside it, it corrects the chosen entry.
func (m *Model) lookAt() tea.Cmd {
	switch {
	case m.inside && m.kept:
		m.kept = false
		m.say("that was kept already; {look at} again corrects the chosen entry")
		return nil
	case m.inside:
		m.correctForm()
		return nil
	}
	m.inside = true
	r, _ := m.chosen()
	m.story.Mark = max(len(m.marks(r))-1, 0)
	m.settle()
	area := listing.Within(m.place().Chosen)
	m.story.Bring(m.told(r, area.Dx()), area.Dy())
	return nil
}

// actions is what help and palette ask of the page.
func (m *Model) actions() dialog.Actions {
	return dialog.Actions{Keys: m.opt.Keys, Own: keys.Stocking, WhyNot: m.whyNot, Do: m.perform}
}

// whyNot says why an action of the table cannot act now; empty: it can.
func (m *Model) whyNot(b keys.Binding, _ int) string {
	if b.Mode != keys.Stocking {
		return m.fill("at the bench only; {quit} leaves the stock")
	}
	return m.fill(m.cannot(b.ID))
}

// cannot says why an action cannot act now; empty: it can.
func (m *Model) cannot(id keys.ID) string {
	switch id {
	case keys.Receive, keys.ReceiveForm, keys.CostRule, keys.Undo:
		if why := m.cannotWrite(); why != "" {
			return why
		}
	case keys.OpenPack, keys.CountPack, keys.LosePack:
		return m.cannotPack(id)
	case keys.Correct, keys.TakeBack:
		return m.cannotEntry()
	}
	return m.cannotSee(id)
}

// cannotSee says why one of those that write nothing cannot act now.
func (m *Model) cannotSee(id keys.ID) string {
	r, ok := m.chosen()
	switch id {
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last:
		if len(m.shown) == 0 {
			return "the list is empty"
		}
	case keys.LookAt:
		switch {
		case !ok:
			return "nothing is chosen"
		case m.inside:
			return m.cannotEntry()
		}
	case keys.ToList:
		if !m.inside && m.search.Text() == "" {
			return "this is the list, and nothing is searched for; {quit} leaves the stock"
		}
	case keys.Undo:
		if len(m.undo) == 0 {
			return "nothing was written since this page was opened"
		}
	case keys.Shopping:
		return missing(m.opt.Shopping != nil, "nothing is told of what to get here")
	case keys.Expiring:
		return missing(m.opt.Expiring != nil, "nothing is told of what expires here")
	case keys.Trace:
		switch {
		case m.opt.Trace == nil:
			return "nothing can be traced from here"
		case !r.isPack:
			return "go to a pack first: it is traced by its name and its lot"
		}
	case keys.Said:
		return missing(!m.status.Silent(), "nothing was said yet")
	case keys.Suspend:
		return terminal.NoSuspend(runtime.GOOS)
	}
	return ""
}

func missing(there bool, why string) string {
	if there {
		return ""
	}
	return why
}

// cannotWrite says why nothing can be written now.
func (m *Model) cannotWrite() string {
	switch {
	case m.opt.Decide == nil:
		return "nothing can be written from here"
	case m.fault != nil:
		return "the ledger cannot be read: mend " + m.opt.File + " first, it says where"
	case m.busy:
		return "something is being written; a moment"
	}
	return ""
}

// cannotPack says why something cannot be done to the chosen pack.
func (m *Model) cannotPack(id keys.ID) string {
	r, ok := m.chosen()
	switch why := m.cannotWrite(); {
	case why != "":
		return why
	case !ok:
		return "nothing is chosen; {receive} writes in what came"
	case !r.isPack:
		return "go to a pack first, one of those below it"
	case id == keys.OpenPack && r.pack.Opened != 0:
		return "it was opened on " + r.pack.Opened.String() + "; its entry can be corrected"
	case id == keys.LosePack && r.pack.Left <= 0:
		return "nothing is left in it by the book; {weigh the pack} counts what is there"
	}
	return ""
}

// cannotEntry says why the chosen entry cannot be changed.
func (m *Model) cannotEntry() string {
	r, _ := m.chosen()
	switch why := m.cannotWrite(); {
	case why != "":
		return why
	case !m.inside:
		return "go into a pack first, to its entries: {look at}"
	case len(m.marks(r)) == 0:
		return "no entry is here; those of each pack are below it"
	}
	return ""
}

// releaseMouse lets the pointer go, or takes it back.
func (m *Model) releaseMouse() {
	m.opt.NoMouse = !m.opt.NoMouse
	m.say(map[bool]string{true: "the pointer is the terminal's: select text with it; {mouse} takes it back", false: "the pointer works here again"}[m.opt.NoMouse])
}
