package live

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour/logbook"
)

func TestSinceFollowsTheClockThatTellsTheTruth(t *testing.T) {
	at := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	m := func(wall, steady time.Duration, of string, sleeps bool) Moment {
		return Moment{Wall: at.Add(wall), Steady: steady, Of: of, Sleeps: sleeps}
	}
	for _, x := range []struct {
		name string
		a, b Moment
		want time.Duration
		jump JumpKind
	}{
		{"both agree", m(0, 0, "p", true), m(time.Minute, time.Minute, "p", true), time.Minute, ""},
		{"the wall drifts a little", m(0, 0, "p", true), m(61*time.Second, time.Minute, "p", true), time.Minute, ""},
		{"the laptop slept", m(0, 0, "p", true), m(20*time.Minute, time.Second, "p", true), 20 * time.Minute, Slept},
		{"the wall clock was set forward while time went on", m(0, 0, "p", true), m(65*time.Minute, 5*time.Minute, "p", true), 5 * time.Minute, ClockSet},
		{"the wall clock was set back", m(0, 0, "p", true), m(-59*time.Minute, time.Minute, "p", true), time.Minute, ClockSet},
		{"set forward, on a clock that goes on in sleep", m(0, 0, "boot", false), m(time.Hour, time.Second, "boot", false), time.Second, ClockSet},
		{"slept, on a clock that goes on in sleep", m(0, 0, "boot", false), m(time.Hour, time.Hour, "boot", false), time.Hour, ""},
		{"another process", m(0, 300*time.Second, "p", true), m(10*time.Minute, 0, "q", true), 10 * time.Minute, Reopened},
		{"another process at once", m(0, 300*time.Second, "p", true), m(3*time.Second, 0, "q", true), 3 * time.Second, ""},
		{"another process and the clock set back", m(0, 0, "p", true), m(-time.Hour, 0, "q", true), 0, Backwards},
		{"no steady clock", m(0, 0, "", true), m(time.Minute, 0, "", true), time.Minute, Reopened},
	} {
		got, jump := since(x.a, x.b)
		kind := JumpKind("")
		if jump != nil {
			kind = jump.Kind
		}
		if got != x.want || kind != x.jump {
			t.Errorf("%s: %v and jump %q, want %v and %q", x.name, got, kind, x.want, x.jump)
		}
	}
}

func TestTheRunClockDriftsByNothingOverEightHours(t *testing.T) {
	sheet, _ := lonely(t)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	ticks := 0
	for c.steady < 8*time.Hour {
		c.pass(time.Second)
		c.wall = c.wall.Add(time.Duration(ticks%3-1) * 100 * time.Millisecond) // a wall clock that is nudged to and fro
		ticks++
		live, _ = live.Tick(c.now())
	}
	if live.Run() != 8*time.Hour {
		t.Errorf("after 8 h the run clock says %v", live.Run())
	}
	if n := len(live.Events); n != 1 {
		t.Errorf("%d events were journaled by ticks alone", n)
	}
}

func TestTheRunNeverGoesBackWhateverTheClocksDo(t *testing.T) {
	sheet, _ := lonely(t)
	rapid.Check(t, func(t *rapid.T) {
		c := newClock()
		live, _ := start(sheet, "a", c.now())
		for range rapid.IntRange(1, 30).Draw(t, "looks") {
			before := live.Run()
			c.wall = c.wall.Add(time.Duration(rapid.Int64Range(-1e13, 1e13).Draw(t, "wall")))
			c.steady += time.Duration(rapid.Int64Range(-1e9, 1e12).Draw(t, "steady"))
			c.of = rapid.SampledFrom([]string{"p", "q", ""}).Draw(t, "clock")
			c.sleeps = rapid.Bool().Draw(t, "sleeps")
			if live, _ = live.Tick(c.now()); live.Run() < before {
				t.Fatalf("the run went from %v back to %v", before, live.Run())
			}
		}
	})
}

func TestAJumpThatWasNoneCanBeTakenBack(t *testing.T) {
	sheet, _ := lonely(t)
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	c.pass(time.Minute)
	live, _ = live.Tick(c.now())
	c.pass(time.Second)
	c.sleep(time.Hour) // the wall clock was set forward: from here it cannot be told from sleep
	live, events := live.Tick(c.now())
	if live.Run() != time.Hour+time.Minute+time.Second || len(events) != 1 {
		t.Fatalf("the run says %v after %d events", live.Run(), len(events))
	}
	live, _, err := live.Discount(events[0].ID, c.now())
	must(t, err)
	if live.Run() != time.Minute+time.Second || len(live.State().Jumps) != 0 {
		t.Errorf("the run says %v and shows %d jumps", live.Run(), len(live.State().Jumps))
	}
	if _, _, err := live.Discount(events[0].ID, c.now()); err == nil {
		t.Error("a jump was taken back twice")
	}
}

// The seconds of a jump come back from a file as a float. What is taken off the run is as fine as the file keeps it, else a run taken up
// again would differ by a nanosecond.
func TestAJumpThatIsTakenBackLeavesTheRunWhatTheFileSays(t *testing.T) {
	sheet, _ := lonely(t)
	for ms := range 400 {
		c := newClock()
		live, _ := start(sheet, "a", c.now())
		c.pass(time.Second)
		slept := time.Duration(30_001+37*ms) * time.Millisecond
		c.sleep(slept)
		live, events := live.Tick(c.now())
		live, _, err := live.Discount(events[0].ID, c.now())
		must(t, err)
		if live.Run() != time.Second {
			t.Fatalf("a sleep of %v taken back leaves the run at %d ns", slept, live.Run())
		}
	}
}

func TestAGapBetweenTicksIsShownOnAClockThatGoesOnInSleep(t *testing.T) {
	sheet, _ := lonely(t)
	c := newClock()
	c.sleeps = false
	live, _ := start(sheet, "a", c.now())
	c.pass(time.Second)
	live, _ = live.Tick(c.now())
	c.pass(7 * time.Minute)
	live, events := live.Tick(c.now())
	if live.Run() != 7*time.Minute+time.Second || len(events) != 1 || events[0].What != string(Slept) {
		t.Errorf("the run says %v, told: %v", live.Run(), events)
	}
}

func TestTheMachinesClockGoesOn(t *testing.T) {
	now := SystemClock("a")
	a := now()
	time.Sleep(20 * time.Millisecond)
	if passed, jump := since(a, now()); passed < 10*time.Millisecond || passed > time.Minute || jump != nil {
		t.Errorf("20 ms took %v, jump %v", passed, jump)
	}
}

// A weight that was corrected after the pour stands at the minute it was weighed at: the run's clock goes on from the mark before the correction.
func TestACorrectionTurnsNoClockBack(t *testing.T) {
	events := []logbook.Event{{ID: "a", Kind: logbook.Weighed}, {ID: "b", Kind: logbook.Done, Run: time.Hour}, {ID: "c", Kind: logbook.Weighed, Corrects: "a"}}
	if e, ok := lastClocked(events); !ok || e.ID != "b" {
		t.Errorf("the clock goes on from %q", e.ID)
	}
}
