package planfile

import (
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"pourbench/pour"
	"pourbench/pour/disk"
)

// A journal is a plan file whose first comments say where it belongs. Beside it stands a lock that its bench holds while it lives.
const (
	journalSuffix = ".journal"
	lockSuffix    = ".lock"
	benchPrefix   = "bench-"
	journalHead   = "# pourbench recovery journal of "
	madeFromHead  = "# made from the file with the SHA-256 sum "
)

// Journal keeps the unsaved work of one bench in a file of its own, so that no other bench's work, living or lost, is ever written over.
// It is safe for use by several goroutines: each call bears the turn it was ordered in, and what comes late is passed over.
type Journal struct {
	disk disk.Ops
	dir  string
	key  string

	mu   sync.Mutex
	held *disk.Held // nil until something was written
	turn int        // of the call that was carried out last
}

// NewJournal is the journal of a bench that was just opened. Nothing is written yet; the folder is made when it is missing.
func NewJournal(dir string) *Journal { return newJournal(disk.OS(), dir) }

func newJournal(d disk.Ops, dir string) *Journal {
	return &Journal{disk: d, dir: dir, key: fmt.Sprintf("%s%016x", benchPrefix, rand.Uint64())} //nolint:gosec // it need not be secret
}

// Write keeps the plan, in place of what this bench kept before. The path is that of the plan's file and the stamp what that was when
// the plan was made from it; both empty for a plan that was never saved. Folder and files are for the maker's eyes only.
func (j *Journal) Write(turn int, p pour.Plan, path string, made Stamp) error {
	src, err := encode(p)
	if err != nil {
		return err
	}
	j.mu.Lock()
	defer j.mu.Unlock()
	if turn <= j.turn {
		return nil
	}
	j.turn = turn
	if err := j.hold(); err != nil {
		return fmt.Errorf("%w: keep a recovery journal in %q", disk.Reason(err), j.dir)
	}
	err = j.disk.Save(journalFile(j.dir, j.key), disk.Bytes([]byte(headOf(path, made)+src)), disk.Want{Mode: disk.Private})
	if err != nil {
		return fmt.Errorf("%w: keep a recovery journal in %q", disk.Reason(err), j.dir)
	}
	return nil
}

// hold takes the lock that says that this bench lives, before there is a journal that could be taken for a dead one's.
func (j *Journal) hold() error {
	if j.held != nil {
		return nil
	}
	if err := os.MkdirAll(j.dir, 0o700); err != nil {
		return err
	}
	sweepLocks(j.disk, j.dir)
	held, err := j.disk.Hold(lockFile(j.dir, j.key))
	j.held = held
	return err
}

// sweepLocks removes the locks of benches that were killed before they had written a journal.
func sweepLocks(d disk.Ops, dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return // what follows says why
	}
	for _, entry := range entries {
		if key, ok := strings.CutSuffix(entry.Name(), lockSuffix); ok && strings.HasPrefix(key, benchPrefix) {
			if _, err := os.Stat(journalFile(dir, key)); errors.Is(err, fs.ErrNotExist) {
				d.DropUnheld(lockFile(dir, key))
			}
		}
	}
}

func headOf(path string, made Stamp) string {
	if path != "" {
		if abs, err := filepath.Abs(path); err == nil {
			path = abs
		}
	}
	head := journalHead + strconv.Quote(path) + "\n"
	if !made.Zero() {
		head += madeFromHead + hex.EncodeToString(made.Sum[:]) + "\n"
	}
	return head
}

// Drop removes what this bench has kept; none is no error.
func (j *Journal) Drop(turn int) error {
	j.mu.Lock()
	defer j.mu.Unlock()
	if turn <= j.turn {
		return nil
	}
	j.turn = turn
	err := j.disk.Drop(journalFile(j.dir, j.key))
	if errors.Is(err, fs.ErrNotExist) {
		err = nil
	}
	if err != nil {
		return fmt.Errorf("%w: drop the recovery journal in %q", disk.Reason(err), j.dir)
	}
	held := j.held
	j.held = nil
	return held.Release()
}

// Abandon lets go of what was kept without removing it, so that the next bench is offered it: this one is at its end.
func (j *Journal) Abandon() error {
	j.mu.Lock()
	defer j.mu.Unlock()
	held := j.held
	j.held = nil
	return held.Release()
}

func journalFile(dir, key string) string { return filepath.Join(dir, key+journalSuffix) }

func lockFile(dir, key string) string { return filepath.Join(dir, key+lockSuffix) }
