package tui

import (
	"slices"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"pourbench/tui/look"
	"pourbench/tui/picture"
)

// play is how much of the pour is shown.
type play struct {
	done    int // steps, or [picture.Whole]
	running bool
	ticket  int       // of the timer that counts
	began   time.Time // of the first tick; zero before it
	from    int       // steps done then
}

// playMsg is a tick of the animation's timer.
type playMsg struct {
	ticket int
	at     time.Time
}

// The pace of the animation: about so long for the whole pour, and no step shorter or longer than these.
const (
	pourShown = 9 * time.Second
	leastStep = 90 * time.Millisecond
	mostStep  = 900 * time.Millisecond
)

func pace(steps int) time.Duration {
	return min(max(pourShown/time.Duration(max(steps, 1)), leastStep), mostStep)
}

// Why nothing moves by itself.
const (
	stillAccessible = "ACCESSIBLE is set: nothing moves by itself"
	stillColourless = "nothing moves by itself without colour (NO_COLOR, --color never)"
)

// still says why there is no animation, or "".
func (m *model) still() string {
	set := func(name string) bool {
		return slices.ContainsFunc(m.opt.Environ, func(kv string) bool { return strings.HasPrefix(kv, name+"=") && len(kv) > len(name)+1 })
	}
	switch profile, known := look.Profile(m.opt.Colour, m.opt.Environ); {
	case set("ACCESSIBLE"):
		return stillAccessible
	case known && profile == colorprofile.ASCII:
		return stillColourless
	}
	return ""
}

// steps is how many steps the pour on show has; 0 before it is drawn.
func (m *model) steps() int {
	if p := m.studio.mounts[placeNow].print; p != nil {
		return p.Plate.Steps
	}
	return 0
}

// replay starts the pour from the empty mould, or stops it where it is.
func (m *model) replay() tea.Cmd {
	p := &m.studio.play
	p.ticket++
	if p.running {
		p.running = false
		m.say("stopped; {step back} and {step on} go step by step, {watch the pour} pours again")
		return nil
	}
	if m.studio.view == picture.Bars || m.studio.view == picture.Slice {
		m.studio.view = picture.Bar
	}
	p.running, p.began, p.from, p.done = true, time.Time{}, 0, 0
	return m.tick()
}

func (m *model) tick() tea.Cmd {
	ticket := m.studio.play.ticket
	return tea.Tick(pace(m.steps()), func(at time.Time) tea.Msg { return playMsg{ticket, at} })
}

// played goes on with the pour by the time that has passed, however many ticks came.
func (m *model) played(msg playMsg) tea.Cmd {
	p := &m.studio.play
	if !p.running || msg.ticket != p.ticket {
		return nil
	}
	if p.began.IsZero() {
		p.began, p.from = msg.at.Add(-pace(m.steps())), p.done
	}
	done := p.from + int(msg.at.Sub(p.began)/pace(m.steps()))
	if done >= m.steps() {
		p.running, p.done = false, picture.Whole
		return nil
	}
	p.done = max(done, p.done)
	return m.tick()
}

// step goes on or back in the pour by hand; past its last step it is whole again.
func (m *model) step(by int) {
	p := &m.studio.play
	p.ticket++
	p.running = false
	if m.studio.view == picture.Bars || m.studio.view == picture.Slice {
		m.studio.view = picture.Bar
	}
	done := p.done
	switch {
	case done != picture.Whole:
		done = max(done+by, 0)
	case by < 0:
		done = m.steps() - 1
	default:
		done = 0
	}
	if done >= m.steps() {
		done = picture.Whole
	}
	p.done = done
}

// halt shows the whole pour again, when the picture is left.
func (m *model) halt() {
	m.studio.play.ticket++
	m.studio.play.running, m.studio.play.done = false, picture.Whole
}
