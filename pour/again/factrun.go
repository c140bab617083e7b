package again

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// beside lists where else on the bench a figure is told: a stage of a jug beside its first stage, a step that pours one jug beside that jug.
func (p Past) beside(path string) []string {
	if jug, _, ok := strings.Cut(path, ".stage_min."); ok {
		return []string{jug + ".stage_min.medium[1]"}
	}
	var out []string
	for _, step := range p.state.Steps {
		if len(step.Own) != 1 || !strings.HasPrefix(path, "run[") || p.stepPath(step.Step) != path {
			continue
		}
		if i := p.jugAt(step.Batch, step.Own[0]); i >= 0 {
			out = append(out, fmt.Sprintf("%s.jugs[%d].late_chance_percent", step.Batch, i))
		}
	}
	return out
}

// stepPath is the path of the start of a step of the run that has a task of its own.
func (p Past) stepPath(step live.Step) string {
	first := 0
	for _, st := range p.Sheet.Stints() {
		if st.Key == step.Key {
			return fmt.Sprintf("run[%d].start_min", first)
		}
		first += len(st.Tasks)
	}
	return ""
}

// jugAt is the place of a jug in its batch; below 0: it has none of that name.
func (p Past) jugAt(n pour.BatchName, jug string) int {
	plan := p.Sheet.Plan
	if b := plan.Batch(n); b != nil {
		return slices.IndexFunc(b.Jugs, func(j pour.Jug) bool { return j.Name == jug })
	}
	return -1
}

// The lengths of steps that are told: at least so many minutes and so large a part otherwise than planned.
const (
	leastLengthMin = 0.5
	leastPart      = 0.3
)

// lengths says which steps took the hands longer or shorter than planned.
func (p Past) lengths(show pour.Show) []Fact {
	var out []Fact
	for _, m := range p.measured() {
		by := m.actual - m.step.LengthMin
		if math.Abs(by) < leastLengthMin || math.Abs(by) < leastPart*m.step.LengthMin {
			continue
		}
		path := strings.TrimSuffix(p.stepPath(m.step), "start_min") + "length_min"
		out = append(out, Fact{Path: path, What: named(m.step), Said: fmt.Sprintf("took %s, planned %s", show.Span(m.actual), show.Span(m.step.LengthMin))})
	}
	return out
}

// named is a step with its batch.
func named(step live.Step) string { return strings.TrimSpace(string(step.Batch) + " " + step.Name) }

// length is how long a step really took the hands, min.
type length struct {
	step   live.Step
	actual float64
}

// longestOfPlan is how many times its planned length a step takes at most: what took longer was an interruption, not the hands.
const longestOfPlan = 5

// measured lists how long the steps took that are done and that the hands are busy with. What was marked in one breath with the one before was marked
// late, and tells nothing.
func (p Past) measured() []length {
	var out []length
	for _, step := range p.state.Steps {
		if !step.Done || step.LengthMin <= 0 || step.Kind == pour.TaskCoolLye || step.Kind == pour.TaskMix || step.Kind == live.StepLyeIn {
			continue
		}
		took := (step.DoneAt - p.state.Began(step)).Minutes()
		if took >= step.LengthMin/longestOfPlan && took <= step.LengthMin*longestOfPlan {
			out = append(out, length{step.Step, took})
		}
	}
	return out
}

// bursts says where the blender ran otherwise than planned.
func (p Past) bursts(show pour.Show) []Fact {
	var out []Fact
	for _, b := range p.Sheet.Batches() {
		noted, planned := p.noted(b.Name), p.Sheet.Plan.Batch(b.Name).Blend
		if len(noted) == 0 || alike(noted, planned) {
			continue
		}
		f := Fact{What: "stick blender of the " + string(b.Name), Said: "planned " + burstsTold(show, planned) + ", was " + burstsTold(show, noted), Path: string(b.Name) + ".blend"}
		for i := range planned {
			at := fmt.Sprintf("%s.blend[%d].", b.Name, i)
			f.Also = append(f.Also, at+"at_min", at+"s")
		}
		out = append(out, f)
	}
	return out
}

// noted lists the bursts that were noted in a batch, by the minute after its lye-in and in whole seconds.
func (p Past) noted(n pour.BatchName) []pour.Burst {
	actual := p.state.Actual(p.Sheet.Plan)
	if !slices.ContainsFunc(p.standing, func(e logbook.Event) bool { return e.Kind == logbook.Blended && e.Batch == n }) {
		return nil
	}
	var out []pour.Burst
	for _, x := range actual.Batch(n).Blend {
		out = append(out, pour.Burst{AtMin: math.Round(x.AtMin*2) / 2, S: math.Round(x.S)})
	}
	return out
}

// Bursts that differ by less are the same.
const (
	leastBurstS   = 3
	leastBurstMin = 1
)

func alike(a, b []pour.Burst) bool {
	return slices.EqualFunc(a, b, func(x, y pour.Burst) bool {
		return math.Abs(x.S-y.S) < leastBurstS && math.Abs(x.AtMin-y.AtMin) < leastBurstMin
	})
}

func burstsTold(show pour.Show, list []pour.Burst) string {
	if len(list) == 0 {
		return "none"
	}
	words := make([]string, len(list))
	for i, x := range list {
		words[i] = fmt.Sprintf("%s s at %s", show.Number(x.S, 0), show.Minutes(x.AtMin))
	}
	return strings.Join(words, ", ")
}

// noticed lists what was marked of a jug or of the pour: trouble, what was not used, what was done instead, notes, how it came out.
func (p Past) noticed(show pour.Show) []Fact {
	var out []Fact
	for _, e := range p.standing {
		f, ok := Fact{What: "the pour"}, true
		if i := p.jugAt(e.Batch, e.Jug); i >= 0 {
			f.What, f.Path = e.Jug+" of the "+string(e.Batch), fmt.Sprintf("%s.jug[%d].name", e.Batch, i)
			f.Also = []string{fmt.Sprintf("%s.jugs[%d].late_chance_percent", e.Batch, i)}
		}
		if e.Kind == logbook.Troubled && logbook.SplitAfter(p.standing, e) {
			f = Fact{What: "all of the " + string(e.Batch)}
		}
		switch e.Kind {
		case logbook.Troubled:
			f.Said = troubled(e.What) + p.minutesIn(show, e)
		case logbook.Unpoured:
			f.Said = "was not used"
		case logbook.Rescued:
			f.Said = "instead of the plan: " + e.What
			if e.Jug == "" && e.Batch != "" {
				f = Fact{What: "all of the " + string(e.Batch), Said: f.Said}
			}
		case logbook.Skipped:
			f = p.notDone(e)
		case logbook.Noted:
			f.Said = "noted: " + e.Text
		case logbook.Result:
			f.Said = "came out: " + e.Text
		default:
			ok = false
		}
		if ok {
			out = append(out, f)
		}
	}
	return out
}

// notDone says that a step of the run was not done.
func (p Past) notDone(e logbook.Event) Fact {
	f := Fact{What: e.Step, Said: "was not done"}
	for _, step := range p.state.Steps {
		if step.Key == e.Step {
			f.What, f.Path = named(step.Step), p.stepPath(step.Step)
		}
	}
	return f
}

// minutesIn says how long after its batch's lye-in something was marked.
func (p Past) minutesIn(show pour.Show, e logbook.Event) string {
	if since, ok := p.state.SinceLyeIn(e.Batch, e.Run); ok {
		return " " + show.Minutes(since.Minutes()) + " after lye-in"
	}
	return ""
}

// troubled is a trouble as what happened.
func troubled(what string) string {
	if word, ok := map[string]string{logbook.Rices: "riced", logbook.Seizes: "seized", logbook.Browns: "browned", logbook.Separates: "separated"}[what]; ok {
		return word
	}
	return what
}
