package live

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
	"pourbench/pour/logbook"
)

// pours counts the files of a logbook, hidden ones too.
func pours(t *testing.T, book logbook.Book) int {
	t.Helper()
	files, err := os.ReadDir(filepath.Dir(book.Path("x")))
	must(t, err)
	return len(files)
}

// A run leaves no file until something is marked, however long it is open and whatever its clock does; the first mark makes one with
// everything before it.
func TestAFileIsMadeWithTheFirstMark(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	mustRun(t, r, err)
	r.Tick()
	c.sleep(3 * time.Minute)
	r.Tick()
	must(t, r.WriteOut(0))
	if waiting, err := r.Unwritten(); len(waiting) > 0 || err != nil || r.ID != "" || pours(t, book) != 0 {
		t.Errorf("with nothing marked %d marks wait, %v, and there are %d files, %q", len(waiting), err, pours(t, book), r.ID)
	}
	if err := r.Back(); err == nil {
		t.Error("nothing was marked and something was taken back")
	}
	must(t, r.Do("base make the lye"))
	all := events(t, book, r.ID, shelf)
	if len(all) != 3 || all[0].Kind != logbook.Opened || all[1].Kind != logbook.Jumped || all[2].Kind != logbook.Done || pours(t, book) != 1 {
		t.Errorf("%d files, the pour's holds %v", pours(t, book), all)
	}
	must(t, r.note("fern", "on"))
	if again := events(t, book, r.ID, shelf); len(again) != 4 || len(r.Live().Events) != 4 {
		t.Errorf("after the next mark the file has %d events and the run %d", len(again), len(r.Live().Events))
	}
}

func TestALogbookThatCannotBeWrittenIsToldBeforeTheRun(t *testing.T) {
	sheet, shelf := lonely(t)
	spy := &disktest.Spy{Fail: func(_ int, step string) error {
		if strings.HasPrefix(step, "write") {
			return syscall.ENOSPC
		}
		return nil
	}}
	if _, err := Begin(openTestBook(t).On(spy.Ops()), sheet, "", shelf, newClock().now, "a"); !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("on a full disk a run begins with %v", err)
	}
}

// The file that cannot be made waits with its marks and is made once it can be.
func TestMarksWaitForAFileThatCannotBeMade(t *testing.T) {
	sheet, shelf := lonely(t)
	var stuck error
	spy := &disktest.Spy{Fail: func(int, string) error { return stuck }}
	book, c := openTestBook(t), newClock()
	r, err := Begin(book.On(spy.Ops()), sheet, "", shelf, c.now, "a")
	mustRun(t, r, err)
	stuck = syscall.EIO
	must(t, r.Do("base make the lye"))
	must(t, r.note("fern", "hay"))
	if waiting, err := r.Unwritten(); len(waiting) != 3 || !errors.Is(err, syscall.EIO) || pours(t, book) != 0 {
		t.Errorf("%d marks wait, %v, %d files", len(waiting), err, pours(t, book))
	}
	stuck = nil
	c.pass(time.Second)
	r.Tick()
	if waiting, err := r.Unwritten(); len(waiting) != 0 || err != nil {
		t.Errorf("%d marks still wait, %v", len(waiting), err)
	}
	if all := events(t, book, r.ID, shelf); len(all) != 3 || all[2].Text != "hay" {
		t.Errorf("the file has %v", all)
	}
}

func TestARunWithoutLyeInOilLeavesNothing(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	begin := func() *Run {
		t.Helper()
		r, err := Begin(book, sheet, "", shelf, c.now, "a")
		must(t, mustRun(t, r, err).Do("base make the lye"))
		return r
	}
	r := begin()
	id := r.ID
	must(t, r.Forget())
	if _, err := os.Stat(book.Path(id)); !errors.Is(err, fs.ErrNotExist) || r.ID != "" {
		t.Errorf("a forgotten pour's file: %v", err)
	}
	must(t, r.Forget()) // there is nothing left to forget

	r = begin()
	must(t, r.Do("base lye in"))
	if err := r.Forget(); err == nil || !strings.Contains(err.Error(), "lye has met oil") {
		t.Errorf("a pour with its lye in is forgotten: %v", err)
	}
	r = begin()
	other, err := Resume(book, r.ID, shelf, pour.Hand{}, c.now, "b")
	mustRun(t, other, err)
	if err := r.Forget(); err == nil || !strings.Contains(err.Error(), "another terminal") {
		t.Errorf("a pour that another terminal is in is forgotten: %v", err)
	}
	must(t, other.Forget()) // it came last, and whoever was there before is no longer known to be
	if _, err := os.Stat(book.Path(r.ID)); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the file is still there: %v", err)
	}
	must(t, r.note("fern", "still here"))
	if waiting, err := r.Unwritten(); len(waiting) != 1 || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a terminal whose file is gone: %d marks wait, %v", len(waiting), err)
	}
}

// Somebody who writes in the moment between the look and the removal keeps the file.
func TestAFileThatGrewInTheLastMomentIsKept(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	spy := &disktest.Spy{}
	r, err := Begin(book.On(spy.Ops()), sheet, "", shelf, c.now, "a")
	must(t, mustRun(t, r, err).Do("base make the lye"))
	spy.Fail = func(_ int, step string) error {
		if strings.HasPrefix(step, "open") {
			f, err := os.OpenFile(book.Path(r.ID), os.O_APPEND|os.O_WRONLY, 0)
			must(t, err)
			_, err = f.WriteString("# by hand\n")
			must(t, errors.Join(err, f.Close()))
		}
		return nil
	}
	if err := r.Forget(); err == nil || !strings.Contains(err.Error(), "wrote to it just now") {
		t.Errorf("forgotten: %v", err)
	}
	if _, err := os.Stat(book.Path(r.ID)); err != nil {
		t.Error(err)
	}
	spy.Fail = func(_ int, step string) error {
		if strings.HasPrefix(step, "lock") {
			return disk.ErrLocked
		}
		return nil
	}
	if err := r.Forget(); !errors.Is(err, disk.ErrLocked) {
		t.Errorf("a locked file is forgotten: %v", err)
	}
}

// A step begins when the hands are free for it: with the end of the one done before it, whichever that was, and a step that waits for its
// minute not before that.
func TestAStepBeginsWhenTheHandsAreFree(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	mustRun(t, r, err)
	for _, x := range []struct {
		key    string
		doneAt time.Duration
		began  time.Duration
	}{
		{"base make the lye", 3 * time.Minute, 0},
		{"base lye in", 10 * time.Minute, 10 * time.Minute},
		{"base mix", 11 * time.Minute, 10 * time.Minute},
		{"base split", 14 * time.Minute, 12 * time.Minute}, // planned for two minutes after lye-in
		{"base colour fern", 16 * time.Minute, 14 * time.Minute},
		{"base colour pot", 17 * time.Minute, 16 * time.Minute},
	} {
		c.pass(x.doneAt - r.Live().Run())
		r.Tick()
		must(t, r.Do(x.key))
		step, ok := r.State().step(x.key)
		if got := r.State().Began(step); !ok || got != x.began {
			t.Errorf("%s, done at %v, began at %v, want %v", x.key, x.doneAt, got, x.began)
		}
	}
}

func TestEveryMarkOfHersCanBeTakenBack(t *testing.T) {
	sheet, shelf := lonely(t)
	r, err := Begin(openTestBook(t), sheet, "", shelf, newClock().now, "a")
	must(t, mustRun(t, r, err).Do("base lye in"))
	left := r.State().Kept()
	for _, e := range []logbook.Event{
		{Kind: logbook.Weighed, Batch: pour.Base, Jug: "fern", What: pour.WeighBatter, Value: 3},
		{Kind: logbook.Noted, Text: "hay"},
		{Kind: logbook.Result, Text: "fine"},
		{Kind: logbook.Ended},
	} {
		must(t, r.Mark(e))
		if r.State().Kept() != left+1 {
			t.Fatalf("%s: %d marks", e.Kind, r.State().Kept())
		}
		must(t, r.Back())
		if s := r.State(); s.Kept() != left || s.Ended {
			t.Errorf("%s is taken back and %d marks stand, ended %v", e.Kind, s.Kept(), s.Ended)
		}
	}
	for _, e := range []logbook.Event{{Kind: logbook.TakenBack, What: "none"}, {Kind: logbook.Weighed, Batch: pour.Base, Jug: "none", What: "batter", Value: 1}} {
		if err := r.Mark(e); err == nil {
			t.Errorf("taken: %+v", e)
		}
	}
}

// The day of a bar's weight is one between the pour and now, as year, month and day.
func TestADayThatCannotBeIsRefused(t *testing.T) {
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book, sheet, "", shelf, c.now, "a")
	must(t, mustRun(t, r, err).Do("base lye in"))
	begun := c.wall.Format(time.DateOnly)
	c.pass(50 * time.Hour)
	bar := func(day string) error {
		return Add(book, r.ID, shelf, c.now, "b", logbook.Event{Kind: logbook.Cut, What: day, Value: 100})
	}
	for day, why := range map[string]string{
		"yesterday": "year-month-day", "2026-2-3": "year-month-day", c.wall.Add(24 * time.Hour).Format(time.DateOnly): "still to come",
		c.wall.Add(-72 * time.Hour).Format(time.DateOnly): "begun on " + begun,
	} {
		if err := bar(day); err == nil || !strings.Contains(err.Error(), why) {
			t.Errorf("%s: %v, want %q", day, err, why)
		}
	}
	for _, day := range []string{begun, c.wall.Format(time.DateOnly), ""} {
		must(t, bar(day))
	}
	all := events(t, book, r.ID, shelf)
	if days := [...]string{all[len(all)-3].Day(), all[len(all)-2].Day(), all[len(all)-1].Day()}; days != [...]string{begun, c.wall.Format(time.DateOnly), c.wall.Format(time.DateOnly)} {
		t.Errorf("the days are %v", days)
	}
}
