package live

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/screen"
)

// kinds counts the events of a pour that count, as its file has them.
func kinds(b *kitchen) map[logbook.EventKind]int {
	b.Helper()
	p, err := b.book.Read(b.m.ID(), b.shelf)
	must(b, err)
	out := map[logbook.EventKind]int{}
	for _, e := range underway.Replay(*b.m.sheet(), p.Events).Marks {
		out[e.Kind]++
	}
	return out
}

func TestAScriptedRunGoesFromLyeToLogbookOnKeysAlone(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.shows("lye has not met oil; open for 0:00", "step 1 of")
	b.measure("base lye")
	b.write("33,5")
	b.press("enter")
	b.shows("base lye: 33,5 °C")
	b.until("base lye in")
	b.press("z")
	b.wait(19 * time.Second)
	b.press("z")
	b.shows("stick blender 20 s")
	b.until("base split")
	b.press("2 l 4 x b n")
	b.write("a little \x1b[31mred")
	b.press("enter 2 t b")
	b.shows("taken back: gentian thick")
	b.until("base put to bed")
	b.shows("w temperature or weight (1), n note (1)", b.m.ID())
	b.press("o")
	b.write("smooth")
	b.press("enter space q")
	if !b.left {
		t.Error("a pour that is over asked before it was left")
	}
	steps := len(b.m.state.Steps)
	want := map[logbook.EventKind]int{
		logbook.Opened: 1, logbook.Read: 1, logbook.Blended: 1, logbook.Done: steps, logbook.Seen: 1, logbook.Troubled: 1,
		logbook.Noted: 1, logbook.Result: 1, logbook.Ended: 1,
	}
	if diff := cmp.Diff(want, kinds(b)); diff != "" {
		t.Errorf("the file tells otherwise:\n%s", diff)
	}
	checkMarks(b)
}

// checkMarks looks at what stands behind the marks of the scripted run.
func checkMarks(b *kitchen) {
	for _, e := range b.m.state.Marks {
		switch e.Kind {
		case logbook.Seen:
			if e.Jug != "gentian" || e.Stage != chem.Light {
				b.Errorf("seen: %s in %s", e.Stage, e.Jug)
			}
		case logbook.Troubled:
			if e.Jug != "buttercup" || e.What != logbook.Browns {
				b.Errorf("trouble: %s %s", e.Jug, e.What)
			}
		case logbook.Read:
			if e.What != logbook.ReadLye || e.Value != 33.5 {
				b.Errorf("read: %s at %v", e.What, e.Value)
			}
		case logbook.Blended:
			if e.Value != 20 || e.Batch != pour.Base {
				b.Errorf("blended %s for %v s", e.Batch, e.Value)
			}
		case logbook.Noted:
			if strings.ContainsRune(e.Text, '\x1b') || !strings.HasPrefix(e.Text, "a little ") {
				b.Errorf("the note is %q", e.Text)
			}
		}
	}
}

func TestTheClockDriftsByNothingInEightHours(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	start := b.c.wall
	for range 8 * 360 {
		b.c.pass(10*time.Second + 7*time.Millisecond) // a slow machine: ticks are left out and come late
		b.m.run.Tick()
	}
	b.update(tickMsg{})
	min, _ := b.m.elapsed()
	if drift := time.Duration(min*float64(time.Minute)) - b.c.wall.Sub(start); drift.Abs() > time.Microsecond {
		t.Errorf("after eight hours the run is off by %v", drift)
	}
	if want := b.c.wall.Sub(start).Truncate(time.Second); !strings.Contains(b.m.elapsedText(), fmt.Sprintf("%d:%02d:%02d", int(want.Hours()), int(want.Minutes())%60, int(want.Seconds())%60)) {
		t.Errorf("the clock shows %s after %v", b.m.elapsedText(), want)
	}
}

func TestTicksThatAreLostChangeNoTime(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.c.pass(10 * time.Second)
	b.update(tickMsg{})
	if got := b.m.elapsedText(); got != "0:10" {
		t.Errorf("the clock shows %s after 10 s and one tick", got)
	}
	for range 100 {
		b.update(tickMsg{})
	}
	if got := b.m.elapsedText(); got != "0:10" {
		t.Errorf("a hundred ticks at one moment moved the clock to %s", got)
	}
}

func TestASleepingLaptopIsToldAndCanBeTakenBack(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base lye in")
	b.wait(30 * time.Second)
	b.c.sleep(4 * time.Minute)
	b.update(tickMsg{})
	b.shows("the machine slept 4:00; the run went on")
	if got := b.m.elapsedText(); got != "4:30" {
		t.Errorf("the clock shows %s after half a minute and four of sleep", got)
	}
	b.press("j")
	b.shows("No time had passed")
	b.press("y")
	if got := b.m.elapsedText(); got != "0:32" {
		t.Errorf("the clock shows %s once the jump does not count", got)
	}
}

func TestAJugNearItsEndRingsOnceAndIsInTheTitle(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	b.wait(20 * time.Minute)
	if b.rings < 2 || b.rings > 5 {
		t.Errorf("the bell rang %d times for five jugs left standing", b.rings)
	}
	before := b.rings
	b.wait(2 * time.Minute)
	if b.rings != before {
		t.Error("the bell rang again for the same jugs")
	}
	if title := b.m.View().WindowTitle; !strings.HasPrefix(title, "! ") || !strings.Contains(title, "over") {
		t.Errorf("the window's title is %q", title)
	}
	b.shows("what helps", "over for")
}

func TestAJugThatWillNotMakeItIsPouredOutOfItsTurn(t *testing.T) {
	b := opened(t, t.TempDir(), func(o *Options) {
		plan := o.Sheet.Plan
		plan.Swirl.Passes = 1 // every jug by itself, not in rounds
		o.Sheet = pour.Work(plan, o.Shelf, pour.Hand{})
	})
	b.until("base split")
	b.wait(5 * time.Minute)
	b.shows("will not make it")
	b.press("3 r")
	b.shows("What still can be done for 3 poppy", "Pour it now")
	b.press("1")
	if now, _ := b.m.now(); now.Key != "base pour poppy" {
		t.Fatalf("after choosing to pour poppy now, the step is %q", now.Key)
	}
	b.shows("out of its turn")
	b.press("space")
	for _, d := range b.m.left {
		if d.Jug == "poppy" {
			t.Errorf("poppy is poured and %q is still to do", d.Key)
		}
	}
	if got := kinds(b); got[logbook.Rescued] != 1 {
		t.Errorf("the change of plan is not in the file: %v", got)
	}
}

func TestAJugWithoutItsScentOrLeftInItsJugIsPassedOver(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	b.wait(5 * time.Minute)
	b.press("3 r 2")
	for _, d := range b.m.left {
		if d.Jug == "poppy" && d.Kind == pour.TaskScent {
			t.Error("poppy's scent was left out and is still to do")
		}
	}
	b.press("4 d space enter")
	if got := kinds(b); got[logbook.Unpoured] != 0 {
		t.Error("buttercup was left in its jug without an answer")
	}
	b.press("y")
	b.shows("stays in its jug")
	for _, d := range b.m.left {
		if d.Jug == "buttercup" {
			t.Errorf("buttercup stays in its jug and %q is still to do", d.Key)
		}
	}
	b.press("b")
	if got := kinds(b); got[logbook.Unpoured] != 0 {
		t.Error("stepping back did not take buttercup in again")
	}
}

func TestADoublePressOfSpaceFinishesOneStep(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("space")
	b.update(key("space"))
	b.shows("a moment ago")
	if got := kinds(b)[logbook.Done]; got != 1 {
		t.Errorf("%d steps were finished by a double press", got)
	}
	b.press("space")
	if got := kinds(b)[logbook.Done]; got != 2 {
		t.Errorf("%d steps are finished after the next press", got)
	}
}

func TestAKeyThatCannotActSaysWhy(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	for keys, why := range map[string]string{
		"l": "lye has not met its oils", "r": "every jug makes its window", "j": "the clock has not jumped", "g": "this is no scent trial",
		"o": "steps are left", "b": "nothing has been marked", "9": "there is no jug 9", "ä": "does nothing here", "z": "no lye has met oil",
	} {
		b.press(keys)
		b.shows("× ", why)
	}
	b.until("base lye in")
	for keys, why := range map[string]string{"M": "small letters mark", "m l": "was seen at medium already"} {
		b.press(keys)
		b.shows("× ", why)
	}
}

func TestLeavingAsksAndSpaceIsNoAnswer(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("q space")
	if b.left {
		t.Fatal("space left the run")
	}
	b.press("esc q n q q")
	if !b.left {
		t.Error("q q did not leave the run")
	}
	other := opened(t, t.TempDir(), nil)
	other.press("n ctrl+c")
	if !other.left {
		t.Error("ctrl+c did not leave the run")
	}
}

func TestAWeightIsTypedWithItsLotAndARefusedNumberStays(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.measure("base olive oil")
	b.write("1.234,5")
	b.press("enter")
	b.shows("×", "comma and a point")
	for range 7 {
		b.press("backspace")
	}
	b.write("381.5 L 77")
	b.press("enter")
	var got logbook.Event
	for _, e := range b.m.state.Marks {
		if e.Kind == logbook.Weighed {
			got = e
		}
	}
	if got.What != "olive oil" || got.Batch != pour.Base || got.Value != 381.5 || got.Lot != "L 77" {
		t.Errorf("weighed %q at %v, lot %q", got.What, got.Value, got.Lot)
	}
}

func TestAPlanWhoseLyeMustNotBeMixedIsNotPoured(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Base.SuperfatPercent = -3
	book, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	_, err = New(Options{Book: book, Sheet: pour.Weigh(plan, shelf), Shelf: shelf, Clock: newLaptop().now, Session: "a"})
	if err == nil || !strings.Contains(err.Error(), "do not mix this lye") {
		t.Errorf("a lye-heavy plan was opened: %v", err)
	}
}

func TestHelpIsSearchedAndWhatWasSaidIsReadInFull(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.press("? j u m p")
	b.shows("do not count", "search jump")
	if strings.Contains(b.frame(), "stick blender") {
		t.Error("the search left what does not match")
	}
	b.press("esc Q !")
	b.shows("What was said", "the key Q does nothing here")
	b.press("esc w")
	b.write("36,5,5")
	b.press("enter tab")
	b.shows("two decimal signs", "base water in g")
	b.press("backspace backspace tab")
	b.shows("base sodium hydroxide (NaOH) in g, planned ", "base water: 36,5")
}

func TestASizeThatNoTerminalHasIsDrawnInPart(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(5000, 5000)
	lines := strings.Split(b.m.View().Content, "\n")
	if len(lines) != screen.MaxH {
		t.Errorf("%d lines are drawn", len(lines))
	}
	b.shows("step 1 of 28", "? keys")
}
