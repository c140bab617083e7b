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
	if went, n := taking.Went(&sheet, shelf, taking.Wants(&sheet, shelf, nil)); went != nil || n != 0 {
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
	went, n := taking.Went(&sheet, shelf, taking.Wants(&sheet, shelf, marks))
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
