package backup

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pourbench/pour/disk"
	"pourbench/pour/planfile"
)

// State says how a file of an archive stands to what is there.
type State int

// The states.
const (
	New    State = iota // nothing is there
	Same                // the same is there
	Other               // something else is there
	Living              // unsaved work of a bench that is open
)

// Step is one file on its way back.
type Step struct {
	File
	Path  string
	State State
}

// Steps says where every file goes and what is there. Nothing is written.
func (p Places) Steps(files []File) ([]Step, error) {
	var out []Step
	to := map[string]bool{}
	for _, f := range files {
		s := Step{File: f, Path: p.target(f)}
		if folded := strings.ToLower(s.Path); to[folded] {
			return nil, fmt.Errorf("put %s back: two files of the backup belong there", s.Path)
		} else {
			to[folded] = true
		}
		var err error
		if s.State, err = stateOf(s); err != nil {
			return nil, fmt.Errorf("%w: put %s back", disk.Reason(err), s.Path)
		}
		out = append(out, s)
	}
	return out, nil
}

// target is where a file goes. A plan goes back to where it came from in the maker's home, but into no folder that is hidden, where
// other programs keep their settings; any other goes to the folder for plans.
func (p Places) target(f File) string {
	switch f.Kind {
	case Shelf:
		return p.Shelf
	case Pour:
		return filepath.Join(p.Book, f.Name)
	case Beside:
		return filepath.Join(p.Data, f.Name)
	case Journal:
		return filepath.Join(p.State, f.Name)
	}
	rest, ok := strings.CutPrefix(f.From, "~/")
	local := filepath.FromSlash(rest)
	hidden := strings.HasPrefix(rest, ".") || strings.Contains(rest, "/.")
	if ok && p.Home != "" && filepath.IsLocal(local) && !hidden && !strings.Contains(rest, `\`) && strings.HasSuffix(rest, ".toml") {
		return filepath.Join(p.Home, local)
	}
	return filepath.Join(p.Plans, f.Name)
}

func stateOf(s Step) (State, error) {
	f, _, err := disk.Read(s.Path)
	if errors.Is(err, fs.ErrNotExist) {
		return New, nil
	}
	if err != nil {
		return Other, err
	}
	there, err := io.ReadAll(io.LimitReader(f, mostFile+1))
	if err = errors.Join(err, f.Close()); err != nil {
		return Other, err
	}
	switch {
	case bytes.Equal(there, s.Content):
		return Same, nil
	case s.Kind == Journal && planfile.JournalLives(s.Path):
		return Living, nil
	}
	return Other, nil
}

// Put writes one file to its place, whole or not at all, with the time it had. One that turned up since [Places.Steps] is not written
// over: [fs.ErrExist].
func (s Step) Put() error {
	want := disk.Want{Mode: disk.Private, New: s.State == New}
	folder := fs.FileMode(0o700)
	if s.Kind == Plan || s.Kind == Shelf {
		want.Mode, folder = disk.Shared, 0o777
	}
	err := os.MkdirAll(filepath.Dir(s.Path), folder)
	if err == nil {
		err = disk.OS().Save(s.Path, disk.Bytes(s.Content), want)
	}
	if err != nil {
		return fmt.Errorf("%w: put %s back", disk.Reason(err), s.Path)
	}
	if !s.Modified.IsZero() {
		_ = os.Chtimes(s.Path, s.Modified, s.Modified) // the content counts; the time is only shown
	}
	return nil
}
