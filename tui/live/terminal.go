package live

import (
	"errors"
	"fmt"
	"os"
	"time"

	"pourbench/tui/terminal"
)

// Open opens the live run on the terminal and returns when the maker has left it. Everything she marked is in the logbook's file by
// then, whatever ended it, or else o.Notes is told what is not; when the pour is not over, also how to take it up again. Interrupted
// from outside, it returns [terminal.ErrInterrupted].
func Open(o Options) error {
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	m, err := New(o)
	if err != nil {
		return err
	}
	err = terminal.Show(m, terminal.Options{Colour: o.Colour, Environ: o.Environ, Hangup: hangupMsg{}})
	tries := 1
	if m.cut || err != nil {
		tries = lastTries
	}
	m.part(o.Notes, tries, time.Sleep)
	if err != nil && !errors.Is(err, terminal.ErrInterrupted) {
		return fmt.Errorf("show the live run of %s: %w", m.ID(), err)
	}
	return err
}
