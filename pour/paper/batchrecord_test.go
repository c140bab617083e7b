package paper

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// livedThrough is a pour of the demo plan with everything a record asks for.
func livedThrough(t *testing.T) (logbook.Pour, pour.Sheet, life.Batch) {
	t.Helper()
	plan, shelf := demo(t)
	opened := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	p := logbook.Pour{ID: "2026-12-05-alpine-meadow", Name: plan.Name, Opened: opened, Plan: plan}
	mark := func(min int, e logbook.Event) {
		e.Run = time.Duration(min) * time.Minute
		e.Wall, e.ID = opened.Add(e.Run), fmt.Sprintf("p%d", len(p.Events))
		p.Events = append(p.Events, e)
	}
	on := func(month time.Month, n int, e logbook.Event) {
		e.Life.Day, e.ID = fmt.Sprintf("%d-%02d-%02d", map[bool]int{true: 2026, false: 2027}[month > 6], month, n), fmt.Sprintf("e%d", len(p.Events))
		e.Wall = opened.AddDate(0, 3, 0)
		p.Events = append(p.Events, e)
	}
	mark(0, logbook.Event{Kind: logbook.Opened})
	mark(0, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: "olive oil", Value: 355, Lot: "OL-77"})
	mark(0, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: "coconut oil", Value: 232.1, Lot: "CO-12"})
	mark(0, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: 39})
	mark(1, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)})
	mark(4, logbook.Event{Kind: logbook.Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Light})
	mark(9, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Seizes})
	mark(9, logbook.Event{Kind: logbook.Rescued, Batch: pour.Base, Jug: "poppy", What: "spoon it in"})
	mark(50, logbook.Event{Kind: logbook.Noted, Text: "window open"})
	mark(60, logbook.Event{Kind: logbook.Ended})
	mark(60, logbook.Event{Kind: logbook.Drew, Batch: pour.Base, What: "olive oil", Value: 355, Lot: "OL-99", Pack: "olive-1", Entry: "s1"})
	mark(60, logbook.Event{Kind: logbook.Drew, Batch: pour.Base, What: "castor oil", Value: 30, Lot: "CA-1", Pack: "castor-1", Entry: "s2"})
	mark(60, logbook.Event{Kind: logbook.Drew, Batch: pour.Base, What: "castor oil", Value: 13, Lot: "CA-2", Pack: "castor-2", Entry: "s3"})
	on(12, 6, logbook.Event{Kind: logbook.Unmoulded, What: "firm"})
	on(12, 6, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{MassesG: []float64{150, 151, 152, 153, 154, 155, 156, 157, 158}, CrumbsG: 7, Seconds: 1}})
	on(12, 13, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{145, 146, 147}}})
	on(1, 10, logbook.Event{Kind: logbook.Tested, What: logbook.TestPH, Value: 9.5, Text: "strip"})
	on(1, 11, logbook.Event{Kind: logbook.Lotted, Lot: "261205A", Life: logbook.Life{Count: 8}})
	on(1, 11, logbook.Event{Kind: logbook.Kept, What: logbook.KeptSample, Life: logbook.Life{Count: 1}, Text: "shelf 2"})
	on(1, 16, logbook.Event{Kind: logbook.Sold, What: "market", Life: logbook.Life{Count: 4, Price: "7.50", Currency: "EUR", Audience: "cake people"}})
	return p, pour.Work(plan, shelf, pour.Hand{}), life.Of(p, shelf, pour.Hand{}, day.Of(opened)+60)
}

// Every field that good practice asks for is in the record, with what was logged or room to write it, on one or two pages, and nothing in it says that
// the batch is safe.
func TestTheBatchRecordHasTheFieldsOfGoodPractice(t *testing.T) {
	p, sheet, b := livedThrough(t)
	got := BatchRecord(p, sheet, b, Label{})
	for _, want := range []string{
		"Batch number: 2026-12-05-alpine-meadow", "Label lot: 261205A", "digest " + p.Digest(), "Poured on: 2026-12-05", "Maker: ____",
		"OL-77   343.8 g     355.0 g", "CO-12   232.1 g     232.1 g", "sodium hydroxide (NaOH)", "CA-1, CA-2", "into poppy", "alp rose", "Equipment: ",
		"36 deg C    39 deg C", "all of the base: light, from lye-in",
		"- Base olive oil: planned 343.8 g, was 355.0 g.", "- Base oils: planned 36 deg C, was 39 deg C.", "- Poppy: trouble, seizes.", "- Poppy: changed plan, spoon it in.",
		"- Note, window open.", "- 9 bars, planned 10.", "Others, and what was done: ____",
		"Out of the mould: 2026-12-06, firm", "Cut on: 2026-12-06", "9: 158.00 g", "Crumbs: 7.00 g", "Begun on: 2026-12-06", "Ended on: 2027-01-11",
		"day 7, 2026-12-13: 1: 145.00 g, 2: 146.00 g, 3: 147.00 g", "- 2027-01-10: pH 9.5, strip", "[ ] released   [ ] not released",
		"signed ____", "Sample bars kept, and where: 1 on 2027-01-11, shelf 2", "- 2027-01-11: 8 labelled as lot 261205A",
		"- 2027-01-16: 4 bars sold, at market, 7.50 EUR a bar, for cake people", "9 bars: 4 sold, 0 given away, 1 kept, 1 seconds, 0 missing, 3 left.",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("it does not have %q", want)
		}
	}
	if strings.Contains(got, "coconut oil: planned") {
		t.Error("what was weighed as planned is told as a deviation")
	}
	if !strings.Contains(got, "page 1 of 2") {
		t.Error("a plan of a usual size takes more than two pages")
	}
	if n := strings.Count(strings.ToLower(got), "safe"); n != 1 || !strings.Contains(got, "no claim that the batch is safe") {
		t.Errorf("it speaks of safe %d times", n)
	}
	for i, l := range strings.Split(got, "\n") {
		if len(strings.TrimPrefix(l, "\f")) > 80 {
			t.Errorf("line %d is %d letters long", i+1, len(l))
		}
	}
	if t.Failed() {
		t.Log(got)
	}
}

// A pour of which nothing was logged has room for everything, and a lye that is stopped no mass.
func TestABatchRecordOfNothingHasRoomForAll(t *testing.T) {
	plan, shelf := demo(t)
	plan.Base.SuperfatPercent = -10
	p := logbook.Pour{ID: "x", Name: "x", Opened: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC), Plan: plan}
	sheet := pour.Work(plan, shelf, pour.Hand{})
	if !sheet.LyeStopped() {
		t.Fatal("this lye was to be stopped")
	}
	got := BatchRecord(p, sheet, life.Of(p, shelf, pour.Hand{}, day.Of(p.Opened)), Label{})
	for _, want := range []string{"Label lot: ___", "None was found among what was marked.", "Cut on: ___", "Masses as cut: ___", "Ended on: ___", "pH of a 1 % solution", "Sample bars kept, and where: ___"} {
		if !strings.Contains(got, want) {
			t.Errorf("it does not have %q", want)
		}
	}
	for _, l := range strings.Split(got, "\n") {
		if strings.HasPrefix(l, "sodium hydroxide") && !strings.Contains(l, " -  ____") {
			t.Errorf("%q", l)
		}
	}
	if t.Failed() {
		t.Log(got)
	}
}

// Olive oil of the plan is 343.8 g. A slip is told as what was first read, its lot with no word; what was weighed as planned then differs in nothing.
func TestASlipThatWasWeighedAgainIsNoDeviation(t *testing.T) {
	p, sheet, _ := livedThrough(t)
	weigh := func(id string, g float64, lot string) {
		p.Events = append(p.Events, logbook.Event{ID: id, Kind: logbook.Weighed, Batch: pour.Base, What: "olive oil", Value: g, Lot: lot, Wall: p.Opened})
	}
	weigh("w1", 600.2, "SLIP-1")
	weigh("w2", 343.8, "OL-80")
	got := strings.Join(strings.Fields(BatchRecord(p, sheet, life.Of(p, pour.Shelf{}, pour.Hand{}, day.Of(p.Opened)+60), Label{})), " ")
	for _, want := range []string{"OL-80 343.8 g 343.8 g", "Base olive oil: 343.8 g; first read 355.0 g, then 600.2 g, weighed again."} {
		if !strings.Contains(got, want) {
			t.Errorf("the record lacks %q:\n%s", want, got)
		}
	}
	for _, no := range []string{"SLIP-1", "was 600.2 g", "OL-77"} {
		if strings.Contains(got, no) {
			t.Errorf("the record has %q:\n%s", no, got)
		}
	}
}
