package stock

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/disk"
)

// Ledger is the ledger's file in the maker's folder of data.
type Ledger struct {
	Dir  string
	Disk disk.Ops
	Wait time.Duration // for another terminal that writes
}

// New is the ledger in a folder. Nothing is made before the first entry.
func New(dir string) Ledger { return Ledger{Dir: dir, Disk: disk.OS(), Wait: 2 * time.Second} }

// Path is the ledger's file.
func (l Ledger) Path() string { return filepath.Join(l.Dir, FileName) }

// Read reads all entries. A ledger that is not there holds none.
func (l Ledger) Read() ([]Entry, error) {
	src, err := os.ReadFile(l.Path())
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("read the ledger: %w", err)
	}
	return Parse(l.Path(), string(src))
}

// State reads the ledger and works it out.
func (l Ledger) State(today day.Day) (State, error) {
	entries, err := l.Read()
	return Of(entries, today), err
}

// Decide adds entries that are made out of what the ledger holds, under its lock: nobody writes between the look and the entries, so that two
// terminals cannot both take the last of a pack. An error of decide is returned as it is, and nothing is written. Wall and session stamp the
// entries that have no ID: when it is, and a few letters that tell this terminal from others.
func (l Ledger) Decide(wall time.Time, session string, decide func(State) ([]Entry, error)) ([]Entry, error) {
	if err := l.make(); err != nil {
		return nil, err
	}
	var out []Entry
	var refused error
	_, _, err := l.Disk.Append(l.Path(), l.Wait, func(old []byte) (int, []byte) {
		body, torn := cutTorn(string(old))
		var entries []Entry
		if entries, refused = Parse(l.Path(), body); refused != nil {
			return len(old), nil
		}
		if out, refused = decide(Of(entries, day.Of(wall))); refused != nil {
			return len(old), nil
		}
		text := ""
		if torn != "" {
			text = Entry{Kind: Torn, ID: fmt.Sprintf("t%d-%s", len(entries)+1, session), Text: torn, Day: day.Of(wall), Wall: wall}.text()
		}
		for i := range out {
			e := &out[i]
			if e.ID == "" {
				e.ID = fmt.Sprintf("s%d-%s", len(entries)+i+1, session)
			}
			if e.Day == 0 {
				e.Day = day.Of(wall)
			}
			e.Wall = wall
			text += e.text()
		}
		return len(body), []byte(text)
	})
	if refused != nil {
		return nil, refused
	}
	if err != nil {
		return nil, fmt.Errorf("write the ledger: %w", disk.Reason(err))
	}
	return out, nil
}

// make makes the file where it is missing.
func (l Ledger) make() error {
	if err := os.MkdirAll(l.Dir, 0o700); err != nil {
		return fmt.Errorf("open the ledger: %w", disk.Reason(err))
	}
	err := l.Disk.Save(l.Path(), disk.Bytes([]byte(head())), disk.Want{Mode: disk.Private, New: true})
	if err != nil && !errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("open the ledger: %w", disk.Reason(err))
	}
	return nil
}
