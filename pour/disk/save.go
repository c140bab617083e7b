package disk

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Permissions of a new file before the umask: for everybody the umask lets in, and for the maker's eyes only.
const (
	Shared  fs.FileMode = 0o666
	Private fs.FileMode = 0o600
)

// Want says how [Ops.Save] takes a name.
type Want struct {
	Mode    fs.FileMode  // of a file that was not there, before the umask; a file that is replaced keeps its own
	Exactly bool         // the file has this mode, whatever the umask says and whatever was there
	New     bool         // the name must be free: else [fs.ErrExist]
	Still   func() error // asked once more when all is written, just before the file takes its name; an error stops it; nil: not asked
}

// Bytes fills a file with content that is there already.
func Bytes(content []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	}
}

// tries is how often a file is made again that another terminal swept in the moment between two operations.
const tries = 5

// errSwept is why a temporary file is made once more: another terminal took it for one left by a killed program.
var errSwept = errors.New("the file beside it is removed again and again by something else")

// Save writes a file whole or not at all: what fill writes goes to a file beside it, onto the disk, and only then takes the name. On any
// error what was there is as it was and nothing is left beside it. A symbolic link stays one, and what it leads to is written; what
// is no plain file is refused with [ErrNotPlain]. What killed programs left in the folder is swept first.
//
// A new name appears with its whole content at once and never replaces a file that turned up meanwhile. The system's own
// move-without-replacing promises that on Linux, macOS and Windows, USB sticks included; a hard link does on file systems that lack
// the move, as on a network. Where there is neither, the name is taken empty first: there alone a kill in between can leave it empty.
//
// Fill may be asked again, from the start. Errors never name the file beside.
func (o Ops) Save(path string, fill func(io.Writer) error, w Want) error {
	file, err := Follow(path)
	if err != nil {
		return err
	}
	o.sweep(filepath.Dir(file))
	for range tries {
		if err = o.put(file, fill, w); !errors.Is(err, errSwept) {
			return err
		}
	}
	return err
}

// put writes the file beside and gives it the name.
func (o Ops) put(file string, fill func(io.Writer) error, w Want) error {
	old, err := replaced(file, w)
	if err != nil {
		return err
	}
	if old != nil && !w.Exactly {
		w.Mode, w.Exactly = old.Mode().Perm(), true
	}
	temp, err := o.beside(file, fill, w)
	if err != nil {
		return err
	}
	if w.Still != nil {
		err = w.Still()
	}
	if err == nil {
		err = o.name(temp, file, w, old == nil)
	}
	if err != nil {
		_ = o.Remove(temp)
		return err
	}
	o.SyncFolder(filepath.Dir(file))
	return nil
}

// replaced is the file that is to be replaced, or nil.
func replaced(file string, w Want) (fs.FileInfo, error) {
	old, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil //nolint:nilnil // nothing is there, and that is no error
	case err != nil:
		return nil, err
	}
	if err := Plain(old); err != nil {
		return nil, err
	}
	if w.New {
		return nil, fmt.Errorf("%q: %w", file, fs.ErrExist)
	}
	return old, nil
}

// beside writes a temporary file, whole and on the disk, and returns its name. It is locked while it is written, which tells a sweep
// that its writer lives.
func (o Ops) beside(file string, fill func(io.Writer) error, w Want) (string, error) {
	const ownWrite = 0o200
	temp := filepath.Join(filepath.Dir(file), tempName())
	f, err := o.Create(temp, w.Mode|ownWrite)
	if errors.Is(err, fs.ErrExist) {
		return "", errSwept
	}
	if err != nil {
		return "", Reason(err)
	}
	if err = o.claim(f, temp); err == nil {
		err = o.fill(f, fill)
	}
	if err == nil && w.Exactly {
		err = Reason(o.Chmod(f, w.Mode))
	}
	if err == nil {
		err = Reason(o.Sync(f))
	}
	if err = errors.Join(err, Reason(o.Close(f))); err != nil {
		_ = o.Remove(temp)
		return "", err
	}
	return temp, nil
}

// claim locks a file that was just made, and sees that no sweep was quicker.
func (o Ops) claim(f *os.File, path string) error {
	if err := o.TryLock(f); errors.Is(err, ErrLocked) {
		return errSwept
	}
	if !under(f, path) {
		return errSwept
	}
	return nil // a file system without locks is written to all the same
}

// under reports whether a file still has its name.
func under(f *os.File, path string) bool {
	mine, err1 := f.Stat()
	there, err2 := os.Stat(path)
	return err1 == nil && err2 == nil && os.SameFile(mine, there)
}

// writer writes through the operations.
type writer struct {
	o Ops
	f *os.File
}

func (w writer) Write(p []byte) (int, error) {
	n, err := w.o.Write(w.f, p)
	return n, Reason(err)
}

func (o Ops) fill(f *os.File, fill func(io.Writer) error) error {
	const chunk = 64 << 10
	buffered := bufio.NewWriterSize(writer{o, f}, chunk)
	if err := fill(buffered); err != nil {
		return err
	}
	return buffered.Flush()
}

// name gives a finished file its name.
func (o Ops) name(temp, file string, w Want, free bool) error {
	var err error
	if free || w.New {
		err = o.takeNew(temp, file, w.Mode)
	} else {
		err = o.Rename(temp, file)
	}
	if errors.Is(err, fs.ErrNotExist) {
		if _, gone := os.Lstat(temp); errors.Is(gone, fs.ErrNotExist) {
			return errSwept
		}
	}
	return Reason(err)
}

// takeNew gives it a name that nothing has; see [Ops.Save] for the three ways.
func (o Ops) takeNew(temp, file string, mode fs.FileMode) error {
	if err := o.Move(temp, file); err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	if err := o.Link(temp, file); err == nil || errors.Is(err, fs.ErrExist) {
		if err == nil {
			_ = o.Remove(temp) // a sweep takes it if this cannot
		}
		return err
	}
	f, err := o.Create(file, mode)
	if err != nil {
		return err
	}
	if err := errors.Join(o.Close(f), o.Rename(temp, file)); err != nil {
		return errors.Join(err, o.Remove(file))
	}
	return nil
}
