package logbook

import (
	"errors"
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
)

// fileOf is the text of a pour's file.
func fileOf(t *testing.T, book Book, id string) string {
	t.Helper()
	src, err := os.ReadFile(book.Path(id))
	must(t, err)
	return string(src)
}

func medium() Event {
	c := course{from: opened()}
	c.mark(7, Event{Kind: Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Medium})
	return c.events[0]
}

func TestAPourHasItsNameOnceItIsWholeAndOnTheDisk(t *testing.T) {
	plan, _ := meadow(t)
	var spy disktest.Spy
	id, err := openTestBook(t).On(spy.Ops()).Create(plan, "", opened(), []Event{medium()})
	must(t, err)
	want := []string{"create TEMP", "lock TEMP", "write TEMP", "sync TEMP", "close TEMP", "move TEMP " + id + Suffix, "sync folder"}
	if d := cmp.Diff(want, spy.Done); d != "" {
		t.Error(d)
	}
}

func TestSeveralPoursOfADayHaveAFileEach(t *testing.T) {
	plan, _ := meadow(t)
	book := openTestBook(t)
	for i, want := range []string{"2026-12-05-alpine-meadow", "2026-12-05-alpine-meadow-2", "2026-12-05-alpine-meadow-3"} {
		e := medium()
		e.Lot = want
		id, err := book.Create(plan, "", opened(), []Event{e})
		must(t, err)
		if id != want {
			t.Errorf("pour %d is called %s, want %s", i+1, id, want)
		}
	}
	for _, id := range []string{"2026-12-05-alpine-meadow", "2026-12-05-alpine-meadow-2"} {
		if !strings.Contains(fileOf(t, book, id), `lot = "`+id+`"`) {
			t.Errorf("%s is no longer what it was", id)
		}
	}
}

// Another terminal may begin a pour of the same plan at the same moment: each has a file of its own.
func TestAPourThatTurnsUpMeanwhileIsNotReplaced(t *testing.T) {
	plan, _ := meadow(t)
	book := openTestBook(t)
	spy := &disktest.Spy{}
	spy.Fail = func(_ int, step string) error {
		if strings.HasPrefix(step, "move") && !strings.Contains(step, "-2") {
			must(t, os.WriteFile(book.Path("2026-12-05-alpine-meadow"), []byte("hers"), 0o600))
		}
		return nil
	}
	id, err := book.On(spy.Ops()).Create(plan, "", opened(), nil)
	must(t, err)
	if id != "2026-12-05-alpine-meadow-2" || fileOf(t, book, "2026-12-05-alpine-meadow") != "hers" {
		t.Errorf("the second pour is %s, the first is %q", id, fileOf(t, book, "2026-12-05-alpine-meadow"))
	}
}

func TestAnEventIsWrittenWholeUnderALockAndIsOnTheDiskWhenItIsSaidTo(t *testing.T) {
	book, id, _ := aPour(t)
	size := int64(len(fileOf(t, book, id)))
	var spy disktest.Spy
	before, after, err := book.On(spy.Ops()).Append(id, 0, medium(), medium())
	must(t, err)
	name := id + Suffix
	if d := cmp.Diff([]string{"open " + name, "lock " + name, "write " + name, "sync " + name, "close " + name}, spy.Done); d != "" {
		t.Error(d)
	}
	if now := int64(len(fileOf(t, book, id))); before != size || after != now {
		t.Errorf("from %d to %d bytes, it was %d and is %d", before, after, size, now)
	}
}

func TestAnEventThatCannotBeWrittenLeavesTheFileAsItWas(t *testing.T) {
	for _, torn := range []string{"", "\n[[event]]\nkind = \"se"} {
		book, id, shelf := aPour(t)
		whole := fileOf(t, book, id)
		must(t, os.WriteFile(book.Path(id), []byte(whole+torn), 0o600))
		for _, fails := range []string{"open", "lock", "truncate", "write", "sync"} {
			once := true
			spy := &disktest.Spy{Fail: func(_ int, step string) error {
				if verb, _, _ := strings.Cut(step, " "); verb == fails && once {
					once = false
					return syscall.ENOSPC
				}
				return nil
			}}
			_, _, err := book.On(spy.Ops()).Append(id, 0, medium())
			if fails == "truncate" && torn == "" {
				must(t, err) // nothing is cut off
				must(t, os.WriteFile(book.Path(id), []byte(whole), 0o600))
				continue
			}
			if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), id) {
				t.Errorf("%s: %v", fails, err)
			}
			if got := fileOf(t, book, id); got != whole+torn {
				t.Errorf("%s: the file was changed to\n%s", fails, got)
			}
		}
		if p, err := book.Read(id, shelf); err != nil || len(p.Events) != 3 {
			t.Errorf("%d events, %v", len(p.Events), err)
		}
	}
}

func TestALockedFileIsSaidToBe(t *testing.T) {
	book, id, _ := aPour(t)
	before := fileOf(t, book, id)
	f, err := disk.OS().Open(book.Path(id))
	must(t, err)
	if err := disk.OS().TryLock(f); err != nil {
		t.Skip("no locks here:", err)
	}
	if _, _, err := book.Append(id, 0, medium()); !errors.Is(err, disk.ErrLocked) {
		t.Errorf("got %v", err)
	}
	if fileOf(t, book, id) != before {
		t.Error("the locked file was written to")
	}
	must(t, f.Close())
	_, _, err = book.Append(id, 0, medium())
	must(t, err)
}

func TestWithoutAnEventNothingIsWritten(t *testing.T) {
	book, id, _ := aPour(t)
	var spy disktest.Spy
	if _, _, err := book.On(spy.Ops()).Append(id, 0); err == nil || len(spy.Done) > 0 {
		t.Errorf("%v, after %q", err, spy.Done)
	}
}

// A file longer than what is read back would take every mark in it along.
func TestAPourNeverOutgrowsWhatCanBeReadBack(t *testing.T) {
	book, id, shelf := aPour(t)
	e := medium()
	e.Kind, e.Text = Noted, strings.Repeat("x", MostLetters)
	var many []Event
	for range 400 {
		many = append(many, e)
	}
	_, _, err := book.Append(id, 0, many...)
	must(t, err)
	for err == nil {
		_, _, err = book.Append(id, 0, e)
	}
	if !strings.Contains(err.Error(), "take long notes out") {
		t.Errorf("got %v", err)
	}
	p, err := book.Read(id, shelf)
	must(t, err)
	if n := len(p.Events); n <= 400 || int64(len(fileOf(t, book, id))) < 4<<20-2*MostLetters {
		t.Errorf("%d events in %d bytes", n, len(fileOf(t, book, id)))
	}
}

func TestAPoursSizeIsThatOfItsFile(t *testing.T) {
	book, id, _ := aPour(t)
	if n, err := book.Size(id); err != nil || n != int64(len(fileOf(t, book, id))) {
		t.Errorf("%d bytes, %v", n, err)
	}
	if _, err := book.Size("gone"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a pour that is not there: %v", err)
	}
}

func TestAForgottenPourIsGoneForGood(t *testing.T) {
	book, id, _ := aPour(t)
	var spy disktest.Spy
	must(t, book.On(spy.Ops()).Forget(id))
	if d := cmp.Diff([]string{"remove " + id + Suffix, "sync folder"}, spy.Done); d != "" {
		t.Error(d)
	}
	if err := book.Forget(id); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("forgotten twice: %v", err)
	}
}

// A hand with an editor often leaves no line break at the end.
func TestAnEventStandsOnALineOfItsOwn(t *testing.T) {
	book, id, shelf := aPour(t)
	must(t, os.WriteFile(book.Path(id), []byte(strings.TrimRight(fileOf(t, book, id), "\n")), 0o600))
	_, _, err := book.Append(id, 0, medium())
	must(t, err)
	if p, err := book.Read(id, shelf); err != nil || len(p.Events) != 4 || p.Torn != "" {
		t.Errorf("%d events, torn %q, %v", len(p.Events), p.Torn, err)
	}
}
