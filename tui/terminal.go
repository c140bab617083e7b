package tui

import (
	"errors"
	"fmt"
	"io"
	"os"

	"pourbench/tui/terminal"
)

// Open opens the workbench on the terminal and returns when the maker has left it. Work that is in no file when the bench is ended
// from outside, by a signal or a fault of its own, is kept in the state directory, and that is said on o.Notes.
func Open(o Options) error {
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	m := newModel(o)
	defer m.close() //nolint:errcheck // the system lets go of it too
	m.asleep, m.mending.rests = true, true
	defer m.studio.gloss.forget(os.Stdout)
	err := terminal.Show(m, terminal.Options{Colour: o.Colour, Environ: o.Environ, Hangup: hangupMsg{}})
	if !m.quitting { // a signal or a panic: nothing has asked whether to save
		if rescueErr := m.rescued(o.Notes); rescueErr != nil {
			return errors.Join(err, rescueErr)
		}
	}
	if errors.Is(err, terminal.ErrInterrupted) || errors.As(err, &terminal.EndedError{}) {
		return err
	}
	if err != nil {
		return fmt.Errorf("run the workbench: %w", err)
	}
	return nil
}

func (m *model) rescued(notes io.Writer) error {
	kept, err := m.rescue()
	if err != nil {
		return err
	}
	if kept == "" {
		return nil
	}
	_, err = fmt.Fprintf(notes, "pourbench: unsaved work is kept in %s; it is offered when the plan is opened again\n", kept)
	return err
}
