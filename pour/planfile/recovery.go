package planfile

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// Recovery is a plan found in a journal: work that was open and never saved.
type Recovery struct {
	Path   string    // of the plan's file; empty: never saved
	Made   Stamp     // the file as it was when the work was made from it, its sum only; zero: never saved, or not known
	File   string    // the journal itself
	At     time.Time // when it was last written
	Living bool      // its bench is still open: the work is not lost
	Plan   pour.Plan // not checked against a shelf
	Err    error     // why the plan could not be read; the journal is still there
}

// Recoveries returns every journal in dir, the latest first; none when there is no such folder.
// A journal that cannot be read is returned with the reason, so that nothing is passed over.
func Recoveries(dir string) ([]Recovery, error) {
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("look for recovery journals: %w", err)
	}
	var out []Recovery
	for _, entry := range entries {
		if key, ok := strings.CutSuffix(entry.Name(), journalSuffix); ok && entry.Type().IsRegular() {
			r := recovery(journalFile(dir, key))
			r.Living = disk.OS().Living(lockFile(dir, key))
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(a, b Recovery) int { return cmp.Or(b.At.Compare(a.At), cmp.Compare(a.File, b.File)) })
	return out, nil
}

func recovery(file string) Recovery {
	out := Recovery{File: file}
	f, info, err := disk.Read(file)
	if err != nil {
		out.Err = strict.Refuse(file, disk.Reason(err), openMend(err))
		return out
	}
	defer f.Close() //nolint:errcheck // nothing was written
	out.At = info.ModTime()
	src, err := form().Slurp(file, f)
	if err != nil {
		out.Err = err
		return out
	}
	head, rest, _ := strings.Cut(src, "\n")
	if path, err := strconv.Unquote(strings.TrimPrefix(head, journalHead)); err == nil {
		out.Path = path
	}
	second, _, _ := strings.Cut(rest, "\n")
	if digits, ok := strings.CutPrefix(second, madeFromHead); ok {
		sum, err := hex.DecodeString(digits)
		if err == nil && len(sum) == len(out.Made.Sum) {
			copy(out.Made.Sum[:], sum)
		}
	}
	out.Plan, out.Err = read(file, src, nil)
	return out
}

// Of reports whether the work belongs to the plan file at path, by whatever way that is written; an empty path stands for plans that
// were never saved.
func (r Recovery) Of(path string) bool {
	switch {
	case path == "" || r.Path == "":
		return path == r.Path
	case filepath.IsAbs(r.Path):
		return SameFile(path) == SameFile(r.Path)
	}
	return filepath.Base(r.File) == oldKey(path)+journalSuffix // the path is from a folder that nobody knows any more
}

// oldKey named the journal of a plan file before every bench had a journal of its own.
func oldKey(path string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(SameFile(path))))[:16] }

// SameFile is the one name for every way to write a path: absolute, with its links followed where they can be.
func SameFile(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	if file, err := disk.Follow(path); err == nil {
		return file
	}
	return path
}

// Drop removes the journal of a bench that is gone; none there is no error. One whose bench lives is left alone.
func (r Recovery) Drop() error {
	d := disk.OS()
	if JournalLives(r.File) {
		return nil
	}
	if err := d.Drop(r.File); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%w: drop the recovery journal %q", disk.Reason(err), r.File)
	}
	d.DropUnheld(lockOf(r.File))
	return nil
}

// JournalLives reports whether the bench that writes a journal is open.
func JournalLives(file string) bool { return disk.OS().Living(lockOf(file)) }

func lockOf(journal string) string { return strings.TrimSuffix(journal, journalSuffix) + lockSuffix }
