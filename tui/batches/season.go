package batches

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour/day"
	"pourbench/pour/season"
	"pourbench/tui/board"
	"pourbench/tui/keys"
	"pourbench/tui/listing"
	"pourbench/tui/screen"
)

// Season works out the board of the season, and tells it as text.
type Season func() (season.Board, string, error)

// seasonMsg brings the board of the season.
type seasonMsg struct {
	board season.Board
	text  string
	err   error
}

// seasonPage is the board of the season and where it is looked at.
type seasonPage struct {
	board    season.Board
	text     string
	read     bool
	row, top int
	weeks    int // how many weeks after its first one the board begins
}

// loadSeason works the board out beside the keyboard.
func (m *Model) loadSeason() tea.Cmd {
	if m.opt.Season == nil {
		return nil
	}
	work := m.opt.Season
	return func() tea.Msg {
		b, text, err := work()
		return seasonMsg{b, text, err}
	}
}

// seasonLoaded takes the board in. One that cannot be worked out says why, and what was known stays.
func (m *Model) seasonLoaded(msg seasonMsg) {
	if msg.err != nil {
		m.refuse(msg.err.Error())
		return
	}
	m.season.board, m.season.text, m.season.read = msg.board, msg.text, true
	m.season.settle(m.boardRows())
}

// boardRows is how many pours of the board are in sight.
func (m *Model) boardRows() int { return max(board.Rows(listing.Within(m.place().Whole).Dy()), 1) }

// move goes to another pour, or along the weeks.
func (p *seasonPage) move(id keys.ID, rows int) {
	const far = 1 << 20
	switch id {
	case keys.Up:
		p.row--
	case keys.Down:
		p.row++
	case keys.First:
		p.row, p.weeks = 0, 0
	case keys.Last:
		p.row = far
	case keys.PageUp:
		p.weeks--
	case keys.PageDown:
		p.weeks++
	}
	p.settle(rows)
}

// settle brings the chosen pour into sight.
func (p *seasonPage) settle(rows int) {
	p.row = min(max(p.row, 0), max(len(p.board.Rows)-1, 0))
	p.top = min(max(p.top, p.row-rows+1), p.row)
	const year = 52
	p.weeks = min(max(p.weeks, -year), year)
}

// drawBoard draws the board of the season.
func (m *Model) drawBoard(box, a screen.Area) {
	box.Box(m.look.Focus)
	if !m.season.read {
		a.Text(0, 0, "working out the season …", m.look.Quiet)
		return
	}
	const week = 7
	from := board.First(m.season.board)
	from += day.Day(m.season.weeks * week)
	board.Draw(a, m.season.board, board.View{Look: m.look, From: from, Row: m.season.row, Top: m.season.top})
	a.Focus(0, 0)
}

// tellBoard tells the board of the season.
func (t *talk) tellBoard() {
	for l := range strings.SplitSeq(t.m.season.text, "\n") {
		t.Out.Say(l)
	}
	t.m.board = false // it is read and done with
}
