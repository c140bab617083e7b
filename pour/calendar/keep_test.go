package calendar_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/calendar"
	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
)

// handOut hands out entries on the system's own disk.
func handOut(t *testing.T, file string, due []calendar.Entry, when time.Time) []calendar.Entry {
	t.Helper()
	out, err := calendar.HandOut(disk.OS(), file, 0, due, all, when)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// early is the moment of a first export, before all of the sample.
func early() time.Time { return at.AddDate(0, 0, -10) }

func TestASecondExportKnowsTheFirst(t *testing.T) {
	file := filepath.Join(t.TempDir(), "new", calendar.FileName)
	due := sampleEntries()
	handOut(t, file, due, early())
	due[2].Start, due[2].End = midnight(2027, 1, 5), midnight(2027, 1, 6)
	out := handOut(t, file, append(due[:1:1], due[2]), at)
	if len(out) != 2 || out[0].Kind != "cut" || out[0].Sequence != 0 || out[1].Kind != "ready" || out[1].Sequence != 1 {
		t.Errorf("%+v", out) // the weighing of the 13th is over and left alone
	}
	names, err := os.ReadDir(filepath.Dir(file))
	if err != nil || len(names) != 1 {
		t.Errorf("%v is left beside the register, %v", names, err)
	}
	if info, err := os.Stat(file); err != nil || os.PathSeparator == '/' && info.Mode().Perm() != 0o600 {
		t.Errorf("others may read it: %v, %v", info.Mode(), err)
	}
}

func TestAnExportThatChangesNothingWritesNothing(t *testing.T) {
	file := filepath.Join(t.TempDir(), calendar.FileName)
	handOut(t, file, sampleEntries(), early())
	spy := &disktest.Spy{}
	if _, err := calendar.HandOut(spy.Ops(), file, 0, sampleEntries(), all, at); err != nil {
		t.Fatal(err)
	}
	want := []string{"create calendar.toml.lock", "lock calendar.toml.lock", "remove calendar.toml.lock", "close calendar.toml.lock"}
	if d := cmp.Diff(want, spy.Done); d != "" {
		t.Error(d)
	}
}

// TestWhateverFailsTheRegisterIsTheOldOrTheNewOne: and where it is the old one, nothing was handed out.
func TestWhateverFailsTheRegisterIsTheOldOrTheNewOne(t *testing.T) {
	failed := 0
	for n := 0; ; n++ {
		file := filepath.Join(t.TempDir(), calendar.FileName)
		handOut(t, file, sampleEntries()[:2], early())
		old, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		boom := errors.New("no space left")
		spy := &disktest.Spy{Fail: func(i int, _ string) error {
			if i == n {
				return boom
			}
			return nil
		}}
		out, err := calendar.HandOut(spy.Ops(), file, 0, sampleEntries(), all, at)
		now, err2 := os.ReadFile(file)
		if err2 != nil {
			t.Fatal(err2)
		}
		if _, err3 := calendar.ReadRegister(file); err3 != nil {
			t.Errorf("%s failed: %v", spy.Failed, err3)
		}
		if len(out) > 0 && string(now) == string(old) {
			t.Errorf("%s failed: %d entries are handed out that the register knows nothing of, %v", spy.Failed, len(out), err)
		}
		if spy.Failed == "" {
			break
		}
		failed++
	}
	if failed < 8 {
		t.Errorf("only %d operations were made to fail", failed)
	}
}

func TestARegisterThatCannotBeReadIsLeftAsItIs(t *testing.T) {
	file := filepath.Join(t.TempDir(), calendar.FileName)
	const torn = "format = 1\n[[entry]]\nbatch = \"261"
	if err := os.WriteFile(file, []byte(torn), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := calendar.HandOut(disk.OS(), file, 0, sampleEntries(), all, at)
	now, _ := os.ReadFile(file)
	if err == nil || !strings.Contains(err.Error(), "calendar.toml:3") || len(out) > 0 || string(now) != torn {
		t.Errorf("%v, %d entries, %q", err, len(out), now)
	}
}

func TestTwoExportsAtOnceTakeTurns(t *testing.T) {
	file := filepath.Join(t.TempDir(), calendar.FileName)
	var wait sync.WaitGroup
	const many = 8
	errs := make([]error, many)
	for i := range many {
		wait.Go(func() {
			e := sampleEntries()[2]
			e.Batch = strings.Repeat("B", i+1)
			_, errs[i] = calendar.HandOut(disk.OS(), file, time.Minute, []calendar.Entry{e}, func(batch string) bool { return batch == e.Batch }, at)
		})
	}
	wait.Wait()
	if err := errors.Join(errs...); err != nil {
		t.Fatal(err)
	}
	if out, _ := mustRegister(t, file).Revise(nil, all, at); len(out) != many {
		t.Errorf("the register holds %d entries, want %d", len(out), many)
	}
}

func mustRegister(t *testing.T, file string) calendar.Register {
	t.Helper()
	r, err := calendar.ReadRegister(file)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestAnExportThatIsUnderWayIsNotDisturbedAndADeadOneNotWaitedFor(t *testing.T) {
	file := filepath.Join(t.TempDir(), calendar.FileName)
	held, err := disk.OS().Hold(file + ".lock")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := calendar.HandOut(disk.OS(), file, 20*time.Millisecond, sampleEntries(), all, at); !errors.Is(err, disk.ErrLocked) {
		t.Errorf("%v", err)
	}
	if err := held.Release(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file+".lock", nil, 0o600); err != nil { // of a program that was killed
		t.Fatal(err)
	}
	handOut(t, file, sampleEntries(), early())
}
