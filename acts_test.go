package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/pour/script"
	"pourbench/pour/swirl"
	"pourbench/presets"
)

// meadow is the built-in plan in another technique, with its shelf.
func meadow(t *testing.T, technique script.Technique) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read("meadow.toml", strings.NewReader(string(text)), shelf)
	if err != nil {
		t.Fatal(err)
	}
	plan.Swirl.Technique = string(technique)
	return plan, shelf
}

// words is a text without the breaks of lines, dots and rules that a page adds.
func words(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(strings.NewReplacer(".", " ", "\n", " ").Replace(text))), " ")
}

// One pour, told by the picture, the run, the paper and the live run, for every technique there is.
func TestEveryTechniqueIsOnePourWhoeverTellsIt(t *testing.T) {
	for _, technique := range script.Techniques() {
		for _, between := range []bool{false, true} {
			plan, shelf := meadow(t, technique)
			plan.Swirl.PotBetween = between
			t.Run(fmt.Sprintf("%s %v", technique, between), func(t *testing.T) { onePour(t, plan, shelf) })
		}
	}
}

func onePour(t *testing.T, plan pour.Plan, shelf pour.Shelf) {
	sheet := pour.Work(plan, shelf, pour.Hand{})
	acts := sheet.Base.Script.Acts

	// the picture
	drawing, err := sheet.Drawing()
	if err != nil {
		t.Fatal(err)
	}
	poured, err := swirl.New(drawing.Recipe)
	if err != nil {
		t.Fatal(err)
	}
	if poured.Acts() != len(acts) {
		t.Errorf("the picture has %d steps for %d acts", poured.Acts(), len(acts))
	}

	// the run: the same acts in the same order, and every jug used up
	var run []pour.Task
	parts, grams := map[string]float64{}, map[string]float64{}
	for _, task := range sheet.Run {
		if task.Batch != "base" || task.Act == pour.NoAct {
			continue
		}
		run = append(run, task)
		if task.Jug != "" {
			parts[task.Jug] += task.Part.V
			grams[task.Jug] += task.G.V
		}
	}
	for i, task := range run {
		a := acts[i]
		jug := ""
		if a.Jug != script.Whole {
			jug = sheet.Base.Jugs[a.Jug].Name
		}
		if task.Kind != pour.TaskKind(a.Kind) || task.Jug != jug || task.Part.V != a.Part || int(task.Round.V) != a.Round {
			t.Errorf("act %d is %+v, the run says %+v", i, a, task)
		}
	}
	if len(run) != len(acts) {
		t.Fatalf("the run has %d acts of %d", len(run), len(acts))
	}
	for i, j := range sheet.Base.Jugs {
		if i == 0 && acts[0].Kind == script.IntoPot {
			continue // the pot stays where it is until all is poured out
		}
		if math.Abs(parts[j.Name]-1) > 1e-9 || math.Abs(grams[j.Name]-j.TotalG) > plan.Show.ScaleStepG {
			t.Errorf("%g of %s is poured, %.2f g of %.2f g", parts[j.Name], j.Name, grams[j.Name], j.TotalG)
		}
	}

	// the paper and the live run: every act told once, in order
	page := words(paper.Checklist(sheet, shelf))
	told, at := 0, 0
	for _, step := range underway.Steps(sheet) {
		if step.Tell == "" || step.Batch != pour.Base {
			continue
		}
		next := strings.Index(page[at:], words(step.Tell))
		if next < 0 {
			t.Fatalf("the paper does not say %q after what comes before", step.Tell)
		}
		at += next
		stint := sheet.Stints()[slices.IndexFunc(sheet.Stints(), func(s pour.Stint) bool { return s.Key == step.Key })]
		for _, task := range stint.Tasks {
			if task.Key != run[told].Key {
				t.Errorf("the live run does %s where the run does %s", task.Key, run[told].Key)
			}
			g := task.G
			if strings.Contains(step.Tell, "each time about") { // rounds told as one say the jug's first, which the others are, but for a step of the scale
				g = firstOf(stint, task.Jug)
				if math.Abs(g.V-task.G.V) > 1.01*plan.Show.ScaleStepG {
					t.Errorf("%q: %s is %.2f g in round %g", step.Tell, task.Jug, task.G.V, task.Round.V)
				}
			}
			if task.Jug != "" && !strings.Contains(step.Tell, fmt.Sprintf("%s %s", task.Jug, plan.Show.Figure(g, plan.Show.Weight))) {
				t.Errorf("%q does not say how much of %s", step.Tell, task.Jug)
			}
			told++
		}
	}
	if told != len(acts) {
		t.Errorf("%d of %d acts are told", told, len(acts))
	}
}

// firstOf is what of a jug goes into its first pour of a stint.
func firstOf(s pour.Stint, jug string) pour.Figure {
	return s.Tasks[slices.IndexFunc(s.Tasks, func(t pour.Task) bool { return t.Jug == jug })].G
}
