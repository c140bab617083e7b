package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
)

// A temporary file is named so that only ours can be taken for one.
const (
	tempPrefix = ".pourbench-"
	tempSuffix = ".tmp"
	tempDigits = 16 // hexadecimal
)

func tempName() string {
	return fmt.Sprintf("%s%0*x%s", tempPrefix, tempDigits, rand.Uint64(), tempSuffix)
} //nolint:gosec // it need not be secret

func isTemp(name string) bool {
	middle, ok := strings.CutPrefix(name, tempPrefix)
	digits, ok2 := strings.CutSuffix(middle, tempSuffix)
	return ok && ok2 && len(digits) == tempDigits && strings.Trim(digits, "0123456789abcdef") == ""
}

// sweep removes the temporary files that killed programs left in a folder. One that is still being written is locked by its writer.
func (o Ops) sweep(folder string) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return // the write that follows says why
	}
	for _, e := range entries {
		if isTemp(e.Name()) && e.Type().IsRegular() {
			o.DropUnheld(filepath.Join(folder, e.Name()))
		}
	}
}

// DropUnheld removes a file that no living process has locked, and reports whether it is gone.
func (o Ops) DropUnheld(path string) bool {
	f, err := o.Open(path)
	if err != nil {
		return errors.Is(err, fs.ErrNotExist)
	}
	if o.TryLock(f) != nil {
		_ = o.Close(f)
		return false
	}
	return o.removeOpen(f, path) == nil
}

// removeOpen removes a file that is open and locked. It goes while the lock is held, so that nobody takes it up in between; Windows
// removes no open file, so that there it goes right after.
func (o Ops) removeOpen(f *os.File, path string) error {
	err := o.Remove(path)
	_ = o.Close(f)
	if err != nil {
		err = o.Remove(path)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}
