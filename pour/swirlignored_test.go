package pour_test

import (
	"math"
	"slices"
	"testing"

	"pourbench/pour"
)

func says(s pour.Sheet, code string) bool {
	return slices.ContainsFunc(s.Warnings, func(w pour.Warning) bool { return w.Code == code })
}

func TestWhatTheTechniqueCannotFollowIsSaid(t *testing.T) {
	for _, c := range []struct {
		technique   string
		passes      int
		first, last string
		want        bool
	}{
		{"drop", 10, "", "", false},
		{"drop", 60, "", "", true},
		{"spoon", 1, "", "", true},
		{"layers", 9, "", "", true},
		{"pot", 0, "", "pot", true},
		{"pot", 0, "fern", "", false},
		{"pot", 0, "pot", "fern", false},
		{"layers", 0, "fern", "pot", false},
	} {
		plan, shelf := in(t, c.technique, c.passes)
		plan.Swirl.First, plan.Swirl.Last = c.first, c.last
		if got := says(pour.Weigh(plan, shelf), "swirl-ignored"); got != c.want {
			t.Errorf("%+v: said %v", c, got)
		}
	}
}

func TestAPotThatTheOthersGoIntoHasToHoldThemAll(t *testing.T) {
	plan, shelf := in(t, "pot", 0)
	sheet := pour.Weigh(plan, shelf)
	all := 0.0
	for _, j := range sheet.Base.Jugs {
		all += j.TotalML
	}
	if got := sheet.Base.Jugs[0].VesselML; math.Abs(got-all) > 1e-9 || sheet.Base.Jugs[1].VesselML != sheet.Base.Jugs[1].TotalML {
		t.Errorf("the pot has to hold %g mL, want %g", got, all)
	}
	plan.Base.Jugs[0].CapacityML = all - 1
	if !says(pour.Weigh(plan, shelf), "jug-too-small") {
		t.Error("nobody says that the pot runs over")
	}
	plan.Base.Jugs[0].CapacityML = all + 1
	if says(pour.Weigh(plan, shelf), "jug-too-small") {
		t.Error("a pot that holds all is called too small")
	}
	plan.Swirl.Technique, plan.Base.Jugs[0].CapacityML = "drop", sheet.Base.Jugs[0].TotalML+1
	if says(pour.Weigh(plan, shelf), "jug-too-small") {
		t.Error("a pot from which jugs are poured into the mould has to hold its own batter alone")
	}
}

func TestAScentForEmptyJugsGoesNowhere(t *testing.T) {
	plan, shelf := shelved(t)
	if says(pour.Weigh(plan, shelf), "scent-nowhere") {
		t.Fatal("the demo's scents go nowhere")
	}
	for i := range plan.Base.Jugs {
		if plan.Base.Jugs[i].Name == "poppy" { // alp rose goes there alone
			plan.Base.Jugs[0].SharePercent += plan.Base.Jugs[i].SharePercent
			plan.Base.Jugs[i].SharePercent = 0
		}
	}
	sheet := pour.Work(plan, shelf, pour.Hand{})
	if !says(sheet, "scent-nowhere") {
		t.Error("nobody says that the scent of an empty jug goes nowhere")
	}
	for _, task := range sheet.Run {
		if task.Jug == "poppy" {
			t.Errorf("the hands %s a jug that holds nothing", task.Kind)
		}
	}
}
