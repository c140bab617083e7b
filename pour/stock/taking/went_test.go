package taking_test

import (
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/stock/taking"
)

// What was weighed went in as it was weighed, all else to the gram of the plan, and nothing is lost of which a scale shows nothing.
func TestWhatWentInIsWhatWasWeighed(t *testing.T) {
	plan, shelf := example(t)
	plan.Show.ScaleStepG = 5
	sheet := pour.Weigh(plan, shelf)
	planned := sheet.AsPlanned(shelf)
	if went, n := taking.Went(&sheet, shelf, nil); went != nil || n != 0 {
		t.Errorf("%d weighed where nothing was: %v", n, went)
	}
	oil, jug := sheet.Base.Weighings()[0], pour.Weighing{}
	for _, w := range sheet.Base.Weighings() {
		if w.Kind == pour.WeighColour && w.Jug != "" {
			jug = w
		}
	}
	marks := []logbook.Event{
		{Kind: logbook.Weighed, Batch: pour.Base, What: oil.Name, Value: 555},
		{Kind: logbook.Weighed, Batch: pour.Base, Jug: jug.Jug, What: jug.Name, Value: 1.25},
	}
	went, n := taking.Went(&sheet, shelf, marks)
	if n != 2 || len(went) != len(planned) {
		t.Fatalf("%d weighed, %d of %d went in", n, len(went), len(planned))
	}
	changed := map[float64]int{}
	for i, w := range went {
		p := planned[i]
		if w.Batch != p.Batch || w.Jug != p.Jug || w.Kind != p.Kind || w.Material != p.Material {
			t.Errorf("%+v stands in the place of %+v", w, p)
		}
		if w.G != p.G {
			changed[w.G]++
		}
	}
	if len(changed) != 2 || changed[555] != 1 || changed[1.25] != 1 {
		t.Errorf("changed are %v", changed)
	}
}

// A weight that is said to be of another oil went into that oil, and one that was taken back went into none: both are as planned then, but for what is
// left. So do wants, costs and labels, which are worked out of these.
func TestAWeightSaidToBeOfAnotherThingWentIntoThat(t *testing.T) {
	plan, shelf := example(t)
	sheet := pour.Weigh(plan, shelf)
	one, other := sheet.Base.Weighings()[0].Name, sheet.Base.Weighings()[1].Name
	planned := map[string]float64{}
	for _, w := range taking.Wants(&sheet, shelf, nil) {
		if w.Batch == pour.Base && w.Jug == "" {
			planned[w.Name] = w.Q.V()
		}
	}
	marks := []logbook.Event{
		{ID: "a", Kind: logbook.Weighed, Batch: pour.Base, What: one, Value: 41, Lot: "CAS-9"},
		{ID: "b", Kind: logbook.Weighed, Batch: pour.Base, What: other, Value: 7},
		{ID: "c", Kind: logbook.Weighed, Batch: pour.Base, What: other, Value: 41, Lot: "CAS-9", Corrects: "a"},
		{ID: "d", Kind: logbook.TakenBack, What: "b"},
	}
	for _, w := range taking.Wants(&sheet, shelf, logbook.Standing(marks)) {
		switch {
		case w.Batch != pour.Base || w.Jug != "":
		case w.Name == other && (w.Q.V() != 41 || w.Planned || w.Lot != "CAS-9" || w.Mark != "c"):
			t.Errorf("of %s %+v is wanted", other, w)
		case w.Name == one && (w.Q.V() != planned[one] || !w.Planned || w.Lot != ""):
			t.Errorf("of %s %+v is wanted, planned %v", one, w, planned[one])
		}
	}
	if _, n := taking.Went(&sheet, shelf, logbook.Standing(marks)); n != 1 {
		t.Errorf("%d were weighed, want 1", n)
	}
}
