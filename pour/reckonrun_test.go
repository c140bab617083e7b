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
	want, free, touched := chores(p), math.Inf(-1), math.Inf(-1)
	parts := map[string]float64{}
	for i := 0; got[fmt.Sprintf("run[%d].task", i)] != nil; i++ {
		at := fmt.Sprintf("run[%d].", i)
		task, batch, jug := fmt.Sprint(got[at+"task"]), fmt.Sprint(got[at+"batch"]), got[at+"jug"]
		start, length := got.number(t, at+"start_min"), got.number(t, at+"length_min")
		key := fmt.Sprint(batch, " ", task, " ", jug)
		if got[at+"batch"] == nil { // it is done to the loaf
			skins := topReckoned(t, p, got, at)
			earliest := free
			if skins {
				earliest = max(free, touched+orElse(p.Run.SkinMin, 45))
			}
			if !near(start, earliest, 1e-9) {
				t.Errorf("%s %v starts at %v, it may from %v on", task, got[at+"item"], start, earliest)
			}
			if free = start + length; !skins {
				touched = free
			}
			continue
		}
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
		if free = start + length; !known {
			touched = free
		}
	}
	cutReckoned(t, p, got)
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

func orElse(v, other float64) float64 {
	if v > 0 {
		return v
	}
	return other
}

// topReckoned judges how long the hands take for a task on the loaf, and says whether it waits for a skin.
func topReckoned(t *rapid.T, p pour.Plan, got leaves, at string) (skins bool) {
	t.Helper()
	item, length := fmt.Sprint(got[at+"item"]), got.number(t, at+"length_min")
	if got[at+"task"] == "set embeds" {
		pieces := 0
		for i := 0; got[fmt.Sprintf("embeds[%d].name", i)] != nil; i++ {
			if got[fmt.Sprintf("embeds[%d].name", i)] == item {
				pieces++
			}
		}
		for _, e := range p.Top.Embeds {
			if e.Name == item && e.SetMin > 0 && near(length, float64(pieces)*e.SetMin, 1e-9) {
				return false
			}
			if e.Name == item && e.SetMin == 0 && length > 0 {
				return false
			}
		}
		t.Errorf("to set %d of %s takes %v min", pieces, item, length)
		return false
	}
	var like []bool // toppings of that name and length, those on the wet top first, as they are put on: whether each waits for a skin
	for _, skin := range []bool{false, true} {
		for i := 0; got[fmt.Sprintf("toppings[%d].name", i)] != nil; i++ {
			topping := fmt.Sprintf("toppings[%d].", i)
			when := got[topping+"when"]
			if got[topping+"name"] == item && near(length, got.number(t, topping+"hands_min"), 1e-9) && (when == "wet" || when == "skin") && skin == (when == "skin") {
				like = append(like, skin)
			}
		}
	}
	before := 0
	for i := 0; fmt.Sprintf("run[%d].", i) != at; i++ {
		run := fmt.Sprintf("run[%d].", i)
		if got[run+"item"] == item && got[run+"task"] == got[at+"task"] && near(got.number(t, run+"length_min"), length, 1e-9) {
			before++
		}
	}
	if before < len(like) {
		return like[before]
	}
	t.Errorf("%s is no topping that takes %v min", item, length)
	return false
}

// cutReckoned judges the cut's own run: one task after the other from 0, but for what waits until the bars are cured; every bar is weighed.
func cutReckoned(t *rapid.T, p pour.Plan, got leaves) {
	t.Helper()
	free, weighed := 0.0, 0
	usual := map[string]float64{"lay the marks": orElse(p.Run.MarkMin, 3), "cut": orElse(p.Run.CutMin, 0.5), "weigh": orElse(p.Run.WeighMin, 0.25)}
	for i := 0; got[fmt.Sprintf("cut_run[%d].task", i)] != nil; i++ {
		at := fmt.Sprintf("cut_run[%d].", i)
		start, length, task := got.number(t, at+"start_min"), got.number(t, at+"length_min"), fmt.Sprint(got[at+"task"])
		if want, ok := usual[task]; ok && length != want {
			t.Errorf("%s %v takes %v min, reckoned %v", task, got[at+"item"], length, want)
		}
		if cured := max(free, p.Bed.CureDays*1440); !near(start, free, 1e-9) && !(task == "strew" && near(start, cured, 1e-9)) {
			t.Errorf("%s starts at %v min of the cut, the hands are free at %v", task, start, free)
		}
		free = start + length
		if task == "weigh" && fmt.Sprint(got[at+"item"])[:3] == "bar" {
			weighed++
		}
	}
	if bars := int(got.number(t, "bars.bar_count")); weighed != bars {
		t.Errorf("%d of %d bars are weighed", weighed, bars)
	}
}
