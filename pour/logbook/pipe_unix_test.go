//go:build unix

package logbook

import (
	"errors"
	"strings"
	"syscall"
	"testing"

	"pourbench/pour/disk"
)

// Nobody writes into a pipe that stands where a pour should: it is refused, and nothing waits for it.
func TestAPipeIsNoPour(t *testing.T) {
	book, _, shelf := aPour(t)
	must(t, syscall.Mkfifo(book.Path("pipe"), 0o600))
	if _, err := book.Read("pipe", shelf); !errors.Is(err, disk.ErrNotPlain) || !strings.Contains(err.Error(), "a pipe") {
		t.Errorf("read: %v", err)
	}
	if _, _, err := book.Append("pipe", 0, medium()); !errors.Is(err, disk.ErrNotPlain) {
		t.Errorf("append: %v", err)
	}
	if list, err := book.List(); err != nil || len(list) != 1 {
		t.Errorf("%d pours, %v", len(list), err)
	}
}
