package live

import (
	"regexp"
	"testing"
	"time"

	"pourbench/pour"
	act "pourbench/pour/script"
)

// rounds is the demo without its icing, poured in three rounds by a technique.
func rounds(t *testing.T, technique act.Technique) (pour.Sheet, pour.Shelf) {
	t.Helper()
	plan, shelf := example(t, "alpine-meadow")
	plan.Icing, plan.Swirl = nil, pour.Swirl{Technique: string(technique), Passes: 3}
	return pour.Work(plan, shelf, pour.Hand{}), shelf
}

// A jug poured in rounds is used up by its last alone: until then it has a next turn, and the last one decides whether it is too late.
func TestAJugOfSeveralRoundsIsUsedUpByItsLast(t *testing.T) {
	for _, technique := range []act.Technique{act.Drop, act.Hanger, act.Pot, act.Spooned} {
		sheet, shelf := rounds(t, technique)
		c := newClock()
		live, _ := start(sheet, "a", c.now())
		for live.State().Next < len(live.State().Steps) {
			at := live.State().Next
			s, board := live.State(), live.Board(live.Outlook(shelf, pour.Hand{}))
			for _, j := range board.Jugs {
				first, last := turns(board.Due, j.Jug)
				if s.Poured(j.Batch, j.Jug) != (first == nil) {
					t.Errorf("%s: after %d steps %s is used up: %v", technique, at, j.Jug, s.Poured(j.Batch, j.Jug))
				}
				if first != nil && (j.TurnMin.V != first.StartMin || j.LastMin.V != last.StartMin) {
					t.Errorf("%s: after %d steps %s has its turn at %v and the last at %v, want %v and %v",
						technique, at, j.Jug, j.TurnMin.V, j.LastMin.V, first.StartMin, last.StartMin)
				}
			}
			c.pass(20 * time.Second)
			live, _, _ = live.next(c.now())
		}
	}
}

// turns are the first and the last step still to be done that move a jug, by the words of the step: its own name and grams, or all of them.
func turns(due []Due, jug string) (first, last *Due) {
	for i, d := range due {
		if all := d.Kind == "turn" || d.Kind == "pour out" || d.Kind == "draw the wire"; d.Tell == "" || !all && !regexp.MustCompile(jug+` \d`).MatchString(d.Tell) {
			continue
		}
		if first == nil {
			first = &due[i]
		}
		last = &due[i]
	}
	return first, last
}

// A window that ends between a jug's next turn and its last is missed.
func TestAJugIsTooLateByItsLastTurn(t *testing.T) {
	sheet, shelf := rounds(t, act.Drop)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	for next(live).Name != "pour, round 2 of 3" {
		live, _, _ = live.next(c.now())
	}
	o := live.Outlook(shelf, pour.Hand{})
	board := live.Board(o)
	for i, j := range board.Jugs {
		for _, c := range []struct {
			ends float64
			want bool
		}{{(j.TurnMin.V + j.LastMin.V) / 2, true}, {j.LastMin.V + 5, false}, {j.LastMin.V - 0.01, true}} {
			o.Jugs[i].Window = pour.Window{To: pour.Know(c.ends)}
			if got := live.Board(o).Jugs[i]; (got.Verdict == TooLate) != c.want {
				t.Errorf("%s with turns from %.2f to %.2f min and a window to %.2f is %s", j.Jug, j.TurnMin.V, j.LastMin.V, c.ends, got.Verdict)
			} else if c.want && (got.Rescues[0].Kind != PourNow || got.Rescues[0].Step != next(live).Key) {
				t.Errorf("to rescue %s %+v is said, with %s to be done next", j.Jug, got.Rescues, next(live).Key)
			}
		}
	}
}

// next is the first step still to be done.
func next(l Live) Step { return l.State().Steps[l.State().Next].Step }

// What lies in the pot or the mould with the others cannot be poured first, spooned in or left out: what helps is to go on.
func TestWhatLiesWithTheOthersIsHelpedByGoingOn(t *testing.T) {
	for technique, steps := range map[act.Technique]string{act.Pot: "turn", act.Hanger: "draw the wire"} {
		sheet, shelf := rounds(t, technique)
		c := newClock()
		live, _ := start(sheet, "a", c.now())
		for next(live).Name != steps {
			live, _, _ = live.next(c.now())
		}
		c.pass(4 * time.Hour)
		live, _ = live.Tick(c.now())
		for _, j := range live.Board(live.Outlook(shelf, pour.Hand{})).Jugs {
			if j.Verdict != Over || len(j.Rescues) != 1 || j.Rescues[0].Kind != GoOn || j.Rescues[0].Step != next(live).Key {
				t.Errorf("%s: %s is %s, and what helps is %+v", technique, j.Jug, j.Verdict, j.Rescues)
			}
		}
	}
}
