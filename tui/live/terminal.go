package live

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"time"

	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/terminal"
)

// Open opens the live run on the terminal and returns when the maker has left it. A pour of the very same plan that was left under way
// is taken up again; where it is not clear which is meant she is asked. Everything she marked is in the logbook's file by then, whatever
// ended it, or else o.Notes is told what is not; when the pour is not over, also how to take it up again. Interrupted from outside, it
// returns [terminal.ErrInterrupted], ended by another signal a [terminal.EndedError].
func Open(o Options) error {
	if o.Notes == nil {
		o.Notes = os.Stderr
	}
	if o.Keys == nil {
		o.Keys = keys.BuiltIn()
	}
	if pours, err := meant(&o, func(w *which) error { return terminal.Show(w, o.terminal()) }); err != nil || !pours {
		return err
	}
	m, err := New(o)
	if err != nil {
		return err
	}
	err = terminal.Show(m, o.terminal())
	tries := 1
	if m.cut || err != nil {
		tries = lastTries
	}
	m.part(o.Notes, tries, time.Sleep)
	if ended := new(terminal.EndedError); err != nil && !errors.Is(err, terminal.ErrInterrupted) && !errors.As(err, ended) {
		return fmt.Errorf("show the live run of %s: %w", m.sheet().Plan.Name, err)
	}
	return err
}

func (o Options) terminal() terminal.Options {
	return terminal.Options{Colour: o.Colour, Environ: o.Environ, Hangup: hangupMsg{}}
}

// meant finds out which pour is to be opened: a new one, or one to take up. It asks, where that is not clear, and says false when nothing is to be poured.
func meant(o *Options, ask func(*which) error) (bool, error) {
	now := time.Now()
	switch {
	case o.Resume != "" && !o.Cut:
		return reopened(o, ask)
	case o.Resume != "" || o.Anew || o.TrialScent != "":
		return true, nil
	}
	left, err := underway.UnderWay(o.Book, o.Sheet.Plan, o.Shelf, now)
	if err != nil {
		return false, err
	}
	id, asks := underway.TakeUp(left, !o.Unnamed)
	if o.Resume = id; !asks {
		return true, nil
	}
	w := newWhich(*o, left, now)
	if err := ask(w); err != nil {
		return false, err
	}
	o.Resume = w.resume
	return w.resume != "" || w.anew, nil
}

// reopened asks before a pour that is over is opened once more. What cannot be read is told of by who opens it.
func reopened(o *Options, ask func(*which) error) (bool, error) {
	p, err := o.Book.Read(o.Resume, o.Shelf)
	if err != nil {
		return true, nil //nolint:nilerr // it is told of where it is opened
	}
	at := slices.IndexFunc(logbook.Standing(p.Events), func(e logbook.Event) bool { return e.Kind == logbook.Ended })
	if at < 0 {
		return true, nil
	}
	w := newOver(*o, p, logbook.Standing(p.Events)[at])
	if err := ask(w); err != nil {
		return false, err
	}
	return w.resume != "", nil
}
