package logbook

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// appendEvents writes events to the end of a pour's file, in one write, and waits until they are on the disk. What a crash left
// half written at the end is cut off first and kept as an event of its own. The file must be there.
func appendEvents(path string, events []Event) error {
	if len(events) == 0 {
		return nil
	}
	f, err := openLocked(path)
	if err != nil {
		return fmt.Errorf("journal %d events: %w", len(events), err)
	}
	err = writeEvents(f, events)
	if err := errors.Join(err, f.Close()); err != nil {
		return fmt.Errorf("journal %d events in %s: %w", len(events), path, err)
	}
	return nil
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

func writeEvents(f *os.File, events []Event) error {
	src, err := io.ReadAll(f)
	if err != nil {
		return err
	}
	var out strings.Builder
	body, torn := cutTorn(string(src))
	if torn != "" {
		if err := f.Truncate(int64(len(body))); err != nil {
			return err
		}
		lost := events[0]
		out.WriteString(Event{
			ID: lost.ID + "-torn", Kind: TornRecord, Text: torn, Run: lost.Run, Wall: lost.Wall, Steady: lost.Steady, Of: lost.Of, Sleeps: lost.Sleeps,
		}.text())
	}
	if len(body) > 0 && !bytes.HasSuffix([]byte(body), []byte("\n")) {
		out.WriteString("\n")
	}
	for _, e := range events {
		out.WriteString(e.text())
	}
	if _, err := f.WriteString(out.String()); err != nil {
		return err
	}
	return f.Sync()
}
