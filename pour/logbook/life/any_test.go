package life_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// drawEvent draws an event of a batch's life that its form takes, on one of so many days after the pour.
func drawEvent(t *rapid.T, days int) logbook.Event {
	e := logbook.Event{Kind: rapid.SampledFrom(life.Forms()).Draw(t, "kind").Kind}
	e.Life.Day = (date(12, 5) + day.Day(rapid.IntRange(1, days).Draw(t, "day"))).String()
	switch rapid.IntRange(0, 2).Draw(t, "said") {
	case 0:
		e.Life.Day += fmt.Sprintf(" %02d:30", rapid.IntRange(0, 23).Draw(t, "hour"))
	case 1:
		e.Life.Day = "" // when it was marked
	}
	n := rapid.IntRange(0, 5).Draw(t, "n")
	switch e.Kind {
	case logbook.Sliced, logbook.WeighIn:
		e.Life.MassesG = []float64{120 + float64(n), 121, 122}
		if e.Kind == logbook.WeighIn && n > 2 {
			e.Life.Bars = []int{2, 1, 3}
		}
	case logbook.Sniffed, logbook.Looked, logbook.Tested:
		e.Value, e.What = float64(min(n, 4)), map[logbook.EventKind]string{logbook.Looked: logbook.LookAsh, logbook.Tested: logbook.TestTitration}[e.Kind]
	case logbook.Unmoulded:
		e.What = rapid.SampledFrom(logbook.Firmness()).Draw(t, "firm")
	case logbook.Ticked:
		e.What, e.Life.Market = "notified", "eu"
	case logbook.Lotted:
		e.Lot, e.Life.Count = "L1", n
	case logbook.Failed:
		e.Text = "seized"
	case logbook.Photo:
		e.Life.Path = "a.png"
	case logbook.Sold, logbook.Given, logbook.Kept, logbook.Seconds, logbook.Counted:
		e.Life.Count = n
	}
	return e
}

// drawLife draws events as a file may hold them: marked at times of their own, some corrected, some taken back.
func drawLife(t *rapid.T, days int) []logbook.Event {
	var out []logbook.Event
	for i := range rapid.IntRange(0, 14).Draw(t, "events") {
		e := drawEvent(t, days)
		e.ID, e.Wall = fmt.Sprintf("e%d", i), at(12, 5).Add(time.Duration(i*7)*time.Hour)
		if len(out) > 0 {
			which := out[rapid.IntRange(0, len(out)-1).Draw(t, "which")]
			switch rapid.IntRange(0, 5).Draw(t, "mend") {
			case 0:
				e.Corrects = which.ID
			case 1:
				e = logbook.Event{Kind: logbook.TakenBack, What: which.ID, ID: e.ID, Wall: e.Wall}
			}
		}
		out = append(out, e)
	}
	return out
}

func same() cmp.Options {
	return cmp.Options{cmpopts.IgnoreUnexported(life.Batch{}, cure.Fit{}), cmpopts.EquateNaNs(), cmp.Comparer(alike), cmp.Comparer(time.Time.Equal), cmpopts.EquateEmpty()}
}

// alike reports whether two errors say the same.
func alike(a, b error) bool { return fmt.Sprint(a) == fmt.Sprint(b) }

// Whatever order events come into the file, the batch is the same.
func TestEventsInAnyOrderGiveOneState(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		events := drawLife(t, 4) // many of one moment
		today := date(12, 5) + day.Day(rapid.IntRange(0, 60).Draw(t, "today"))
		of := func(events []logbook.Event) life.Batch {
			return life.Of(logbook.Pour{ID: "x", Name: "x", Opened: pouredAt(), Plan: plan, Events: append(poured(), events...)}, shelf, pour.Hand{}, today)
		}
		want := of(events)
		other := slices.Clone(events)
		rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1)).Shuffle(len(other), func(i, j int) { other[i], other[j] = other[j], other[i] })
		if d := cmp.Diff(want, of(other), same()...); d != "" {
			t.Fatal(d)
		}
	})
}

// An event that was mistyped and corrected gives the batch that it would have given, had it been right from the start.
func TestACorrectedEventCountsAsIfItHadBeenRight(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		events := drawLife(t, 40)
		wrong, right := drawEvent(t, 40), drawEvent(t, 40)
		if right.Life.Day == "" { // a correction that names no day keeps that of what it corrects
			right.Life.Day = "2026-12-20 10:00"
		}
		wrong.ID, wrong.Wall = "wrong", at(12, 20)
		right.ID, right.Wall = "wrong", at(12, 20)
		mended := right
		mended.ID, mended.Wall, mended.Corrects = "mended", at(12, 28), "wrong"
		of := func(more ...logbook.Event) life.Batch {
			all := append(append(poured(), events...), more...)
			return life.Of(logbook.Pour{ID: "x", Opened: pouredAt(), Plan: plan, Events: all}, shelf, pour.Hand{}, date(1, 5))
		}
		got, want := of(wrong, mended), of(right)
		// The names of events differ, and which of two of one moment was marked first.
		got.Events, want.Events, got.WeighIns, want.WeighIns = nil, nil, unnamed(got.WeighIns), unnamed(want.WeighIns)
		if !distinct(append(events, right)) {
			t.Skip("two of one moment")
		}
		if d := cmp.Diff(want, got, same()...); d != "" {
			t.Fatal(d)
		}
	})
}

// distinct reports whether no two events are of one moment.
func distinct(events []logbook.Event) bool {
	seen := map[string]bool{}
	for _, e := range events {
		d := e.Life.Day
		if len(d) == len(time.DateOnly) {
			d += " 12:00"
		}
		if seen[d] {
			return false
		}
		seen[d] = true
	}
	return true
}

func unnamed(list []life.WeighIn) []life.WeighIn {
	out := slices.Clone(list)
	for i := range out {
		out[i].EventID = ""
	}
	return out
}

// Bars are where they are, whatever is logged: what was refused changes nothing, and the sum holds by plain arithmetic.
func TestBarsAreWhereTheyAre(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(rt *rapid.T) {
		b.pours()
		cut, seconds := rapid.IntRange(1, 12).Draw(rt, "cut"), 0
		if cut > 2 {
			seconds = rapid.IntRange(0, 2).Draw(rt, "seconds")
		}
		b.logs(at(12, 6), logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: cut, Seconds: seconds}})
		left, gone := cut-seconds, map[logbook.EventKind]int{logbook.Seconds: seconds}
		missing := 0
		for i := range rapid.IntRange(0, 6).Draw(rt, "steps") {
			kind := rapid.SampledFrom([]logbook.EventKind{logbook.Sold, logbook.Given, logbook.Kept, logbook.Seconds, logbook.Counted}).Draw(rt, "kind")
			n := rapid.IntRange(0, 8).Draw(rt, "n")
			_, err := life.Log(b.book, b.shelf, b.id, count(kind, n), at(12, 7).Add(time.Duration(i)*time.Minute), "t1")
			switch {
			case kind == logbook.Counted:
				if err != nil {
					rt.Fatal(err)
				}
				missing, left = missing+left-n, n
			case n == 0 || n > left:
				if err == nil {
					rt.Fatalf("%d of %d %s", n, left, kind)
				}
			case err != nil:
				rt.Fatal(err)
			default:
				gone[kind] += n
				left -= n
			}
		}
		want := life.Account{
			Known: true, Bars: cut, Sold: gone[logbook.Sold], Given: gone[logbook.Given], Kept: gone[logbook.Kept], Seconds: gone[logbook.Seconds],
			Missing: missing, Left: left,
		}
		if got := b.on(date(12, 31)).Bars; got != want || want.Bars != want.Sold+want.Given+want.Kept+want.Seconds+want.Missing+want.Left {
			rt.Fatalf("%+v, want %+v", got, want)
		}
	})
}

// Even in a file that somebody mended by hand the bars add up, and none are left below nothing.
func TestBarsAddUpInAnyFile(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		a := life.Of(logbook.Pour{ID: "x", Opened: pouredAt(), Plan: plan, Events: append(poured(), drawLife(t, 40)...)}, shelf, pour.Hand{}, date(1, 5)).Bars
		if a.Bars != a.Sold+a.Given+a.Kept+a.Seconds+a.Missing+a.Left || a.Left < 0 {
			t.Fatalf("%+v", a)
		}
	})
}

// The screen writes the day alone and a command nothing, so that its mark counts by its minute: of what is done on one day in whatever mix of
// both, bars are counted in the order they were marked, in whatever order the marks lie in the file.
func TestBarsOfOneDayAreCountedAsTheyWereMarked(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		cut := count(logbook.Sliced, 40)
		cut.ID, cut.Wall, cut.Life.Day = "cut", at(12, 6), "2026-12-06"
		events := []logbook.Event{cut}
		left, sold, missing := 40, 0, 0
		for i := range rapid.IntRange(1, 8).Draw(t, "marks") {
			e := count(rapid.SampledFrom([]logbook.EventKind{logbook.Sold, logbook.Counted}).Draw(t, "kind"), rapid.IntRange(1, 4).Draw(t, "n"))
			e.ID, e.Wall = fmt.Sprintf("e%d", 9-i), at(12, 7).Add(time.Duration(i)*time.Hour)
			e.Life.Day = rapid.SampledFrom([]string{"", "2026-12-07", e.Wall.Format("2006-01-02 15:04")}).Draw(t, "day")
			if e.Kind == logbook.Counted {
				e.Life.Count += left - 5
				missing, left = missing+left-e.Life.Count, e.Life.Count
			} else {
				sold, left = sold+e.Life.Count, left-e.Life.Count
			}
			if rapid.Bool().Draw(t, "mended") { // mistyped, and put right the day after
				wrong := e
				wrong.Life.Count += 3
				events = append(events, wrong)
				e.ID, e.Corrects, e.Wall = "m"+e.ID, wrong.ID, at(12, 8).Add(-time.Duration(i)*time.Hour)
			}
			events = append(events, e)
			if left < 6 {
				break
			}
		}
		rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1)).Shuffle(len(events), func(i, j int) { events[i], events[j] = events[j], events[i] })
		got := life.Of(logbook.Pour{ID: "x", Opened: pouredAt(), Plan: plan, Events: append(poured(), events...)}, shelf, pour.Hand{}, date(12, 9)).Bars
		if want := (life.Account{Known: true, Bars: 40, Sold: sold, Missing: missing, Left: left}); got != want {
			t.Fatalf("%+v, want %+v", got, want)
		}
	})
}

// What is logged on a later day for an earlier one without its hour comes after what was marked on that day itself: 10 - 2, counted 6, 1 more.
func TestWhatIsLoggedLaterComesAtTheEndOfItsDay(t *testing.T) {
	plan, shelf := meadow(t)
	mark := func(id string, wall time.Time, day string, e logbook.Event) logbook.Event {
		e.ID, e.Wall, e.Life.Day = id, wall, day
		return e
	}
	events := []logbook.Event{
		mark("a", at(12, 9), "2026-12-07", count(logbook.Sold, 1)),
		mark("b", at(12, 7).Add(9*time.Hour), "", count(logbook.Counted, 6)),
		mark("c", at(12, 7).Add(8*time.Hour), "2026-12-07", count(logbook.Sold, 2)),
		mark("d", at(12, 6), "", count(logbook.Sliced, 10)),
	}
	got := life.Of(logbook.Pour{ID: "x", Opened: pouredAt(), Plan: plan, Events: append(poured(), events...)}, shelf, pour.Hand{}, date(12, 12)).Bars
	if want := (life.Account{Known: true, Bars: 10, Sold: 3, Missing: 2, Left: 5}); got != want {
		t.Fatalf("%+v, want %+v", got, want)
	}
}
