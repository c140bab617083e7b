// Package ownfile is a file of a maker's own in her folder of data: written by hand as well as by the program, read whole, and changed a line at a time
// under a lock so that the rest stays to the byte. What stands in it is for who reads it.
package ownfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// File is such a file. It need not be there, nor its folder.
type File struct {
	Dir   string
	Name  string // its file name, "costs.toml"; what is held while it is changed goes by it
	Head  string // how a new one begins
	Form  strict.Form
	Reads func(name, text string) error // whether a text can be read as that file
	Disk  disk.Ops
	Wait  time.Duration // for another terminal that writes
}

// New is a file in a folder of data on the system's disk.
func New(dir, name, head string, form strict.Form, reads func(name, text string) error) File {
	return File{Dir: dir, Name: name, Head: head, Form: form, Reads: reads, Disk: disk.OS(), Wait: 2 * time.Second}
}

// Path is where it lies.
func (f File) Path() string { return filepath.Join(f.Dir, f.Name) }

// lock is the file beside it that is held.
func (f File) lock() string {
	return filepath.Join(f.Dir, "."+strings.TrimSuffix(f.Name, filepath.Ext(f.Name))+".lock")
}

// Text is what the file holds; nothing where there is no file. Any failure is a [*strict.Error].
func (f File) Text() (string, error) {
	in, _, err := disk.Read(f.Path())
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", strict.Refuse(f.Path(), disk.Reason(err), "give yourself leave to read it, or move it away")
	}
	defer func() { _ = in.Close() }() // only read
	return f.Form.Slurp(f.Path(), io.Reader(in))
}

// Change makes a change in the file as it is at that moment: next is handed its text, or how a new one begins. Where what comes of it cannot be read it is
// refused, and nothing is written; nor where it changes nothing.
func (f File) Change(what string, next func(text string) (string, error)) error {
	if err := f.locked(next); err != nil {
		return fmt.Errorf("%s in %s: %w", what, f.Path(), err)
	}
	return nil
}

func (f File) locked(next func(text string) (string, error)) (err error) {
	if err := os.MkdirAll(f.Dir, 0o700); err != nil {
		return disk.Reason(err)
	}
	held, err := f.Disk.HoldFor(f.lock(), f.Wait)
	if errors.Is(err, disk.ErrLocked) {
		return fmt.Errorf("%w: another pourbench is changing it; try again", err)
	}
	if err != nil {
		return disk.Reason(err)
	}
	defer func() { err = errors.Join(err, held.Release()) }()
	old, err := f.Text()
	if err != nil {
		return err
	}
	if err := f.Reads(f.Path(), old); err != nil {
		return err
	}
	src := old
	if strings.TrimSpace(old) == "" {
		src = f.Head
	}
	text, err := next(src)
	if err != nil || text == old || text == f.Head {
		return err
	}
	if err := f.Reads("the file as it would be", text); err != nil {
		return err
	}
	return f.save(old, text)
}

// save writes the file if nobody has written it since it was read: an editor knows nothing of the lock.
func (f File) save(old, text string) error {
	_, missing := os.Lstat(f.Path())
	still := func() error {
		if now, err := f.Text(); err != nil || now != old {
			return errors.Join(err, errors.New("something else is writing it just now; try again"))
		}
		return nil
	}
	err := f.Disk.Save(f.Path(), disk.Bytes([]byte(text)), disk.Want{Mode: disk.Private, New: errors.Is(missing, os.ErrNotExist), Still: still})
	if err != nil {
		return disk.Reason(err)
	}
	return nil
}

// Open reads the text of such a file up to its format, which has to be that one; nil: no text, which states nothing. The mend says whose file it could be:
// "if these are your costs".
func Open(form strict.Form, name, text string, format int64, whose string) (*strict.File, error) {
	if strings.TrimSpace(text) == "" {
		return nil, nil //nolint:nilnil // no file, and nothing wrong with that
	}
	file, err := form.Open(name, strings.TrimPrefix(text, "\ufeff"))
	if err != nil {
		return nil, err
	}
	n := int64(0)
	top := file.Top()
	if top.Whole("format", &n); n != format {
		top.Say("format", fmt.Sprint(n), "is none this program reads", fmt.Sprintf("write format = %d as the first line, if %s", format, whose))
	}
	return file, nil
}

// Strange refuses a key that nothing is stated at, and says which was perhaps meant.
func Strange(key string, keys []string) error {
	all := "it can be " + strings.Join(keys, ", ")
	return fmt.Errorf("%q is nothing that is stated there: %s", key, strict.Meant(key, keys, all, "I"+all[1:]))
}
