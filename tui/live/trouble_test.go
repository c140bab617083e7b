package live

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
)

// row is the line of the screen a jug stands on.
func (b *kitchen) row(jug string) string {
	b.Helper()
	for _, l := range strings.Split(b.frame(), "\n") {
		if len(l) > 1 && strings.Contains(l[1:], " "+jug+" ") && strings.ContainsAny(strings.TrimLeft(l, " ►↓")[:1], "123456789") {
			return l
		}
	}
	b.Fatalf("no row of %s:\n%s", jug, b.frame())
	return ""
}

// A jug in trouble says so in its row whatever its window, and r opens what helps against that; taken back, both go.
func TestAJugInTroubleSaysSoAndWhatHelps(t *testing.T) {
	for what, c := range map[string]struct {
		key  string
		help []string
	}{
		logbook.Rices:     {"r", []string{"smooth the grains", "bottom"}},
		logbook.Seizes:    {"s", []string{"Spoon poppy in", "gloves and goggles stay on"}},
		logbook.Separates: {"p", []string{"pour none of it off", "keep poppy out of the mould"}},
		logbook.Browns:    {"b", []string{"Nothing turns it back"}},
	} {
		b := opened(t, t.TempDir(), nil)
		b.size(120, 36)
		b.until("base split")
		if _, ok := b.m.state.SinceLyeIn("base", b.m.live.Run()); !ok || b.m.cannot("rescue") != "" && strings.Contains(b.row("poppy"), what) {
			t.Fatal("trouble before it was marked")
		}
		b.press("3 x " + c.key)
		stands, not := "! "+what+", ", "no time left"
		if what == logbook.Seizes {
			stands, not = "■ seizes, no time left", "turn in"
		}
		if got := b.row("poppy"); !strings.Contains(got, stands) || strings.Contains(got, not) {
			t.Errorf("%s is not in its row: %q", what, got)
		}
		b.shows("3 poppy " + what + ". What still can be done (r)")
		b.press("r")
		b.shows("What still can be done for 3 poppy")
		text := fmt.Sprint(b.m.dialogs.Top().Tell())
		if what == logbook.Rices && strings.Contains(text, "keep the stick blender out") {
			t.Errorf("the stick blender is to smooth it and to be kept out:\n%s", text)
		}
		for _, w := range c.help {
			if !strings.Contains(text, w) {
				t.Errorf("%s: r does not say %q:\n%s", what, w, text)
			}
		}
		b.press("1")
		if marks := b.m.state.Marks; marks[len(marks)-1].Kind != logbook.Rescued || marks[len(marks)-1].Jug != "poppy" {
			t.Errorf("%s: the way was not noted: %+v", what, marks[len(marks)-1])
		}
		b.press("u u")
		if got := b.row("poppy"); strings.Contains(got, what) {
			t.Errorf("%s taken back is still in its row: %q", what, got)
		}
	}
}

// The mark comes before the alert that comes with it, and its stage stays in its row at 80 columns.
func TestAMarkIsSaidBeforeAnAlert(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.until("base split")
	b.press("2 m")
	b.m.rung = map[int]bool{}
	b.m.alert("4 white: 2 min left")
	b.shows(" 2 gentian: medium; ! 4 white: 2 min left")
	if got := b.row("gentian"); !strings.Contains(got, "medium, ") {
		t.Errorf("its row is %q", got)
	}
	j := b.m.board.Jugs[1]
	if got := b.m.withStage(j, "12 min left, turn in 14 min and some", 30); got != "medium, 12 min left" {
		t.Errorf("in 30 cells it is %q", got)
	}
	j.Verdict = underway.Over
	if got := b.m.withStage(j, "■ over for 3 min, r: what helps", 30); got != "■ medium, over for 3 min" {
		t.Errorf("over it is %q", got)
	}
	b.wait(saidFor + 2*time.Second)
	b.m.alert("5 fern: 2 min left")
	b.hides("medium; !")
	b.shows(" ! 5 fern: 2 min left")
}

// Enter keeps typed lines: pressed once too often it finishes nothing and says which key does.
func TestEnterFinishesNoStep(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	before, _ := b.m.now()
	b.press("enter")
	if now, _ := b.m.now(); now.Key != before.Key {
		t.Errorf("Enter went on to %s", now.Key)
	}
	b.shows("Space finishes the step; Enter only keeps what was typed")
}

// A way out that is taken back leaves nothing: its step is not brought up any more, and what comes before it is still to be done. While it
// stands, the jug is told without what is not in it yet.
func TestAWayOutTakenBackTakesItsStepWithIt(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(120, 36)
	b.until("base split")
	before, _ := b.m.now()
	left := len(b.m.left)
	b.press("3 x s r 1")
	if now, _ := b.m.now(); b.m.chosen == "" || now.Key == before.Key {
		t.Fatalf("the way brought up no step: %+v", now)
	}
	jug := jugSheet(&b.m.sheet().Base, "poppy")
	g := jug.TotalG // of which what goes in later is taken off
	for _, d := range jug.Colourants {
		g -= d.PigmentG + d.CarrierG
	}
	for _, x := range jug.Scents {
		g -= x.G
	}
	now, _ := b.m.now()
	if text := b.m.detail(now.Step); !strings.HasSuffix(text, " poppy holds "+b.m.sheet().Plan.Show.Weight(g)) || g >= jug.TotalG {
		t.Errorf("it is told as %q, without %.1f of %.1f g", text, g, jug.TotalG)
	}
	b.press("u")
	b.hides("out of its turn")
	if now, _ := b.m.now(); now.Key != before.Key {
		t.Errorf("taken back, now is %s, was %s", now.Key, before.Key)
	}
	b.press("u space")
	if s, _ := b.m.state.LastMove("base", "poppy"); s.Done || len(b.m.left) != left-1 {
		t.Errorf("Space marked poppy poured, or %d steps became %d", left, len(b.m.left))
	}
}
