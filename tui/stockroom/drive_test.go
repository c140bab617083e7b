package stockroom

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/pour/day"
	"pourbench/pour/stock"
	"pourbench/presets"
	"pourbench/tui/lines"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// room is a page under test on a ledger on the disk; it is 28 November 2026.
type room struct {
	testing.TB
	m      *Model
	left   bool
	ledger stock.Ledger
	wall   time.Time
}

func opened(t testing.TB, change func(*Options)) *room {
	t.Helper()
	shelf, err := presets.Shelf()
	must(t, err)
	r := &room{TB: t, ledger: stock.New(t.TempDir()), wall: time.Date(2026, 11, 28, 18, 0, 0, 0, time.UTC)}
	o := Options{
		Today: day.Of(r.wall), File: "ledger.toml", Shelf: shelf, Background: "dark",
		Read: func() (stock.State, error) { return r.ledger.State(day.Of(r.wall)) },
		Decide: func(decide func(stock.State) ([]stock.Entry, error)) ([]stock.Entry, error) {
			return r.ledger.Decide(r.wall, "a", decide)
		},
		Shopping: func() (string, error) { return "SHOPPING LIST\nolive oil 5 kg", nil },
		Expiring: func() (string, error) { return "olive-2 is past its date", nil },
		Trace:    func(what string) (string, error) { return "trace of " + what, nil },
	}
	if change != nil {
		change(&o)
	}
	r.m = New(o)
	r.size(80, 24)
	r.finish(r.m.load())
	return r
}

// stocked is a page with a handful of packs: one opened and weighed, one past its date, one that soon is, and pieces.
func stocked(t testing.TB) *room {
	t.Helper()
	r := opened(t, nil)
	r.receives("olive 5 kg 38.50 post 4.50 lot A12 exp 2027-05-31 tare 350 g bought 2026-03-03 from the mill",
		"olive 5 kg 46.25 exp 2026-10-01 bought 2026-03-20", "coconut 5 kg 21.00 exp 2026-12-10 bought 2026-06-01", "packaging box 100 pieces 36.00 bought 2026-06-01")
	r.press("home down down down down o ctrl+s w")
	r.write("4850")
	r.press("enter ctrl+s")
	r.write("spilled")
	r.press("ctrl+s")
	r.press("home")
	r.m.status.Clear()
	return r
}

// receives types what came onto the pad and takes it.
func (r *room) receives(rows ...string) {
	r.press("r")
	for _, line := range rows {
		r.write(line)
		r.press("enter")
	}
	r.press("enter")
}

func (r *room) size(w, h int) { r.update(tea.WindowSizeMsg{Width: w, Height: h}) }

// update takes a message and everything that follows from it, but for the next tick.
func (r *room) update(msg tea.Msg) {
	_, cmd := r.m.Update(msg)
	if _, tick := msg.(tickMsg); !tick {
		r.finish(cmd)
	}
}

func (r *room) finish(cmd tea.Cmd) { r.left = lines.Finish(r.m, cmd) || r.left }

// press presses keys by their names.
func (r *room) press(names string) {
	for name := range strings.FieldsSeq(names) {
		r.update(key(name))
	}
}

// write types a text.
func (r *room) write(text string) {
	for _, c := range text {
		r.update(tea.KeyPressMsg{Code: c, Text: string(c)})
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
func (r *room) frame() string {
	rows := strings.Split(ansi.Strip(r.m.View().Content), "\n")
	for i, l := range rows {
		rows[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(rows, "\n") + "\n"
}

func (r *room) shows(words ...string) {
	r.Helper()
	f := r.frame()
	for _, w := range words {
		if !strings.Contains(f, w) {
			r.Errorf("the screen does not show %q:\n%s", w, f)
		}
	}
}

// says checks what stands in the status line.
func (r *room) says(words ...string) {
	r.Helper()
	for _, w := range words {
		if !strings.Contains(r.m.status.Text(), w) {
			r.Errorf("said is %q, want %q in it", r.m.status.Text(), w)
		}
	}
}

// left is what lies in a pack by the ledger's file, as it is written.
func (r *room) lies(pack string) string {
	r.Helper()
	s, err := r.ledger.State(day.Of(r.wall))
	must(r, err)
	p, ok := s.Pack(pack)
	if !ok {
		return "none"
	}
	return p.Left.String()
}

// file is all that the ledger's file holds.
func (r *room) file() string {
	r.Helper()
	text, err := os.ReadFile(r.ledger.Path())
	must(r, err)
	return string(text)
}

// dump writes the frame with its colours where POURBENCH_FRAMES says, to be looked at.
func (r *room) dump(name string) {
	if dir := os.Getenv("POURBENCH_FRAMES"); dir != "" {
		must(r, os.WriteFile(fmt.Sprintf("%s/stock_%s.ansi", dir, name), []byte(r.m.View().Content+"\n"), 0o600))
	}
}
