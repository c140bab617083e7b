package batches

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/keys"
)

// alphabet is what a walk presses: every key of the page and of what opens on it, and some letters and digits to type.
func alphabet() []string {
	out := strings.Fields("1 2 3 . , a e o x 7 8")
	for _, b := range keys.BuiltIn().All() {
		switch b.Mode {
		case keys.Batching, keys.Form, keys.List, keys.Line, keys.Page, keys.Asking:
			for _, k := range b.Keys {
				if k != keys.Leaves && k != "ctrl+z" && k != "q" && !strings.HasPrefix(k, "shift+") {
					out = append(out, k)
				}
			}
		}
	}
	return out
}

// Whatever is pressed, nothing panics, no frame leaves its screen, and the files stay readable and only grow.
func TestARandomWalkKeepsTheFilesWhole(t *testing.T) {
	steps, walks := 150, 2
	if os.Getenv("POURBENCH_LONG") != "" {
		steps, walks = 3000, 10
	}
	for seed := range walks {
		r := rand.New(rand.NewPCG(uint64(seed), 11)) //nolint:gosec // a walk, no secret
		k := onDisk(t, "Alpine Meadow", "Dusk", "Harbour")
		id := k.m.all[0].ID
		k.log(id, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Day: "2026-12-08", Count: 10}})
		sizes := [][2]int{{80, 24}, {120, 36}, {44, 12}, {20, 5}}
		signs := alphabet()
		var pressed []string
		for i := range steps {
			if r.IntN(40) == 0 {
				size := sizes[r.IntN(len(sizes))]
				k.size(size[0], size[1])
			}
			name := signs[r.IntN(len(signs))]
			pressed = append(pressed, name)
			k.press(name)
			if h := strings.Count(k.m.View().Content, "\n") + 1; h > max(k.m.dialogs.Frame.H, 1) {
				t.Fatalf("walk %d, step %d: %d lines", seed, i, h)
			}
			for _, b := range k.m.all {
				if b.Fault != nil {
					t.Fatalf("walk %d: after %v the file of %s is faulty: %v", seed, pressed, b.ID, b.Fault)
				}
				if a := b.Bars; a.Known && a.Bars != a.Sold+a.Given+a.Kept+a.Seconds+a.Missing+a.Left {
					t.Fatalf("walk %d: after %v the bars are %+v", seed, pressed, a)
				}
			}
		}
	}
}

func TestAnotherTerminalsMarksAreSeenWithoutAKey(t *testing.T) {
	k := onDisk(t, "Alpine Meadow", "Dusk")
	k.press("end")
	b, _ := k.m.chosen()
	id := b.ID
	k.press("enter")
	if _, err := life.Log(k.book, k.shelf, id, logbook.Event{Kind: logbook.Failed, Text: "seized", Life: logbook.Life{Day: "2026-12-10"}}, k.wall, "other"); err != nil {
		t.Fatal(err)
	}
	_, cmd := k.m.Update(tickMsg{})
	if cmd == nil {
		t.Fatal("a tick looks at nothing")
	}
	k.m.reading = false
	k.finish(k.m.load())
	k.shows("failed, seized")
	if b, _ = k.m.chosen(); b.ID != id || b.State != life.Failed {
		t.Errorf("chosen is %s, %s; it was %s", b.ID, b.State, id)
	}
}

func TestAFileThatBecomesFaultySaysWhyAndWhatCanBeDoneAboutIt(t *testing.T) {
	k := onDisk(t, "Alpine Meadow", "Dusk")
	id := k.m.all[0].ID
	must(t, os.WriteFile(k.book.Path(id), []byte(k.file(id)+"\n[[event]]\nkind = \"soled\"\nwall = 2026-12-10T10:00:00Z\nrun_s = 3\n"), 0o600))
	k.finish(k.m.load())
	k.m.choose(id)
	k.shows("× faulty file")
	k.press("enter")
	k.shows("soled", "kind")
	k.press("esc s")
	k.says("its file is faulty", id)
}

func TestALogbookThatCannotBeReadIsSaidAndWhatWasKnownStays(t *testing.T) {
	list := handful(t)
	var fail error
	s := opened(t, Options{Read: func() ([]life.Batch, error) { return list, fail }})
	fail = os.ErrPermission
	s.finish(s.m.load())
	s.shows("Alpine Meadow", "× permission denied")
	s.press("down")
	s.finish(s.m.load())
	if s.m.status.Text() != "" {
		t.Errorf("the same is said again: %q", s.m.status.Text())
	}
	empty := opened(t, Options{Read: func() ([]life.Batch, error) { return nil, fail }})
	empty.shows("The logbook cannot be read: permission denied")
}

func TestAnEmptyLogbookSaysWhatComesThere(t *testing.T) {
	s := page(t, nil)
	s.shows("No pour is in the logbook yet")
	for _, k := range alphabet() {
		s.press(k)
	}
}

func TestWhatCannotBeWrittenStaysInItsForm(t *testing.T) {
	s := page(t, handful(t)) // nothing can be written into what is made by hand
	s.press("home s")
	s.write("3")
	s.press("ctrl+s")
	s.shows("sold, Dusk", "× not written: it is made by hand", "3")
	s.press("ctrl+s")
	s.shows("× not written: it is made by hand")
	if len(s.m.undo) != 0 {
		t.Error("what was not written can be undone")
	}
}

func TestAThousandPoursAreSearchedAndScrolled(t *testing.T) {
	s := page(t, thousand(t, 20))
	s.shows("1000 batches", "↓ 9")
	s.press("end")
	s.shows("↑ 9")
	last, _ := s.m.chosen()
	s.press("pgup pgup")
	if b, _ := s.m.chosen(); b.ID == last.ID {
		t.Error("it does not scroll")
	}
	s.press("/")
	s.write("ZEBRA 95")
	for i := range s.m.shown {
		if b := s.m.shown[i]; !strings.Contains(b.Name, "Zebra") || !strings.Contains(b.Name+b.ID+b.Due[0].Text, "95") {
			t.Errorf("%s is found", b.Name)
		}
	}
	if len(s.m.shown) == 0 || len(s.m.shown) > 100 {
		t.Errorf("%d are found", len(s.m.shown))
	}
	s.press("enter esc")
	s.shows("1000 batches")
}

// BenchmarkKeyToFrame is a key in a list of a thousand pours, each with twenty events, and the frame after it.
func BenchmarkKeyToFrame(b *testing.B) {
	for _, name := range []string{"down", "order", "letter"} {
		b.Run(name, func(b *testing.B) {
			s := page(b, thousand(b, 20))
			s.size(200, 60)
			press := map[string]string{"down": "down", "order": "o", "letter": "a"}[name]
			if name == "letter" {
				s.press("/")
			}
			i := 0
			for b.Loop() {
				k := press
				if name == "letter" && i%2 == 1 {
					k = "backspace"
				}
				i++
				s.m.Update(key(k))
				_ = s.m.View()
			}
		})
	}
}

// BenchmarkOpen is the first look at a logbook of a thousand pours on the disk.
func BenchmarkOpen(b *testing.B) {
	k := onDisk(b)
	for i := range 1000 {
		k.pour(b, "Alpine Meadow", time.Date(2026, 1, 1+i%300, 10, i%60, 0, 0, time.UTC))
	}
	for b.Loop() {
		s := opened(b, Options{Today: day.Of(k.wall), Read: func() ([]life.Batch, error) { return life.All(k.book, k.shelf, pour.Hand{}, day.Of(k.wall)) }})
		_ = s.m.View()
	}
}
