// Package shelffile changes the maker's own shelf file without touching what she wrote in it by hand: one value, key or entry at a time,
// each on the disk before it counts, each taken back to the byte. What the file means is for who reads it; here it is text.
package shelffile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
)

// ErrChanged is why a change is not taken back: the place holds something else by now.
var ErrChanged = errors.New("the shelf file was changed there by something else since")

// File is a maker's shelf file. It need not be there.
type File struct {
	Path  string
	Disk  disk.Ops
	Wait  time.Duration           // for another terminal that writes
	Reads func(text string) error // whether what is to be written can be read as a shelf file
}

// New is the shelf file at a path.
func New(path string, reads func(text string) error) File {
	return File{Path: path, Disk: disk.OS(), Wait: 2 * time.Second, Reads: reads}
}

// Done is a change that was made: what there was before and after.
type Done struct {
	change        pour.ShelfChange
	before, after string
	was           bool // the file was there
}

// Change makes a change in the file as it is at that moment: what another terminal or an editor wrote meanwhile stays. A change after
// which the file could not be read is refused with the reason, and nothing is written.
func (f File) Change(c pour.ShelfChange) (Done, error) {
	done := Done{change: c}
	err := f.rewrite(func(old string, there bool) (string, error) {
		done.before, done.was = old, there
		var err error
		done.after, err = changed(old, c)
		return done.after, err
	})
	if err != nil {
		return Done{}, fmt.Errorf("change the %s of %s in %s: %w", named(c), c.Of.ID, f.Path, disk.Reason(err))
	}
	return done, nil
}

// named is what a change is of, in words.
func named(c pour.ShelfChange) string {
	if c.Key == "" {
		return "entry"
	}
	return c.Key
}

// Back takes a change back. Where nothing else was written since, the file is what it was, to the byte, or gone where there was none; else the
// one place is put back, and where that holds something else by now it is refused with [ErrChanged].
func (f File) Back(d Done) error {
	err := f.rewrite(func(now string, _ bool) (string, error) {
		if now == d.after {
			return d.before, nil
		}
		return restored(now, d)
	})
	if err == nil && !d.was && d.before == "" {
		err = f.drop()
	}
	if err != nil {
		return fmt.Errorf("put back the %s of %s in %s: %w", named(d.change), d.change.Of.ID, f.Path, disk.Reason(err))
	}
	return nil
}

// drop removes a file that a change had made, while it holds nothing.
func (f File) drop() error {
	_, err := f.Disk.DropIf(f.Path, f.Wait, func(content []byte) bool { return len(content) == 0 })
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// Text is what the file holds; nothing where it is not there.
func (f File) Text() (text string, there bool, err error) {
	r, _, err := disk.Read(f.Path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", false, nil
	}
	if err != nil {
		return "", false, err
	}
	defer r.Close() //nolint:errcheck // only read
	var content bytes.Buffer
	_, err = content.ReadFrom(r)
	return content.String(), true, err
}

// rewrite puts another text in the place of the file's, while no other terminal does.
func (f File) rewrite(next func(old string, there bool) (string, error)) (err error) {
	if err := os.MkdirAll(filepath.Dir(f.Path), 0o700); err != nil {
		return err
	}
	held, err := f.Disk.HoldFor(filepath.Join(filepath.Dir(f.Path), "."+filepath.Base(f.Path)+".writing"), f.Wait)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, held.Release()) }()
	old, there, err := f.Text()
	if err != nil {
		return err
	}
	text, err := next(old, there)
	if err != nil || text == old && there {
		return err
	}
	if err := f.Reads(text); err != nil {
		return err
	}
	return f.Disk.Save(f.Path, disk.Bytes([]byte(text)), disk.Want{Mode: disk.Private, New: !there, Still: func() error { return f.still(old) }})
}

// still is asked when all is written and about to take the name: an editor, which holds nothing, may have saved meanwhile.
func (f File) still(old string) error {
	if now, _, err := f.Text(); err != nil || now != old {
		return errors.Join(err, errors.New("something else is writing it just now; try again"))
	}
	return nil
}
