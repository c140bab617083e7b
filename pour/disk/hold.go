package disk

import (
	"errors"
	"os"
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
