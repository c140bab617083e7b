package disk_test

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"pourbench/pour/disk"
)

func TestANameIsHeldUntilItIsReleased(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "bench.lock")
	sys := disk.OS()
	if sys.Living(path) {
		t.Error("something lives that is not there")
	}
	held, err := sys.Hold(path)
	if err != nil {
		t.Fatal(err)
	}
	if !sys.Living(path) {
		t.Skip("no locks here")
	}
	if _, err := sys.Hold(path); !errors.Is(err, fs.ErrExist) {
		t.Errorf("held twice: %v", err)
	}
	if sys.DropUnheld(path) {
		t.Error("a held file was dropped")
	}
	if err := held.Release(); err != nil {
		t.Error(err)
	}
	folderHolds(t, dir)
	if err := (*disk.Held)(nil).Release(); err != nil {
		t.Error(err)
	}
}

func TestTheFileOfOneThatDiedIsNotHeldAndCanBeDropped(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "bench.lock")
	put(t, path, "")
	if disk.OS().Living(path) {
		t.Error("nobody holds it")
	}
	for range 2 {
		if !disk.OS().DropUnheld(path) {
			t.Error("it was not dropped")
		}
	}
	folderHolds(t, dir)
}
