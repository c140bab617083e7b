package pour

import "slices"

// mustPrecede says why a task has to be done before another, or "" when the two may change places.
func mustPrecede(first, second Task) string {
	same := first.Batch == second.Batch
	sameJug := same && first.Jug == second.Jug
	switch {
	case second.Kind == TaskBed:
		return "nothing comes after the loaf is put to bed"
	case same && first.Kind == TaskMix:
		return "lye meets oil first"
	case same && first.Kind == TaskSplit && second.Kind != TaskMix:
		return "there is nothing in the jugs before the split"
	case sameJug && (second.Kind == TaskPour || second.Kind == TaskPipe):
		return "a jug is coloured and scented before it is poured"
	case second.Kind == TaskPipe && first.Kind == TaskPour:
		return "the icing goes on top of the base"
	}
	return ""
}

// reorder puts the tasks named in wanted into that order, at the places they hold now, and then defers any task that would come before
// one it has to wait for. Names that are no task are passed over: a jug may have been removed since.
func reorder(tasks []handTask, wanted []string) []handTask {
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
	return possible(mixed)
}

// possible defers every task until all it has to wait for are done, and otherwise keeps the order.
func possible(tasks []handTask) []handTask {
	waiting := slices.Clone(tasks)
	done := make([]handTask, 0, len(tasks))
	for len(waiting) > 0 {
		next := 0
		for i := range waiting {
			if !waits(waiting[i].Task, waiting) {
				next = i
				break
			}
		}
		done = append(done, waiting[next])
		waiting = slices.Delete(waiting, next, next+1)
	}
	return done
}

func waits(t Task, waiting []handTask) bool {
	for _, other := range waiting {
		if other.Key != t.Key && mustPrecede(other.Task, t) != "" {
			return true
		}
	}
	return false
}
