package live

import (
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// laptop is the clock of a laptop at a moment of its life.
type laptop struct {
	wall   time.Time
	steady time.Duration
	of     string
}

func newLaptop() *laptop {
	return &laptop{wall: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), of: "one"}
}

func (c *laptop) now() underway.Moment {
	return underway.Moment{Wall: c.wall, Steady: c.steady, Of: c.of, Sleeps: true}
}

// pass lets time go by, sleep for the wall clock alone.
func (c *laptop) pass(d time.Duration)  { c.wall, c.steady = c.wall.Add(d), c.steady+d }
func (c *laptop) sleep(d time.Duration) { c.wall = c.wall.Add(d) }

// kitchen is a live run under test, with its clock and its logbook.
type kitchen struct {
	testing.TB
	m     *Model
	c     *laptop
	book  logbook.Book
	shelf pour.Shelf
	rings int
	left  bool
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// meadow is the plan the tests of the workbench work on, and the built-in shelf.
func meadow(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	must(t, err)
	doc, err := planfile.Load("../testdata/meadow.toml", shelf)
	must(t, err)
	return doc.Plan, shelf
}

// opened opens a live run in a folder, with changes to its options.
func opened(t testing.TB, dir string, change func(*Options)) *kitchen {
	t.Helper()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(dir)
	must(t, err)
	b := &kitchen{TB: t, c: newLaptop(), book: book, shelf: shelf}
	o := Options{Book: book, Sheet: pour.Work(plan, shelf, pour.Hand{}), Shelf: shelf, Clock: b.c.now, Session: "a", Background: "dark"}
	if change != nil {
		change(&o)
	}
	b.m, err = New(o)
	must(t, err)
	b.size(80, 24)
	return b
}

func (b *kitchen) size(w, h int) { b.m.Update(tea.WindowSizeMsg{Width: w, Height: h}) }

// wait lets time pass as it does, with a look at the clock every second.
func (b *kitchen) wait(d time.Duration) {
	for ; d > 0; d -= time.Second {
		b.c.pass(min(d, time.Second))
		b.update(tickMsg{})
	}
}

// update takes a message and everything that follows from it, but for the next tick.
func (b *kitchen) update(msg tea.Msg) {
	rung := len(b.m.rung)
	_, cmd := b.m.Update(msg)
	if _, tick := msg.(tickMsg); tick {
		if len(b.m.rung) == rung {
			return
		}
		both, ok := cmd().(tea.BatchMsg) // the next tick, and the bell
		if !ok || len(both) != 2 {
			b.Fatal("a jug came near its end and no bell rang")
		}
		cmd = both[1]
	}
	b.finish(cmd)
}

func (b *kitchen) finish(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		b.left = true
	case tea.RawMsg:
		if msg.Msg == bell {
			b.rings++
		}
	default:
		if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice {
			for i := range v.Len() {
				next, _ := v.Index(i).Interface().(tea.Cmd)
				b.finish(next)
			}
			return
		}
		b.update(msg)
	}
}

// press presses keys, a second after each other.
func (b *kitchen) press(names string) {
	for _, name := range strings.Fields(names) {
		b.c.pass(time.Second)
		b.update(key(name))
	}
}

// measure opens the line for something that is measured.
func (b *kitchen) measure(thing string) {
	b.Helper()
	b.press("w")
	for range 99 {
		if strings.Contains(b.frame(), "│ "+thing+" in ") {
			return
		}
		b.press("tab")
	}
	b.Fatalf("%s cannot be measured:\n%s", thing, b.frame())
}

// write types a text.
func (b *kitchen) write(text string) {
	for _, r := range text {
		b.update(tea.KeyPressMsg{Code: r, Text: string(r)})
	}
}

// key is the message of a key by its name.
func key(name string) tea.KeyPressMsg {
	codes := map[string]rune{
		"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "enter": tea.KeyEnter, "esc": tea.KeyEscape,
		"tab": tea.KeyTab, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace,
	}
	if code, ok := codes[name]; ok {
		return tea.KeyPressMsg{Code: code}
	}
	if name == "space" {
		return tea.KeyPressMsg{Code: ' ', Text: " "}
	}
	if name == "ctrl+c" {
		return tea.KeyPressMsg{Code: 'c', Mod: tea.ModCtrl}
	}
	return tea.KeyPressMsg{Code: []rune(name)[0], Text: name}
}

// until finishes steps, each as long as planned, up to and with one; waiting steps are waited for.
func (b *kitchen) until(step string) {
	b.Helper()
	for range 100 {
		now, ok := b.m.now()
		if !ok {
			b.Fatalf("there is no step %s", step)
		}
		if now.Kind != pour.TaskCoolLye {
			b.wait(time.Duration(now.LengthMin * float64(time.Minute)))
		}
		b.press("space")
		if now.Key == step {
			return
		}
	}
}

// frame is the screen as text without styles and without blanks at line ends.
func (b *kitchen) frame() string { return stripped(b.m.View().Content) }

func stripped(content string) string {
	lines := strings.Split(ansi.Strip(content), "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(lines, "\n") + "\n"
}

func (b *kitchen) shows(words ...string) {
	b.Helper()
	f := b.frame()
	for _, w := range words {
		if !strings.Contains(f, w) {
			b.Errorf("the screen does not show %q:\n%s", w, f)
		}
	}
}

// dump writes the frame with its colours where POURBENCH_FRAMES says, to be looked at.
func (b *kitchen) dump(name string) {
	if dir := os.Getenv("POURBENCH_FRAMES"); dir != "" {
		must(b, os.WriteFile(fmt.Sprintf("%s/%s.ansi", dir, name), []byte(b.m.View().Content+"\n"), 0o600))
	}
}
