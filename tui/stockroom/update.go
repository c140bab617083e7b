package stockroom

import (
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/stock"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/screen"
)

// Messages of the page.
type (
	tickMsg struct{} // it is time to look at the ledger again
	readMsg struct { // the ledger was read
		shelves shelves
		err     error
	}
	pageMsg struct { // a page to read was worked out
		title, text string
		err         error
	}
	hangupMsg struct{} // the screen was taken away
)

// lookEvery is how often the ledger is looked at: another terminal may write into it.
const lookEvery = 5 * time.Second

func (m *Model) tick() tea.Cmd {
	return tea.Tick(lookEvery, func(time.Time) tea.Msg { return tickMsg{} })
}

// load reads the ledger beside the keyboard; while it is being read, that is enough.
func (m *Model) load() tea.Cmd {
	if m.reading || m.opt.Read == nil {
		return nil
	}
	m.reading = true
	read := m.opt.Read
	return func() tea.Msg {
		s, err := read()
		if err != nil {
			return readMsg{err: err}
		}
		return readMsg{shelves: shelved(s)}
	}
}

// loaded takes in what was read. What could not be is said once; what was known before stays.
func (m *Model) loaded(msg readMsg) {
	m.reading, m.read = false, true
	if msg.err != nil {
		if m.fault == nil || m.fault.Error() != msg.err.Error() {
			m.refuse(msg.err.Error())
		}
		m.fault = msg.err
		return
	}
	m.fault = nil
	m.shelves = msg.shelves
	m.sift()
	m.follow = ""
}

// Update takes a message to the method for its kind.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	m.backdrop, cmd = m.backdrop.Hear(msg)
	m.look = m.backdrop.Look()
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.dialogs.Frame.W, m.dialogs.Frame.H = screen.Fit(msg.Width, msg.Height)
		m.settle()
	case tickMsg:
		cmd = tea.Batch(cmd, m.load(), m.tick())
	case tea.FocusMsg, tea.ResumeMsg:
		cmd = tea.Batch(cmd, m.load())
	case readMsg:
		m.loaded(msg)
	case tea.KeyPressMsg:
		cmd = tea.Batch(cmd, m.press(msg))
	case tea.PasteMsg:
		m.paste(msg.Content)
	case tea.MouseClickMsg:
		cmd = tea.Batch(cmd, m.click(msg))
	case tea.MouseWheelMsg:
		m.wheel(msg)
	case writtenMsg:
		cmd = tea.Batch(cmd, m.written(msg))
	case pageMsg:
		m.paged(msg)
	case hangupMsg:
		m.cut = true
		return m, tea.Quit
	}
	return m, cmd
}

// paste puts pasted text where text is typed; lines pasted onto the page are what came.
func (m *Model) paste(text string) {
	switch {
	case m.dialogs.Paste(text):
	case m.search.On:
		m.search.Typed.Insert(text)
		m.sift()
	case m.opt.Decide != nil:
		m.openPad(text)
	default:
		m.refuse("paste: {search} begins a search; text goes there")
	}
}

// pressSearch takes a key while the search is typed: the list goes by what stands there at every letter.
func (m *Model) pressSearch(k tea.KeyPressMsg) {
	does, changed, why := m.search.Press(k, m.opt.Keys)
	switch {
	case changed:
		m.status.Clear()
		m.sift()
	case why != "":
		m.refuse(why)
	default:
		m.actSearch(does)
	}
}

// actSearch does what a key of the search comes to.
func (m *Model) actSearch(id keys.ID) {
	switch id {
	case keys.Choose:
		m.search.On = false
	case keys.Close:
		m.clearSearch()
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown:
		m.move(id)
	}
}

// clearSearch lets the search go.
func (m *Model) clearSearch() {
	m.search = listing.Search{}
	m.sift()
}

// seePage works a page out beside the keyboard.
func (m *Model) seePage(title string, read func() (string, error)) tea.Cmd {
	return func() tea.Msg {
		text, err := read()
		return pageMsg{title, text, err}
	}
}

// paged shows a page that was worked out.
func (m *Model) paged(msg pageMsg) {
	if msg.err != nil {
		m.refuse(msg.err.Error())
		return
	}
	m.dialogs.Open(dialog.NewPage(msg.title, msg.text))
}

// traced works out where the chosen pack, or its lot, came from and went to.
func (m *Model) traced() tea.Cmd {
	r, _ := m.chosen()
	what, trace := r.pack.ID, m.opt.Trace
	title := "Trace of " + what
	return m.seePage(title, func() (string, error) { return trace(what) })
}

// doubts are what can hardly be about a pack.
func (m *Model) doubts(pack string) []stock.Doubt {
	of := map[string]bool{}
	for _, e := range m.shelves.entries[pack] {
		of[e.ID] = true
	}
	var out []stock.Doubt
	for _, d := range m.shelves.state.Odd {
		if of[d.Entry] {
			out = append(out, d)
		}
	}
	return out
}
