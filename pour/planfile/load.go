package planfile

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// Document is a plan with the file it came from.
type Document struct {
	Plan         pour.Plan
	Path         string // as the caller gave it; empty: the plan has no file
	Stamp        Stamp
	HandComments bool // the file holds comments that saving will not keep
}

// Stamp is what a file was when it was last read or written. The zero Stamp stands for no file.
// Whether a file has changed is told by its content alone; size and time are there to be shown.
type Stamp struct {
	Size    int64 // bytes
	ModTime time.Time
	Sum     [sha256.Size]byte
}

// Zero reports whether the stamp stands for no file.
func (s Stamp) Zero() bool { return s == Stamp{} }

func stampOf(content []byte, modified time.Time) Stamp {
	return Stamp{Size: int64(len(content)), ModTime: modified, Sum: sha256.Sum256(content)}
}

func (s Stamp) same(content []byte) bool { return !s.Zero() && s.Sum == sha256.Sum256(content) }

// Load reads the plan file at path and checks it against the shelf. Any failure is an [*strict.Error], one of the file system
// included; [errors.Is] finds the reason, as [fs.ErrNotExist]. What is no plain file is refused at once: reading a pipe may wait for
// ever. Only a pipe that the shell has opened for the command, /dev/stdin or what stands for "<(COMMAND)", is read; a plan from
// there has no file.
func Load(path string, s pour.Shelf) (Document, error) {
	f, info, err := disk.Given(path)
	if err != nil {
		return Document{}, strict.Refuse(path, disk.Reason(err), openMend(err))
	}
	defer f.Close() //nolint:errcheck // nothing was written
	src, err := form().Slurp(path, f)
	if err != nil {
		return Document{}, err
	}
	p, err := read(path, src, &s)
	if err != nil {
		return Document{}, err
	}
	d := Document{Plan: p, HandComments: handComments(src)}
	if info != nil {
		d.Path, d.Stamp = path, stampOf([]byte(src), info.ModTime())
	}
	return d, nil
}

// handComments reports whether the file holds a comment that is not ours.
func handComments(src string) bool {
	return slices.ContainsFunc(strict.Comments(src), func(c string) bool { return c != headComment })
}

func openMend(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "look at the spelling of the name and at the folder; without a name pourbench opens its example"
	case errors.Is(err, disk.ErrNotPlain):
		return "name a plan file; a pipe is read as -, standard input"
	case errors.Is(err, fs.ErrPermission):
		return "give yourself leave to read the file"
	}
	return "name a plan file"
}

// Changed reports whether the file at path is another than the stamp tells of: edited or removed since, or there although the stamp stands for no file.
// A file that was only touched has not changed.
func Changed(path string, s Stamp) (bool, error) {
	content, _, err := current(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return !s.Zero(), nil
	case err != nil:
		return false, fmt.Errorf("look whether the plan changed on disk: %w", err)
	}
	return !s.same(content), nil
}
