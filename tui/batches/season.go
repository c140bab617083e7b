package batches

import (
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// Season is the board of the season: what draws it.
type Season func(a screen.Area)

// seasonPage is where the board of the season is looked at.
type seasonPage struct{ at int }

func (p *seasonPage) move(keys.ID) {}

func (m *Model) drawBoard(a screen.Area) {
	if m.opt.Season != nil {
		m.opt.Season(a)
	}
}

func (t *talk) tellBoard() {}
