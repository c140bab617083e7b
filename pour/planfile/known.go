package planfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"pourbench/pour/disk"
	"pourbench/pour/plain"
)

// knownName is the list of the plans that were opened or saved: a plain file with a path on each line.
const knownName = "plans"

// mostKnown bounds the list.
const mostKnown = 5000

// Remember puts the file of a plan onto the list in dir, once, so that a backup finds it. A name that would not stand on one line is
// left out.
func Remember(dir, path string) error {
	path = SameFile(path)
	if plain.Line(path) != path {
		return nil
	}
	if known, err := Known(dir); err == nil && slices.Contains(known, path) {
		return nil
	}
	list := filepath.Join(dir, knownName)
	add := func(old []byte) (int, []byte) {
		paths, end := lines(string(old)), ""
		if slices.Contains(paths, path) || len(paths) >= mostKnown {
			return len(old), nil
		}
		if len(old) > 0 && old[len(old)-1] != '\n' {
			end = "\n" // an editor left the last line open
		}
		return len(old), []byte(end + path + "\n")
	}
	_, _, err := disk.OS().Append(list, knownWait, add)
	if errors.Is(err, fs.ErrNotExist) {
		if err := os.MkdirAll(dir, 0o700); err != nil {
			return fmt.Errorf("%w: remember the plan %q", disk.Reason(err), path)
		}
		_, first := add(nil)
		if err = disk.OS().Save(list, disk.Bytes(first), disk.Want{Mode: disk.Private, New: true}); errors.Is(err, fs.ErrExist) {
			_, _, err = disk.OS().Append(list, knownWait, add) // another bench was quicker
		}
	}
	if err != nil {
		return fmt.Errorf("%w: remember the plan %q", disk.Reason(err), path)
	}
	return nil
}

// knownWait is how long another bench may hold the list.
const knownWait = time.Second

// Known lists the files of the plans that were opened or saved, in the order they were first met; some may be gone.
func Known(dir string) ([]string, error) {
	f, _, err := disk.Read(filepath.Join(dir, knownName))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("%w: read the list of plans in %q", disk.Reason(err), dir)
	}
	defer f.Close() //nolint:errcheck // nothing was written
	const most = 8 << 20
	text, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil, fmt.Errorf("%w: read the list of plans in %q", disk.Reason(err), dir)
	}
	return lines(string(text)), nil
}

// lines are the paths on a list.
func lines(text string) []string {
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		if line = plain.Line(line); filepath.IsAbs(line) && !slices.Contains(out, line) {
			out = append(out, line)
		}
	}
	return out
}
