package disk_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"pourbench/pour/disk"
)

// TestOneAtATimeHoldsANameThatManyWant: each makes, holds and releases it again and again, so that one takes it while another lets go.
func TestOneAtATimeHoldsANameThatManyWant(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "calendar.lock")
	var inside, met atomic.Int32
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 40 {
				held, err := disk.OS().HoldFor(path, time.Minute)
				if err != nil {
					t.Error(err)
					return
				}
				if inside.Add(1) > 1 {
					met.Add(1)
				}
				time.Sleep(50 * time.Microsecond)
				inside.Add(-1)
				if err := held.Release(); err != nil && os.PathSeparator == '/' {
					t.Error(err)
				}
			}
		})
	}
	wait.Wait()
	if met.Load() > 0 {
		t.Errorf("%d times two held it at once", met.Load())
	}
	folderHolds(t, dir)
}

func TestANameIsWaitedForAndTakenOverFromTheDead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "calendar.lock")
	put(t, path, "") // of a program that was killed
	held, err := disk.OS().HoldFor(path, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := disk.OS().HoldFor(path, 20*time.Millisecond); !errors.Is(err, disk.ErrLocked) {
		t.Errorf("held twice: %v", err)
	}
	go func() {
		time.Sleep(20 * time.Millisecond)
		_ = held.Release()
	}()
	next, err := disk.OS().HoldFor(path, time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	if err := next.Release(); err != nil {
		t.Error(err)
	}
}

func TestWithoutLocksANameThatIsThereIsTakenForHeld(t *testing.T) {
	sys := disk.OS()
	sys.TryLock = func(*os.File) error { return errors.ErrUnsupported }
	path := filepath.Join(t.TempDir(), "calendar.lock")
	held, err := sys.HoldFor(path, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := sys.HoldFor(path, 0); !errors.Is(err, disk.ErrLocked) {
		t.Errorf("held twice: %v", err)
	}
	if err := held.Release(); err != nil {
		t.Error(err)
	}
}

func TestANameThatCannotBeLockedIsNotLeftBehind(t *testing.T) {
	dir := t.TempDir()
	sys, boom := disk.OS(), errors.New("no locks left")
	sys.TryLock = func(*os.File) error { return boom }
	if _, err := sys.HoldFor(filepath.Join(dir, "calendar.lock"), time.Minute); !errors.Is(err, boom) {
		t.Errorf("%v", err)
	}
	folderHolds(t, dir)
	if _, err := disk.OS().HoldFor(filepath.Join(dir, "nowhere", "calendar.lock"), time.Minute); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("in a folder that is not there: %v", err)
	}
}
