package live

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// drawMark does one thing a maker might do, sensible or not.
func drawMark(t *rapid.T, l Live, m Moment) (Live, []logbook.Event, error) {
	n := rapid.SampledFrom([]pour.BatchName{pour.Base, pour.Icing}).Draw(t, "batch")
	jug := "nobody"
	if b := l.Sheet.Plan.Batch(n); b != nil {
		jug = b.Jugs[rapid.IntRange(0, len(b.Jugs)-1).Draw(t, "jug")].Name
	}
	text := rapid.StringN(0, 20, -1)
	switch rapid.IntRange(0, 11).Draw(t, "mark") {
	case 0, 1, 2, 3:
		return l.next(m)
	case 4:
		return l.Back(m)
	case 5, 6:
		return l.stage(n, jug, chem.Stage(rapid.IntRange(0, chem.Stages-1).Draw(t, "stage")), m)
	case 7:
		return l.Mark(logbook.Event{Kind: logbook.Troubled, Batch: n, Jug: jug, What: rapid.SampledFrom(logbook.Troubles()).Draw(t, "trouble")}, m)
	case 8:
		return l.Mark(logbook.Event{Kind: logbook.Noted, Batch: n, Jug: jug, Text: text.Draw(t, "note")}, m)
	case 9:
		return l.Mark(logbook.Event{Kind: logbook.Read, Batch: n, What: logbook.ReadBatter, Value: rapid.Float64Range(20, 60).Draw(t, "c")}, m)
	case 10:
		return l.Mark(logbook.Event{Kind: logbook.Blended, Batch: n, Value: rapid.Float64Range(1, 60).Draw(t, "s")}, m)
	default:
		return l.Mark(logbook.Event{Kind: logbook.Weighed, What: text.Draw(t, "what"), Value: rapid.Float64Range(0, 900).Draw(t, "g"), Lot: text.Draw(t, "lot")}, m)
	}
}

func TestAnyRunComesBackFromItsFileAsItWas(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet, book := pour.Work(plan, shelf, pour.Hand{}), openTestBook(t)
	rapid.Check(t, func(t *rapid.T) {
		c := newClock()
		live, journal := start(sheet, "a", c.now())
		for range rapid.IntRange(0, 40).Draw(t, "marks") {
			c.pass(time.Duration(rapid.Int64Range(0, 3e11).Draw(t, "pause")))
			if rapid.IntRange(0, 9).Draw(t, "nap") == 0 {
				c.sleep(time.Duration(rapid.Int64Range(0, 1e12).Draw(t, "slept")))
			}
			next, events, err := drawMark(t, live, c.now())
			if err != nil {
				continue
			}
			live, journal = next, append(journal, events...)
		}
		id, err := book.Create(plan, "", c.wall, journal)
		if err != nil {
			t.Fatal(err)
		}
		p, err := book.Read(id, shelf)
		if err != nil {
			t.Fatal(err)
		}
		if err := book.Forget(id); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(journal, p.Events, cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) })); diff != "" {
			t.Fatalf("the events differ:\n%s", diff)
		}
		again, _ := resume(sheet, p.Events, "b", c.now())
		if diff := cmp.Diff(live.State().Steps, Replay(sheet, p.Events).Steps); diff != "" {
			t.Fatalf("the steps differ:\n%s", diff)
		}
		if diff := cmp.Diff(live.State().Sightings, Replay(sheet, p.Events).Sightings); diff != "" {
			t.Fatalf("the sightings differ:\n%s", diff)
		}
		if again.Run() < live.Run() {
			t.Fatalf("the run is at %v, it was at %v", again.Run(), live.Run())
		}
	})
}

func TestTheBoardStandsWhateverHappens(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	rapid.Check(t, func(t *rapid.T) {
		c := newClock()
		live, _ := start(sheet, "a", c.now())
		for range rapid.IntRange(0, 15).Draw(t, "marks") {
			c.pass(time.Duration(rapid.Int64Range(0, 3e11).Draw(t, "pause")))
			if next, _, err := drawMark(t, live, c.now()); err == nil {
				live = next
			}
		}
		b := live.Board(live.Outlook(shelf, pour.Hand{}))
		last := -1e9
		for _, d := range b.Due {
			if b.Elapsed.Known && d.StartMin < last {
				t.Fatalf("%s is due at %v, before the step before it", d.Key, d.StartMin)
			}
			last = d.StartMin
		}
		if want := len(sheet.Base.Jugs) + len(sheet.Icing.Jugs); len(b.Jugs) != want {
			t.Fatalf("%d jugs on the board, want %d", len(b.Jugs), want)
		}
		for _, j := range b.Jugs {
			before := -1.0
			for stage, at := range j.Stages {
				if at.Known && !j.Seen[stage] {
					if at.V < before-1e-9 {
						t.Fatalf("%s reaches %v before the stage before it", j.Jug, chem.Stage(stage))
					}
					before = at.V
				}
			}
		}
	})
}

func TestARunWithAnIcingGoesThroughEveryStep(t *testing.T) {
	for _, name := range []string{"alpine-meadow", "autumn-slab", "first-snow"} {
		plan, shelf := example(t, name)
		sheet := pour.Work(plan, shelf, pour.Hand{})
		c := newClock()
		live, _ := start(sheet, "a", c.now())
		for range live.State().Steps {
			c.pass(time.Minute)
			var err error
			live, _, err = live.next(c.now())
			must(t, err)
		}
		if _, _, err := live.next(c.now()); err == nil {
			t.Errorf("%s: there was a step after the last", name)
		}
		for _, j := range live.Board(live.Outlook(shelf, pour.Hand{})).Jugs {
			if j.Verdict != Used {
				t.Errorf("%s: %s is %s after everything was poured", name, j.Jug, j.Verdict)
			}
		}
	}
}
