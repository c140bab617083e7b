package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/paper"
	"pourbench/pour/script"
)

// topped is the meadow with rosettes, pieces in base and icing, and a cut of trims and a slice.
func topped(t *testing.T) (pour.Plan, pour.Shelf) {
	t.Helper()
	plan, shelf := meadow(t, script.Layers)
	plan.Piping = pour.Blank().Piping
	plan.Piping.Shape, plan.Piping.Tip, plan.Piping.Points = pour.PipeRosette, pour.TipStar, 6
	plan.Piping.TipMM, plan.Piping.ValleyMM, plan.Piping.CoilMM, plan.Piping.OverlapPercent, plan.Piping.PerBar = 7, 4.8, 5, 20, 2
	plan.Top.Embeds = []pour.Embed{
		{Name: "star", LengthMM: 12, HeightMM: 10, OutMM: 10},
		{Name: "ball", Outline: pour.OutlineBall, LengthMM: 14, OutMM: 4},
	}
	plan.Top.Toppings = []pour.Topping{
		{Name: "gold", When: pour.StrewSkin, Parts: []pour.ToppingPart{{Material: "mica-dust", Percent: 100}}},
		{Name: "sugar", When: pour.StrewWet, Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 100}}},
		{Name: "mist", When: pour.StrewWet, Parts: []pour.ToppingPart{{Material: "alcohol-mist", Percent: 100}}},
		{Name: "petals", When: pour.StrewCut, Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 100}}},
		{Name: "salt", When: pour.StrewCure, Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 100}}},
	}
	plan.Cut.TrimAMM, plan.Cut.TrimBMM, plan.Cut.SliceMM, plan.Cut.KerfMM = 3, 3, 5, 0.6
	return plan, shelf
}

// What is done on the loaf is told by run, both papers and live run alike, in the order of the trade, and the cut by its own run.
func TestTopAndCutAreOneScriptWhoeverTellsIt(t *testing.T) {
	plan, shelf := topped(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	place := map[string]int{}
	for i, task := range sheet.Run {
		if _, seen := place[string(task.Kind)+task.Item]; !seen {
			place[string(task.Kind)+task.Item] = i
		}
	}
	order := []string{"level", "set embedsball", "try a peak", "fill the bag", "pipe", "strewmist", "set embedsstar", "strewsugar", "strewgold", "put to bed"}
	for i, what := range order {
		at, ok := place[what]
		if !ok {
			t.Fatalf("%q is not in the run: %v", what, place)
		}
		if i > 0 && at < place[order[i-1]] {
			t.Errorf("%q comes before %q", what, order[i-1])
		}
	}
	full, bench := words(paper.Checklist(sheet, shelf)), words(paper.Bench(sheet, shelf, false))
	steps := underway.Steps(sheet)
	for _, task := range sheet.Run {
		if task.Batch != "" && task.Kind != pour.TaskPeak && task.Kind != pour.TaskFill && task.Kind != pour.TaskPipe {
			continue
		}
		k := slices.IndexFunc(steps, func(s underway.Step) bool { return s.Key == task.Key })
		if k < 0 || steps[k].Tell == "" || !(task.LengthMin > 0) {
			t.Errorf("%s: step %d, %v min", task.Key, k, task.LengthMin)
			continue
		}
		for name, page := range map[string]string{"full paper": full, "bench paper": bench} {
			if !strings.Contains(strings.ReplaceAll(page, " ", ""), strings.ReplaceAll(words(steps[k].Tell), " ", "")) {
				t.Errorf("the %s does not say %q", name, steps[k].Tell)
			}
		}
	}
	cutIsOneScript(t, sheet)
}

func cutIsOneScript(t *testing.T, sheet pour.Sheet) {
	t.Helper()
	cuts, weighed, at := 0, 0, 0.0
	var strewn []string
	for i, task := range sheet.CutRun {
		if a := sheet.CutScript.Acts[i]; task.Kind != pour.TaskKind(a.Kind) || task.Act != i || !task.OfCut() {
			t.Errorf("act %d is %+v, its run says %+v", i, a, task)
		}
		if task.Kind == pour.TaskStrew {
			strewn = append(strewn, task.Item)
		}
		if task.Item == "salt" {
			at = sheet.Plan.Bed.CureDays * 24 * 60 // on the cured bar
		}
		if task.StartMin != at || !(task.LengthMin > 0) {
			t.Errorf("%s begins at %v, the hands are free at %v", task.Key, task.StartMin, at)
		}
		at += task.LengthMin
		tell := sheet.Tell(sheet.CutStints()[i])
		switch a := sheet.CutScript.Acts[i]; a.Kind {
		case script.Cut:
			if !strings.Contains(tell, fmt.Sprintf("at %g mm", sheet.Cut.MarksMM[a.Item])) {
				t.Errorf("%q does not say where", tell)
			}
			cuts++
		case script.Weigh:
			weighed++
		}
	}
	if cuts != len(sheet.Cut.CutsMM) || weighed != len(sheet.Pieces()) || weighed < len(sheet.Cut.Bars) {
		t.Errorf("%d cuts of %d, %d weighed of %d", cuts, len(sheet.Cut.CutsMM), weighed, len(sheet.Pieces()))
	}
	if !slices.Equal(strewn, []string{"petals", "salt"}) {
		t.Errorf("after the cut %v go on", strewn)
	}
	for _, task := range sheet.Run {
		if task.Item == "gold" && task.StartMin < doneAt(sheet, "sugar")+45 {
			t.Errorf("the top is strewn with gold at %v, before it has skinned", task.StartMin)
		}
		if task.OfCut() {
			t.Errorf("%s stretches the pour's own run", task.Key)
		}
	}
}

// doneAt is when an item of the run is done.
func doneAt(sheet pour.Sheet, item string) float64 {
	for _, task := range sheet.Run {
		if task.Item == item {
			return task.StartMin + task.LengthMin
		}
	}
	return 0
}

// The maker may move what is done to the loaf as far as it can be done, and is told why no further.
func TestWhatGoesOnTheTopIsMovedOnlyAsFarAsItCanBeDone(t *testing.T) {
	for _, c := range []struct {
		key, why string
		by       int
	}{
		{"top set embeds ball", "what stands in the base is set before icing goes on it", 1},
		{"top set embeds ball", "what goes on the top waits until the base is poured", -1},
		{"top strew mist", "it goes on top of the icing", -1},
		{"top strew sugar", "the top is dressed in this order", -1},
		{"top strew gold", "nothing comes after the loaf is put to bed", 1},
	} {
		plan, shelf := topped(t)
		var err error
		for range 60 {
			sheet := pour.Work(plan, shelf, pour.Hand{})
			if plan, err = pour.MoveTask(sheet, c.key, c.by)(plan); err != nil {
				break
			}
		}
		if err == nil || !strings.Contains(err.Error(), c.why) {
			t.Errorf("%s by %d: %v, want %q", c.key, c.by, err, c.why)
		}
	}
}
