package live

import (
	"slices"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// A pot that is at medium before the plan's minute is split at once, and what still can be done for a jug of it begins with the mixing's end and the
// split, never with a round. As long as nothing was seen, the split waits for its minute.
func TestABatterThatRunsAheadIsSplitAtOnce(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	c := newClock()
	l, _ := start(sheet, "a", c.now())
	for _, step := range Steps(sheet) {
		if step.Key == "base split" {
			break
		}
		if step.Key == "base mix" {
			c.pass(30 * time.Second)
		}
		next, _, err := l.Do(step.Key, c.now())
		must(t, err)
		l = next
	}
	board := func() Board { return l.Board(l.Outlook(shelf, pour.Hand{})) }
	split := func(b Board) Due {
		i := slices.IndexFunc(b.Due, func(d Due) bool { return d.Key == "base split" })
		return b.Due[i]
	}
	if b := board(); len(b.Hurry) != 0 || split(b).StartMin != plan.Base.SplitAtMin {
		t.Errorf("nothing was seen: hurry %v, split at %v", b.Hurry, split(b).StartMin)
	}
	l, _, err := l.stage(pour.Base, "poppy", chem.Medium, c.now())
	must(t, err)
	b := board()
	if !slices.Equal(b.Hurry, []pour.BatchName{pour.Base}) || split(b).StartMin > 0.5+1e-9 {
		t.Errorf("at medium: hurry %v, split at %v", b.Hurry, split(b).StartMin)
	}
	some := false
	for _, j := range b.Jugs {
		for _, r := range j.Rescues {
			if j.Batch == pour.Base && r.Step != "" && r.Step != "base split" {
				t.Errorf("%s: %s begins with %s", j.Jug, r.Kind, r.Step)
			}
			some = some || r.Step == "base split"
		}
	}
	if !some {
		t.Error("no jug is helped by the split")
	}
	l, _, err = l.Mark(logbook.Event{Kind: logbook.Done, Step: "base split"}, c.now())
	must(t, err)
	b = board()
	for _, j := range b.Jugs {
		for _, r := range j.Rescues {
			if r.Step == "base split" {
				t.Errorf("%s: %s begins with the split that is done", j.Jug, r.Kind)
			}
		}
	}
	if len(b.Hurry) != 0 {
		t.Errorf("split it still hurries: %v", b.Hurry)
	}
}
