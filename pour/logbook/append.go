package logbook

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"pourbench/pour/plain"
)

// appendEvents writes events to the end of a pour's file, in one write, and waits until they are on the disk. What a crash left
// half written at the end is cut off first and kept as an event of its own. The file must be there. It returns the file's size
// before and after, so that a caller sees whether somebody else had written in between.
func appendEvents(path string, events []Event) (before, after int64, err error) {
	if len(events) == 0 {
		return 0, 0, errors.New("journal: there is no event")
	}
	f, err := openLocked(path)
	if err != nil {
		return 0, 0, fmt.Errorf("journal %d events: %w", len(events), err)
	}
	before, after, err = writeEvents(f, events)
	if err := errors.Join(err, f.Close()); err != nil {
		return 0, 0, fmt.Errorf("journal %d events in %s: %w", len(events), path, err)
	}
	return before, after, nil
}

// openLocked opens the file that is at path when the lock is held: an editor may have put another in its place meanwhile.
func openLocked(path string) (*os.File, error) {
	const tries = 10
	for range tries {
		f, err := os.OpenFile(path, os.O_RDWR|os.O_APPEND, 0)
		if err != nil {
			return nil, err
		}
		if err := lock(f); err != nil {
			return nil, errors.Join(err, f.Close())
		}
		mine, err1 := f.Stat()
		there, err2 := os.Stat(path)
		if err1 == nil && err2 == nil && os.SameFile(mine, there) {
			return f, nil
		}
		_ = f.Close()
	}
	return nil, fmt.Errorf("%s is replaced again and again by something else", path)
}

func writeEvents(f *os.File, events []Event) (before, after int64, err error) {
	src, err := io.ReadAll(f)
	if err != nil {
		return 0, 0, err
	}
	var out strings.Builder
	body, torn := cutTorn(string(src))
	if torn != "" {
		if err := f.Truncate(int64(len(body))); err != nil {
			return 0, 0, err
		}
		lost := events[0]
		lost.ID, lost.Kind, lost.Batch, lost.Jug, lost.Step, lost.What, lost.Lot = lost.ID+"-torn", TornRecord, "", "", "", "", ""
		lost.Text = plain.Text(torn)
		out.WriteString(lost.text())
	}
	if len(body) > 0 && !strings.HasSuffix(body, "\n") {
		out.WriteString("\n")
	}
	for _, e := range events {
		out.WriteString(e.text())
	}
	if _, err := f.WriteString(out.String()); err != nil {
		return 0, 0, err
	}
	return int64(len(src)), int64(len(body) + out.Len()), f.Sync()
}
