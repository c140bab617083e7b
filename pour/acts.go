package pour

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour/script"
)

// Drawn is the technique whose acts and picture this one has: its own where it is one of those there are acts for, else its kind's.
func (t Technique) Drawn() script.Technique {
	if own := script.Technique(t.ID); own.Known() {
		return own
	}
	return script.Technique(t.Kind)
}

// write works out the acts of both batches.
func (s *Sheet) write(shelf Shelf) {
	for _, b := range s.Batches() {
		n := b.Name
		order := s.Plan.jugOrder(n)
		switch {
		case s.Plan.Trial:
			b.Script = script.Trial(s.Plan.Batch(n).parts())
		case n == Icing:
			b.Script = script.Bags(s.Plan.Icing.parts(), order, s.Plan.Icing.Bags == BagOne, s.shaped())
		default:
			acts, err := script.New(s.Plan.brief(shelf, order))
			if err != nil {
				s.warn(warning("figure-unknown", "swirl", err.Error(), "choose another technique from the list"))
			}
			b.Script = acts
			s.inspectSwirl()
		}
		b.vessels()
	}
	s.dress()
}

// inspectSwirl says what of the plan's swirl the technique cannot follow.
func (s *Sheet) inspectSwirl() {
	own, b := s.Plan.Swirl, s.Base.Script.Brief
	if len(s.Base.Script.Acts) == 0 {
		return
	}
	if own.Passes > 0 && b.Passes != own.Passes {
		s.warn(warning("swirl-ignored", "swirl", fmt.Sprintf("%d passes are asked for, %d are done: it is as far as this technique goes with these jugs", own.Passes, b.Passes),
			"set the passes to what is poured, or to 0 for the technique's own"))
	}
	pot := s.Base.Jugs[0].Name
	if b.Technique.InPot() && own.Last == pot {
		s.warn(warning("swirl-ignored", "swirl", pot+" is pinned last, but it is in the pot before all others", "let the pin go, or choose a technique that pours jug by jug"))
	}
}

// vessels says what every jug's vessel has to hold at most.
func (b *BatchSheet) vessels() {
	all := 0.0
	for i := range b.Jugs {
		b.Jugs[i].VesselML = b.Jugs[i].TotalML
		all += b.Jugs[i].TotalML
	}
	if b.Script.Brief.Technique.InPot() {
		b.Jugs[0].VesselML = all
	}
}

// brief is what the base's script depends on.
func (p Plan) brief(shelf Shelf, order []int) script.Brief {
	t, _ := shelf.Technique(p.Swirl.Technique) // the plan was checked: it is on the shelf
	place := func(name string) int {
		return slices.IndexFunc(p.Base.Jugs, func(j Jug) bool { return name != "" && j.Name == name })
	}
	return script.Brief{
		Technique: t.Drawn(), Shares: p.Base.parts(), Order: order, First: place(p.Swirl.First), Last: place(p.Swirl.Last),
		PotBetween: p.Swirl.PotBetween, Passes: int(orUsual(float64(p.Swirl.Passes), float64(t.Passes))), Turns: orUsual(p.Swirl.Turns, t.Turns),
		HeightMM: orUsual(p.Swirl.HeightMM, t.HeightMM), Seed: p.Swirl.Seed,
	}
}

// parts is the jugs' shares as fractions that sum to 1.
func (b *Batch) parts() []float64 {
	out, sum := make([]float64, len(b.Jugs)), 0.0
	for _, j := range b.Jugs {
		sum += j.SharePercent
	}
	for i, j := range b.Jugs {
		out[i] = j.SharePercent / sum
	}
	return out
}

// jugOrder is a batch's jugs in the order the maker uses them: as the batch lists them, but those named in the run's order in that order.
func (p Plan) jugOrder(n BatchName) []int {
	b := p.Batch(n)
	rank := make([]int, len(b.Jugs))
	var order, named []int
	for i, j := range b.Jugs {
		rank[i] = slices.Index(p.Run.Order, actKey(n, script.Pour, j.Name, 0))
		order = append(order, i)
		if rank[i] >= 0 {
			named = append(named, i)
		}
	}
	slices.SortStableFunc(named, func(a, b int) int { return rank[a] - rank[b] })
	next := 0
	for i, j := range order {
		if rank[j] >= 0 {
			order[i] = named[next]
			next++
		}
	}
	return order
}

// actKey is the stable name of an act: of one jug it says "pour" or, of the icing, "pipe" whatever the technique does with it, so that an
// order stays when the technique changes; from the second act of its kind on, it is numbered.
func actKey(n BatchName, kind script.Kind, jug string, again int) string {
	word := TaskKind(kind)
	switch {
	case jug == "":
	case n == Icing:
		word = TaskPipe
	default:
		word = TaskPour
	}
	if again > 0 {
		word += TaskKind(fmt.Sprintf("@%d", again+1))
	}
	return taskKey(n, word, jug)
}

// renameInKey renames a jug in a task key.
func renameInKey(key string, n BatchName, old, name string) string {
	word, ok := strings.CutSuffix(key, " "+old)
	if !ok {
		return key
	}
	kind, ok := strings.CutPrefix(word, string(n)+" ")
	if !ok {
		return key
	}
	plain, _, _ := strings.Cut(kind, "@")
	if slices.Contains([]TaskKind{TaskColour, TaskScent, TaskPour, TaskPipe}, TaskKind(plain)) {
		return taskKey(n, TaskKind(kind), name)
	}
	return key
}

// acts lists a batch's acts as tasks, with their parts, rounds and lengths.
func (s *Sheet) acts(b *BatchSheet) []Task {
	n := b.Name
	seen := map[string]int{}
	var out []Task
	for i, a := range b.Script.Acts {
		t := Task{Kind: TaskKind(a.Kind), Batch: b.Name, Act: i, LengthMin: s.Plan.Run.hands(a, b.Script)}
		if minutes, ok := s.piped(a); ok {
			t.LengthMin = minutes
		}
		if a.Jug != script.Whole {
			t.Jug = b.Jugs[a.Jug].Name
		}
		t.Key = actKey(n, a.Kind, t.Jug, 0)
		if again := seen[t.Key]; again > 0 {
			seen[t.Key]++
			t.Key = actKey(n, a.Kind, t.Jug, again)
		} else {
			seen[t.Key] = 1
		}
		if a.Part > 0 {
			t.Part = Know(a.Part)
		}
		if a.Round > 0 {
			t.Round = Know(float64(a.Round))
		}
		out = append(out, t)
	}
	s.grams(b, out)
	return out
}

// grams divides what each jug holds over its acts, and what lies in the pot or the bag over those that move all of it, on the scale step.
func (s *Sheet) grams(b *BatchSheet, tasks []Task) {
	if b.Refused.Masses != "" {
		return
	}
	share := func(totalG float64, of func(Task) bool) {
		if math.IsNaN(totalG) {
			return // what the jug holds is not known: neither is a part of it
		}
		var masses []float64
		for _, t := range tasks {
			if of(t) {
				masses = append(masses, t.Part.V*totalG)
			}
		}
		g := Apportion(masses, s.Plan.Show.ScaleStepG)
		for i := range tasks {
			if of(tasks[i]) {
				tasks[i].G, g = Know(g[0]), g[1:]
			}
		}
	}
	all := 0.0
	for _, j := range b.Jugs {
		all += j.TotalG
		share(j.TotalG, func(t Task) bool { return t.Part.Known && t.Jug == j.Name })
	}
	share(all, func(t Task) bool { return t.Part.Known && t.Jug == "" })
}

// trialWatchMin is how long a trial is watched at most: a batter that has not thickened by then is slow enough for any pour (common practice, no source).
const trialWatchMin = 40

// hands is how long the hands need for an act, min.
func (r RunPlan) hands(a script.Act, s script.Script) float64 {
	change := 0.0
	if a.Rounds > 1 && a.Jug != script.Whole {
		change = r.ChangeMin
	}
	switch a.Kind {
	case script.Pour:
		return a.Part*r.PourMin + change
	case script.IntoPot:
		return a.Part*r.IntoPotMin + change
	case script.Spoon:
		return a.Part*r.SpoonMin + change
	case script.Turn:
		return r.TurnMin * s.Brief.Turns
	case script.PourOut:
		return a.Part * r.PourOutMin
	case script.Wire:
		return r.WireMin
	case script.Comb:
		return r.CombMin
	case script.Level:
		return r.LevelMin
	case script.Pipe:
		if a.Jug == script.Whole {
			return r.PipeMin * float64(s.Filled())
		}
		return r.PipeMin
	case script.Watch:
		return trialWatchMin
	}
	return 0
}

// handFields are the fields of the run that say how long acts take.
func handFields() map[script.Kind]string {
	return map[script.Kind]string{
		script.Pour: "run.pour_min", script.IntoPot: "run.into_pot_min", script.Turn: "run.turn_min", script.PourOut: "run.pour_out_min",
		script.Wire: "run.wire_min", script.Comb: "run.comb_min", script.Spoon: "run.spoon_min", script.Level: "run.level_min", script.Pipe: "run.pipe_min",
	}
}

// HandsUsed lists the fields of the run that say how long the acts of this plan take, in the order the acts come.
func (s *Sheet) HandsUsed() []string {
	fields := handFields()
	var out []string
	add := func(path string) {
		if path != "" && !slices.Contains(out, path) {
			out = append(out, path)
		}
	}
	for _, b := range s.Batches() {
		for _, a := range b.Script.Acts {
			add(fields[a.Kind])
			if a.Rounds > 1 && a.Jug != script.Whole {
				add("run.change_min")
			}
		}
	}
	return out
}
