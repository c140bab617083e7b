package learn

import (
	"fmt"
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
