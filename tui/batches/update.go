package batches

import (
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/drying"
	"pourbench/pour/logbook/life"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/screen"
)

// Messages of the page.
type (
	tickMsg struct{} // it is time to look at the logbook again
	readMsg struct { // the logbook was read
		list []life.Batch
		err  error
	}
	hangupMsg struct{} // the screen was taken away
)

// lookEvery is how often the logbook is looked at: another terminal may write into it.
const lookEvery = 3 * time.Second

func (m *Model) tick() tea.Cmd {
	return tea.Tick(lookEvery, func(time.Time) tea.Msg { return tickMsg{} })
}

// load reads the logbook beside the keyboard; while it is being read, that is enough.
func (m *Model) load() tea.Cmd {
	if m.reading || m.opt.Read == nil {
		return nil
	}
	m.reading = true
	read := m.opt.Read
	return func() tea.Msg {
		list, err := read()
		return readMsg{list, err}
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
	m.put(msg.list)
}

// Update takes a message to the method for its kind.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := m.hear(msg)
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.dialogs.Frame.W, m.dialogs.Frame.H = screen.Fit(msg.Width, msg.Height)
		m.settle()
		return m, tea.Batch(cmd, raw(m.pixels.Resized()))
	case tickMsg:
		return m, tea.Batch(cmd, m.load(), m.tick())
	case tea.FocusMsg, tea.ResumeMsg:
		return m, tea.Batch(cmd, m.load())
	case readMsg:
		m.loaded(msg)
		if b, ok := m.chosen(); ok && b.Fault == nil {
			if m.detailOf != b.ID {
				m.detailOf, m.detail, m.plot = b.ID, Detail{}, drying.Plot{}
			}
			cmd = tea.Batch(cmd, m.open(b.ID))
		}
	case tea.KeyPressMsg:
		cmd = tea.Batch(cmd, m.press(msg))
	case tea.PasteMsg:
		m.paste(msg.Content)
	case hangupMsg:
		m.cut = true
		return m, tea.Quit
	case tea.MouseClickMsg:
		cmd = tea.Batch(cmd, m.click(msg))
	case tea.MouseWheelMsg:
		m.wheel(msg)
	default:
		return m, tea.Batch(cmd, m.take(msg))
	}
	return m, cmd
}

// take takes what a command brought back.
func (m *Model) take(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.ColorProfileMsg:
		return m.askPixels(msg)
	case seasonMsg:
		m.seasonLoaded(msg)
	case openedMsg:
		m.opened(msg)
	case writtenMsg:
		return m.written(msg)
	case undoneMsg:
		return m.takenIn(msg)
	case backMsg:
		return m.back(msg)
	case pageMsg:
		m.paged(msg)
	case photoMsg:
		return m.photoReady(msg)
	case photoSentMsg:
		m.photoSent(msg)
	case saidMsg:
		m.heard(msg)
	}
	return nil
}

// hear takes what the terminal says of itself.
func (m *Model) hear(msg tea.Msg) (again tea.Cmd) {
	m.backdrop, again = m.backdrop.Hear(msg)
	m.look = m.backdrop.Look()
	m.pixels.Hear(msg)
	return again
}

// paste puts pasted text where text is typed.
func (m *Model) paste(text string) {
	switch {
	case m.dialogs.Paste(text):
	case m.search.On:
		m.search.Typed.Insert(text)
		m.resift()
	default:
		m.refuse("paste: {search} begins a search, {log anything} a form; text goes there")
	}
}

func raw(sequence string) tea.Cmd {
	if sequence == "" {
		return nil
	}
	return tea.Raw(sequence)
}

// pressSearch takes a key while the search is typed: the list goes by what stands there at every letter.
func (m *Model) pressSearch(k tea.KeyPressMsg) {
	does, changed, why := m.search.Press(k, m.opt.Keys)
	switch {
	case changed:
		m.status.Clear()
		m.resift()
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
		m.search.On = false
		m.clearSearch()
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown:
		m.move(id)
	}
}

// clearSearch lets the search go.
func (m *Model) clearSearch() {
	m.search = listing.Search{}
	m.resift()
}
