package disk_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
)

// addLine adds a line, and cuts off what follows the last whole one.
func addLine(line string) func([]byte) (int, []byte) {
	return func(old []byte) (int, []byte) {
		stay := len(old)
		for stay > 0 && old[stay-1] != '\n' {
			stay--
		}
		return stay, []byte(line + "\n")
	}
}

func TestALineIsOnTheDiskBeforeItCountsAndIsWrittenUnderALock(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log")
	put(t, path, "one\nto")
	var spy disktest.Spy
	before, after, err := spy.Ops().Append(path, 0, addLine("two"))
	if err != nil || before != 6 || after != 8 {
		t.Errorf("from %d to %d, %v", before, after, err)
	}
	holds(t, path, "one\ntwo\n")
	if d := cmp.Diff([]string{"open log", "lock log", "truncate log", "write log", "sync log", "close log"}, spy.Done); d != "" {
		t.Error(d)
	}
}

func TestAnAppendThatFailsAnywhereLeavesTheFileAsItWas(t *testing.T) {
	for _, fails := range []string{"open", "lock", "truncate", "write", "sync"} {
		path := filepath.Join(t.TempDir(), "log")
		put(t, path, "one\nto")
		once := true
		spy := &disktest.Spy{Fail: func(_ int, step string) error {
			if step == fails+" log" && once {
				once = false
				return full
			}
			return nil
		}}
		if _, _, err := spy.Ops().Append(path, 0, addLine("two")); !errors.Is(err, full) {
			t.Errorf("%s: %v", fails, err)
		}
		holds(t, path, "one\nto")
	}
}

func TestALockedFileIsWaitedForAndThenGivenUp(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log")
	put(t, path, "one\n")
	sys := disk.OS()
	f, err := sys.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := sys.TryLock(f); err != nil {
		t.Skip("no locks here:", err)
	}
	if _, _, err := sys.Append(path, 30*time.Millisecond, addLine("two")); !errors.Is(err, disk.ErrLocked) {
		t.Errorf("got %v", err)
	}
	holds(t, path, "one\n")
	time.AfterFunc(30*time.Millisecond, func() { _ = f.Close() })
	if _, _, err := sys.Append(path, time.Minute, addLine("two")); err != nil {
		t.Error(err)
	}
	holds(t, path, "one\ntwo\n")
}

func TestAnAppendGoesToTheFileThatHasTheName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log")
	put(t, path, "one\n")
	ops, once := disk.OS(), true
	lock := ops.TryLock
	ops.TryLock = func(f *os.File) error { // an editor saves between the opening and the lock
		if once {
			once = false
			put(t, path+".new", "hers\n")
			if err := os.Rename(path+".new", path); err != nil {
				t.Fatal(err)
			}
		}
		return lock(f)
	}
	if _, _, err := ops.Append(path, 0, addLine("two")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "hers\ntwo\n")
}

func TestAFileToAppendToMustBeThereAndPlain(t *testing.T) {
	dir := t.TempDir()
	if _, _, err := disk.OS().Append(filepath.Join(dir, "no"), 0, addLine("x")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
	if _, _, err := disk.OS().Append(dir, 0, addLine("x")); !errors.Is(err, disk.ErrNotPlain) {
		t.Errorf("got %v", err)
	}
	folderHolds(t, dir)
}

func TestADroppedFileIsGone(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "a"), "")
	var spy disktest.Spy
	if err := spy.Ops().Drop(filepath.Join(dir, "a")); err != nil {
		t.Fatal(err)
	}
	folderHolds(t, dir)
	if d := cmp.Diff([]string{"remove a", "sync folder"}, spy.Done); d != "" {
		t.Error(d)
	}
	if err := disk.OS().Drop(filepath.Join(dir, "a")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}
