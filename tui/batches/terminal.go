package batches

import (
	"errors"
	"fmt"

	"pourbench/tui/terminal"
)

// Open opens the page on the terminal and returns when the maker has left it: with the pour she wants as a new plan, or nil. What was logged
// is in the pours' files by then. Interrupted from outside, it returns [terminal.ErrInterrupted], ended by another signal a
// [terminal.EndedError].
func Open(o Options) (*Poured, error) {
	m := New(o)
	err := terminal.Show(m, terminal.Options{Colour: o.Colour, Environ: o.Environ, Hangup: hangupMsg{}})
	if ended := new(terminal.EndedError); err != nil && !errors.Is(err, terminal.ErrInterrupted) && !errors.As(err, ended) {
		return nil, fmt.Errorf("show the batches: %w", err)
	}
	return m.again, err
}
