package live

import (
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// A pour is written in on the day it was poured and no day to come: it is over, known by that day, and nothing but its lye-in is marked.
func TestAPourIsWrittenInOnAPastDay(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	book, err := logbook.OpenBook(t.TempDir())
	must(t, err)
	now := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	for at, says := range map[time.Time]string{
		now.Add(time.Minute):                        "still to come, it is 2026-12-05 10:00 now; plan it with pourbench season add-pour PLAN --on 2026-12-05",
		now.AddDate(0, 1, 0):                        "2027-01-05 10:00: that is still to come",
		time.Date(26, 11, 14, 9, 0, 0, 0, time.UTC): "write the year in full",
	} {
		if _, err := Enter(book, sheet, at, now, "a"); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("on %s: %v", at, err)
		}
	}
	if list, _ := book.List(); len(list) != 0 {
		t.Fatalf("what was refused is in the book: %v", list)
	}
	id, err := Enter(book, sheet, now.AddDate(0, 0, -21), now, "a")
	must(t, err)
	p, err := book.Read(id, shelf)
	must(t, err)
	s := Replay(sheet, p.Events)
	in, mixed := logbook.LyeInAt(s.Marks, pour.Base)
	if id != "2026-11-14-alpine-meadow" || !mixed || in != 0 || !s.Ended || s.Kept() != 3 || p.Events[1].Day() != "2026-11-14" {
		t.Errorf("%s: %+v", id, p.Events)
	}
	if left, err := UnderWay(book, sheet.Plan, shelf, now); err != nil || len(left) != 0 {
		t.Errorf("%v, under way are %v", err, left)
	}
	if again, err := Enter(book, sheet, now.AddDate(0, 0, -21), now, "a"); err != nil || again == id {
		t.Errorf("%v: a second pour of a day is %s", err, again)
	}
}
