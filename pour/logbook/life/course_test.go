package life_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

func on(text string) day.Day {
	d, err := day.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func happened(text string) life.Happened { return life.Happened{Yes: true, Day: on(text)} }

// planned is a pour of 5 December, 10:00, for a cut after 18 hours, and four weeks.
func planned() life.Course {
	return life.Course{LyeIn: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), CutAfterH: 18, CureDays: 28}
}

// told is a course in one line a step.
func told(steps []life.Step) string {
	var b strings.Builder
	for _, s := range steps {
		fmt.Fprintf(&b, "%s %s", s.Day, s.Kind)
		if s.Nth > 0 || s.Kind == life.DueWeigh {
			fmt.Fprintf(&b, " %d", s.Nth)
		}
		if !s.From.IsZero() {
			fmt.Fprintf(&b, " %s to %s", s.From.Format("02 15:04"), s.To.Format("02 15:04"))
		}
		if s.Early != s.Day || s.Late != s.Day {
			fmt.Fprintf(&b, ", %s to %s", s.Early, s.Late)
		}
		if s.Done {
			b.WriteString(", done")
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func TestACourseAsItIsPlanned(t *testing.T) {
	const want = `2026-12-06 unmould 06 04:00 to 06 10:00
2026-12-06 cut 06 04:00 to 06 10:00
2026-12-06 weigh 0
2026-12-07 weigh 1
2026-12-08 weigh 2
2026-12-10 weigh 4
2026-12-13 weigh 7
2026-12-13 turn 7
2026-12-20 weigh 14
2026-12-20 turn 14
2026-12-27 weigh 21
2026-12-27 turn 21
2027-01-03 weigh 28
2027-01-03 ready
`
	if d := cmp.Diff(want, told(planned().Steps())); d != "" {
		t.Error(d)
	}
}

func TestACourseFollowsWhatHappened(t *testing.T) {
	c := planned()
	c.Unmoulded, c.Cut = happened("2026-12-06"), happened("2026-12-07")
	c.WeighedOn = []day.Day{on("2026-12-15"), on("2026-12-07"), on("2026-12-09")} // days 0, 2 and 8, the last logged first
	c.Ready = life.Forecast{Known: true, Day: on("2026-12-30"), Early: on("2026-12-26"), Late: on("2027-01-05")}
	const want = `2026-12-06 unmould, done
2026-12-07 cut, done
2026-12-07 weigh 0, done
2026-12-09 weigh 2, done
2026-12-14 turn 7
2026-12-15 weigh 7, done
2026-12-21 weigh 14
2026-12-21 turn 14
2026-12-28 weigh 21
2026-12-28 turn 21
2027-01-04 weigh 28
2027-01-04 ready, 2027-01-04 to 2027-01-05
`
	if d := cmp.Diff(want, told(c.Steps())); d != "" {
		t.Error(d)
	}
}

func TestWhatIsDueNextIsTheLastThatWasDueOrTheNextToCome(t *testing.T) {
	c := planned()
	c.Ready = life.Forecast{Known: true, Day: on("2027-01-03"), Early: on("2026-12-30"), Late: on("2027-01-07")}
	for _, s := range []struct{ today, want string }{
		{"2026-12-05", "2026-12-06 unmould 06 04:00 to 06 10:00\n2026-12-06 cut 06 04:00 to 06 10:00\n2026-12-06 weigh 0\n2026-12-13 turn 7\n2027-01-03 ready, 2027-01-03 to 2027-01-07\n"},
		{"2026-12-09", "2026-12-06 unmould 06 04:00 to 06 10:00\n2026-12-06 cut 06 04:00 to 06 10:00\n2026-12-08 weigh 2\n2026-12-13 turn 7\n2027-01-03 ready, 2027-01-03 to 2027-01-07\n"},
		{"2026-12-20", "2026-12-06 unmould 06 04:00 to 06 10:00\n2026-12-06 cut 06 04:00 to 06 10:00\n2026-12-20 weigh 14\n2026-12-20 turn 14\n2027-01-03 ready, 2027-01-03 to 2027-01-07\n"},
		{"2027-01-09", "2026-12-06 unmould 06 04:00 to 06 10:00\n2026-12-06 cut 06 04:00 to 06 10:00\n2027-01-03 weigh 28\n2027-01-03 ready, 2027-01-03 to 2027-01-07\n"},
	} {
		if d := cmp.Diff(s.want, told(c.Next(on(s.today)))); d != "" {
			t.Errorf("on %s: %s", s.today, d)
		}
	}
	c.Cut, c.WeighedOn = happened("2026-12-06"), []day.Day{on("2026-12-06"), on("2026-12-07")}
	if d := cmp.Diff("2026-12-08 weigh 2\n2026-12-13 turn 7\n2027-01-03 ready, 2027-01-03 to 2027-01-07\n", told(c.Next(on("2026-12-07")))); d != "" {
		t.Error(d)
	}
}

// A cure cannot begin before the cut: while the loaf stands in its mould longer than planned, everything that counts from the cut waits, and
// what holds it up stays where it was planned.
func TestALoafThatIsNotCutYetIsCutTodayAtTheEarliest(t *testing.T) {
	c := planned()
	c.CureDays, c.Today = 3, on("2026-12-19")
	const want = `2026-12-06 unmould 06 04:00 to 06 10:00
2026-12-06 cut 06 04:00 to 06 10:00
2026-12-19 weigh 0
2026-12-20 weigh 1
2026-12-21 weigh 2
2026-12-22 ready
`
	if d := cmp.Diff(want, told(c.Steps())); d != "" || c.CutDay() != c.Today {
		t.Error(c.CutDay(), d)
	}
	c.Cut = happened("2026-12-08")
	if c.CutDay() != on("2026-12-08") {
		t.Errorf("it was cut on %s", c.CutDay())
	}
	c.Cut, c.Today = life.Happened{}, on("2026-12-05")
	if c.CutDay() != on("2026-12-06") {
		t.Errorf("before its day it is cut on %s", c.CutDay())
	}
}

func TestBarsOfMouldsOfTheirOwnAreNotCut(t *testing.T) {
	c := planned()
	c.Whole, c.CureDays, c.Unmoulded = true, 3, happened("2026-12-08")
	if d := cmp.Diff("2026-12-08 unmould, done\n2026-12-08 weigh 0\n2026-12-09 weigh 1\n2026-12-10 weigh 2\n2026-12-11 ready\n", told(c.Steps())); d != "" {
		t.Error(d)
	}
}

func TestWithoutTheHourOfTheLyeThereIsNoCourse(t *testing.T) {
	if steps := (life.Course{CutAfterH: 18, CureDays: 28}).Steps(); len(steps) > 0 {
		t.Error(told(steps))
	}
}

// TestACourseHoldsTogether: in order, one step of a kind and day, no weighing lost, the same for any order in which they were logged, and a
// cut a day later is everything after it a day later.
func TestACourseHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := planned()
		c.CutAfterH, c.CureDays = rapid.Float64Range(1, 240).Draw(t, "cut after"), rapid.Float64Range(0, 1e6).Draw(t, "cure")
		cut := day.Of(c.LyeIn) + day.Day(rapid.IntRange(0, 9).Draw(t, "cut"))
		c.Cut = life.Happened{Yes: rapid.Bool().Draw(t, "is cut"), Day: cut}
		if c.Ready.Known = rapid.Bool().Draw(t, "is forecast"); c.Ready.Known {
			c.Ready.Day = cut + day.Day(rapid.IntRange(-3, 900).Draw(t, "ready"))
		}
		for _, n := range rapid.SliceOfN(rapid.IntRange(-2, 70), 0, 8).Draw(t, "weighed") {
			c.WeighedOn = append(c.WeighedOn, cut+day.Day(n))
		}
		steps := c.Steps()
		seen, lastMade := map[string]bool{}, day.Day(-1)
		for i, s := range steps {
			name := fmt.Sprint(s.Kind, s.Nth)
			if seen[name] || i > 0 && s.Day < steps[i-1].Day {
				t.Fatalf("step %d is there twice or before its time:\n%s", i, told(steps))
			}
			seen[name] = true
			if s.Kind == life.DueWeigh && s.Done {
				lastMade = max(lastMade, s.Day)
			}
		}
		if len(c.WeighedOn) > 0 && lastMade != slices.Max(c.WeighedOn) {
			t.Errorf("the last weighing of %v is not in it:\n%s", c.WeighedOn, told(steps))
		}
		if len(steps) > 2+5+52+52+1 {
			t.Errorf("%d steps", len(steps))
		}
		slices.Reverse(c.WeighedOn)
		if d := cmp.Diff(steps, c.Steps()); d != "" {
			t.Errorf("logged backwards: %s", d)
		}
		if c.Cut.Yes && !c.Ready.Known {
			c.Cut.Day++
			for i := range c.WeighedOn {
				c.WeighedOn[i]++
			}
			for i, s := range c.Steps() {
				if want := steps[i].Day + 1; s.Day != want {
					t.Errorf("%s is on %s, want %s", s.Kind, s.Day, want)
				}
			}
		}
	})
}

func TestAForecastStandsOnWholeDays(t *testing.T) {
	cut := on("2026-12-06")
	for _, c := range []struct {
		low, mid, high float64
		want           string
	}{
		{23.584, 27.963, 32.342, "2027-01-03, 2026-12-30 to 2027-01-07"}, // the worked example of eight weighings, and its calendar: 3 Jan, 30 Dec to 7 Jan
		{-3, 0, 2, "2026-12-06, 2026-12-06 to 2026-12-08"},
		{1, 1e300, math.Inf(1), "2036-12-03, 2026-12-07 to 2036-12-03"},
	} {
		f := life.Around(cut, c.low, c.mid, c.high)
		if got := fmt.Sprintf("%s, %s to %s", f.Day, f.Early, f.Late); !f.Known || got != c.want {
			t.Errorf("%v: %s", c, got)
		}
	}
	if life.Around(cut, math.NaN(), 1, 2).Known {
		t.Error("what is no number is a forecast")
	}
}

func TestAPlannedPourHasTheCourseOfItsSheet(t *testing.T) {
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read("meadow", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	plan.PourAt, plan.Bed.CutAfterH = time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), 18
	sheet := pour.Work(plan, shelf, pour.Hand{})
	c := life.Planning(&sheet)
	if want := on("2026-12-06") + day.Day(math.Round(sheet.Cure.ReadyDay.Mid.V)); !c.Ready.Known || c.Ready.Day != want || c.CutDay() != on("2026-12-06") || c.Whole {
		t.Errorf("%+v, want ready on %s", c, want)
	}
	plan.PourAt = time.Time{}
	sheet = pour.Work(plan, shelf, pour.Hand{})
	if c := life.Planning(&sheet); len(c.Steps()) > 0 {
		t.Error("it has a course without a day")
	}
}
