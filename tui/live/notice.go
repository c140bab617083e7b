package live

import (
	"errors"
	"fmt"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// noticeFor is how long a jump of the clocks stands on the screen.
const noticeFor = 5 * time.Minute

// lastJump is the last jump the run followed, which can be taken back.
func (m *Model) lastJump() (logbook.Event, bool) {
	for i := len(m.state.Jumps) - 1; i >= 0; i-- {
		e := m.state.Jumps[i]
		if k := underway.JumpKind(e.What); e.Value > 0 && (k == underway.Slept || k == underway.Reopened) {
			return e, true
		}
	}
	return logbook.Event{}, false
}

// jumpWords says what a jump was and what the run made of it.
func (m *Model) jumpWords(e logbook.Event) string {
	by := pour.Show{}.Span(e.Value / 60)
	switch underway.JumpKind(e.What) {
	case underway.Slept:
		return "the machine slept " + by + "; the run went on"
	case underway.ClockSet:
		return "the wall clock was set by " + by + "; the run did not follow it"
	case underway.Reopened:
		return "no screen for " + by + "; the run went on"
	case underway.Backwards:
		return "the wall clock was set back " + by + "; what passed meanwhile is not known"
	}
	return e.What
}

// unwrittenNotice says that the journal is not written, and why.
func (m *Model) unwrittenNotice() string {
	return "NOT WRITTEN" + m.unwrittenWords() + ": " + reason(m.unkept)
}

// unwrittenWords says how many marks are not written.
func (m *Model) unwrittenWords() string {
	switch n := len(m.waiting); n {
	case 0:
		return ""
	case 1:
		return ", 1 mark"
	default:
		return fmt.Sprintf(", %d marks", n)
	}
}

// reason is why the journal cannot be written, without the name of its file, which is known.
func reason(err error) string {
	if errors.Is(err, disk.ErrLocked) {
		return disk.ErrLocked.Error()
	}
	return disk.Reason(err).Error()
}

// notices lists what has to be known beside the jugs: a journal that is not written, jumps of the clocks, a blender that runs.
func (m *Model) notices() []string {
	var out []string
	if m.unkept != nil {
		out = append(out, "■ "+m.unwrittenNotice()+"; it is tried again every second")
	}
	out = append(out, m.lyeNotices()...)
	for _, n := range m.board.Hurry {
		if !m.trialling() && !m.state.Ended {
			out = append(out, "! the "+string(n)+" thickens early: stop mixing and split it now, the plan's minute is too late")
		}
	}
	if m.blender >= 0 {
		out = append(out, fmt.Sprintf("! stick blender on for %.0f s: %s when it is off", (m.live.Run()-m.blender).Seconds(), m.key(keys.Blender)))
	}
	if n := len(m.state.Jumps); n > 0 && m.live.Run()-m.state.Jumps[n-1].Run < noticeFor {
		text := "! " + m.jumpWords(m.state.Jumps[n-1])
		if last, ok := m.lastJump(); ok && last.ID == m.state.Jumps[n-1].ID {
			text += " (" + m.key(keys.Discount) + ": it did not)"
		}
		out = append(out, text)
	}
	return out
}

// drawBottom draws notices, what still can be done, or else what the clock makes of the chosen jug.
func (m *Model) drawBottom(a screen.Area) {
	y := 0
	for _, n := range m.notices() {
		for _, l := range screen.Wrap(n, a.W()) {
			a.Text(0, y, l, m.look.Caution)
			y++
		}
	}
	if i := m.lost(); i >= 0 {
		m.drawRescues(a.Cut(0, y, a.W(), a.H()-y), i)
		return
	}
	if m.cutting() {
		m.drawCutMeaning(a.Cut(0, y, a.W(), a.H()-y))
		return
	}
	if y < a.H() && m.jug < len(m.board.Jugs) {
		j := m.board.Jugs[m.jug]
		text := m.jugName(m.jug) + ": " + m.stageWords(j)
		if j.Refusal != "" {
			text = m.jugName(m.jug) + ": no times: " + j.Refusal
		}
		for _, l := range screen.Wrap(text, a.W()) {
			a.Text(0, y, l, m.look.Quiet)
			y++
		}
	}
}
