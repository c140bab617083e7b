package calendar_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour/calendar"
)

// all is the whole calendar.
func all(string) bool { return true }

// at is the moment of an export, and later the next ones.
var at = time.Date(2026, 12, 14, 18, 30, 0, 0, time.UTC)

// first hands out the sample's cut and weighing, both of revision 28 November.
func first(t *testing.T) ([]calendar.Entry, calendar.Register) {
	t.Helper()
	due := sampleEntries()[:2]
	out, r := calendar.Register{}.Revise(due, all, at.AddDate(0, 0, -10))
	if d := cmp.Diff(due, out); d != "" {
		t.Fatal(d)
	}
	return due, r
}

func TestWhatHasNotChangedKeepsItsNumberAndItsRevision(t *testing.T) {
	due, r := first(t)
	want := sampleEntries()[:2]
	for i := range due {
		due[i].Revised = at // the batch has a newer event, which says nothing new of these
	}
	out, _ := r.Revise(due, all, at)
	if d := cmp.Diff(want, out); d != "" {
		t.Error(d)
	}
}

func TestADateThatMovesRaisesTheNumberAndOtherWordsDoNot(t *testing.T) {
	for _, c := range []struct {
		name  string
		bend  func(*calendar.Entry)
		raise int
	}{
		{"a later start", func(e *calendar.Entry) { e.Start = e.Start.Add(time.Hour) }, 1},
		{"an earlier end", func(e *calendar.Entry) { e.End = e.End.Add(-time.Hour) }, 1},
		{"a whole day instead", func(e *calendar.Entry) {
			e.Start, e.End, e.AllDay = midnight(2026, 12, 6), midnight(2026, 12, 7), true
		}, 1},
		{"another title", func(e *calendar.Entry) { e.What = "Cut it" }, 0},
		{"other words", func(e *calendar.Entry) { e.Words = "" }, 0},
		{"no reminder", func(e *calendar.Entry) { e.Reminded = false }, 0},
	} {
		due, r := first(t)
		c.bend(&due[0])
		due[0].Revised = at
		out, r := r.Revise(due, all, at)
		if out[0].Sequence != c.raise || !out[0].Revised.Equal(at) || out[1].Sequence != 0 || out[1].Revised.Equal(at) {
			t.Errorf("%s: %+v\nand the other: %+v", c.name, out[0], out[1])
		}
		again, _ := r.Revise(due, all, at.Add(time.Hour))
		if d := cmp.Diff(out, again); d != "" {
			t.Errorf("%s: exported again: %s", c.name, d)
		}
	}
}

func TestARevisionNeverGoesBack(t *testing.T) {
	due, r := first(t)
	was := due[0].Revised
	due[0].Start, due[0].Revised = due[0].Start.Add(time.Hour), was.AddDate(0, 0, -9)
	out, _ := r.Revise(due, all, at)
	if out[0].Sequence != 1 || !out[0].Revised.Equal(was) {
		t.Errorf("%+v", out[0])
	}
}

func TestWhatIsGoneIsCancelledUntilItsDaysAreOver(t *testing.T) {
	due, r := first(t) // the cut is over on 6 December, the weighing at the end of the 13th
	day13, day14 := time.Date(2026, 12, 13, 23, 0, 0, 0, time.UTC), time.Date(2026, 12, 14, 0, 1, 0, 0, time.UTC)
	out, after := r.Revise(nil, all, day13)
	want := due[1]
	want.Cancelled, want.Sequence, want.Revised, want.Reminded, want.Remind = true, 1, day13, false, 0
	if d := cmp.Diff([]calendar.Entry{want}, out); d != "" {
		t.Fatal(d)
	}
	again, _ := after.Revise(nil, all, day13.Add(30*time.Minute))
	if d := cmp.Diff(out, again); d != "" {
		t.Errorf("said once more: %s", d)
	}
	if out, left := after.Revise(nil, all, day14); len(out) > 0 || !cmp.Equal(left, calendar.Register{}, cmp.AllowUnexported(calendar.Register{})) {
		t.Errorf("after its day it is still there: %+v, %+v", out, left)
	}
	back, _ := after.Revise(due[1:], all, day13)
	if back[0].Cancelled || back[0].Sequence != 2 || !back[0].Reminded {
		t.Errorf("due again it is %+v", back[0])
	}
}

// A loaf that comes into the calendar late has no reminders of what was due long ago; what was done then is told, and what was told stays.
func TestNothingRemindsOfDaysThatWereOverBefore(t *testing.T) {
	due := sampleEntries()[:2]
	due[0].Done = true
	out, r := calendar.Register{}.Revise(due, all, at)
	if d := cmp.Diff(sampleEntries()[:1], out); d != "" {
		t.Error(d)
	}
	due[1].Start, due[1].End = midnight(2026, 12, 14), midnight(2026, 12, 15)
	if out, r = r.Revise(due, all, at); len(out) != 2 {
		t.Errorf("what is due today is not told: %+v", out)
	}
	if out, _ = r.Revise(due, all, at.AddDate(0, 0, 5)); len(out) != 2 || out[1].Cancelled {
		t.Errorf("five days later it is %+v", out)
	}
}

// TestTheDayOfAnExportIsThatOfTheMakersRoom: late in the evening in the west it is tomorrow in UTC already, and nothing is over.
func TestTheDayOfAnExportIsThatOfTheMakersRoom(t *testing.T) {
	_, r := first(t)
	evening := time.Date(2026, 12, 13, 20, 0, 0, 0, time.FixedZone("west", -8*3600)) // 04:00 of the 14th in UTC
	if out, _ := r.Revise(nil, all, evening); len(out) != 1 {
		t.Errorf("%+v", out)
	}
}

func TestAnExportOfOneBatchSaysNothingOfTheOthers(t *testing.T) {
	_, r := first(t)
	other := sampleEntries()[2]
	other.Batch, other.Sequence = "261210B", 0
	out, r := r.Revise([]calendar.Entry{other}, func(batch string) bool { return batch == "261210B" }, at.AddDate(0, 0, -9))
	if len(out) != 1 || out[0].Batch != "261210B" || out[0].Cancelled {
		t.Fatalf("%+v", out)
	}
	out, _ = r.Revise(append(sampleEntries()[:2], other), all, at.AddDate(0, 0, -9))
	for _, e := range out {
		if e.Sequence != 0 || e.Cancelled {
			t.Errorf("the other batch was not remembered: %+v", e)
		}
	}
	if len(out) != 3 {
		t.Errorf("%d entries", len(out))
	}
}

// TestNumbersOnlyRise: whatever comes, goes and moves from export to export, no name is given one date and number after another date had
// that number, and none goes back.
func TestNumbersOnlyRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		type handed struct {
			start, end time.Time
			cancelled  bool
		}
		said, last := map[string]map[int]handed{}, map[string]int{}
		r := calendar.Register{}
		for n := range rapid.IntRange(1, 8).Draw(t, "exports") {
			due, _ := drawEntries(t, "261205A")
			for i := range due { // only a few days, so that many stay
				due[i].Start = midnight(2026, 12, 20+rapid.IntRange(0, 2).Draw(t, "start"))
				due[i].End, due[i].AllDay = due[i].Start.AddDate(0, 0, 1), true
			}
			var out []calendar.Entry
			out, r = r.Revise(due, all, at.Add(time.Duration(n)*time.Minute))
			for _, e := range out {
				now := handed{e.Start, e.End, e.Cancelled}
				if said[e.Kind] == nil {
					said[e.Kind] = map[int]handed{}
				}
				if before, ok := said[e.Kind][e.Sequence]; ok && before != now {
					t.Errorf("number %d of %s is %v and was %v", e.Sequence, e.Kind, now, before)
				}
				if e.Sequence < last[e.Kind] {
					t.Errorf("%s goes from number %d to %d", e.Kind, last[e.Kind], e.Sequence)
				}
				said[e.Kind][e.Sequence], last[e.Kind] = now, e.Sequence
			}
		}
	})
}
