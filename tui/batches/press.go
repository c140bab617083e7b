package batches

import (
	"runtime"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/logbook"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/terminal"
)

// press gives a key to what is open, to the search, or to the page.
func (m *Model) press(k tea.KeyPressMsg) tea.Cmd {
	switch {
	case k.String() == keys.Leaves:
		return m.leave()
	case m.photo.shown():
		return m.closePhoto()
	case m.dialogs.Top() != nil:
		return m.dialogs.Press(k, m.refuse)
	case m.search.On:
		m.pressSearch(k)
		return m.reopen()
	}
	b, ok := m.opt.Keys.Lookup(keys.Batching, 0, k.String())
	if !ok {
		m.refuse("the key " + keys.Shown(k.String()) + " does nothing here; {help} lists the keys, {palette} searches every action")
		return nil
	}
	return m.perform(b, b.Nth(k.String()))
}

// perform does what an action of the table asks, or says why it cannot be: the one way for keys, palette, help and footer. Where each key
// of it does its own, nth is which; below 0 it is asked.
func (m *Model) perform(b keys.Binding, nth int) tea.Cmd {
	if why := m.whyNot(b, nth); why != "" {
		m.refuse(string(b.ID) + ": " + why)
		return nil
	}
	if b.Each != nil && nth < 0 {
		return m.askLog()
	}
	m.status.Clear()
	m.kept = m.kept && b.ID == keys.LookAt
	if m.goes(b.ID) {
		m.settle()
		return m.reopen()
	}
	return m.do(b.ID, nth)
}

// goes moves about the page and says whether the action was one that does.
func (m *Model) goes(id keys.ID) bool {
	switch id {
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last:
		m.move(id)
	case keys.Search:
		m.search.On, m.inside, m.board = true, false, false
	case keys.Order:
		m.reorder()
		m.say("by " + orderWords(m.order))
	case keys.ToList:
		m.toList()
	default:
		return false
	}
	return true
}

// move goes about in what has the keys.
func (m *Model) move(id keys.ID) {
	by := map[keys.ID]int{keys.Up: -1, keys.Down: 1}[id]
	const far = 1 << 20
	switch id {
	case keys.First:
		by = -far
	case keys.Last:
		by = far
	}
	switch {
	case m.board:
		m.season.move(id, m.boardRows())
	case m.inside:
		m.moveInside(id, by)
	default:
		switch id {
		case keys.PageUp:
			by = -m.rows()
		case keys.PageDown:
			by = m.rows()
		}
		m.at = min(max(m.at+by, 0), max(len(m.shown)-1, 0))
		m.mark, m.scroll = 0, 0
		m.settle()
	}
}

// moveInside goes to another mark of the batch; above the first one and below the last it scrolls.
func (m *Model) moveInside(id keys.ID, by int) {
	b, ok := m.chosen()
	if !ok {
		return
	}
	h := max(listing.Within(m.place().Chosen).Dy(), 1)
	last := len(m.marks(b)) - 1
	switch {
	case id == keys.PageUp:
		m.scroll -= h
	case id == keys.PageDown:
		m.scroll += h
	case m.mark+by < 0 || m.mark+by > last:
		m.mark = min(max(m.mark+by, 0), max(last, 0))
		m.scroll += by
	default:
		m.mark += by
		m.bringMark()
	}
	m.scroll = max(m.scroll, 0)
	m.settleBatch()
}

// toList goes a step back: from the board or the batch to the list, and there lets the search go.
func (m *Model) toList() {
	switch {
	case m.board:
		m.board = false
	case m.inside:
		m.inside = false
	default:
		m.clearSearch()
	}
}

// do does what an action asks, which is known to be possible; nth is which of those that each key of it does.
func (m *Model) do(id keys.ID, nth int) tea.Cmd {
	switch id {
	case keys.LookAt:
		return m.lookAt()
	case keys.Board:
		if m.board = !m.board; m.board {
			return m.loadSeason()
		}
	case keys.LogMark:
		return m.openForm(kindOf(m.logNames()[nth]))
	case keys.LogAny:
		return m.askLog()
	case keys.SameBars:
		return m.openForm(logbook.WeighIn)
	case keys.Correct:
		return m.correct()
	case keys.TakeBack:
		return m.takeBack()
	case keys.Undo:
		return m.undoLast()
	case keys.SeePhoto:
		return m.seePhoto()
	case keys.CutLive:
		return m.cutLive()
	case keys.Again:
		return m.pourAgain()
	case keys.ScentPage:
		return m.seeScent()
	case keys.Record:
		return m.readRecord()
	case keys.Calendar:
		m.askCalendar()
	case keys.Mouse:
		m.releaseMouse()
	case keys.Help:
		m.dialogs.Open(dialog.NewHelp(keys.OfBatches(), m.actions(), m.look))
	case keys.Palette:
		m.dialogs.Open(dialog.NewPalette(m.actions()))
	case keys.Said:
		m.dialogs.Open(m.status.Page(m.look))
	case keys.Suspend:
		return terminal.Suspend()
	case keys.Quit:
		return m.leave()
	}
	return nil
}

// logNames are the marks that each key of logging does, in the order of the keys.
func (m *Model) logNames() []string {
	b, _ := m.opt.Keys.Find(keys.Batching, keys.LogMark)
	return b.Each
}

// lookAt goes into the batch; inside it, it corrects the chosen mark.
func (m *Model) lookAt() tea.Cmd {
	switch {
	case m.inside && m.kept:
		m.kept = false
		m.say("that was kept already; {look at} again corrects the chosen mark")
		return nil
	case m.inside:
		return m.correct()
	}
	m.inside = true
	m.newest()
	m.settle()
	return nil
}

// actions is what help and palette ask of the page.
func (m *Model) actions() dialog.Actions {
	return dialog.Actions{Keys: m.opt.Keys, Own: keys.Batching, WhyNot: m.whyNot, Do: m.perform}
}

// whyNot says why an action of the table cannot act now; empty: it can.
func (m *Model) whyNot(b keys.Binding, _ int) string {
	if b.Mode != keys.Batching {
		return m.fill("at the bench only; {quit} leaves the batches")
	}
	return m.fill(m.cannot(b.ID))
}

// needs says what an action of the page has to have: a batch, one whose file can be written, something that came in with the options.
type needs struct {
	batch, writes bool
	there         bool // what does it came in
	without       string
}

func (m *Model) needs(id keys.ID) needs {
	o := m.opt
	switch id {
	case keys.LogMark, keys.LogAny, keys.SameBars, keys.Correct, keys.TakeBack:
		return needs{batch: true, writes: true, there: o.Log != nil, without: "nothing can be logged from here"}
	case keys.LookAt:
		return needs{batch: true, there: true}
	case keys.SeePhoto:
		return needs{batch: true, there: o.Show != nil, without: "no picture can be opened from here"}
	case keys.CutLive:
		return needs{batch: true, writes: true, there: o.Cut != nil, without: "no cut can be opened from here"}
	case keys.Again:
		return needs{batch: true, there: o.Again != nil, without: "no plan can be opened from here"}
	case keys.ScentPage:
		return needs{batch: true, there: o.Scent != nil && o.Scents != nil, without: "nothing is told of scents here"}
	case keys.Record:
		return needs{batch: true, there: o.Record != nil, without: "no record can be written from here"}
	case keys.Calendar:
		return needs{there: o.Calendar != nil, without: "no calendar can be written from here"}
	case keys.Board:
		return needs{there: o.Season != nil, without: "there is no season here"}
	}
	return needs{there: true}
}

// cannot says why an action cannot act now; empty: it can.
func (m *Model) cannot(id keys.ID) string {
	n := m.needs(id)
	b, ok := m.chosen()
	switch {
	case !n.there:
		return n.without
	case n.batch && m.board:
		return "the board of the season is in view; {back to the list} goes back to the batches"
	case n.batch && !ok:
		return "no batch is chosen"
	case n.batch && n.writes && b.Fault != nil:
		return "its file is faulty: mend " + b.ID + " first, it says where"
	case m.busy && n.writes:
		return "something is being written; a moment"
	}
	return m.cannotNow(id)
}

func (m *Model) cannotNow(id keys.ID) string {
	b, _ := m.chosen()
	switch id {
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last:
		if !m.board && len(m.shown) == 0 {
			return "the list is empty"
		}
	case keys.LookAt:
		if m.inside {
			return m.cannotMark()
		}
	case keys.Correct, keys.TakeBack:
		return m.cannotMark()
	case keys.ToList:
		if !m.board && !m.inside && m.search.Text() == "" {
			return "this is the list, and nothing is searched for; {quit} leaves the batches"
		}
	case keys.Undo:
		if len(m.undo) == 0 {
			return "nothing was logged since this page was opened"
		}
	case keys.SeePhoto:
		if len(b.Of(logbook.Photo)) == 0 {
			return "the batch has no picture; {log anything} logs one by its file"
		}
	case keys.ScentPage:
		if len(m.opt.Scents(b.ID)) == 0 {
			return "the batch has no scent"
		}
	case keys.Said:
		if m.status.Silent() {
			return "nothing was said yet"
		}
	case keys.Suspend:
		return terminal.NoSuspend(runtime.GOOS)
	}
	return ""
}

// cannotMark says why the chosen mark cannot be changed.
func (m *Model) cannotMark() string {
	mk, ok := m.chosenMark()
	switch {
	case !m.inside:
		return "go into the batch first, to its marks: {look at}"
	case !ok:
		return "nothing was logged of this batch yet"
	case !mk.Standing:
		return "that mark does not count any more: " + mk.Why
	}
	return ""
}
