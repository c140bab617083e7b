package pour_test

import (
	"fmt"
	"math"
	"slices"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// runReckoned judges the run as a script reads it, from the plan alone: what is to be done is done once, takes its minutes, and starts as soon as
// it may and the one pair of hands is free. How an act is told and how long its hands take is its own tests' affair.
func runReckoned(t *rapid.T, p pour.Plan, got leaves) {
	t.Helper()
	want, free := chores(p), math.Inf(-1)
	parts := map[string]float64{}
	for i := 0; got[fmt.Sprintf("run[%d].task", i)] != nil; i++ {
		at := fmt.Sprintf("run[%d].", i)
		task, batch, jug := fmt.Sprint(got[at+"task"]), fmt.Sprint(got[at+"batch"]), got[at+"jug"]
		start, length := got.number(t, at+"start_min"), got.number(t, at+"length_min")
		key := fmt.Sprint(batch, " ", task, " ", jug)
		if part, ok := got[at+"part"].(float64); ok && jug != nil {
			parts[batch+" "+fmt.Sprint(jug)] += part
		}
		lyeIn := got.number(t, batch+".lye_in_at_min")
		if task == "cool the lye" { // by itself
			if minutes := p.Run.CoolLyeMin; minutes > 0 && length != minutes || !near(start+length, lyeIn, 1e-9) {
				t.Errorf("the %s's lye cools from %v for %v min to %v", batch, start, length, lyeIn)
			}
			continue
		}
		c, known := want[key]
		if delete(want, key); known && !near(length, c.length, 1e-12) {
			t.Errorf("%s takes %v min, reckoned %v", key, length, c.length)
		}
		earliest := c.earliest
		if !known {
			earliest = plannedLyeIn(p, batch)
		}
		if key == "base mix <nil>" {
			free = 0
		}
		if !near(start, max(earliest, free), 1e-9) {
			t.Errorf("%s starts at %v, may from %v on and the hands are free at %v", key, start, earliest, free)
		}
		if task == "mix" && start != lyeIn {
			t.Errorf("the %s is mixed at %v, its lye goes in at %v", batch, start, lyeIn)
		}
		free = start + length
	}
	if len(want) > 0 {
		t.Errorf("not in the run: %v", want)
	}
	for jug, part := range parts {
		if !near(part, 1, 1e-9) {
			t.Errorf("of the %s %v parts are poured", jug, part)
		}
	}
}

// chore is a task that is no act: how long it takes and from when on it may be done, run clock.
type chore struct{ length, earliest float64 }

// chores are the tasks that are no acts, by batch, task and jug.
func chores(p pour.Plan) map[string]chore {
	out := map[string]chore{"base put to bed <nil>": {p.Run.BedMin, math.Inf(-1)}}
	for name, b := range map[string]*pour.Batch{"base": &p.Base, "icing": p.Icing} {
		if b == nil {
			continue
		}
		in := plannedLyeIn(p, name)
		out[name+" mix <nil>"] = chore{b.SplitAtMin, in}
		out[name+" split <nil>"] = chore{p.Run.SplitMin * float64(len(b.Jugs)-1), in + b.SplitAtMin}
		for _, j := range b.Jugs {
			if j.SharePercent == 0 {
				continue // there is nothing of it
			}
			if len(j.Colourants) > 0 {
				out[name+" colour "+j.Name] = chore{p.Run.StirMin, in}
			}
			scents, from := 0.0, 0.0
			for _, s := range b.Scents {
				if len(s.Into) == 0 || slices.Contains(s.Into, j.Name) {
					scents, from = scents+1, max(from, s.AtMin)
				}
			}
			if scents > 0 {
				out[name+" scent "+j.Name] = chore{p.Run.ScentMin * scents, in + from}
			}
		}
	}
	return out
}

// plannedLyeIn is when a batch's lye is planned to meet its oils; the base's is minute 0.
func plannedLyeIn(p pour.Plan, batch string) float64 {
	if batch == "icing" {
		return p.Icing.StartAtMin
	}
	return 0
}
