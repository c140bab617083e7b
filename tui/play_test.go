package tui

import (
	"strings"
	"testing"
	"time"

	"pourbench/tui/picture"
)

func TestThePourIsWatchedByTheClockNotByTheTick(t *testing.T) {
	m := swirling(t, 120, 36)
	m.Update(key("p"))
	ticket := m.studio.play.ticket
	at := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	m.Update(playMsg{ticket, at})
	if got := m.studio.play.done; got != 1 {
		t.Errorf("after the first tick %d steps are done, want 1", got)
	}
	_, cmd := m.Update(playMsg{ticket, at.Add(5 * pace(m.steps()))}) // ticks were lost
	if got := m.studio.play.done; got != 6 || cmd == nil {
		t.Errorf("five steps later %d are done, want 6", got)
	}
	m.Update(playMsg{ticket - 1, at.Add(time.Hour)})
	if got := m.studio.play.done; got != 6 {
		t.Error("a tick of an earlier run counted")
	}
	m.Update(playMsg{ticket, at.Add(time.Hour)})
	if m.studio.play.running || m.studio.play.done != picture.Whole {
		t.Error("the pour does not end")
	}
}

func TestThePourIsSteppedThroughByHandWithItsWords(t *testing.T) {
	m := swirling(t, 120, 36)
	drive(m, ")")
	if !strings.Contains(frame(m), "the mould is empty") {
		t.Error("the first step does not start from the empty mould")
	}
	drive(m, ")")
	if !strings.Contains(frame(m), "step 1 of") || !strings.Contains(frame(m), "pot 301.6 g: pour level, as the bed") {
		t.Errorf("the first step has no words:\n%s", frame(m))
	}
	drive(m, "f4 f5")
	if m.studio.play.done != picture.Whole {
		t.Error("coming back the pour is not whole")
	}
	drive(m, "(")
	if got := m.studio.play.done; got != m.steps()-1 {
		t.Errorf("one step back from the end is %d of %d", got, m.steps())
	}
}

func TestNothingMovesWhereTheMakerAskedForStillness(t *testing.T) {
	for _, env := range []string{"NO_COLOR=1", "ACCESSIBLE=1"} {
		m := swirling(t, 120, 36)
		m.opt.Environ = []string{env}
		drive(m, "p")
		if m.studio.play.running || !strings.Contains(m.status.Text(), "nothing moves") {
			t.Errorf("%s: the pour moves, status %q", env, m.status.Text())
		}
	}
	for colour, moves := range map[string]bool{"auto": false, "never": false, "always": true, "16": true} {
		m := swirling(t, 120, 36)
		m.opt.Environ, m.opt.Colour = []string{"NO_COLOR=1"}, colour
		if m.still() == "" != moves {
			t.Errorf("--color %s with NO_COLOR: %q", colour, m.still())
		}
	}
}
