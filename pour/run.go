package pour

import (
	"fmt"
	"slices"

	"pourbench/chem"
)

// taskKey is the stable name of a task: batch, kind and, for a task of one jug, the jug.
func taskKey(n BatchName, kind TaskKind, jug string) string {
	key := string(n) + " " + string(kind)
	if jug != "" {
		key += " " + jug
	}
	return key
}

// handTask is a task before it has its time.
type handTask struct {
	Task
	earliest float64 // run clock, min
	skins    bool    // it waits until the top has skinned
}

// schedule lays every task on the run clock for one pair of hands: each starts when it may and the one before is done.
// The base's lye-in is minute 0 by definition; what the icing does before it must be done by then or waits until after.
func (s *Sheet) schedule() {
	s.Run = nil
	free, touched := -1e9, -1e9
	for _, t := range s.handTasks() {
		if t.skins {
			t.earliest = touched + orUsual(s.Plan.Run.SkinMin, usualSkinMin)
		}
		t.StartMin = max(t.earliest, free)
		if t.Kind == TaskMix && t.Batch == Base {
			t.StartMin = 0
		}
		if b := s.Batch(t.Batch); t.Kind == TaskMix && b != nil {
			b.LyeInAtMin = t.StartMin
		}
		free = t.StartMin + t.LengthMin
		if t.Act != NoAct && !t.skins {
			touched = free
		}
		s.Run = append(s.Run, t.Task)
	}
	var cooling []Task
	for _, b := range s.Batches() {
		if t, ok := s.coolLye(b); ok {
			cooling = append(cooling, t)
		}
	}
	s.Run = append(cooling, s.Run...)
	s.turns()
	s.cutOn()
}

// turns says when each jug has its first and its last act.
func (s *Sheet) turns() {
	for _, t := range s.Run {
		b := s.Batch(t.Batch)
		if b == nil || t.Act == NoAct {
			continue
		}
		for i := range b.Jugs {
			j := &b.Jugs[i]
			if !b.Script.Uses(b.Script.Acts[t.Act], i) {
				continue
			}
			if !j.Clock.PourAtMin.Known {
				j.Clock.PourAtMin = Know(t.StartMin)
			}
			j.Clock.LastAtMin = Know(t.StartMin)
		}
	}
}

// Batch returns the sheet of a batch, or nil: a plan need not have an icing.
func (s *Sheet) Batch(name BatchName) *BatchSheet {
	for _, b := range s.Batches() {
		if b.Name == name {
			return b
		}
	}
	return nil
}

// handTasks lists the tasks in the order they are done: the usual one, changed as far as the plan says and as can be.
func (s *Sheet) handTasks() []handTask {
	base := s.batchTasks(Base)
	var before, after []handTask
	if s.Icing != nil {
		before, after = s.splitIcing(s.batchTasks(Icing))
	}
	end := Task{Key: taskKey(Base, TaskBed, ""), Kind: TaskBed, Batch: Base, Act: NoAct, LengthMin: s.Plan.Run.BedMin}
	if s.Plan.Trial {
		end = Task{Key: taskKey(Base, TaskEnd, ""), Kind: TaskEnd, Batch: Base, Act: NoAct}
	}
	into, onto := s.topTasks()
	later := slices.Concat(base[1:], into, after, onto, []handTask{{Task: end}})
	return slices.Concat(before, base[:1], s.reorder(later, s.Plan.Run.Order))
}

// topTasks lists what is done to the loaf in the pour: what goes into the base before any icing, and what goes on the top after it.
func (s *Sheet) topTasks() (into, onto []handTask) {
	for _, t := range s.loafTasks(keyTop, s.TopScript) {
		a := s.TopScript.Acts[t.Act]
		if a.Into {
			into = append(into, handTask{Task: t})
			continue
		}
		onto = append(onto, handTask{Task: t, skins: a.Wait})
	}
	return into, onto
}

// splitIcing parts the icing's tasks into those done before the base's lye-in and those after; what is done on top of the base is always after.
func (s *Sheet) splitIcing(tasks []handTask) (before, after []handTask) {
	free := -1e9
	for i, t := range tasks {
		start := max(t.earliest, free)
		if start+t.LengthMin > 0 || t.onBase() {
			return tasks[:i], tasks[i:]
		}
		free = start + t.LengthMin
	}
	return tasks, nil
}

// batchTasks lists one batch's tasks in their usual order: mix, split, colours, scents by their minute, then the acts of its script.
func (s *Sheet) batchTasks(n BatchName) []handTask {
	b, run := s.Plan.Batch(n), s.Plan.Run
	in := b.StartAtMin
	if n == Base {
		in = 0
	}
	var tasks []handTask
	add := func(kind TaskKind, jug string, earliest, length float64) {
		t := Task{Key: taskKey(n, kind, jug), Kind: kind, Batch: n, Jug: jug, Act: NoAct, LengthMin: length}
		tasks = append(tasks, handTask{Task: t, earliest: earliest})
	}
	add(TaskMix, "", in, b.SplitAtMin)
	add(TaskSplit, "", in+b.SplitAtMin, run.SplitMin*float64(len(b.Jugs)-1))
	for _, j := range b.Jugs {
		if len(j.Colourants) > 0 && j.SharePercent > 0 {
			add(TaskColour, j.Name, in, run.StirMin)
		}
	}
	for _, sc := range s.scentTimes(b) {
		add(TaskScent, sc.jug, in+sc.at, run.ScentMin*float64(sc.count))
	}
	for _, t := range s.acts(s.Batch(n)) {
		tasks = append(tasks, handTask{Task: t, earliest: in})
	}
	return tasks
}

type scentTime struct {
	jug   string
	at    float64
	count int
}

// scentTimes lists the jugs that are scented, by the minute their last scent may go in.
func (s *Sheet) scentTimes(b *Batch) []scentTime {
	var list []scentTime
	for _, j := range b.Jugs {
		t := scentTime{jug: j.Name}
		for _, sc := range b.Scents {
			if sc.GoesInto(j.Name) {
				t.at, t.count = max(t.at, sc.AtMin), t.count+1
			}
		}
		if t.count > 0 && j.SharePercent > 0 {
			list = append(list, t)
		}
	}
	slices.SortStableFunc(list, func(a, b scentTime) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	return list
}

// coolLye is when the lye is made so that it is at its planned temperature at lye-in: as long before as the plan says, or as is estimated.
func (s *Sheet) coolLye(b *BatchSheet) (Task, bool) {
	minutes := s.Plan.Run.CoolLyeMin
	if minutes == 0 && b.Lye.OnIce {
		minutes = onIceMin
	}
	if minutes == 0 {
		plan := s.Plan.Batch(b.Name)
		room := s.Plan.Room.TemperatureC
		if !b.Heat.LyePeakC.Known {
			return Task{}, false
		}
		estimate, ok := chem.CoolMinutes(b.lyeG(), b.Lye.PureConcentrationPercent/100, b.Heat.LyePeakC.V, plan.LyeC, room)
		if !ok {
			return Task{}, false
		}
		minutes = estimate
	}
	key := taskKey(b.Name, TaskCoolLye, "")
	return Task{Key: key, Kind: TaskCoolLye, Batch: b.Name, Act: NoAct, StartMin: b.LyeInAtMin - minutes, LengthMin: minutes}, true
}

// MoveTask moves a task of the run up (by −1) or down (by 1) and refuses, with the reason, an order the hands cannot follow.
func MoveTask(s Sheet, key string, by int) Edit {
	return func(p Plan) (Plan, error) {
		tasks := s.handTasks()
		from := slices.IndexFunc(tasks, func(t handTask) bool { return t.Key == key })
		if from < 0 {
			return p, fmt.Errorf("move %q: the lye cools by itself, it has no place in the order", key)
		}
		to := from + by
		if to < 0 || to >= len(tasks) {
			return p, fmt.Errorf("move %q: it is at the end already", key)
		}
		first, second := tasks[min(from, to)].Task, tasks[max(from, to)].Task
		if first.Act != NoAct && second.Act != NoAct && first.Batch == second.Batch {
			return swapJugs(p, s, first, second)
		}
		if second.Kind == TaskMix && second.Batch == Base || first.Kind == TaskMix && first.Batch == Base {
			return p, fmt.Errorf("move %q: the base's lye-in is minute 0; start the icing earlier or later instead", key)
		}
		if reason := s.mustPrecede(first, second); reason != "" {
			return p, fmt.Errorf("move %q: %s", key, reason)
		}
		tasks[from], tasks[to] = tasks[to], tasks[from]
		p.Run.Order = make([]string, len(tasks))
		for i, t := range tasks {
			p.Run.Order[i] = t.Key
		}
		return p, nil
	}
}
