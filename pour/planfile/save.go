package planfile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"pourbench/pour"
	"pourbench/pour/disk"
)

// Reasons for which [Save] leaves a file alone unless it is forced.
var (
	ErrChanged = errors.New("the file was changed by something else since it was read")
	ErrExists  = errors.New("there is a file of that name already")
)

// SaveOptions says what [Save] may replace.
type SaveOptions struct {
	Since Stamp // of the file as the plan was read from it or last saved to it; the zero Stamp: a new file
	Force bool  // replace whatever is there
}

// Saved is what became of a save.
type Saved struct {
	Stamp Stamp
	Path  string // the file written: with every symbolic link followed
	Kept  string // where the replaced file was kept, because it held comments or another's changes; empty: not kept
}

// Save writes the plan to path, whole or not at all; [disk.Ops.Save] says how.
// A symbolic link stays a link and its target is replaced; the permissions of a replaced file stay.
// A replaced file that held comments, or that something else had changed, is kept beside it as "NAME~", or "NAME~2" and so on.
//
// Errors begin with their reason. They wrap [ErrExists] when Since is zero and the file is there, [ErrChanged] when the file is no
// longer as Since says, and [fs.ErrPermission] when it is write-protected. Force overrides all three. A file that was removed since
// is written anew.
func Save(path string, p pour.Plan, o SaveOptions) (Saved, error) { return save(disk.OS(), path, p, o) }

func save(d disk.Ops, path string, p pour.Plan, o SaveOptions) (Saved, error) {
	src, err := encode(p)
	if err != nil {
		return Saved{}, err
	}
	saved, err := replace(d, path, []byte(src), o)
	if err != nil {
		return Saved{}, fmt.Errorf("%w: save the plan as %q", disk.Reason(err), path)
	}
	return saved, nil
}

func replace(d disk.Ops, path string, content []byte, o SaveOptions) (Saved, error) {
	file, err := disk.Follow(path)
	if err != nil {
		return Saved{}, err
	}
	saved := Saved{Path: file}
	want := disk.Want{Mode: disk.Shared}
	old, mode, err := current(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		want.New = true
	case err != nil:
		return Saved{}, err
	default:
		if err := allowed(old, mode, o); err != nil {
			return Saved{}, err
		}
		if saved.Kept, err = keep(d, file, old, mode, o); err != nil {
			return Saved{}, err
		}
		want.Still = func() error { return unchanged(file, old) }
	}
	err = d.Save(file, disk.Bytes(content), want)
	if errors.Is(err, fs.ErrExist) {
		return Saved{}, errExists()
	}
	if err != nil {
		return Saved{}, err
	}
	info, err := os.Stat(file)
	if err != nil {
		return Saved{}, err
	}
	saved.Stamp = stampOf(content, info.ModTime())
	return saved, nil
}

// current reads the file that would be replaced.
func current(path string) ([]byte, fs.FileMode, error) {
	f, info, err := disk.Read(path)
	if err != nil {
		return nil, 0, err
	}
	defer f.Close() //nolint:errcheck // nothing was written
	var content bytes.Buffer
	_, err = content.ReadFrom(f)
	return content.Bytes(), info.Mode(), err
}

func allowed(old []byte, mode fs.FileMode, o SaveOptions) error {
	const anyWrite = 0o222
	switch {
	case o.Force:
		return nil
	case o.Since.Zero():
		return errExists()
	case !o.Since.same(old):
		return errChanged()
	case mode&anyWrite == 0:
		return fmt.Errorf("the file is write-protected; save under another name or replace it: %w", fs.ErrPermission)
	}
	return nil
}

func errExists() error { return fmt.Errorf("%w; choose another name or replace it", ErrExists) }

func errChanged() error {
	return fmt.Errorf("%w; read it again, save under another name, or replace it", ErrChanged)
}

// unchanged is asked when the plan is written and about to take the name: another bench may have saved since the file was read.
func unchanged(file string, old []byte) error {
	now, _, err := current(file)
	if err == nil && !bytes.Equal(now, old) {
		return errChanged()
	}
	return nil // also when it was removed
}

// mostKept bounds how many replaced files are kept beside one plan.
const mostKept = 100

// keep copies what is about to be replaced when it holds more than a plan that we wrote: as "NAME~", or "NAME~2" and so on where
// another is kept already.
func keep(d disk.Ops, file string, old []byte, mode fs.FileMode, o SaveOptions) (string, error) {
	others := !o.Since.same(old)
	if !others && !handComments(string(old)) {
		return "", nil
	}
	want := disk.Want{Mode: mode.Perm(), Exactly: true, New: true}
	kept := file + "~"
	for n := 2; ; n++ {
		err := d.Save(kept, disk.Bytes(old), want)
		if err == nil || errors.Is(err, fs.ErrExist) && isCopy(kept, old) {
			return kept, nil
		}
		if !errors.Is(err, fs.ErrExist) || n > mostKept {
			return "", fmt.Errorf("%w: keep the replaced file as %q", disk.Reason(err), kept)
		}
		kept = fmt.Sprintf("%s~%d", file, n)
	}
}

func isCopy(path string, content []byte) bool {
	there, _, err := current(path)
	return err == nil && bytes.Equal(there, content)
}
