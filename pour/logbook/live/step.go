package live

import (
	"slices"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// StepLyeIn is the kind of the step that starts a batch's clock: lye meets oil. It has no length; the mixing follows.
const StepLyeIn pour.TaskKind = "lye in"

// StepMakeLye is the kind of the step that makes a batch's lye, in the order that its extras want. It has no length; the cooling follows.
const StepMakeLye pour.TaskKind = "make the lye"

// Step is one step of a run: a task of the plan, making a lye, or the moment lye meets oil.
type Step struct {
	Key        string        // stable name: the task's, or that of [logbook.LyeIn]
	Kind       pour.TaskKind // one of pour's Task… words, StepMakeLye or StepLyeIn
	Batch      pour.BatchName
	Jug        string
	Item       string  // which embed, topping, cut or piece it is about; empty: none
	PlannedMin float64 // start on the plan's run clock, 0 = the base's lye meets its oils
	LengthMin  float64
	Name       string   // in a few words, without its batch
	Tell       string   // what is done, in the words of its acts; empty: it is no act
	Moves      []string // the jugs it pours, pipes or moves with the others
	Own        []string // those of them it has an act of their own for
	SkinMin    float64  // so long after the top was touched last it waits until that has skinned; 0: it does not
}

// Steps lists the steps of a sheet's run in the order they are done; acts that belong to one round are one step.
func Steps(s pour.Sheet) []Step {
	out := make([]Step, 0, len(s.Run)+4)
	made := map[pour.BatchName]bool{}
	for _, st := range s.Stints() {
		if (st.Kind == pour.TaskCoolLye || st.Kind == pour.TaskMix) && !made[st.Batch] {
			made[st.Batch] = true
			out = append(out, Step{Key: string(st.Batch) + " " + string(StepMakeLye), Kind: StepMakeLye, Batch: st.Batch, PlannedMin: st.StartMin, Name: string(StepMakeLye)})
		}
		if st.Kind == pour.TaskMix {
			out = append(out, Step{Key: logbook.LyeIn(st.Batch), Kind: StepLyeIn, Batch: st.Batch, PlannedMin: st.StartMin, Name: string(StepLyeIn)})
		}
		out = append(out, stepOf(&s, st))
	}
	return out
}

// stepOf is the step that a stint is.
func stepOf(s *pour.Sheet, st pour.Stint) Step {
	return Step{
		Key: st.Key, Kind: st.Kind, Batch: st.Batch, Jug: st.Jug, Item: st.Item, PlannedMin: st.StartMin, LengthMin: st.LengthMin,
		Name: st.Name(), Tell: s.Tell(st), Moves: s.Moves(st), Own: own(st), SkinMin: s.SkinMin(st),
	}
}

// own lists the jugs a stint has acts for, each once.
func own(st pour.Stint) []string {
	var out []string
	for _, t := range st.Tasks {
		if t.Act != pour.NoAct && t.Jug != "" && !slices.Contains(out, t.Jug) {
			out = append(out, t.Jug)
		}
	}
	return out
}

// moves reports whether the step uses a jug.
func (s Step) moves(n pour.BatchName, jug string) bool {
	return s.Batch == n && slices.Contains(s.Moves, jug)
}

// waits reports whether the step has a minute before which it cannot start, however early the hands are free.
func (s Step) waits() bool {
	return s.SkinMin > 0 || slices.Contains([]pour.TaskKind{StepLyeIn, pour.TaskSplit, pour.TaskScent}, s.Kind)
}

// Skippable reports whether a pour can go on without the step: not without a lye, and not unmixed; and what lies on the loaf or in it is told as the plan
// has it, so that nobody may say that it does not.
func (s Step) Skippable() bool {
	return !s.OnLoaf() && !slices.Contains([]pour.TaskKind{StepMakeLye, StepLyeIn, pour.TaskMix}, s.Kind)
}

// OnLoaf reports whether the step puts something onto the loaf or into it.
func (s Step) OnLoaf() bool { return s.Batch == "" && s.Item != "" }

// touches reports whether the step touches the fresh loaf, or what will lie in it.
func (s Step) touches() bool { return s.Tell != "" && s.SkinMin == 0 }
