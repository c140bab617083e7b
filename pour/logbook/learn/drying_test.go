package learn

import (
	"fmt"
	"math"
	"reflect"
	"testing"
	"time"

	"pourbench/chem/cure"
	"pourbench/pour"
	civil "pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// weighs logs three bars of a pour as they dry by the law with that diffusivity, m²/s, on the usual days, to a tenth of a gram.
func weighs(t testing.TB, book logbook.Book, id string, sheet pour.Sheet, diffusivity float64) {
	t.Helper()
	bar, err := sheet.DryingBar(cure.Rack{})
	must(t, err)
	l := [3]float64{bar.Box.ThickMM, bar.Box.WideMM, bar.Box.HighMM}
	tau := 1 / (math.Pi * math.Pi * diffusivity * 86400e6 * (1/(l[0]*l[0]) + 1/(l[1]*l[1]) + 1/(l[2]*l[2])))
	cut := time.Date(2026, 12, 7, 9, 0, 0, 0, time.UTC)
	for i, days := range []int{0, 1, 2, 4, 7, 14, 21, 28, 35, 42} {
		e := logbook.Event{ID: fmt.Sprintf("w%d", i), Kind: logbook.WeighIn, Wall: cut, Life: logbook.Life{Day: cut.AddDate(0, 0, days).Format("2006-01-02")}}
		for bar3 := range 3 {
			g := bar.CutG * (1 + 0.01*float64(bar3)) * (1 - 0.1*(1-bar.Box.Left(float64(days)/tau)))
			e.Life.Bars, e.Life.MassesG = append(e.Life.Bars, bar3+2), append(e.Life.MassesG, math.Round(g*10)/10)
		}
		journal(t, book, id, e)
	}
}

// Three batches that were weighed as they dried say how the next one does, and are kept with what was learnt; a batch that is left out or whose
// weighings were taken back says nothing, and the clock learns what it always did.
func TestBatchesThatWereWeighedTeachTheRack(t *testing.T) {
	book, shelf := filled(t, 4)
	plan, _ := lonely(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	before, _, err := FromBook(book, shelf)
	must(t, err)
	if before.Rack.LnD != (cure.Learnt{}) || len(before.Rack.From)+len(before.Dried) != 0 {
		t.Fatalf("nothing was weighed: %+v", before.Rack)
	}
	list, err := book.List()
	must(t, err)
	for i, d := range []float64{2.8e-11, 3e-11, 3.2e-11} {
		weighs(t, book, list[i].ID, sheet, d)
	}
	learnt := func() Lesson {
		lesson, unread, err := FromBook(book, shelf)
		must(t, err)
		if len(unread) > 0 {
			t.Fatal(unread)
		}
		return lesson
	}
	first, again := learnt(), learnt()
	if !reflect.DeepEqual(first.Rack, again.Rack) || first.Hand.Pours != before.Hand.Pours {
		t.Errorf("worked out %+v, recalled %+v", first.Rack, again.Rack)
	}
	if r := first.Rack.LnD; !r.Known() || r.Batches != 3 || math.Abs(r.Mean-math.Log(3e-11)) > 0.05 {
		t.Errorf("ln D %+v, want about %v", r, math.Log(3e-11))
	}
	if len(first.Dried) != 3 || first.Dried[0].Bars != 3 || first.Dried[0].Weighings != 10 || first.Dried[0].Why != "" {
		t.Errorf("%+v", first.Dried)
	}
	if hand := first.Taught(); !reflect.DeepEqual(hand.Rack, first.Rack) || hand.Clock.Pours != first.Hand.Pours {
		t.Errorf("%+v", hand)
	}
	p, err := book.Read(list[0].ID, shelf)
	must(t, err)
	if d := life.DryingOf(p, shelf, first.Rack); d.Own != 0 || !d.Weighed { // the two others are too few
		t.Errorf("it is forecast from itself: %+v", d)
	}
	if d := life.Of(p, shelf, first.Taught(), civil.Of(time.Date(2027, 2, 1, 0, 0, 0, 0, time.UTC))).Drying; d.Own != 0 || !d.Weighed {
		t.Errorf("the list forecasts it from itself: %+v", d)
	}
	last, err := book.Read(list[3].ID, shelf)
	must(t, err)
	if d := life.DryingOf(last, shelf, first.Rack); d.Own != 3 || d.Weighed {
		t.Errorf("one that was not weighed: %+v", d)
	}
	journal(t, book, list[0].ID, logbook.Event{ID: "x", Kind: logbook.LeftOut, Text: "wrong lye", Wall: time.Now()})
	if r := learnt().Rack.LnD; r.Known() || r.Batches != 2 {
		t.Errorf("with one left out: %+v", r)
	}
}

// A batch that does not follow the law, or that was hardly weighed, is named with the reason and teaches nothing.
func TestABatchThatTeachesNoDryingSaysWhy(t *testing.T) {
	book, shelf := filled(t, 2)
	list, err := book.List()
	must(t, err)
	wall := time.Date(2026, 12, 7, 9, 0, 0, 0, time.UTC)
	weigh := func(id, event, day string, g float64) {
		journal(t, book, id, logbook.Event{ID: event, Kind: logbook.WeighIn, Wall: wall, Life: logbook.Life{Day: day, MassesG: []float64{g}}})
	}
	weigh(list[0].ID, "a", "2026-12-07", 100)
	weigh(list[0].ID, "b", "2026-12-08", 98.9)
	weigh(list[1].ID, "a", "2026-12-07", 100)
	weigh(list[1].ID, "b", "2026-12-14", 104)
	lesson, _, err := FromBook(book, shelf)
	must(t, err)
	if len(lesson.Dried) != 2 || lesson.Rack.LnD.Batches != 0 {
		t.Fatalf("%+v, %+v", lesson.Dried, lesson.Rack)
	}
	for _, d := range lesson.Dried {
		if d.Why == "" || d.Weighings != 2 {
			t.Errorf("%+v", d)
		}
	}
}
