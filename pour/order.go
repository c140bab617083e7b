package pour

import (
	"fmt"
	"slices"

	"pourbench/pour/script"
)

// mustPrecede says why a task has to be done before another, or "" when the two may change places.
func (s *Sheet) mustPrecede(first, second Task) string {
	same := first.Batch == second.Batch
	switch {
	case second.Kind == TaskBed:
		return "nothing comes after the loaf is put to bed"
	case second.Kind == TaskEnd:
		return "nothing comes after the trial"
	case same && first.Kind == TaskMix:
		return "lye meets oil first"
	case same && first.Kind == TaskSplit && second.Kind != TaskMix:
		return "there is nothing in the jugs before the split"
	case same && first.Act != NoAct && second.Act != NoAct:
		if first.Act < second.Act {
			if first.Batch == "" {
				return "the top is dressed in this order, so that nothing stains or loosens what lies under it"
			}
			return "the acts follow each other as the technique has them"
		}
	case same && second.Act != NoAct && s.Touches(second, first.Jug):
		return "a jug is coloured and scented before it is poured"
	case second.onBase() && first.Batch == Base && first.Act != NoAct:
		return "the icing goes on top of the base"
	case second.Batch == "" || first.Batch == "":
		return s.mustTop(first, second)
	}
	return ""
}

// onBase says whether the task is one of the icing's acts on the base, the trying of it too.
func (t Task) onBase() bool {
	return t.Batch == Icing && slices.Contains([]TaskKind{TaskPipe, TaskPeak, TaskFill}, t.Kind)
}

// mustTop is mustPrecede where one of the two is done to the loaf.
func (s *Sheet) mustTop(first, second Task) string {
	into := func(t Task) bool { return t.Batch == "" && s.TopScript.Acts[t.Act].Into }
	switch {
	case first.Act == NoAct || second.Act == NoAct:
	case second.Batch == "" && first.Batch == Base:
		return "what goes on the top waits until the base is poured"
	case into(first) && second.onBase():
		return "what stands in the base is set before icing goes on it"
	case second.Batch == "" && !into(second) && first.onBase():
		return "it goes on top of the icing"
	}
	return ""
}

// Touches says whether an act needs a jug ready: it moves the jug, or pours another into it as the pot.
func (s *Sheet) Touches(act Task, jug string) bool {
	b := s.Batch(act.Batch)
	i := slices.IndexFunc(b.Jugs, func(j JugSheet) bool { return j.Name == jug })
	if i < 0 {
		return false
	}
	a := b.Script.Acts[act.Act]
	return b.Script.Uses(a, i) || i == 0 && a.Kind == script.IntoPot
}

// reorder puts the tasks named in wanted into that order, at the places they hold now, and then defers any task that would come before
// one it has to wait for. Names that are no task are passed over: a jug may have been removed since.
func (s *Sheet) reorder(tasks []handTask, wanted []string) []handTask {
	if len(wanted) == 0 {
		return tasks
	}
	rank := func(key string) int { return slices.Index(wanted, key) }
	var named []handTask
	for _, t := range tasks {
		if rank(t.Key) >= 0 {
			named = append(named, t)
		}
	}
	slices.SortStableFunc(named, func(a, b handTask) int { return rank(a.Key) - rank(b.Key) })
	mixed := slices.Clone(tasks)
	for i, next := 0, 0; i < len(mixed); i++ {
		if rank(mixed[i].Key) >= 0 {
			mixed[i] = named[next]
			next++
		}
	}
	return s.possible(mixed)
}

// possible defers every task until all it has to wait for are done, and otherwise keeps the order.
func (s *Sheet) possible(tasks []handTask) []handTask {
	waiting := slices.Clone(tasks)
	done := make([]handTask, 0, len(tasks))
	for len(waiting) > 0 {
		next := 0
		for i := range waiting {
			if !s.waits(waiting[i].Task, waiting) {
				next = i
				break
			}
		}
		done = append(done, waiting[next])
		waiting = slices.Delete(waiting, next, next+1)
	}
	return done
}

func (s *Sheet) waits(t Task, waiting []handTask) bool {
	for _, other := range waiting {
		if other.Key != t.Key && s.mustPrecede(other.Task, t) != "" {
			return true
		}
	}
	return false
}

// swapJugs changes the places of two jugs in the order they are poured, because one's act was moved past the other's.
func swapJugs(p Plan, s Sheet, first, second Task) (Plan, error) {
	n := first.Batch
	b := s.Batch(first.Batch)
	switch {
	case n == "":
		return p, fmt.Errorf("move %q: %s", second.Key, s.mustPrecede(first, second))
	case first.Jug == "" || second.Jug == "":
		return p, fmt.Errorf("move %q: the technique says when that is done", second.Key)
	case first.Jug == second.Jug:
		return p, fmt.Errorf("move %q: both are acts of %s", second.Key, first.Jug)
	case first.Round != second.Round:
		return p, fmt.Errorf("move %q: the rounds follow each other; take another order to pour in on the swirl's page", second.Key)
	}
	for _, pin := range []string{s.Plan.Swirl.First, s.Plan.Swirl.Last} {
		if n == Base && pin != "" && (pin == first.Jug || pin == second.Jug) {
			return p, fmt.Errorf("move %q: %s is pinned to its end of the order; let it go on the swirl's page", second.Key, pin)
		}
	}
	if n == Base && b.Script.Brief.Technique.InPot() && (first.Jug == b.Jugs[0].Name || second.Jug == b.Jugs[0].Name) {
		return p, fmt.Errorf("move %q: the others are poured into %s", second.Key, b.Jugs[0].Name)
	}
	var names []string
	for _, j := range p.jugOrder(n) {
		names = append(names, b.Jugs[j].Name)
	}
	i, k := slices.Index(names, first.Jug), slices.Index(names, second.Jug)
	names[i], names[k] = names[k], names[i]
	p.Run.Order = s.orderKeys(n, names)
	return p, nil
}

// orderKeys is the run's order as it is, with a batch's jugs in the order given.
func (s *Sheet) orderKeys(n BatchName, names []string) []string {
	var out []string
	written := false
	for _, t := range s.handTasks() {
		switch {
		case t.Act == NoAct || t.Batch != n:
			out = append(out, t.Key)
		case !written: // the jugs' order stands where the script begins; the acts follow of themselves
			written = true
			for _, name := range names {
				out = append(out, actKey(n, script.Pour, name, 0))
			}
		}
	}
	return out
}
