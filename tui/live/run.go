package live

import (
	"errors"
	"fmt"
	"os"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/terminal"
)

// Run opens the live run on the terminal and returns when the maker has left it. Everything she marked is in the logbook's file by
// then, whatever ended it; when the pour is not over, o.Notes is told how to take it up again. Interrupted from outside, it returns
// [terminal.ErrInterrupted].
func Run(o Options) error {
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	m, err := New(o)
	if err != nil {
		return err
	}
	err = terminal.Run(m, terminal.Options{Colour: o.Colour, Environ: o.Environ, Hangup: tea.QuitMsg{}})
	if !m.state.Ended {
		_, _ = fmt.Fprintf(o.Notes, "pourbench: the pour goes on; everything marked is in %s\nTake it up again with: pourbench run --resume %s\n", m.opt.Book.Path(m.ID()), m.ID())
	}
	if err != nil && !errors.Is(err, terminal.ErrInterrupted) {
		return fmt.Errorf("show the live run of %s: %w", m.ID(), err)
	}
	return err
}
