package batches

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
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// on is a day as it is written.
func on(t testing.TB, text string) day.Day {
	t.Helper()
	d, err := day.Parse(text)
	must(t, err)
	return d
}

// shop is a page under test.
type shop struct {
	testing.TB
	m    *Model
	left bool
	sent []string // raw sequences
}

// opened opens the page with options and reads the logbook.
func opened(t testing.TB, o Options) *shop {
	t.Helper()
	o.Background = "dark"
	if o.Today == 0 {
		o.Today = on(t, "2026-12-20")
	}
	s := &shop{TB: t, m: New(o)}
	s.size(80, 24)
	s.finish(s.m.load())
	return s
}

func (s *shop) size(w, h int) { s.update(tea.WindowSizeMsg{Width: w, Height: h}) }

// update takes a message and everything that follows from it, but for the next tick.
func (s *shop) update(msg tea.Msg) {
	_, cmd := s.m.Update(msg)
	if _, tick := msg.(tickMsg); !tick {
		s.finish(cmd)
	}
}

func (s *shop) finish(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		s.left = true
	case tea.RawMsg:
		s.sent = append(s.sent, fmt.Sprint(msg.Msg))
	default:
		if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice && v.Type().Elem() == reflect.TypeFor[tea.Cmd]() {
			for i := range v.Len() {
				next, _ := v.Index(i).Interface().(tea.Cmd)
				s.finish(next)
			}
			return
		}
		s.update(msg)
	}
}

// press presses keys by their names.
func (s *shop) press(names string) {
	for name := range strings.FieldsSeq(names) {
		s.update(key(name))
	}
}

// write types a text.
func (s *shop) write(text string) {
	for _, r := range text {
		s.update(tea.KeyPressMsg{Code: r, Text: string(r)})
	}
}

// key is the message of a key by its name.
func key(name string) tea.KeyPressMsg {
	codes := map[string]rune{
		"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "enter": tea.KeyEnter, "esc": tea.KeyEscape, "home": tea.KeyHome, "end": tea.KeyEnd,
		"tab": tea.KeyTab, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace, "delete": tea.KeyDelete, "f1": tea.KeyF1,
	}
	if code, ok := codes[name]; ok {
		return tea.KeyPressMsg{Code: code}
	}
	if name == "space" {
		return tea.KeyPressMsg{Code: ' ', Text: " "}
	}
	if rest, ok := strings.CutPrefix(name, "ctrl+"); ok {
		return tea.KeyPressMsg{Code: []rune(rest)[0], Mod: tea.ModCtrl}
	}
	return tea.KeyPressMsg{Code: []rune(name)[0], Text: name}
}

// frame is the screen as text without styles and without blanks at line ends.
func (s *shop) frame() string { return stripped(s.m.View().Content) }

func stripped(content string) string {
	rows := strings.Split(ansi.Strip(content), "\n")
	for i, l := range rows {
		rows[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(rows, "\n") + "\n"
}

func (s *shop) shows(words ...string) {
	s.Helper()
	f := s.frame()
	for _, w := range words {
		if !strings.Contains(f, w) {
			s.Errorf("the screen does not show %q:\n%s", w, f)
		}
	}
}

func (s *shop) hides(words ...string) {
	s.Helper()
	f := s.frame()
	for _, w := range words {
		if strings.Contains(f, w) {
			s.Errorf("the screen shows %q:\n%s", w, f)
		}
	}
}

// says checks what stands in the status line.
func (s *shop) says(words ...string) {
	s.Helper()
	for _, w := range words {
		if !strings.Contains(s.m.status.Text(), w) {
			s.Errorf("said is %q, want %q in it", s.m.status.Text(), w)
		}
	}
}

// dump writes the frame with its colours where POURBENCH_FRAMES says, to be looked at.
func (s *shop) dump(name string) {
	if dir := os.Getenv("POURBENCH_FRAMES"); dir != "" {
		must(s, os.WriteFile(fmt.Sprintf("%s/%s.ansi", dir, name), []byte(s.m.View().Content+"\n"), 0o600))
	}
}

// kept is a logbook on the disk with the page open on it.
type kept struct {
	*shop
	book  logbook.Book
	shelf pour.Shelf
	plan  pour.Plan
	wall  time.Time
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

// onDisk opens the page on a logbook with pours of some names, the first poured on 5 December 2026 and each a day later; it is the 20th.
func onDisk(t testing.TB, names ...string) *kept {
	t.Helper()
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	k := &kept{book: book, shelf: shelf, plan: plan, wall: time.Date(2026, 12, 20, 18, 0, 0, 0, time.UTC)}
	for i, name := range names {
		k.pour(t, name, time.Date(2026, 12, 5+i, 10, 0, 0, 0, time.UTC))
	}
	k.shop = opened(t, k.options(t))
	return k
}

// pour puts a pour into the book that was run to its end.
func (k *kept) pour(t testing.TB, name string, at time.Time) string {
	t.Helper()
	p := k.plan.Clone()
	p.Name = name
	events := []logbook.Event{
		{ID: "e1-a", Kind: logbook.Opened, Wall: at},
		{ID: "e2-a", Kind: logbook.Done, Step: logbook.LyeIn(pour.Base), Run: 10 * time.Minute, Wall: at.Add(10 * time.Minute)},
		{ID: "e3-a", Kind: logbook.Ended, Run: time.Hour, Wall: at.Add(time.Hour)},
	}
	id, err := k.book.Create(p, "", at, events)
	must(t, err)
	return id
}

func (k *kept) options(t testing.TB) Options {
	t.Helper()
	return Options{
		Today: day.Of(k.wall), Folder: k.book.Folder(),
		Read: func() ([]life.Batch, error) { return life.All(k.book, k.shelf, pour.Hand{}, day.Of(k.wall)) },
		Detail: func(id string) (Detail, error) {
			p, err := k.book.Read(id, k.shelf)
			if err != nil {
				return Detail{}, err
			}
			return Detail{p.Plan, life.Marks(p.Events)}, nil
		},
		Log: func(id string, e logbook.Event) (life.Logged, error) {
			return life.Log(k.book, k.shelf, id, e, k.wall, "a")
		},
	}
}

// file is all that a pour's file holds.
func (k *kept) file(id string) string {
	k.Helper()
	text, err := os.ReadFile(k.book.Path(id))
	must(k, err)
	return string(text)
}
