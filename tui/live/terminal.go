package live

import (
	"errors"
	"fmt"
	"os"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/hangup"
	"pourbench/tui/look"
)

// ErrInterrupted is returned by [Run] when the run's screen was interrupted from outside. The pour goes on and can be resumed.
var ErrInterrupted = errors.New("interrupted")

// Run opens the live run on the terminal and returns when the maker has left it. Everything she marked is in the logbook's file by
// then, whatever ended it, or else o.Notes is told what is not; when the pour is not over, also how to take it up again.
func Run(o Options) error {
	if o.Environ == nil {
		o.Environ = os.Environ()
	}
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	m, err := New(o)
	if err != nil {
		return err
	}
	opts := []tea.ProgramOption{tea.WithEnvironment(o.Environ)}
	if p, ok := look.Profile(o.Colour, o.Environ); ok {
		opts = append(opts, tea.WithColorProfile(p))
	}
	program := tea.NewProgram(m, opts...)
	defer hangup.Watch(func() { program.Send(hangupMsg{}) })()
	_, err = program.Run()
	tries := 1
	if m.cut || err != nil {
		tries = lastTries
	}
	m.part(o.Notes, tries, time.Sleep)
	if errors.Is(err, tea.ErrInterrupted) {
		return ErrInterrupted
	}
	if err != nil {
		return fmt.Errorf("show the live run of %s: %w", m.ID(), err)
	}
	return nil
}
