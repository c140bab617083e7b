package live

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/tui/keys"
)

// moments are the points of a run that frames are taken at, in its order: what is done to come there from the one before.
func moments() []struct {
	name string
	do   func(b *kitchen)
} {
	return []struct {
		name string
		do   func(b *kitchen)
	}{
		{"begin", func(*kitchen) {}},
		{"measure", func(b *kitchen) { b.press("w") }},
		{"split", func(b *kitchen) { b.press("esc"); b.until("base split") }},
		{"seen", func(b *kitchen) { b.wait(90 * time.Second); b.press("2 l") }},
		{"late", func(b *kitchen) { b.wait(270 * time.Second) }},
		{"rescue", func(b *kitchen) { b.press("3 r") }},
		{"trouble", func(b *kitchen) { b.press("esc x") }},
		{"over", func(b *kitchen) { b.press("r"); b.wait(15 * time.Minute) }},
		{"help", func(b *kitchen) { b.press("?") }},
		{"leave", func(b *kitchen) { b.press("esc q") }},
		{"end", func(b *kitchen) { b.press("esc"); b.until("base put to bed") }},
		{"closed", func(b *kitchen) { b.press("n"); b.write("rustic"); b.press("enter space") }},
	}
}

func TestFramesAtTheTwoSizesEveryTerminalHas(t *testing.T) {
	b := opened(t, shortPath(t), nil)
	for _, at := range moments() {
		at.do(b)
		for _, size := range [][2]int{{80, 24}, {120, 36}} {
			name := fmt.Sprintf("%s_%dx%d", at.name, size[0], size[1])
			b.size(size[0], size[1])
			b.dump(name)
			t.Run(name, func(t *testing.T) {
				golden.RequireEqual(t, []byte(b.frame()))
			})
		}
	}
}

// shortPath moves the test to a folder of its own that still has the golden files, and returns the path of a logbook there. It is the
// same in every run, since it stands on the screen.
func shortPath(t *testing.T) string {
	t.Helper()
	own, err := filepath.Abs("testdata")
	must(t, err)
	shared, err := filepath.Abs("../testdata")
	must(t, err)
	dir := filepath.Join(t.TempDir(), "live")
	must(t, os.Mkdir(dir, 0o700))
	must(t, os.Symlink(own, filepath.Join(dir, "testdata")))
	must(t, os.Symlink(shared, filepath.Join(dir, "..", "testdata")))
	t.Chdir(dir)
	return "pours"
}

func TestNoFrameIsLargerThanItsScreen(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	for _, at := range moments() {
		at.do(b)
		for w := 1; w <= 210; w += 19 {
			for h := 1; h <= 66; h += 5 {
				b.size(w, h)
				lines := strings.Split(b.m.View().Content, "\n")
				if len(lines) > h {
					t.Fatalf("%s: %d lines at %d×%d", at.name, len(lines), w, h)
				}
				for i, l := range lines {
					if got := ansi.StringWidth(l); got > w {
						t.Fatalf("%s: line %d is %d wide at %d×%d", at.name, i, got, w, h)
					}
				}
			}
		}
		b.size(80, 24)
	}
}

func TestTimeStepAndJugsAreInSightAtEverySize(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.wait(30 * time.Second)
	for _, size := range [][2]int{{60, 16}, {80, 24}, {100, 30}, {120, 36}, {200, 60}} {
		b.size(size[0], size[1])
		b.shows("0:30 of 2:00", "step 6 of 28", "gentian", "split", "Space")
	}
	b.size(30, 5)
	b.shows("0:30", "now: blend", "30 × 5")
	b.press("q")
	b.shows("Leave the screen?", "y ► Leave.")
}

func TestHostileNamesNeverReachTheTerminal(t *testing.T) {
	const hostile = "\x1b]52;c;aGk=\x07\u009b2J\u202ehi\r\t漢字"
	b := opened(t, t.TempDir(), func(o *Options) {
		plan, shelf := meadow(t)
		plan.Name = hostile
		plan.Base.Jugs[1].Name = hostile
		o.Sheet = pour.Work(plan, shelf, pour.Hand{})
	})
	b.press("2 n")
	b.write(hostile)
	for range 20 {
		b.wait(time.Second)
		v := b.m.View()
		for _, text := range []string{v.WindowTitle, ansi.Strip(v.Content)} {
			for _, bad := range []string{"\x1b", "\x07", "\u009b", "\u202e", "\r", "\t"} {
				if strings.Contains(text, bad) {
					t.Fatalf("the screen or its title holds %q", bad)
				}
			}
		}
		b.press("enter space")
	}
}

func TestEveryLetterOfTheAlphabetIsFiveEvenRows(t *testing.T) {
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 :.,-–+'" {
		g, ok := glyph(r)
		rows := strings.Split(g, "/")
		if !ok || len(rows) != glyphRows {
			t.Fatalf("%q has %d rows", r, len(rows))
		}
		for _, row := range rows {
			if len(row) != len(rows[0]) {
				t.Errorf("%q is uneven: %s", r, g)
			}
		}
	}
}

func TestEveryKeyOfTheTableActsOrSaysWhy(t *testing.T) {
	for _, k := range keys.Table() {
		if k.Mode != keys.Pouring || k.ID == keys.Quit || k.ID == keys.Suspend {
			continue
		}
		b := opened(t, t.TempDir(), nil)
		b.until("base lye in")
		b.m.status.Clear()
		before := b.m.View().Content
		if b.press(k.Keys[0]); b.m.View().Content == before {
			t.Errorf("%s did nothing and said nothing", k.ID)
		}
	}
}

func TestHelpListsEveryKeyAndWhyItCannotAct(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(120, 200)
	b.press("?")
	for _, k := range keys.Table() {
		if !slices.Contains(keys.OfPour(), k.Mode) {
			continue
		}
		b.shows(k.Help[:min(len(k.Help), 40)])
	}
	b.shows("not now: the base's lye has not met its oils", "not now: this is no scent trial")
}

// BenchmarkFrame measures one second of a run: the look at the clock and the frame it draws. The aim is 3 ms.
func BenchmarkFrame(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			run := opened(b, b.TempDir(), nil)
			run.until("base split")
			run.size(size[0], size[1])
			for b.Loop() {
				run.c.pass(time.Second)
				run.m.Update(tickMsg{})
				if run.m.View().Content == "" {
					b.Fatal("an empty frame")
				}
			}
		})
	}
}

// BenchmarkMark measures a stage that is seen, from the key to the frame: it is on the disk by then.
func BenchmarkMark(b *testing.B) {
	run := opened(b, b.TempDir(), nil)
	run.until("base split")
	must(b, run.m.run.Mark(logbook.Event{Kind: logbook.Noted, Text: "on"}))
	for b.Loop() {
		run.c.pass(time.Second)
		run.m.Update(key("x"))
		run.m.Update(key("b"))
		run.m.View()
		b.StopTimer()
		run.m.Update(key("b"))
		b.StartTimer()
	}
}

func TestTheChanceOfBeingTooThickIsSaidWhileThePlanHolds(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	b.size(120, 36)
	b.shows("past medium then ")
	b.wait(4 * time.Minute)
	if f := b.frame(); strings.Contains(f, "past medium then") {
		t.Errorf("the plan's chance is still said of a run that is late:\n%s", f)
	}
}
