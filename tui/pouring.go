package tui

import (
	"io"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
)

// pouredMsg says that the live run was left.
type pouredMsg struct{ err error }

// pourNow hands the terminal to the live run of this plan and takes it back when that is left. The run keeps its own copy of the plan.
func (m *model) pourNow() tea.Cmd {
	if m.opt.Pour == nil {
		m.refuse("no live run was opened with this bench")
		return nil
	}
	run := liveRun{plan: m.session.Plan().Clone(), pour: m.opt.Pour}
	return m.parted(tea.Exec(run, func(err error) tea.Msg { return pouredMsg{err} }))
}

// poured says how the run ended, and asks what it has taught.
func (m *model) poured(msg pouredMsg) tea.Cmd {
	say, how := m.say, "back from the run; what was marked is in the logbook"
	if msg.err != nil {
		say, how = m.refuse, reason(msg.err)
	}
	say(how)
	return m.readHand(func(taught string) { say(how + "; " + taught) })
}

// liveRun is the live run as a guest on the bench's terminal, which it opens itself.
type liveRun struct {
	plan pour.Plan
	pour func(pour.Plan) error
}

// Run pours.
func (r liveRun) Run() error { return r.pour(r.plan) }

// SetStdin is not needed: the run opens the terminal.
func (r liveRun) SetStdin(io.Reader) {}

// SetStdout is not needed: the run opens the terminal.
func (r liveRun) SetStdout(io.Writer) {}

// SetStderr is not needed: the run opens the terminal.
func (r liveRun) SetStderr(io.Writer) {}
