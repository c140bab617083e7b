package disk

import (
	"errors"
	"io/fs"
	"os"
	"time"
)

// Held is a name that this process holds: a small file, locked for as long as the process lives. The system lets go of it when the
// process dies, however it dies.
type Held struct {
	o    Ops
	f    *os.File
	path string
}

// Hold makes a file that was not there and holds it. On a system without locks it is made all the same.
func (o Ops) Hold(path string) (*Held, error) {
	var err error
	for range tries {
		var f *os.File
		if f, err = o.Create(path, Private); err != nil {
			return nil, err
		}
		if err = o.claim(f, path); err == nil {
			return &Held{o, f, path}, nil
		}
		_ = o.Close(f)
	}
	return nil, err
}

// HoldFor holds a name that others want too, one after the other: while another has it, it tries again for as long as wait, then gives up
// with [ErrLocked]. What a killed process left is taken over, where the system has locks; where it has none, that is taken for held.
func (o Ops) HoldFor(path string, wait time.Duration) (*Held, error) {
	const pause = 5 * time.Millisecond
	for until := time.Now().Add(wait); ; time.Sleep(pause) {
		held, err := o.take(path)
		if held != nil || err != nil {
			return held, err
		}
		if !time.Now().Before(until) {
			return nil, ErrLocked
		}
	}
}

// take makes the file or takes up the one that is there; nil: another has it. Nothing is removed by its name alone: between a look and the
// removal it may be another's, who holds it.
func (o Ops) take(path string) (*Held, error) {
	f, err := o.Create(path, Private)
	made := err == nil
	if errors.Is(err, fs.ErrExist) {
		if f, err = o.Open(path); errors.Is(err, fs.ErrNotExist) {
			return nil, nil //nolint:nilnil // whoever had it has let go just now
		}
	}
	if err != nil {
		return nil, err
	}
	err = o.TryLock(f)
	unsupported := errors.Is(err, errors.ErrUnsupported)
	if under(f, path) && (err == nil || made && unsupported) {
		return &Held{o, f, path}, nil
	}
	_ = o.Close(f)
	switch {
	case err == nil || unsupported || errors.Is(err, ErrLocked):
		return nil, nil //nolint:nilnil // another has it, or has let go just now
	case made:
		return nil, errors.Join(err, o.Remove(path))
	}
	return nil, err
}

// Release lets go and removes the file. It may be called on nil.
func (h *Held) Release() error {
	if h == nil {
		return nil
	}
	return h.o.removeOpen(h.f, h.path)
}

// Living reports whether a living process holds the file. A file that nobody holds any more, or that is not there, is not held.
func (o Ops) Living(path string) bool {
	f, err := o.Open(path)
	if err != nil {
		return false
	}
	defer o.Close(f) //nolint:errcheck // nothing was written
	return errors.Is(o.TryLock(f), ErrLocked)
}
