package live

import (
	"slices"
	"time"

	"pourbench/pour/logbook"
)

// Moment is one look at the clocks.
type Moment struct {
	Wall   time.Time
	Steady time.Duration // a clock nobody can set; only differences on the same clock mean anything
	Of     string        // which steady clock: two moments compare only when it is the same; empty: there is none
	Sleeps bool          // the steady clock stands still while the machine sleeps
}

// momentOf is the look at the clocks that an event was stamped with.
func momentOf(e logbook.Event) Moment {
	return Moment{Wall: e.Wall, Steady: e.Steady, Of: e.Of, Sleeps: e.Sleeps}
}

// lastClocked is the last event that was stamped by the clocks of a run. Those of the batch's life after it are dated only.
func lastClocked(events []logbook.Event) (logbook.Event, bool) {
	for _, e := range slices.Backward(events) {
		if !e.Kind.OfLife() && e.Corrects == "" { // a correction stands at the run time of what it corrects
			return e, true
		}
	}
	return logbook.Event{}, false
}

// kept is the moment as finely as files keep it, so that a run taken up again differs by nothing.
func (m Moment) kept() Moment {
	m.Wall, m.Steady = m.Wall.Round(0).Truncate(time.Millisecond), m.Steady.Truncate(time.Microsecond)
	return m
}

// Clock gives the moment. [SystemClock] is the machine's.
type Clock func() Moment

// How jumps are told.
const (
	slackS  = 2 * time.Second  // wall and steady clocks drift apart by less than this between two looks
	asleepS = 5 * time.Second  // a steady clock that moved less than this while the wall moved on stood still
	gapS    = 15 * time.Second // two ticks further apart than this are worth a word
)

// JumpKind says what kind of jump was found between two moments.
type JumpKind string

// The kinds of jump.
const (
	Slept     JumpKind = "slept"         // the machine slept or the program stood still: the run went on
	ClockSet  JumpKind = "clock set"     // the wall clock was set: the run did not follow it
	Reopened  JumpKind = "reopened"      // no terminal was open for a while: the run went on
	Backwards JumpKind = "set backwards" // reopened with an earlier wall clock: what passed is unknown and counts as nothing
)

// jump is a disagreement between the clocks, and what the run made of it.
type jump struct {
	Kind JumpKind
	By   time.Duration // how far the wall clock moved beyond the steady one; for Reopened, how long nobody looked
}

// since is how long the run went on between two moments, and the jump found between them, if any. Lye does not pause: a
// machine that slept adds its sleep. A steady clock that runs beats the wall clock, which may have been set. Without a common
// steady clock, as after a killed terminal on some systems, the wall clock is all there is; it never turns the run back.
//
// On a steady clock that stands still in sleep, sleep and a wall clock set forward look alike when moments are taken every
// second. They count as sleep: a run that is ahead of the truth warns too early, one behind it too late.
func since(a, b Moment) (time.Duration, *jump) {
	wall := b.Wall.Round(0).Sub(a.Wall.Round(0))
	if a.Of == "" || a.Of != b.Of {
		return unwatched(wall)
	}
	steady := max(0, b.Steady-a.Steady)
	ahead := wall - steady
	switch {
	case ahead <= slackS && ahead >= -slackS:
		return steady, nil
	case b.Sleeps && ahead > 0 && steady <= asleepS:
		return wall, &jump{Slept, ahead}
	default:
		return steady, &jump{ClockSet, ahead}
	}
}

func unwatched(wall time.Duration) (time.Duration, *jump) {
	switch {
	case wall < 0:
		return 0, &jump{Backwards, wall}
	case wall > gapS:
		return wall, &jump{Reopened, wall}
	default:
		return wall, nil
	}
}
