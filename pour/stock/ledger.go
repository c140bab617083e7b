package stock

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/plain"
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
	f, _, err := disk.Read(l.Path())
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("read the ledger: %w", disk.Reason(err))
	}
	src, err := form().Slurp(l.Path(), f)
	if err := errors.Join(err, f.Close()); err != nil {
		return nil, err
	}
	entries, _, torn, err := l.entries(src)
	if err == nil && torn != "" {
		entries = append(entries, tornEntry(torn))
	}
	return entries, err
}

// State reads the ledger and works it out.
func (l Ledger) State(today day.Day) (State, error) {
	entries, err := l.Read()
	return Of(entries, today), err
}

// entries reads what is whole in the text of the file, as much of it as can be from what was kept, and parts it from what is torn.
func (l Ledger) entries(src string) (entries []Entry, body, torn string, err error) {
	body, torn = cutTorn(src)
	const most = 4000 // bytes of what was torn: no entry but one with long notes has more
	if torn = plain.Line(torn[:min(len(torn), most)]); strings.ContainsRune(src, '\r') || strings.HasPrefix(src, bom) {
		entries, err = parseWhole(l.Path(), evened(body), 0)
		return entries, body, torn, err
	}
	entries, err = l.readKept(body)
	return entries, body, torn, err
}

// tornEntry is what a crash left half written, as an entry.
func tornEntry(torn string) Entry { return Entry{ID: "torn", Kind: Torn, Text: torn} }

const bom = "\ufeff"

// evened is a text as other systems write it, as this one would.
func evened(src string) string {
	return strings.TrimPrefix(strings.ReplaceAll(src, "\r\n", "\n"), bom)
}
