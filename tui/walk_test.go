package tui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
)

// walkLength is how many keys are pressed: as many as .ci/run has time for where POURBENCH_LONG is 1, a hundred thousand where it is full.
func walkLength() int {
	switch long := os.Getenv("POURBENCH_LONG"); {
	case long == "full":
		return 100_000
	case long == "1":
		return 12_000
	case testing.Short():
		return 800
	default:
		return 2000
	}
}

// walk is a bench that somebody without a plan walks about, and what is known of it beside.
type walk struct {
	t     *testing.T
	rng   *rand.Rand
	m     *model
	shelf pour.Shelf
	plan  pour.Plan // opened at the start, and after a plan that has no file was left
	dir   string
	done  []string    // what was pressed lately
	late  []tea.Cmd   // work that is not finished yet
	past  []pour.Plan // what undo brings back, the newest last
	ahead []pour.Plan // and redo
	last  string      // the cell that the last edit nudged; empty: it was no nudge
}

func TestWalkAtTheBenchKeepsEveryPromise(t *testing.T) {
	shelf, plan := built(t)
	dir := t.TempDir()
	t.Chdir(dir)
	t.Setenv("HOME", dir)
	w := &walk{t: t, rng: rand.New(rand.NewPCG(8, 28)), shelf: shelf, plan: plan, dir: dir}
	defer func() {
		if p := recover(); p != nil {
			t.Fatalf("%v\nafter %s\n%s", p, strings.Join(w.done, " "), stackOf())
		}
	}()
	w.open(planfile.Document{Plan: plan.Clone()})
	for range walkLength() {
		w.step()
	}
	w.throughHistory()
}

func stackOf() string {
	text := make([]byte, 1<<14)
	return string(text[:runtime.Stack(text, false)])
}

func (w *walk) fatal(format string, args ...any) {
	w.t.Helper()
	w.t.Fatalf("after %s: "+format, append([]any{strings.Join(w.done, " ")}, args...)...)
}

// one says yes once in so many times.
func (w *walk) one(in int) bool { return w.rng.IntN(in) == 0 }

func pick[T any](w *walk, from []T) T { return from[w.rng.IntN(len(from))] }

// open puts a plan on a new bench.
func (w *walk) open(doc planfile.Document) {
	plan := doc.Plan
	plan.Name = "another meadow"
	w.m = newModel(Options{
		Document: doc, Shelf: w.shelf, Background: "dark", StateDir: filepath.Join(w.dir, "state"),
		Examples: func() []Example { return []Example{{Name: "one", Plan: plan}} }, Learned: func() (string, error) { return "nothing yet", nil },
	})
	w.past, w.ahead, w.late = nil, nil, nil
	w.update("opened", nil)
	w.follow(w.m.Init())
}

// step does one thing: mostly a key, sometimes the mouse, another size, or work that comes back.
func (w *walk) step() {
	switch {
	case w.one(150):
		w.resize()
	case w.one(60):
		at := struct{ x, y int }{w.rng.IntN(w.m.w + 1), w.rng.IntN(w.m.h + 1)}
		if w.one(3) {
			w.follow(w.update("wheel", tea.MouseWheelMsg{X: at.x, Y: at.y, Button: pick(w, []tea.MouseButton{tea.MouseWheelUp, tea.MouseWheelDown})}))
			return
		}
		w.follow(w.update("click", tea.MouseClickMsg{X: at.x, Y: at.y, Button: tea.MouseLeft}))
	case w.one(90):
		w.follow(w.update("paste", tea.PasteMsg{Content: pick(w, []string{" 41,5\n", "\x1b]52;c;aGk=\a\u009b2J\u202e漢字", "1e400", strings.Repeat("long ", 60), "olive 60 %\ncoconut 33\nwibble 5 g\n", "350 g olive oil\n\x1b[2J150 g shea\nwater 9 g"})}))
	case w.one(200):
		w.follow(w.update("focus", tea.FocusMsg{}))
	case w.one(40) && len(w.late) > 0:
		i := w.rng.IntN(len(w.late))
		cmd := w.late[i]
		w.late = slices.Delete(w.late, i, i+1)
		w.follow(w.update("late work", cmd()))
	case w.one(30) && w.m.journal.due:
		w.journal()
	default:
		name := w.key()
		w.follow(w.update(name, key(name)))
	}
	if w.one(500) && len(w.past) < 300 {
		w.throughHistory()
	}
	if len(w.past) > 2000 {
		w.left() // so that a long walk does not keep every plan it has seen
	}
}

func (w *walk) resize() {
	size := pick(w, [][2]int{{80, 24}, {120, 36}, {200, 60}, {60, 16}, {w.rng.IntN(230) + 1, w.rng.IntN(70) + 1}, {w.rng.IntN(230) + 1, w.rng.IntN(70) + 1}})
	if w.one(25) {
		w.update("resize to 5000×5000", tea.WindowSizeMsg{Width: 5000, Height: 5000})
	}
	w.follow(w.update("resize", tea.WindowSizeMsg{Width: size[0], Height: size[1]}))
}

// key is a key that has some chance to do something where the bench is.
func (w *walk) key() string {
	const letters = "abcdefghijklmnopqrstuvwxyz"
	switch {
	case w.m.dialogs.Top() != nil:
		return pick(w, []string{"esc", "esc", "enter", "enter", "down", "up", "tab", "pgdown", "left", "right", "ctrl+u", "backspace", string(letters[w.rng.IntN(len(letters))]), "space", "0"})
	case w.m.typing != nil:
		return pick(w, []string{"esc", "enter", "enter", "enter", "tab", "1", "2", "5", ",", ".", "-", "backspace", "x", "ctrl+u", "left", "home"})
	}
	if w.one(2) {
		return pick(w, []string{"down", "up", "left", "right", "tab", "]", "[", "+", "-", "*", "_", "a", "d", "space", "enter", "5", "u", "U", "K", "J", "r", "c", "v"})
	}
	for {
		if b := pick(w, keys.Table()); b.Mode == keys.Bench && b.ID != keys.Quit && b.ID != keys.IcingOnOff || w.one(40) && len(b.Keys) > 0 {
			return pick(w, b.Keys)
		}
	}
}

// update gives the bench a message and holds it to its promises.
func (w *walk) update(what string, msg tea.Msg) tea.Cmd {
	w.t.Helper()
	w.done = append(w.done, what)
	if len(w.done) > 60 {
		w.done = w.done[1:]
	}
	m := w.m
	was, rev := m.session.Plan().Clone(), m.session.Revision()
	cell, _, _ := m.cell()
	bench := m.typing == nil && m.dialogs.Top() == nil && !m.placed.TooSmall
	said := what == "click" || m.dialogs.Top() != nil && what == "enter" // the footer's keys, the palette and the help do what a key does
	_, cmd := m.Update(msg)
	nudged := ""
	if said || bench && slices.Contains([]string{"+", "=", "-", "*", "_", "shift+right", "shift+left"}, what) {
		nudged = cell.Name
	}
	w.remember(what, bench, said, nudged, was, rev)
	w.consistent()
	w.drawn()
	return cmd
}

// remember keeps the plans that undo and redo have to bring back, and holds them to it.
func (w *walk) remember(what string, bench, said bool, nudged string, was pour.Plan, rev int) {
	w.t.Helper()
	m := w.m
	plan := m.session.Plan()
	if m.session.Revision() == rev {
		if !reflect.DeepEqual(plan.Clone(), was) {
			w.fatal("the plan is another without a new revision")
		}
		return
	}
	if m.journal.file != nil && !m.journal.due {
		w.fatal("a new plan is not due in the journal")
	}
	undone := bench && what == "u"
	redone := bench && (what == "U" || what == "ctrl+y")
	steps := w.steps()
	if said {
		undone = steps == len(w.past)-1
		redone = steps == len(w.past)+1 && len(w.ahead) > 0 && reflect.DeepEqual(plan, w.ahead[len(w.ahead)-1])
	}
	switch {
	case steps == 0 && m.session.CanRedo() == "": // another plan
		w.past, w.ahead = nil, nil
	case undone && steps == len(w.past)-1 && reflect.DeepEqual(plan, w.past[steps]):
		w.past, w.ahead = w.past[:steps], append(w.ahead, was)
	case redone && steps == len(w.past)+1 && len(w.ahead) > 0 && reflect.DeepEqual(plan, w.ahead[len(w.ahead)-1]):
		w.past, w.ahead = append(w.past, was), w.ahead[:len(w.ahead)-1]
	case undone || redone:
		w.fatal("undo or redo gives another plan than was there, or takes more than a step")
	case m.session.CanRedo() != "":
		w.fatal("after an edit what was undone can be done again")
	case steps == len(w.past)+1:
		w.past, w.ahead = append(w.past, was), nil
	case steps != len(w.past) || nudged == "" || nudged != w.last:
		w.fatal("an edit is undone together with the one before, and is no nudge of the same cell")
	}
	w.last = nudged
}

// steps is how many steps can be undone.
func (w *walk) steps() int { return reflect.ValueOf(w.m.session).Elem().FieldByName("undo").Len() }

// consistent holds plan, figures, cursors and focus together.
func (w *walk) consistent() {
	w.t.Helper()
	m := w.m
	plan := m.session.Plan()
	if faults := plan.Check(w.shelf); len(faults) > 0 {
		w.fatal("the bench let through %v", faults[0])
	}
	if !reflect.DeepEqual(m.facts.Plan, plan) || !reflect.DeepEqual(m.facts.Sheet.Plan, plan) {
		w.fatal("what is drawn belongs to another plan")
	}
	if timed, fresh := m.session.Clock(); fresh && !reflect.DeepEqual(timed.Plan, plan) {
		w.fatal("the clock of another plan passes for this one's")
	}
	if colours, fresh := m.session.Colours(); fresh && !reflect.DeepEqual(colours.Plan, plan) {
		w.fatal("the colours of another plan pass for this one's")
	}
	if !slices.Contains(m.panels, m.at()) {
		w.fatal("the focus is on %s, which is not there", m.at().ID)
	}
	for _, p := range m.panels {
		c, g := m.cursors[p.ID], m.grids[p.ID]
		if got := g.Settle(c); got != c {
			w.fatal("the cursor of %s is at %+v, want %+v", p.ID, c, got)
		}
	}
	if cell, _, _ := m.cell(); m.typing != nil && cell.Kind != grid.Number && cell.Kind != grid.Words && cell.Kind != grid.Numbers {
		w.fatal("a cell of kind %d is being typed in", cell.Kind)
	}
}

// drawn holds the frame to its size and the cursor into it.
func (w *walk) drawn() {
	w.t.Helper()
	m := w.m
	v := m.View()
	lines := strings.Split(v.Content, "\n")
	if len(lines) != m.h {
		w.fatal("%d lines on a screen of %d×%d", len(lines), m.w, m.h)
	}
	for i, l := range lines {
		if got := ansi.StringWidth(l); got > m.w {
			w.fatal("line %d is %d wide at %d×%d", i, got, m.w, m.h)
		}
	}
	if c := v.Cursor; c != nil && (c.X < 0 || c.Y < 0 || c.X >= m.w || c.Y >= m.h) {
		w.fatal("the terminal's cursor is at %d, %d on %d×%d", c.X, c.Y, m.w, m.h)
	}
}

// follow does what a command asks, by its kind: what is slow comes late or never, a timer is answered at once, the rest is done.
// Commands are told apart by the names of their functions.
func (w *walk) follow(cmd tea.Cmd) {
	w.t.Helper()
	if cmd == nil {
		return
	}
	name := runtime.FuncForPC(reflect.ValueOf(cmd).Pointer()).Name()
	is := func(parts ...string) bool {
		return slices.ContainsFunc(parts, func(p string) bool { return strings.Contains(name, p) })
	}
	switch {
	case is("bubbletea/v2.Quit"):
		if !w.m.quitting && !w.m.placed.TooSmall {
			w.fatal("the bench was left without a word")
		}
		w.left()
	case is("compactCmds"):
		list := reflect.ValueOf(cmd())
		for i := range list.Len() {
			next, _ := list.Index(i).Interface().(tea.Cmd)
			w.follow(next)
		}
	case is(".Tick."):
		if p := w.m.studio.play; p.running {
			w.update("tick", playMsg{p.ticket, time.Now()})
		}
	case is("bubbletea/v2."): // the terminal's own affair
	case is(".suggest"):
		if w.one(20) {
			w.late = append(w.late, cmd)
		}
	case is(".expose", ".printed", ".measure", ".workFigures"):
		if w.one(12) {
			w.late = append(w.late, cmd)
		}
	default:
		w.follow(w.update(name[strings.LastIndex(name, "(*model)")+8:], cmd()))
	}
}

// left closes the bench and opens it again where it was left: what was saved is there, and what was not is offered.
func (w *walk) left() {
	w.t.Helper()
	path := w.m.file.path
	if err := w.m.close(); err != nil {
		w.fatal("%v", err)
	}
	doc := planfile.Document{Plan: w.plan.Clone()}
	if path != "" {
		var err error
		if doc, err = planfile.Load(path, w.shelf); err != nil {
			w.fatal("what was saved cannot be opened: %v", err)
		}
	}
	w.open(doc)
}

// journal has the journal written that is due, and looks what is in it.
func (w *walk) journal() {
	w.t.Helper()
	w.follow(w.update("journal", journalDueMsg{}))
	all, err := planfile.Recoveries(w.m.opt.StateDir)
	if err != nil {
		w.fatal("%v", err)
	}
	own := slices.IndexFunc(all, func(r planfile.Recovery) bool { return r.Living })
	switch dirty := w.m.session.Dirty(); {
	case dirty != (own >= 0):
		w.fatal("changes that are in no file: %v; a journal of them: %v", dirty, own >= 0)
	case dirty && !reflect.DeepEqual(all[own].Plan, w.m.session.Plan()):
		w.fatal("the journal holds another plan than the bench: %s", cmp.Diff(w.m.session.Plan(), all[own].Plan))
	}
	if path := w.m.file.path; path != "" && !w.m.session.Savable() {
		if doc, err := planfile.Load(path, w.shelf); err != nil || !reflect.DeepEqual(doc.Plan, w.m.session.Plan()) {
			w.fatal("a saved plan is not what its file holds: %v", err)
		}
	}
}

// throughHistory goes back to the first plan and on to the last again.
func (w *walk) throughHistory() {
	w.t.Helper()
	s := w.m.session
	last, first, undone := s.Plan().Clone(), s.Plan().Clone(), 0
	if len(w.past) > 0 {
		first = w.past[0]
	}
	for s.CanUndo() != "" {
		if _, err := s.Undo(); err != nil {
			w.fatal("%v", err)
		}
		undone++
	}
	if !reflect.DeepEqual(s.Plan(), first) {
		w.fatal("undoing everything gives another plan than the first")
	}
	for range undone {
		if _, err := s.Redo(); err != nil {
			w.fatal("%v", err)
		}
	}
	if !reflect.DeepEqual(s.Plan(), last) {
		w.fatal("doing everything again gives another plan than the last")
	}
	w.update("all undone and done again", nil)
}
