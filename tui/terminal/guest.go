package terminal

import "io"

// Guest is what has the terminal for a while instead of a model, by tea.Exec. It opens the terminal itself.
type Guest struct{ Do func() error }

// Run does it.
func (g Guest) Run() error { return g.Do() }

// SetStdin is not needed: the guest opens the terminal.
func (g Guest) SetStdin(io.Reader) {}

// SetStdout is not needed: the guest opens the terminal.
func (g Guest) SetStdout(io.Writer) {}

// SetStderr is not needed: the guest opens the terminal.
func (g Guest) SetStderr(io.Writer) {}
