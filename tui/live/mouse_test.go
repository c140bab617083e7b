package live

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"pourbench/pour/logbook"
)

// click clicks where a text begins on the screen.
func (b *kitchen) click(text string) {
	b.Helper()
	for y, l := range strings.Split(b.frame(), "\n") {
		if before, _, ok := strings.Cut(l, text); ok {
			b.update(tea.MouseClickMsg{X: ansi.StringWidth(before), Y: y, Button: tea.MouseLeft})
			return
		}
	}
	b.Fatalf("%q is nowhere to be clicked:\n%s", text, b.frame())
}

func TestStepsJugsAnswersAndKeysAreClicked(t *testing.T) {
	for _, size := range [][2]int{{60, 16}, {80, 24}, {120, 36}, {200, 60}} {
		b := opened(t, t.TempDir(), nil)
		b.size(size[0], size[1])
		b.until("base split")
		for i, jug := range b.m.board.Jugs[:5] {
			b.click(" " + jug.Jug + " ")
			if b.m.jug != i {
				b.Errorf("%v: a click on %s chose jug %d\n%s", size, jug.Jug, b.m.jug+1, b.frame())
			}
			if size[1] < 20 {
				break // only some are in sight
			}
		}
		after := b.m.after()
		b.click("colour gentian")
		if now, _ := b.m.now(); now.Key != after[0].Key || b.m.chosen == "" {
			t.Errorf("%v: after a click on a step the step is %q, want %q", size, now.Key, after[0].Key)
		}
		b.shows("out of its turn")
		b.click("next") // the one whose turn it is
		if b.m.chosen != "" {
			t.Errorf("%v: the next step is chosen out of its turn: %q", size, b.m.chosen)
		}
		done := kinds(b)[logbook.Done]
		b.click("NOW")
		if got := kinds(b)[logbook.Done]; got != done {
			t.Errorf("%v: a click on the step under way finished it", size)
		}
		b.c.pass(quiet)
		b.click("Space done")
		if got := kinds(b)[logbook.Done]; got != done+1 {
			t.Errorf("%v: a click on its key finished %d steps", size, got-done)
		}
		b.update(tea.MouseClickMsg{X: 1, Y: size[1] - 1, Button: tea.MouseRight})
		if got := kinds(b)[logbook.Done]; got != done+1 {
			t.Errorf("%v: another button finished a step", size)
		}
		b.press("3 x")
		b.click("separates")
		if e := b.m.state.Marks[len(b.m.state.Marks)-1]; e.Kind != logbook.Troubled || e.What != logbook.Separates || e.Jug != "poppy" {
			t.Errorf("%v: the last mark is %+v", size, e)
		}
	}
}

func TestTheWheelGoesAlongTheJugsAndNoFurther(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	for range 20 {
		b.update(tea.MouseWheelMsg{Button: tea.MouseWheelDown})
	}
	if last := len(b.m.board.Jugs) - 1; b.m.jug != last {
		t.Errorf("the wheel went to jug %d", b.m.jug+1)
	}
	b.shows("►7")
	for range 20 {
		b.update(tea.MouseWheelMsg{Button: tea.MouseWheelUp})
	}
	if b.m.jug != 0 || b.m.state.Kept() != 0 {
		t.Errorf("the wheel went back to jug %d and marked %d", b.m.jug+1, b.m.state.Kept())
	}
}

func TestTheMouseIsGivenToTheTerminalAndTakenBack(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	mouse := func(want tea.MouseMode) {
		t.Helper()
		if got := b.m.View().MouseMode; got != want {
			t.Errorf("the mouse mode is %v, want %v", got, want)
		}
	}
	mouse(tea.MouseModeCellMotion)
	b.press("p")
	b.shows("p takes it back")
	mouse(tea.MouseModeNone)
	b.press("x")
	mouse(tea.MouseModeNone)
	b.press("esc p")
	mouse(tea.MouseModeCellMotion)
	mouse0 := opened(t, t.TempDir(), func(o *Options) { o.NoMouse = true })
	if mouse0.m.View().MouseMode != tea.MouseModeNone {
		t.Error("told to leave the mouse, the run takes it")
	}
}

// Where there is room for it, how a jug stands is told to its end.
func TestOnAVastScreenNoWordIsCutBesideEmptySpace(t *testing.T) {
	b := alpine(t)
	for _, size := range [][2]int{{200, 60}, {240, 70}} {
		b.size(size[0], size[1])
		b.until("base split")
		b.press("2 l")
		if f := b.frame(); strings.Contains(f, "…") {
			t.Errorf("%v: something is cut:\n%s", size, f)
		}
		b.shows("stiff about")
		b.press("u u")
	}
}
