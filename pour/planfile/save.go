package planfile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/natefinch/atomic"

	"pourbench/pour"
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

// Permissions of a new file, before the umask.
const newFileMode = 0o644

// Save writes the plan to path, whole or not at all: to a file beside it, flushed to disk, then renamed over it.
// A symbolic link stays a link and its target is replaced; the permissions of a replaced file stay.
// A replaced file that held comments, or that something else had changed, is kept beside it as "NAME~".
//
// Errors wrap [ErrExists] when Since is zero and the file is there, [ErrChanged] when the file is no longer as Since says,
// and [fs.ErrPermission] when it is write-protected. Force overrides all three. A file that was removed since is written anew.
func Save(path string, p pour.Plan, o SaveOptions) (Saved, error) {
	src, err := encode(p)
	if err != nil {
		return Saved{}, err
	}
	saved, err := replace(path, []byte(src), o)
	if err != nil {
		return Saved{}, fmt.Errorf("save plan as %q: %w", path, err)
	}
	return saved, nil
}

func replace(path string, content []byte, o SaveOptions) (Saved, error) {
	file, err := follow(path, mostLinks)
	if err != nil {
		return Saved{}, err
	}
	saved := Saved{Path: file}
	old, mode, err := current(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		err = create(file, content)
	case err != nil:
		return Saved{}, err
	default:
		if err := allowed(old, mode, o); err != nil {
			return Saved{}, err
		}
		if saved.Kept, err = keep(file, old, mode, o); err != nil {
			return Saved{}, err
		}
		err = atomic.WriteFile(file, bytes.NewReader(content))
	}
	if err != nil {
		return Saved{}, err
	}
	syncFolder(filepath.Dir(file))
	info, err := os.Stat(file)
	if err != nil {
		return Saved{}, err
	}
	saved.Stamp = stampOf(content, info.ModTime())
	return saved, nil
}

// mostLinks bounds a chain of symbolic links, as the systems themselves do.
const mostLinks = 40

// follow resolves symbolic links, also those to a file that is not there yet.
func follow(path string, links int) (string, error) {
	file, err := filepath.EvalSymlinks(path)
	if !errors.Is(err, fs.ErrNotExist) {
		return file, err
	}
	target, err := os.Readlink(path)
	if err != nil { // no link: a new file, in a folder that must be there
		folder, err := filepath.EvalSymlinks(filepath.Dir(path))
		return filepath.Join(folder, filepath.Base(path)), err
	}
	if links == 0 {
		return "", fmt.Errorf("%s: too many links", path)
	}
	if !filepath.IsAbs(target) {
		target = filepath.Join(filepath.Dir(path), target)
	}
	return follow(target, links-1)
}

// current reads the file that would be replaced.
func current(path string) ([]byte, fs.FileMode, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, 0, err
	}
	if !info.Mode().IsRegular() {
		return nil, 0, fmt.Errorf("%s is no ordinary file; choose another name", path)
	}
	content, err := os.ReadFile(path)
	return content, info.Mode(), err
}

func allowed(old []byte, mode fs.FileMode, o SaveOptions) error {
	const anyWrite = 0o222
	switch {
	case o.Force:
		return nil
	case o.Since.Zero():
		return fmt.Errorf("%w; choose another name or replace it", ErrExists)
	case !o.Since.same(old):
		return fmt.Errorf("%w; read it again, save under another name, or replace it", ErrChanged)
	case mode&anyWrite == 0:
		return fmt.Errorf("the file is write-protected; save under another name or replace it: %w", fs.ErrPermission)
	}
	return nil
}

// create writes a new file. It takes the name first, so that a file that turns up meanwhile is not replaced and the umask is kept.
func create(path string, content []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, newFileMode)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%w; choose another name or replace it", ErrExists)
	}
	if err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	if err := atomic.WriteFile(path, bytes.NewReader(content)); err != nil {
		return errors.Join(err, os.Remove(path))
	}
	return nil
}

// keep copies what is about to be replaced when it holds more than a plan that we wrote.
func keep(path string, old []byte, mode fs.FileMode, o SaveOptions) (string, error) {
	others := !o.Since.same(old)
	if !others && !handComments(string(old)) {
		return "", nil
	}
	kept := path + "~"
	err := atomic.WriteFile(kept, bytes.NewReader(old))
	if err == nil {
		err = os.Chmod(kept, mode.Perm())
	}
	if err != nil {
		return "", fmt.Errorf("keep the replaced file as %s: %w", kept, err)
	}
	return kept, nil
}

// syncFolder makes a rename last through a power cut, where the system can do that; where not, the rename has happened all the same.
func syncFolder(path string) {
	if folder, err := os.Open(path); err == nil {
		_ = folder.Sync()
		_ = folder.Close()
	}
}
