package learn

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"testing"
	"time"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

func TestAPourThatIsLeftOutTeachesNothingUntilItIsTakenIn(t *testing.T) {
	book, shelf := filled(t, 3)
	pours := func() int {
		lesson, unread, err := FromBook(book, shelf)
		must(t, err)
		if len(unread) > 0 {
			t.Fatalf("not read: %v", unread)
		}
		return lesson.Hand.Pours
	}
	if got := pours(); got != 3 {
		t.Fatalf("learnt from %d pours", got)
	}
	list, err := book.List()
	must(t, err)
	journal(t, book, list[0].ID, logbook.Event{ID: "x", Kind: logbook.LeftOut, Text: "wrong lye", Wall: time.Now()})
	if got := pours(); got != 2 {
		t.Errorf("with one left out: %d pours", got)
	}
	journal(t, book, list[0].ID, logbook.Event{ID: "y", Kind: logbook.TakenIn, Wall: time.Now()})
	if got := pours(); got != 3 {
		t.Errorf("taken in again: %d pours", got)
	}
	must(t, book.Forget(list[0].ID))
	if got := pours(); got != 2 {
		t.Errorf("with one forgotten: %d pours", got)
	}
}

func TestWhatIsRecalledIsWhatIsWorkedOut(t *testing.T) {
	book, shelf := filled(t, 5)
	first, _, err := FromBook(book, shelf)
	must(t, err)
	again, _, err := FromBook(book, shelf)
	must(t, err)
	for i, a := range first.Hand.Traits {
		if b := again.Hand.Traits[i]; a != b {
			t.Errorf("worked out %+v, recalled %+v", a, b)
		}
	}
	slower := shelf
	slower.Scents = append([]pour.Scent(nil), shelf.Scents...)
	slower.Scents[0].Notes = "otherwise"
	if shelfSum(shelf) == shelfSum(slower) {
		t.Error("a changed shelf is not seen")
	}
}

func BenchmarkBookLearnThousandPours(b *testing.B) {
	book, shelf := filled(b, 1)
	src, err := os.ReadFile(book.Path("2026-12-05-alpine-meadow"))
	must(b, err)
	for i := range 1000 {
		must(b, os.WriteFile(book.Path(fmt.Sprintf("copy-%d", i)), src, 0o600))
	}
	start := time.Now()
	_, _, err = FromBook(book, shelf)
	must(b, err)
	b.Logf("the first time, from the files: %v", time.Since(start))
	for b.Loop() {
		_, _, err := FromBook(book, shelf)
		must(b, err)
	}
}

// Whatever a file that can be read says, learning from it neither panics nor gives a hand the clock refuses.
func FuzzLearn(f *testing.F) {
	book, shelf := filled(f, 1)
	list, err := book.List()
	must(f, err)
	src, err := os.ReadFile(book.Path(list[0].ID))
	must(f, err)
	f.Add(string(src))
	f.Add(string(src[:len(src)-20]))
	f.Fuzz(func(t *testing.T, text string) {
		must(t, os.WriteFile(book.Path("fuzzed"), []byte(text), 0o600))
		p, err := book.Read("fuzzed", shelf)
		if err != nil {
			return
		}
		hand := fromLogs(logsOf(p, shelf)).Hand
		if _, err := clock.New(testBatter("balanced", 35), hand); err != nil {
			t.Errorf("the clock does not take what was learnt: %v", err)
		}
	})
}

// What was worked out once is used while nothing has changed, and worked out anew where something has.
func TestWhatWasLearntIsKeptUntilAPourOrTheShelfChanges(t *testing.T) {
	book, shelf := filled(t, 2)
	learn := func() Lesson {
		t.Helper()
		lesson, unread, err := FromBook(book, shelf)
		must(t, err)
		if len(unread) > 0 {
			t.Fatal(unread)
		}
		return lesson
	}
	first := learn()
	kept := readRecall(book, shelfSum(shelf))
	if len(kept.Pours) != 2 {
		t.Fatalf("%d pours are kept", len(kept.Pours))
	}
	for id, p := range kept.Pours { // as if something else had been worked out: only one who recalls it can know
		p.Logs[0].Line.Y += .25
		kept.Pours[id] = p
	}
	keep := func() { writeRecall(book, kept, Lesson{Logs: results(kept)}) }
	keep()
	for _, r := range learn().Logs {
		if math.Abs(r.Observed-first.Logs[0].Observed-.25) > 1e-9 {
			t.Errorf("what was kept is not used: %v, first it was %v", r.Observed, first.Logs[0].Observed)
		}
	}
	list, err := book.List()
	must(t, err)
	journal(t, book, list[0].ID, logbook.Event{ID: "n", Kind: logbook.Noted, Text: "a change", Wall: time.Now()})
	changed := 0
	for _, r := range learn().Logs {
		if r.Observed == first.Logs[0].Observed {
			changed++
		}
	}
	if changed != 1 {
		t.Errorf("%d pours were worked out anew after one has changed", changed)
	}
	keep()
	other := shelf
	other.Oils = append([]pour.Oil(nil), shelf.Oils...)
	other.Oils[0].Name += "!"
	lesson, _, err := FromBook(book, other)
	must(t, err)
	for _, r := range lesson.Logs {
		if r.Observed != first.Logs[0].Observed {
			t.Error("with another shelf what was kept is used")
		}
	}
	book.Keep(recallName, []byte("not ours"))
	for _, r := range learn().Logs {
		if r.Observed != first.Logs[0].Observed {
			t.Error("with another file in its place the pours are not worked out")
		}
	}
}

// results are the logs of what is kept, with their lines.
func results(r recall) []LogResult {
	var out []LogResult
	for _, p := range r.Pours {
		for _, l := range p.Logs {
			out = append(out, LogResult{Log: l})
		}
	}
	return out
}

func TestAPourThatCannotBeReadIsSaidAndTheOthersTeach(t *testing.T) {
	book, shelf := filled(t, 3)
	list, err := book.List()
	must(t, err)
	must(t, os.WriteFile(book.Path(list[1].ID), []byte("format = 1\nnonsense = 2\n"), 0o600))
	src, err := os.ReadFile(book.Path(list[2].ID))
	must(t, err)
	must(t, os.WriteFile(book.Path(list[2].ID), bytes.ReplaceAll(src, []byte(`"olive"`), []byte(`"unheard-of"`)), 0o600))
	lesson, unread, err := FromBook(book, shelf)
	must(t, err)
	if lesson.Hand.Pours != 1 || len(unread) != 2 || unread[0].ID != list[1].ID && unread[1].ID != list[1].ID {
		t.Errorf("learnt from %d pours, not read: %v", lesson.Hand.Pours, unread)
	}
}
