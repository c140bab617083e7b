package live

import (
	"testing"

	"pourbench/pour"
)

// A trial is a script of its own: two jugs of a hundred grams, watched and washed up. Nothing is poured, no loaf is put to bed.
func TestATrialIsAShortScriptOfItsOwn(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	trial, err := TrialPlan(plan, "alp-rose", shelf)
	if err != nil {
		t.Fatal(err)
	}
	sheet := pour.Work(trial, shelf, pour.Hand{})
	var kinds []string
	for _, s := range Steps(sheet) {
		kinds = append(kinds, s.Name)
	}
	want := []string{"make the lye", "cool the lye", "lye in", "mix", "split", "scent scented", "watch", "end the trial"}
	if len(kinds) != len(want) {
		t.Fatalf("the trial's steps are %q, want %q", kinds, want)
	}
	for i := range want {
		if kinds[i] != want[i] {
			t.Errorf("step %d is %q, want %q", i+1, kinds[i], want[i])
		}
	}
	for _, j := range sheet.Base.Jugs {
		if !j.Clock.PourAtMin.Known {
			t.Errorf("nobody watches %s", j.Name)
		}
	}
	for _, w := range sheet.Warnings {
		if w.Where == "mould" || w.Where == "bed" {
			t.Errorf("a trial has no loaf, yet it is said that %s", w.Text)
		}
	}
	if _, err := sheet.Drawing(); err == nil {
		t.Error("a trial has a picture of a loaf")
	}
}
