package batches

import (
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/season"
	"pourbench/tui/board"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// Season works the season's board out.
type Season func() (season.Board, error)

// seasonPage is where the board of the season is looked at.
type seasonPage struct {
	board season.Board
	read  bool  // it was worked out once
	fault error // why it could not be the last time
	view  board.View
}

// take puts in a board that was worked out; what could not be is said in its place, and what was known before stays.
func (p *seasonPage) take(b season.Board, err error) {
	if p.fault = err; err != nil {
		return
	}
	if !p.read {
		p.view.From = board.First(b)
	}
	p.board, p.read = b, true
	p.view.Row = min(p.view.Row, max(len(b.Rows)-1, 0))
}

// weeksOfPage is how far a screenful goes, so that what was in sight last is in sight still.
const weeksOfPage = 4

// move goes to another pour, or along the weeks.
func (p *seasonPage) move(id keys.ID, rows int) {
	const week = 7
	last := max(len(p.board.Rows)-1, 0)
	switch id {
	case keys.Up:
		p.view.Row--
	case keys.Down:
		p.view.Row++
	case keys.PageUp:
		p.view.From -= day.Day(weeksOfPage * week)
	case keys.PageDown:
		p.view.From += day.Day(weeksOfPage * week)
	case keys.First:
		p.view.Row, p.view.From = 0, board.First(p.board)
	case keys.Last:
		p.view.Row = last
	}
	p.view.Row = min(max(p.view.Row, 0), last)
	p.view.Top = max(min(p.view.Top, p.view.Row), p.view.Row-max(rows, 1)+1)
}

// moveBoard goes about on the board as it is laid out now.
func (m *Model) moveBoard(id keys.ID) { m.season.move(id, board.Rows(m.place().board.Dy())) }

func (m *Model) drawBoard(a screen.Area) {
	p := m.season
	inside := a.Cut(1, 0, a.W()-2, a.H())
	switch {
	case p.fault != nil:
		y := 1
		for _, line := range strings.Split(p.fault.Error(), "\n") {
			for _, part := range screen.Wrap(strings.TrimSpace(line), inside.W()) {
				inside.Text(0, y, part, m.look.Caution)
				y++
			}
		}
	case !p.read:
		inside.Text(0, 1, "the season is being read", m.look.Quiet)
	default:
		v := p.view
		v.Look = m.look
		board.Draw(inside, p.board, v)
	}
}

// tellBoard tells the season in lines.
func (t *talk) tellBoard() {
	p := t.m.season
	if p.fault != nil {
		t.out.Say(p.fault.Error())
		return
	}
	t.out.Say(p.board.TellHouse())
	for _, d := range p.board.Dates {
		t.out.Say(d.Day.String() + " " + d.Name + ": " + p.board.TellDate(d))
	}
	for i := range p.board.Rows {
		t.out.Say(strings.Join(p.board.TellPlan(i), "; "))
	}
	for _, line := range p.board.TellCollisions() {
		t.out.Say(strings.TrimSpace(line))
	}
}
