package stockroom

import (
	"errors"
	"fmt"

	"pourbench/tui/terminal"
)

// Open opens the page on the terminal and returns when the maker has left it. What was written is in the ledger by then. Interrupted from outside,
// it returns [terminal.ErrInterrupted], ended by another signal a [terminal.EndedError].
func Open(o Options) error {
	err := terminal.Show(New(o), terminal.Options{Colour: o.Colour, Environ: o.Environ, Hangup: hangupMsg{}})
	if ended := new(terminal.EndedError); err != nil && !errors.Is(err, terminal.ErrInterrupted) && !errors.As(err, ended) {
		return fmt.Errorf("show the stock: %w", err)
	}
	return err
}
