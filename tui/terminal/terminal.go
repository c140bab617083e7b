// Package terminal runs a full-screen model on the terminal of this process and gives it back, whatever ends the model.
package terminal

import (
	"errors"
	"io"
	"os"
	"syscall"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"

	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// ErrInterrupted is returned by [Show] when the model was interrupted from outside.
var ErrInterrupted = errors.New("interrupted")

// Options is how a model is run.
type Options struct {
	Colour  string   // "auto", "always", "never", "truecolor", "256" or "16"; empty: auto
	Environ []string // the environment; nil: this process's own
	Hangup  tea.Msg  // what the model is sent when the terminal is gone or the process is asked to end
}

// Show runs a model until it quits or is ended from outside. Interrupted, it returns [ErrInterrupted];
// ended by another signal, an [EndedError].
func Show(m tea.Model, o Options) error {
	if o.Environ == nil {
		o.Environ = os.Environ()
	}
	program := tea.NewProgram(m, o.program(os.Stdout)...)
	stop := onHangup(func() { program.Send(o.Hangup) })
	_, err := program.Run()
	ended, signalled := stop().(syscall.Signal)
	_, _ = io.WriteString(os.Stdout, ansi.ResetModeLightDark) // see [Backdrop.Ask]
	if errors.Is(err, tea.ErrInterrupted) {
		return ErrInterrupted
	}
	if signalled && err == nil {
		return EndedError{ended}
	}
	return err
}

// program is the options for the terminal that out is. On one that says it is larger than any is, the renderer would set aside
// gigabytes of cells before the first frame: there it is told a size and asks for none.
func (o Options) program(out *os.File) []tea.ProgramOption {
	opts := []tea.ProgramOption{tea.WithEnvironment(o.Environ)}
	profile, known := look.Profile(o.Colour, o.Environ)
	if w, h, err := term.GetSize(out.Fd()); err == nil && (w > screen.MaxW || h > screen.MaxH) {
		if !known {
			profile, known = colorprofile.Detect(out, o.Environ), true
		}
		opts = append(opts, tea.WithOutput(struct{ io.Writer }{out}), tea.WithWindowSize(screen.Fit(w, h)))
	}
	if known {
		opts = append(opts, tea.WithColorProfile(profile))
	}
	return opts
}
