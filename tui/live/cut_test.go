package live

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
)

// poured pours the meadow, with trims and a slice in its cut plan, and ends the pour; a day later its loaf is cut.
func poured(t *testing.T) (*kitchen, string) {
	t.Helper()
	dir := t.TempDir()
	b := opened(t, dir, func(o *Options) {
		plan := o.Sheet.Plan.Clone()
		plan.Cut.TrimAMM, plan.Cut.TrimBMM, plan.Cut.SliceMM, plan.Cut.KerfMM, plan.Cut.Lay = 3, 3, 5, 0.6, pour.LaySide
		o.Sheet = pour.Work(plan, o.Shelf, pour.Hand{})
	})
	b.until("base put to bed")
	b.press("space")
	b.c.sleep(24 * time.Hour)
	return b, dir
}

// atCut opens the cut of a pour.
func atCut(t *testing.T, b *kitchen, dir string, change func(*Options)) *kitchen {
	t.Helper()
	k := opened(t, dir, func(o *Options) {
		o.Resume, o.Cut, o.Session, o.Clock, o.Sheet = b.m.ID(), true, "b", b.c.now, pour.Sheet{}
		if change != nil {
			change(o)
		}
	})
	k.c = b.c
	return k
}

// cutTo finishes steps up to the one before a key.
func (b *kitchen) cutTo(key string) {
	b.Helper()
	for range 60 {
		if now, ok := b.m.now(); !ok || now.Key == key {
			return
		}
		b.press("space")
	}
	b.Fatalf("there is no step %s", key)
}

func TestALoafIsCutADayLaterAndEveryBarIsWeighed(t *testing.T) {
	b, dir := poured(t)
	before := len(b.m.live.Events)
	k := atCut(t, b, dir, nil)
	k.shows("not begun; 25 h since lye met oil, planned 24 h", "Press a corner", "lay the marks", "bar 1", "trims", "sample slice")
	k.press("space")
	k.shows("since the cut began", "Mark from end A at")
	k.press("space")
	k.shows("Cut 1 of", "on its side", "wipe the wire")
	k.cutTo("cut set aside")
	k.shows("Set trims and sample slice aside")
	k.press("space")
	k.shows("Weigh bar 1", "Type its grams")
	k.press("1 4 5 , 5 enter")
	k.shows("bar 1  ", "→ 145.5 g", "Weigh bar 2")
	k.press("space")
	k.shows("What it really weighs", "bar 2 in g")
	k.press("0 enter")
	k.shows("a bar of nothing is none")
	k.press("esc space")
	k.press("1 x enter")
	k.shows("only digits")
	k.press("esc")
	k.press("1 5 enter")
	k.shows("times the plan", "bar 2: 15 g")
	k.press("u")
	k.shows("taken back: bar 2")
	k.press("1 5 0 enter")
	state := k.m.state
	if got := underway.Masses(k.m.sheet(), state.Marks); !got[0].TrueG.Known || got[0].TrueG.V != 145.5 || got[1].TrueG.V != 150 || got[2].TrueG.Known {
		t.Errorf("the true masses are %+v", got[:3])
	}
	// what happened at the pour stands as it was, and its own replay knows nothing of the cut
	again := underway.Replay(*k.m.sheet(), k.m.live.Events)
	if again.Next != len(again.Steps) || !again.Ended || len(k.m.live.Events) <= before {
		t.Errorf("the pour stands at %d of %d, ended %v", again.Next, len(again.Steps), again.Ended)
	}
	third := atCut(t, k, dir, func(o *Options) { o.Session = "c" })
	if third.m.state.Next != state.Next {
		t.Errorf("taken up again it stands at step %d, it was left at %d", third.m.state.Next, state.Next)
	}
	for third.m.state.Next < len(third.m.state.Steps) {
		if now, _ := third.m.now(); strings.HasPrefix(now.Name, "weigh") {
			third.press("9 0 enter")
			continue
		}
		third.press("space")
	}
	third.shows("pieces weighed", "planned", "the cut is over")
	third.press("space")
	third.shows("11 of 11 pieces weighed", "logbook cured", "the cut is over")
	third.press("q")
	if !third.left {
		t.Error("an ended cut asks before it is left")
	}
}

// Bad input: what belongs to jugs is refused with a reason, nothing of the pour can be taken back, and nothing is forgotten.
func TestAtTheCutNothingOfThePourCanBeTouched(t *testing.T) {
	b, dir := poured(t)
	k := atCut(t, b, dir, nil)
	for _, name := range strings.Fields("1 9 tab left e T x r d z g") {
		k.press(name)
		if k.m.dialogs.Top() != nil || k.m.status.Text() == "" {
			t.Errorf("%s: %q", name, k.m.status.Text())
		}
	}
	k.press("u")
	k.shows("nothing has been marked yet")
	if err := k.m.run.Forget(); err == nil || !strings.Contains(err.Error(), "its loaf is being cut") {
		t.Errorf("a poured loaf can be forgotten at its cut: %v", err)
	}
	k.press("q")
	k.shows("Leave the screen?", "End it here")
	k.press("y")
	if _, err := k.book.Read(k.m.ID(), k.shelf); err != nil || !k.left {
		t.Errorf("after leaving: %v, left %v", err, k.left)
	}
	for w := 10; w < 200; w += 23 {
		for h := 3; h < 60; h += 11 {
			k.size(w, h)
			for _, line := range strings.Split(strings.TrimSuffix(k.frame(), "\n"), "\n") {
				if n := len([]rune(line)); n > max(w, 20) {
					t.Fatalf("%d × %d: a line of %d: %q", w, h, n, line)
				}
			}
		}
	}
}

func TestATrialAndAPourThatIsNotThereHaveNoCut(t *testing.T) {
	dir := t.TempDir()
	b := opened(t, dir, func(o *Options) { o.TrialScent = "alp-rose" })
	b.until("base scent scented")
	_, err := New(Options{Book: b.book, Resume: b.m.ID(), Cut: true, Shelf: b.shelf, Clock: b.c.now, Session: "b"})
	if err == nil || !strings.Contains(err.Error(), "it was a trial") {
		t.Errorf("the cut of a trial: %v", err)
	}
	if _, err = New(Options{Book: b.book, Resume: "nowhere", Cut: true, Shelf: b.shelf, Clock: b.c.now}); err == nil || !strings.Contains(err.Error(), "nowhere") {
		t.Errorf("the cut of nothing: %v", err)
	}
}

func TestACutIsToldInLines(t *testing.T) {
	b, dir := poured(t)
	v := &voice{kitchen: atCut(t, b, dir, func(o *Options) { o.Plain, o.Keys = true, keys.BuiltIn().Spoken() })}
	v.talk = &talk{m: v.m, out: lines.NewPaper(&v.said)}
	v.talk.welcome()
	if said := v.said.String(); !strings.Contains(said, "The cut of ") || !strings.Contains(said, "Press a corner") {
		t.Errorf("it begins with %q", said)
	}
	for range 40 {
		if now, _ := v.m.now(); strings.HasPrefix(now.Name, "weigh") {
			break
		}
		v.say("done")
	}
	for said, want := range map[string]string{"12,3,4": "12,3,4", "jugs": "none of", "done": "say what bar 1 weighs", "3 light": "type its number alone", "light": "nothing is left in jugs"} {
		if got := v.say(said); !strings.Contains(got, want) {
			t.Errorf("%q is answered with %q, want %q", said, got, want)
		}
	}
	if got := v.say("144,5"); !strings.Contains(got, "bar 1: 144,5 g") || !strings.Contains(got, "bar 2") {
		t.Errorf("a weight is answered with %q", got)
	}
	if got := v.say("pieces"); !strings.Contains(got, "true 144.5 g") || !strings.Contains(got, "1 of ") {
		t.Errorf("the pieces are told as %q", got)
	}
	if got := v.say("undo"); !strings.Contains(got, "taken back: bar 1") {
		t.Errorf("undo is answered with %q", got)
	}
}

func TestFramesOfTheCut(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		t.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(t *testing.T) {
			b, dir := poured(t)
			k := atCut(t, b, dir, nil)
			k.cutTo("cut weigh bar 1")
			k.press("1 4 9 enter")
			k.size(size[0], size[1])
			k.dump(fmt.Sprintf("cut-%d", size[0]))
			k.shows("Weigh bar 2", "bar 1  ", "→ 149.0 g", "sample slice", "1 of ", "Planned")
		})
	}
}

// The marks of a cut are lines of the file like any other.
func TestTheMarksOfTheCutAreInTheFile(t *testing.T) {
	b, dir := poured(t)
	k := atCut(t, b, dir, nil)
	k.cutTo("cut weigh bar 1")
	k.press("1 4 9 enter")
	p, err := k.book.Read(k.m.ID(), k.shelf)
	must(t, err)
	marks := logbook.Standing(p.Events)
	last := marks[len(marks)-1]
	if last.Kind != logbook.Cut || last.Value != 149 || last.Step != "cut weigh bar 1" || last.Day() != "2026-12-06" {
		t.Errorf("the last mark is %+v", last)
	}
}
