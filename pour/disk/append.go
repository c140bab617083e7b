package disk

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// Append changes the end of a file that is there, under a lock, and returns once that is on the disk. More is given what the file
// holds and says how many bytes of it stay and what comes after them: it sees what others have written, and can cut off what a crash
// left half written. It returns the file's size before and after, so that a caller sees whether somebody else had written in between.
//
// While another has the lock it tries again for as long as wait, then gives up with [ErrLocked]. When writing fails the file is put
// back as it was, so that no half line is added.
func (o Ops) Append(path string, wait time.Duration, more func(old []byte) (stay int, add []byte)) (before, after int64, err error) {
	f, err := o.openLocked(path, wait)
	if err != nil {
		return 0, 0, err
	}
	before, after, err = o.append(f, more)
	return before, after, errors.Join(err, o.Close(f))
}

// openLocked opens the file that has the name when the lock is held: an editor may have put another in its place meanwhile.
func (o Ops) openLocked(path string, wait time.Duration) (*os.File, error) {
	const pause = 10 * time.Millisecond
	until := time.Now().Add(wait)
	for swapped := 0; swapped < tries; {
		f, err := o.openPlain(path)
		if err != nil {
			return nil, err
		}
		err = o.TryLock(f)
		switch {
		case errors.Is(err, errors.ErrUnsupported):
			return f, nil
		case err == nil && under(f, path):
			return f, nil
		case err == nil:
			swapped++
		case !errors.Is(err, ErrLocked) || !time.Now().Before(until):
			return nil, errors.Join(err, o.Close(f))
		default:
			time.Sleep(pause)
		}
		_ = o.Close(f)
	}
	return nil, fmt.Errorf("%s is replaced again and again by something else", path)
}

func (o Ops) openPlain(path string) (*os.File, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if err := Plain(info); err != nil {
		return nil, err
	}
	return o.Open(path)
}

func (o Ops) append(f *os.File, more func([]byte) (int, []byte)) (before, after int64, err error) {
	old, err := io.ReadAll(f)
	if err != nil {
		return 0, 0, err
	}
	stay, add := more(old)
	if stay < len(old) {
		if err := o.Truncate(f, int64(stay)); err != nil {
			return 0, 0, err
		}
	}
	if _, err = o.Write(f, add); err == nil {
		err = o.Sync(f)
	}
	if err != nil {
		return 0, 0, errors.Join(err, o.restore(f, old, stay))
	}
	return int64(len(old)), int64(stay + len(add)), nil
}

// restore puts the end of a file back that could not be written.
func (o Ops) restore(f *os.File, old []byte, stay int) error {
	err := o.Truncate(f, int64(stay))
	if err == nil && stay < len(old) {
		_, err = o.Write(f, old[stay:])
	}
	return err
}

// Drop removes a file for good.
func (o Ops) Drop(path string) error {
	if err := o.Remove(path); err != nil {
		return err
	}
	o.SyncFolder(filepath.Dir(path))
	return nil
}

// DropIf removes a file for good if what it holds is as agreed when its lock is held: nobody is in the middle of writing to it then, and
// whoever waits for the lock finds no file. It reports whether the file is gone.
func (o Ops) DropIf(path string, wait time.Duration, agreed func(content []byte) bool) (bool, error) {
	f, err := o.openLocked(path, wait)
	if err != nil {
		return false, err
	}
	content, err := io.ReadAll(f)
	if err != nil || !agreed(content) {
		return false, errors.Join(err, o.Close(f))
	}
	if err := o.removeOpen(f, path); err != nil {
		return false, err
	}
	o.SyncFolder(filepath.Dir(path))
	return true, nil
}
