package live

import (
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/screen"
)

// walker presses keys at random in live runs of one folder and holds every invariant after each.
type walker struct {
	*kitchen
	r     *rand.Rand
	sheet pour.Sheet
	mine  logbook.Book // on a disk that gets stuck
	stuck error        // why it is; nil: it is not
	keys  []tea.KeyPressMsg
	trail []string // the last things done, for a failure

	w, h    int
	last    time.Duration // the run's clock at the last look
	checked []string      // the ids of the events at the last look
	over    int           // keys since the pour was over
	runs    int
	waited  int // looks at which a mark was not written
}

func newWalker(t *testing.T, seed uint64) *walker {
	t.Helper()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	w := &walker{
		kitchen: &kitchen{TB: t, c: newLaptop(), book: book, shelf: shelf}, r: rand.New(rand.NewPCG(seed, 8)),
		sheet: pour.Work(plan, shelf, pour.Hand{}), w: 80, h: 24,
	}
	ops := disk.OS()
	ops.Sync = func(*os.File) error { return nil } // the order on the disk is held elsewhere; here it only costs
	ops.SyncFolder = func(string) {}
	ops.TryLock = func(f *os.File) error {
		if w.stuck == disk.ErrLocked { //nolint:errorlint // the very same
			return w.stuck
		}
		return disk.OS().TryLock(f)
	}
	ops.Write = func(f *os.File, p []byte) (int, error) {
		if w.stuck != nil {
			n, _ := f.Write(p[:w.r.IntN(len(p))])
			return n, w.stuck
		}
		return f.Write(p)
	}
	w.mine = book.On(ops)
	w.keys = everyKey()
	w.open("")
	return w
}

// everyKey is every key of the tables and every letter.
func everyKey() []tea.KeyPressMsg {
	var out []tea.KeyPressMsg
	seen := map[string]bool{}
	for _, b := range keys.Table() {
		for _, k := range b.Keys {
			if k != "ctrl+c" && !seen[k] {
				seen[k] = true
				out = append(out, walkKey(k))
			}
		}
	}
	for r := ' '; r <= '~'; r++ {
		if k := string(r); !seen[k] {
			out = append(out, tea.KeyPressMsg{Code: r, Text: k})
		}
	}
	return out
}

// walkKey is the message of any key of the tables.
func walkKey(name string) tea.KeyPressMsg {
	mods := map[string]tea.KeyMod{"ctrl+": tea.ModCtrl, "shift+": tea.ModShift, "alt+": tea.ModAlt}
	for prefix, mod := range mods {
		if rest, ok := strings.CutPrefix(name, prefix); ok {
			k := walkKey(rest)
			k.Mod |= mod
			k.Text = ""
			return k
		}
	}
	named := map[string]rune{
		"home": tea.KeyHome, "end": tea.KeyEnd, "delete": tea.KeyDelete, "f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f4": tea.KeyF4,
		"f5": tea.KeyF5, "f6": tea.KeyF6, "f7": tea.KeyF7, "f8": tea.KeyF8,
	}
	if code, ok := named[name]; ok {
		return tea.KeyPressMsg{Code: code}
	}
	return key(name)
}

// open begins a pour, or takes one up again.
func (w *walker) open(resume string) {
	w.Helper()
	w.c.of = fmt.Sprintf("boot %d", w.r.IntN(3))
	m, err := New(Options{
		Book: w.mine, Sheet: w.sheet, Resume: resume, Shelf: w.shelf, Clock: w.c.now, Session: fmt.Sprintf("s%d", w.runs), Background: "dark",
	})
	must(w, err)
	if w.m, w.left, w.over = m, false, 0; resume == "" {
		w.last, w.checked = 0, nil
	}
	w.runs++
	w.size(w.w, w.h)
}

// step does one thing and holds everything against it.
func (w *walker) step() {
	w.Helper()
	switch n := w.r.IntN(100); {
	case n < 6:
		w.w, w.h = w.r.IntN(220), w.r.IntN(70)
		if w.r.IntN(40) == 0 {
			w.w, w.h = 5000, 5000
		}
		w.did(fmt.Sprintf("%d×%d", w.w, w.h))
		w.size(w.w, w.h)
	case n < 12:
		w.time()
	case n < 14:
		w.stuck = []error{nil, nil, disk.ErrLocked, syscall.ENOSPC}[w.r.IntN(4)]
		w.did(fmt.Sprint("the disk: ", w.stuck))
	case n < 15 && w.m.ID() != "":
		w.did("another terminal notes")
		must(w, underway.Add(w.book, w.m.ID(), w.shelf, w.c.now, "other", logbook.Event{Kind: logbook.Noted, Text: "from beside"}))
		w.c.pass(time.Second)
		w.update(tickMsg{})
	case n < 40: // what a run consists of
		w.pressed(key([]string{"space", "space", "2", "3", "l", "m", "t", "z", "enter", "esc"}[w.r.IntN(10)]))
	case n == 40 && w.r.IntN(3) == 0:
		w.pressed(key("ctrl+c"))
	default:
		w.pressed(w.keys[w.r.IntN(len(w.keys))])
	}
	w.look()
}

func (w *walker) did(what string) {
	w.trail = append(w.trail, what)
	w.trail = w.trail[max(0, len(w.trail)-40):]
}

func (w *walker) pressed(k tea.KeyPressMsg) {
	w.did(k.String())
	w.c.pass(time.Duration(w.r.IntN(4000)) * time.Millisecond)
	w.update(k)
}

// time passes: as it does, in sleep, or by a hand on the wall clock.
func (w *walker) time() {
	w.did("time")
	switch w.r.IntN(8) {
	case 0:
		w.c.sleep(time.Duration(w.r.IntN(1200)) * time.Second)
	case 1:
		w.c.sleep(-time.Duration(w.r.IntN(4000)) * time.Second)
	case 2:
		w.c.of, w.c.steady = fmt.Sprintf("boot %d", w.r.IntN(3)), time.Duration(w.r.IntN(1000))*time.Second
	default:
		w.c.pass(time.Duration(w.r.IntN(40000)) * time.Millisecond)
	}
	w.update(tickMsg{})
}

// look holds every invariant, and goes on to the next run where one is left or long over.
func (w *walker) look() {
	w.Helper()
	w.frame()
	w.clock()
	w.onDisk()
	if w.Failed() {
		w.Fatalf("seed %d, after %q", walkSeed, w.trail)
	}
	if w.m.state.Ended {
		w.over++
	}
	switch {
	case w.over > 60:
		w.stuck = nil
		w.open("")
	case w.left:
		w.stuck = nil // a pour is read before it is taken up, and what was printed is lost here
		w.last, w.checked = 0, nil
		w.open(w.m.ID())
	}
}

// frame fits the screen.
func (w *walker) frame() {
	w.Helper()
	wide, high := screen.Fit(w.w, w.h)
	lines := strings.Split(w.m.View().Content, "\n")
	if len(lines) != max(high, 1) {
		w.Errorf("%d lines at %d×%d", len(lines), w.w, w.h)
	}
	for _, l := range lines {
		if got := ansi.StringWidth(l); got > wide {
			w.Errorf("a line is %d wide at %d×%d: %q", got, w.w, w.h, ansi.Strip(l))
		}
	}
}

// clock never runs backwards, but for a jump that the maker said was none.
func (w *walker) clock() {
	w.Helper()
	events := w.m.live.Events
	discounted := len(events) > len(w.checked) && slices.ContainsFunc(events[len(w.checked):], func(e logbook.Event) bool { return e.Kind == logbook.Discounted })
	if now := w.m.live.Run(); now < w.last && !discounted {
		w.Errorf("the run went from %v back to %v", w.last, now)
	}
	w.last = w.m.live.Run()
}

// onDisk holds the file and what waits against the state: together they are the events, and replayed they give what is on the screen.
func (w *walker) onDisk() {
	w.Helper()
	ids := idsOf(w.m.live.Events)
	if len(w.m.waiting) > 0 {
		w.waited++
	} else if slices.Equal(ids, w.checked) {
		return
	}
	w.checked = ids
	if w.left {
		return // what was forgotten is in no file
	}
	var p logbook.Pour
	if w.m.ID() != "" {
		var err error
		p, err = w.book.Read(w.m.ID(), w.shelf)
		must(w, err)
	} else if len(w.m.waiting) == 0 {
		return // nothing was marked yet
	}
	if both := append(idsOf(p.Events), idsOf(w.m.waiting)...); !slices.Equal(both, ids) {
		w.Errorf("the file and what waits are\n%q, the run has\n%q", both, ids)
	}
	s := underway.Replay(w.sheet, append(p.Events, w.m.waiting...))
	if s.Next != w.m.state.Next || s.Ended != w.m.state.Ended || !reflect.DeepEqual(s.Steps, w.m.state.Steps) || !reflect.DeepEqual(s.Sightings, w.m.state.Sightings) {
		w.Errorf("replayed it is at step %d with %d stages, on the screen at %d with %d", s.Next, len(s.Sightings), w.m.state.Next, len(w.m.state.Sightings))
	}
	if (w.m.unkept == nil) != strings.Contains(w.m.View().Content, "written to") && w.w >= minW && w.h >= minH && w.m.dialogs.Top() == nil {
		w.Errorf("the screen does not say that the journal is written, or says so although it is not: %v", w.m.unkept)
	}
}

func idsOf(events []logbook.Event) []string {
	out := make([]string, len(events))
	for i, e := range events {
		out[i] = e.ID
	}
	return out
}

const walkSeed = 1

func TestALiveRunStandsWhateverKeysArePressed(t *testing.T) {
	steps := 1500
	switch long := os.Getenv("POURBENCH_LONG"); {
	case long == "full":
		steps = 40_000 // with those of the bench a hundred and forty thousand
	case long == "1":
		steps = 5_000 // what .ci/run has time for
	case testing.Short():
		steps = 400
	}
	w := newWalker(t, walkSeed)
	for range steps {
		w.step()
	}
	t.Logf("%d keys and other things in %d runs, %d looks at marks that waited", steps, w.runs, w.waited)
	if w.runs < 2 || w.waited == 0 {
		t.Errorf("the walk went through %d runs and %d looks at marks that waited: it sees too little", w.runs, w.waited)
	}
}
