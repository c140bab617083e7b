package live

import (
	"slices"
	"time"

	tea "charm.land/bubbletea/v2"

	underway "pourbench/pour/logbook/live"
	"pourbench/tui/screen"
)

// tickMsg asks for another look at the clock.
type tickMsg struct{}

// How often things are worked out anew without an event: what the clock makes of a jug whose scent has not gone in moves with time.
const outlookEvery = 15 * time.Second

// tick comes when the next whole second of the run begins. Nothing counts ticks: one that is late or lost changes no time.
func (m *Model) tick() tea.Cmd {
	rest := time.Second - m.live.Run()%time.Second
	return tea.Tick(rest, func(time.Time) tea.Msg { return tickMsg{} })
}

// hear takes what the terminal says of itself.
func (m *Model) hear(msg tea.Msg) (again tea.Cmd) {
	m.backdrop, again = m.backdrop.Hear(msg)
	m.look = m.backdrop.Look()
	return again
}

// Update takes a message to the method for its kind.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := m.hear(msg)
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.dialogs.Frame.W, m.dialogs.Frame.H = screen.Fit(msg.Width, msg.Height)
	case tickMsg:
		m.run.Tick()
		m.settle()
		cmd = m.tick()
	case tea.KeyPressMsg:
		cmd = m.press(msg)
	case tea.PasteMsg:
		m.dialogs.Paste(msg.Content)
	case hangupMsg:
		m.cut = true
		cmd = tea.Quit
	case tea.MouseClickMsg:
		cmd = m.click(msg)
	case tea.MouseWheelMsg:
		m.wheel(msg)
	case trialMsg:
		m.trial = msg.text
	}
	return m, tea.Batch(cmd, m.ring())
}

// settle looks at the run anew after something was asked of the logbook.
func (m *Model) settle() {
	m.live = m.run.Live()
	m.waiting, m.unkept = m.run.Unwritten()
	m.state = m.live.State()
	if n := len(m.live.Events); n != m.outlookOf || m.live.Run()-m.outlookAt >= outlookEvery {
		m.outlook, m.outlookAt, m.outlookOf = m.live.Outlook(m.opt.Shelf, m.opt.Hand), m.live.Run(), n
	}
	m.board = m.live.Board(m.outlook)
	m.portions = m.state.Portions(m.sheet())
	if m.portioned = *m.sheet(); len(m.portions) > 0 {
		m.portioned = m.sheet().Portioned(m.portions)
	}
	m.superfats = nil
	if !m.cutting() {
		m.superfats = m.state.Superfats(m.sheet())
	}
	if m.live.Run()-m.saidAt > statusFor {
		m.status.Clear()
	}
	m.jug = min(m.jug, max(len(m.board.Jugs)-1, 0))
	m.left = m.board.Due
	if !slices.ContainsFunc(m.left, func(d underway.Due) bool { return d.Key == m.chosen }) {
		m.chosen = ""
	}
}

// told takes in what came of asking the logbook for something, and says it.
func (m *Model) told(err error, done string) error { return m.toldBy(m.say, err, done) }

// toldBy is told for what is to be said in another way once it is done.
func (m *Model) toldBy(say func(string), err error, done string) error {
	m.settle()
	switch {
	case err != nil:
		m.refuse(err.Error())
	case len(m.waiting) > 0:
		m.warn(done + " (not written yet)")
	default:
		say(done)
	}
	return err
}

// saidFor is how long what was said is not pushed out of its line by an alert: she has just made a mark and looks whether it counts.
const saidFor = 5 * time.Second

// alert says what wants an eye by itself, behind what was said a moment ago.
func (m *Model) alert(text string) {
	if m.live.Run()-m.saidAt > saidFor {
		m.status.Clear()
	}
	m.status.WarnBeside(m.fill(text))
	m.saidAt = m.live.Run()
}

// bell is what a terminal rings at.
const bell = "\a"

// ring rings once for every jug that comes near the end of its window.
func (m *Model) ring() tea.Cmd {
	rings := false
	for i, j := range m.board.Jugs {
		if m.near(j) && !m.rung[i] {
			m.rung[i], rings = true, true
			m.alert(m.jugName(i) + ": " + m.standing(j))
		}
	}
	if !rings {
		return nil
	}
	return tea.Raw(bell)
}
