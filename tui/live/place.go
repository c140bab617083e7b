package live

import (
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// The smallest screen with jugs on it, the size from which everything is drawn to be read from across the room, and the size from which
// there is room for still larger letters and longer words.
const (
	minW   = 60
	minH   = 16
	largeW = 110
	largeH = 32
	vastW  = 160
	vastH  = 52
)

// sizes is how high the parts of the screen are.
type sizes struct {
	clockScale, stepScale, clockH, stepH, detailH, nextH, gap, bottomH int
}

func (m *Model) sizes(w, h int) sizes {
	s := sizes{clockScale: 2, stepScale: 1, detailH: 2, nextH: 2, bottomH: 2}
	switch {
	case w >= vastW && h >= vastH:
		s = sizes{clockScale: 4, stepScale: 3, detailH: 2, nextH: 5, gap: 1, bottomH: 6}
	case w >= largeW && h >= largeH:
		s = sizes{clockScale: 3, stepScale: 2, detailH: 2, nextH: 3, gap: 1, bottomH: 4}
	case h < 22:
		s = sizes{clockScale: 1, stepScale: 0, detailH: 1, nextH: 1, bottomH: 1}
	}
	s.clockH, s.stepH = blockHeight(s.clockScale), max(blockHeight(s.stepScale), 1)
	jugs := h - 2 - s.bottomH - (1 + s.gap + s.clockH + s.gap + 1 + s.stepH + s.detailH + s.nextH + s.gap)
	s.detailH += min(max(len(m.detailLines(w-2))-s.detailH, 0), max(jugs-leastJugs, 0)) // a round of many jugs takes more lines
	return s
}

// leastJugs is how many lines the jugs keep when the step needs more.
const leastJugs = 3

// place is where the parts of the screen stand, by their first lines; the jugs end where what stands at the bottom begins.
type place struct {
	sizes
	clockY, stepY, nextY, jugsY, bottomY int
}

func (m *Model) place(w, h int) place {
	s := m.sizes(w, h)
	p := place{sizes: s, clockY: 1 + s.gap, bottomY: h - 2 - s.bottomH}
	p.stepY = p.clockY + s.clockH + s.gap
	p.nextY = p.stepY + 1 + s.stepH + s.detailH
	p.jugsY = p.nextY + s.nextH + s.gap
	return p
}

func (m *Model) drawRun(a screen.Area) {
	w, h := a.W(), a.H()
	p := m.place(w, h)
	m.drawTitle(a.Cut(0, 0, w, 1))
	m.drawClock(a.Cut(1, p.clockY, w-2, p.clockH), p.sizes)
	if _, ok := m.now(); ok {
		m.drawStep(a.Cut(1, p.stepY, w-2, p.nextY-p.stepY), p.sizes)
		m.drawNext(a.Cut(1, p.nextY, w-2, p.nextH))
	} else {
		m.drawEnd(a.Cut(1, p.stepY, w-2, p.nextY+p.nextH-p.stepY), p.sizes)
	}
	if m.cutting() {
		m.drawMasses(a.Cut(1, p.jugsY, w-2, p.bottomY-p.jugsY))
	} else {
		m.drawJugs(a.Cut(0, p.jugsY, w, p.bottomY-p.jugsY))
	}
	m.drawBottom(a.Cut(1, p.bottomY, w-2, p.bottomH))
	m.status.Draw(a.Cut(0, h-2, w, 1), m.key(keys.Said), m.look)
	dialog.Footer(a.Cut(0, h-1, w, 1), m.footKeys(), m.look)
}
