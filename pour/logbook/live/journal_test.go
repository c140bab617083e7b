package live

import (
	"errors"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
	"pourbench/pour/logbook"
)

// spied is a run on a disk that a spy watches, its lye in.
func spied(t *testing.T, spy *disktest.Spy) (*Run, logbook.Book, *wallClock, pour.Shelf) {
	t.Helper()
	sheet, shelf := lonely(t)
	book, c := openTestBook(t), newClock()
	r, err := Begin(book.On(spy.Ops()), sheet, "", shelf, c.now, "a")
	mustRun(t, r, err)
	must(t, r.Do("base lye in"))
	spy.Done = nil
	return r, book, c, shelf
}

// events are what the file of a run has.
func events(t *testing.T, book logbook.Book, id string, shelf pour.Shelf) []logbook.Event {
	t.Helper()
	p, err := book.Read(id, shelf)
	must(t, err)
	return p.Events
}

// A mark counts once it is on the disk: at every step of the writing the state is still the one before.
func TestTheStateIsSetAfterItsEventIsOnTheDisk(t *testing.T) {
	spy := &disktest.Spy{}
	r, book, _, shelf := spied(t, spy)
	marks, steps := len(r.State().Marks), 0
	spy.Fail = func(_ int, step string) error {
		steps++
		if got := len(r.State().Marks); got != marks {
			t.Errorf("at %q there are %d marks, before there were %d", step, got, marks)
		}
		return nil
	}
	must(t, r.stage("fern", chem.Light))
	if len(r.State().Marks) != marks+1 || steps < 5 {
		t.Errorf("%d marks after %d operations", len(r.State().Marks), steps)
	}
	name := r.ID + logbook.Suffix
	if d := cmp.Diff([]string{"open " + name, "lock " + name, "write " + name, "sync " + name, "close " + name}, spy.Done); d != "" {
		t.Error(d)
	}
	if got := events(t, book, r.ID, shelf); len(got) != marks+1 {
		t.Errorf("the file has %d events", len(got))
	}
}

func TestMarksThatCannotBeWrittenWaitInTheirOrder(t *testing.T) {
	for fails, why := range map[string]error{"lock": disk.ErrLocked, "write": syscall.ENOSPC, "sync": syscall.EIO, "open": syscall.EACCES} {
		var stuck error
		spy := &disktest.Spy{Fail: func(_ int, step string) error {
			if strings.HasPrefix(step, fails) {
				return stuck
			}
			return nil
		}}
		r, book, c, shelf := spied(t, spy)
		before := events(t, book, r.ID, shelf)
		stuck = why
		for i, text := range []string{"one", "two", "three"} {
			c.pass(time.Second)
			must(t, r.note("fern", text))
			waiting, err := r.Unwritten()
			if len(waiting) != i+1 || !errors.Is(err, why) {
				t.Errorf("%s: %d marks wait, %v", fails, len(waiting), err)
			}
		}
		c.pass(time.Minute)
		r.Tick()
		if got := len(r.State().Marks); got != len(before)+3 || r.Live().Run() != 63*time.Second {
			t.Errorf("%s: %d marks count at %v", fails, got, r.Live().Run())
		}
		if d := cmp.Diff(len(before), len(events(t, book, r.ID, shelf))); d != "" {
			t.Errorf("%s: the file was changed: %s", fails, d)
		}
		if err := r.WriteOut(0); !errors.Is(err, why) {
			t.Errorf("%s: written out: %v", fails, err)
		}
		stuck = nil
		c.pass(time.Second)
		r.Tick()
		if waiting, err := r.Unwritten(); len(waiting) != 0 || err != nil {
			t.Errorf("%s: %d marks still wait, %v", fails, len(waiting), err)
		}
		var texts []string
		all := events(t, book, r.ID, shelf)
		for _, e := range all[len(before):] {
			texts = append(texts, e.Text)
		}
		if strings.Join(texts, " ") != "one two three" {
			t.Errorf("%s: the file has %q", fails, texts)
		}
		if d := cmp.Diff(Replay(r.Live().Sheet, all).Steps, r.State().Steps); d != "" {
			t.Errorf("%s: the file gives another state:\n%s", fails, d)
		}
	}
}

// A lock is waited for as long as another terminal's writing takes, and with marks that wait already not at all: a look asks once.
func TestALockedFileIsAskedForOnceALook(t *testing.T) {
	asked := 0
	var stuck error
	spy := &disktest.Spy{Fail: func(_ int, step string) error {
		if strings.HasPrefix(step, "lock") {
			asked++
			return stuck
		}
		return nil
	}}
	r, _, c, _ := spied(t, spy)
	stuck, asked = disk.ErrLocked, 0
	must(t, r.note("fern", "one"))
	const pauses = 5 // of 10 ms, in 50
	if asked < 1 || asked > pauses+1 {
		t.Errorf("the first mark asked %d times", asked)
	}
	for range 3 {
		c.pass(time.Second)
		for what, do := range map[string]func(){
			"a tick": r.Tick, "a mark": func() { must(t, r.note("fern", "more")) }, "a refusal": func() { _ = r.Do("no such step") }, "writing out": func() { _ = r.WriteOut(0) },
		} {
			asked = 0
			if do(); asked != 1 {
				t.Errorf("%s asked %d times", what, asked)
			}
		}
	}
}

// What waits stands after what another terminal has written meanwhile, and neither is lost.
func TestAnotherTerminalsMarksStandBeforeThoseThatWait(t *testing.T) {
	var stuck error
	spy := &disktest.Spy{Fail: func(_ int, step string) error {
		if strings.HasPrefix(step, "lock") {
			return stuck
		}
		return nil
	}}
	r, book, c, shelf := spied(t, spy)
	stuck = disk.ErrLocked
	must(t, r.note("fern", "mine"))
	other, err := Resume(book, r.ID, shelf, pour.Hand{}, c.now, "b")
	mustRun(t, other, err)
	must(t, other.note("fern", "hers"))
	r.Tick()
	if got := texts(r.State().Marks); got != "hers mine" {
		t.Errorf("the run has %q", got)
	}
	stuck = nil
	r.Tick()
	other.Tick()
	for _, list := range [][]logbook.Event{r.State().Marks, other.State().Marks, events(t, book, r.ID, shelf)} {
		if got := texts(list); got != "hers mine" {
			t.Errorf("it became %q", got)
		}
	}
}

func texts(list []logbook.Event) string {
	var out []string
	for _, e := range list {
		if e.Text != "" {
			out = append(out, e.Text)
		}
	}
	return strings.Join(out, " ")
}

// A write that was said to have failed may be on the disk all the same: such a mark is not written twice.
func TestAMarkThatCameThroughAfterAllIsNotWrittenTwice(t *testing.T) {
	spy := &disktest.Spy{}
	r, book, _, shelf := spied(t, spy)
	spy.Fail = func(_ int, step string) error {
		if strings.HasPrefix(step, "close") { // everything is written and synced by then
			return syscall.EIO
		}
		return nil
	}
	must(t, r.note("fern", "once"))
	if waiting, err := r.Unwritten(); len(waiting) != 1 || err == nil {
		t.Fatalf("%d marks wait, %v", len(waiting), err)
	}
	spy.Fail = nil
	r.Tick()
	if waiting, err := r.Unwritten(); len(waiting) != 0 || err != nil {
		t.Errorf("%d marks wait, %v", len(waiting), err)
	}
	if got := texts(events(t, book, r.ID, shelf)); got != "once" {
		t.Errorf("the file has %q", got)
	}
	if got := texts(r.State().Marks); got != "once" {
		t.Errorf("the run has %q", got)
	}
}

// A hand with an editor can break the file in the middle of a pour: the run says so, goes on, and writes once it is mended.
func TestAFileMendedBadlyHoldsUpNothing(t *testing.T) {
	r, book, c, shelf := spied(t, &disktest.Spy{})
	path := book.Path(r.ID)
	src, err := os.ReadFile(path)
	must(t, err)
	must(t, os.WriteFile(path, append(src, "\nkind kind\n"...), 0o600))
	c.pass(time.Second)
	r.Tick()
	if waiting, err := r.Unwritten(); err == nil || len(waiting) != 0 {
		t.Errorf("%d marks wait, %v", len(waiting), err)
	}
	must(t, r.note("fern", "on"))
	if waiting, err := r.Unwritten(); len(waiting) != 1 || err == nil || !strings.Contains(err.Error(), "line") {
		t.Errorf("%d marks wait, %v", len(waiting), err)
	}
	must(t, os.WriteFile(path, src, 0o600))
	r.Tick()
	if got := texts(events(t, book, r.ID, shelf)); got != "on" {
		t.Errorf("the mended file has %q", got)
	}
}

func TestARunIsTakenUpAlthoughItsFileIsLocked(t *testing.T) {
	spy := &disktest.Spy{}
	r, book, c, shelf := spied(t, spy)
	spy.Fail = func(_ int, step string) error {
		if strings.HasPrefix(step, "lock") {
			return disk.ErrLocked
		}
		return nil
	}
	again, err := Resume(book.On(spy.Ops()), r.ID, shelf, pour.Hand{}, c.now, "b")
	mustRun(t, again, err)
	if waiting, err := again.Unwritten(); len(waiting) != 1 || waiting[0].Kind != logbook.Resumed || !errors.Is(err, disk.ErrLocked) {
		t.Errorf("%d marks wait, %v", len(waiting), err)
	}
	spy.Fail = nil
	must(t, again.WriteOut(0))
	if all := events(t, book, r.ID, shelf); all[len(all)-1].Kind != logbook.Resumed {
		t.Errorf("the file ends with %q", all[len(all)-1].Kind)
	}
}
