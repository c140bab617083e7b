package live

import (
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
)

// stuck is a disk on which one operation fails for as long as why is set.
type stuck struct{ why error }

func (s *stuck) locked(f *os.File) error {
	if s.why != nil {
		return s.why
	}
	return disk.OS().TryLock(f)
}

func (s *stuck) full(f *os.File, p []byte) (int, error) {
	if s.why != nil {
		n, _ := f.Write(p[:len(p)/3])
		return n, &os.PathError{Op: "write", Path: f.Name(), Err: s.why}
	}
	return f.Write(p)
}

// on opens a run on a disk that can be stuck: locked, or else full.
func (s *stuck) on(t testing.TB, lock bool) *kitchen {
	t.Helper()
	return opened(t, t.TempDir(), func(o *Options) {
		ops := disk.OS()
		if lock {
			ops.TryLock = s.locked
		} else {
			ops.Write = s.full
		}
		o.Book = o.Book.On(ops)
	})
}

// inFile is the marks of the run's file of one kind, in their order, by what they say.
func (b *kitchen) inFile(kind logbook.EventKind) string {
	b.Helper()
	p, err := b.book.Read(b.m.ID(), b.shelf)
	must(b, err)
	var out []string
	for _, e := range p.Events {
		if e.Kind == kind {
			out = append(out, e.Step+e.Jug+e.Text)
		}
	}
	return strings.Join(out, ", ")
}

func TestAFileThatIsLockedOrADiskThatIsFullHoldsUpNeitherClockNorMarks(t *testing.T) {
	for _, x := range []struct {
		lock  bool
		why   error
		shows string
	}{{true, disk.ErrLocked, "something else has the file locked"}, {false, syscall.ENOSPC, syscall.ENOSPC.Error()}} {
		var d stuck
		b := d.on(t, x.lock)
		b.until("base lye in")
		before := b.inFile(logbook.Done)
		d.why = x.why
		b.press("space")
		b.wait(3 * time.Second)
		b.press("2 l")
		b.shows("NOT WRITTEN, 2 marks: "+x.shows, "(not written yet)")
		if got := b.m.elapsedText(); got != "0:06" {
			t.Errorf("%v: the clock shows %s", x.why, got)
		}
		if got := b.inFile(logbook.Done); got != before {
			t.Errorf("%v: the file has %q", x.why, got)
		}
		steps, sightings := b.m.state.Steps, len(b.m.state.Sightings)
		if sightings != 1 || !steps[b.m.state.Next-1].Done {
			t.Errorf("%v: the marks are not kept", x.why)
		}
		d.why = nil
		b.wait(time.Second)
		b.shows("written to")
		if b.m.unkept != nil || len(b.m.waiting) != 0 {
			t.Errorf("%v: %d marks still wait: %v", x.why, len(b.m.waiting), b.m.unkept)
		}
		if got := b.inFile(logbook.Done); got != before+", "+steps[b.m.state.Next-1].Key {
			t.Errorf("%v: the file has %q", x.why, got)
		}
		b.replays()
	}
}

// replays holds the file against the screen: what it says, replayed, is the run's state.
func (b *kitchen) replays() {
	b.Helper()
	p, err := b.book.Read(b.m.ID(), b.shelf)
	must(b, err)
	s := underway.Replay(*b.m.sheet(), p.Events)
	if s.Next != b.m.state.Next || len(s.Sightings) != len(b.m.state.Sightings) || len(s.Marks) != len(b.m.state.Marks) {
		b.Errorf("the file gives step %d with %d stages of %d marks, the screen %d with %d of %d", s.Next, len(s.Sightings), len(s.Marks),
			b.m.state.Next, len(b.m.state.Sightings), len(b.m.state.Marks))
	}
}

func TestAFileThatIsAwayComesBackWithEveryMark(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	file := b.book.Path(b.m.ID())
	must(t, os.Rename(file, file+".away"))
	b.wait(3 * time.Second)
	b.shows("NOT WRITTEN: no such file")
	if got := b.m.elapsedText(); got != "0:03" {
		t.Errorf("the clock shows %s", got)
	}
	b.press("space")
	b.shows("NOT WRITTEN, 1 mark")
	b.size(40, 10)
	b.shows("NOT WRITTEN")
	b.size(80, 24)
	must(t, os.Rename(file+".away", file))
	b.wait(time.Second)
	b.shows("written to")
	b.replays()
	if got := b.m.elapsedText(); got != "0:05" {
		t.Errorf("the clock shows %s once the file is back", got)
	}
}

func TestLeavingWithMarksThatAreNotWrittenAsksFirst(t *testing.T) {
	for _, way := range []string{"q y", "ctrl+c"} {
		d := stuck{}
		b := d.on(t, true)
		b.until("base lye in")
		d.why = disk.ErrLocked
		b.press("space " + way)
		b.shows("NOT WRITTEN, 1 mark", "Try again")
		if b.left {
			t.Fatalf("%s left with a mark in no file", way)
		}
		b.press("t")
		b.shows("Try again")
		b.press("esc")
		b.shows("NOT WRITTEN, 1 mark")
		b.press("ctrl+c ctrl+c")
		if b.left {
			t.Fatalf("%s: pressing Ctrl+C again left", way)
		}
		d.why = nil
		b.press("t")
		if !b.left {
			t.Errorf("%s: once it is written the screen is not left", way)
		}
		b.replays()
	}
}

func TestMarksThatAreLeftUnwrittenArePrinted(t *testing.T) {
	d := stuck{}
	b := d.on(t, false)
	b.until("base lye in")
	before := b.inFile(logbook.Done)
	d.why = syscall.ENOSPC
	b.press("space q y x")
	if !b.left {
		t.Fatal("the screen was not left")
	}
	var notes strings.Builder
	var slept time.Duration
	sleep := func(d time.Duration) { slept += d }
	b.m.part(&notes, 3, sleep)
	for _, want := range []string{"NOT WRITTEN, 1 mark", "no space left", "at the end of " + b.book.Path(b.m.ID()), "run --resume " + b.m.ID()} {
		if !strings.Contains(notes.String(), want) {
			t.Errorf("it is not said %q:\n%s", want, notes.String())
		}
	}
	if slept != 2*betweenTry {
		t.Errorf("three tries took %v", slept)
	}
	_, lines, _ := strings.Cut(notes.String(), "once it can be written:\n")
	lines, _, _ = strings.Cut(lines, "pourbench:")
	path := b.book.Path(b.m.ID())
	src, err := os.ReadFile(path)
	must(t, err)
	must(t, os.WriteFile(path, append(src, lines...), 0o600)) // as she is told to
	if got := b.inFile(logbook.Done); got == before {
		t.Error("what was printed adds nothing to the file")
	}
	b.replays()

	d.why = nil // a terminal that hung up: the disk has room again a second later
	notes.Reset()
	b.press("2 l")
	d.why = syscall.ENOSPC
	b.press("2 m")
	b.m.part(&notes, 3, func(time.Duration) { d.why = nil })
	if strings.Contains(notes.String(), "NOT WRITTEN") || b.inFile(logbook.Seen) != "gentian, gentian" {
		t.Errorf("it is written at last, and it is said\n%s", notes.String())
	}
}
