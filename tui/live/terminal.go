package live

import (
	"errors"
	"fmt"
	"os"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/look"
)

// ErrInterrupted is returned by [Run] when the run's screen was interrupted from outside. The pour goes on and can be resumed.
var ErrInterrupted = errors.New("interrupted")

// Run opens the live run on the terminal and returns when the maker has left it. Everything she marked is in the logbook's file by
// then, whatever ended it; when the pour is not over, o.Notes is told how to take it up again.
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
	_, err = tea.NewProgram(m, opts...).Run()
	if !m.state.Ended {
		_, _ = fmt.Fprintf(o.Notes, "pourbench: the pour goes on; everything marked is in %s\nTake it up again with: pourbench run --resume %s\n", m.opt.Book.Path(m.ID()), m.ID())
	}
	if errors.Is(err, tea.ErrInterrupted) {
		return ErrInterrupted
	}
	if err != nil {
		return fmt.Errorf("show the live run of %s: %w", m.ID(), err)
	}
	return nil
}
