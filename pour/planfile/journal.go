package planfile

import (
	"cmp"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/natefinch/atomic"

	"pourbench/pour"
	"pourbench/pour/strict"
)

const (
	journalSuffix = ".journal"
	journalHead   = "# pourbench recovery journal of "
)

// Recovery is a plan found in a journal: work that was open and never saved.
type Recovery struct {
	Key  string    // as given to [WriteJournal]
	Path string    // of the plan's file, exactly as given; empty: never saved
	File string    // the journal itself
	At   time.Time // when it was last written
	Plan pour.Plan // not checked against a shelf
	Err  error     // why the plan could not be read; the journal is still there
}

// JournalKey makes the key of a document from the path of its file: the same for every way to write that path.
func JournalKey(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	if file, err := follow(path, mostLinks); err == nil {
		path = file
	}
	return fmt.Sprintf("%x", sha256.Sum256([]byte(path)))[:16]
}

// WriteJournal keeps the plan in dir under a key, in place of the journal that was there before. The key names the open
// document; letters, digits, "-" and "_" may stand in it. The path is that of the plan's file, empty for one never saved.
// The folder is made when it is missing; both are for the maker's eyes only.
func WriteJournal(dir, key string, p pour.Plan, path string) error {
	file, err := journalFile(dir, key)
	if err != nil {
		return err
	}
	src, err := encode(p)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return fmt.Errorf("keep a recovery journal: %w", err)
	}
	head := journalHead + strconv.Quote(path) + "\n"
	if err := atomic.WriteFile(file, strings.NewReader(head+src)); err != nil {
		return fmt.Errorf("keep a recovery journal: %w", err)
	}
	return nil
}

// ReadJournals returns every journal in dir, the latest first; none when there is no such folder.
// A journal that cannot be read is returned with the reason, so that nothing is passed over.
func ReadJournals(dir string) ([]Recovery, error) {
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
			out = append(out, readJournal(key, filepath.Join(dir, entry.Name())))
		}
	}
	slices.SortStableFunc(out, func(a, b Recovery) int { return cmp.Or(b.At.Compare(a.At), cmp.Compare(a.Key, b.Key)) })
	return out, nil
}

func readJournal(key, file string) Recovery {
	out := Recovery{Key: key, File: file}
	f, err := os.Open(file)
	if err != nil {
		out.Err = strict.Refuse(file, reason(err), openMend(err))
		return out
	}
	defer f.Close() //nolint:errcheck // nothing was written
	if info, err := f.Stat(); err == nil {
		out.At = info.ModTime()
	}
	src, err := form().Slurp(file, f)
	if err != nil {
		out.Err = err
		return out
	}
	head, _, _ := strings.Cut(src, "\n")
	if path, err := strconv.Unquote(strings.TrimPrefix(head, journalHead)); err == nil {
		out.Path = path
	}
	out.Plan, out.Err = read(file, src, nil)
	return out
}

// DropJournal removes the journal of a key; none there is no error.
func DropJournal(dir, key string) error {
	file, err := journalFile(dir, key)
	if err != nil {
		return err
	}
	if err := os.Remove(file); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("drop a recovery journal: %w", err)
	}
	return nil
}

// journalFile refuses a key that would lead out of the folder.
func journalFile(dir, key string) (string, error) {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_"
	if key == "" || strings.Trim(key, letters) != "" {
		return "", fmt.Errorf("keep a recovery journal under the key %q: a key is made of letters, digits, - and _", key)
	}
	return filepath.Join(dir, key+journalSuffix), nil
}
