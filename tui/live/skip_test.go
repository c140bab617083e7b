package live

import (
	"slices"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/keys"
)

// A step that was not done is not waited for: the run goes on to the next and comes to its end; u brings it back, and chosen out of its turn it counts as
// done in the end. Space does not answer the question.
func TestAStepThatWasNotDoneIsNotWaitedFor(t *testing.T) {
	b := alpine(t)
	b.press("N")
	b.shows("nothing is poured without this step")
	b.until("base split")
	now, _ := b.m.now()
	if now.Kind != pour.TaskColour {
		t.Fatalf("after the split comes %s", now.Key)
	}
	b.press("N space")
	b.shows("not done?")
	b.press("n")
	if again, _ := b.m.now(); again.Key != now.Key || kinds(b)[logbook.Skipped] != 0 {
		t.Fatal("it was marked without an answer")
	}
	b.press("N y")
	b.shows("not done")
	if next, _ := b.m.now(); next.Key == now.Key || slices.ContainsFunc(b.m.left, func(d underway.Due) bool { return d.Key == now.Key }) {
		t.Errorf("%s is waited for", next.Key)
	}
	if !b.m.state.Omitted.Stirring(now.Batch, pour.TaskColour, now.Jug) {
		t.Error("its colour counts as in")
	}
	b.press("u")
	b.shows("taken back: " + b.m.title(now.Step) + ", not done")
	if next, _ := b.m.now(); next.Key != now.Key {
		t.Errorf("taken back, %s is next", next.Key)
	}
	for range 99 {
		now, left := b.m.now()
		if !left {
			break
		}
		if why := b.m.cannotSkip(); now.Kind == pour.TaskColour || why != "" {
			must(t, b.m.run.Do(now.Key))
		} else {
			must(t, b.m.run.Mark(logbook.Event{Kind: logbook.Skipped, Step: now.Key}))
		}
		b.m.settle()
	}
	if kinds(b)[logbook.Skipped] == 0 || len(b.m.left) != 0 || b.m.state.Next != len(b.m.state.Steps) {
		t.Errorf("%d are left", len(b.m.left))
	}
	for _, j := range b.m.board.Jugs {
		if j.Verdict != underway.Used {
			t.Errorf("%s is %s", j.Jug, j.Verdict)
		}
	}
	if why := b.m.cannot(keys.Outcome); why != "" {
		t.Errorf("how it came out cannot be typed: %s", why)
	}
}
