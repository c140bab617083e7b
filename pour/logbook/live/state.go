package live

import (
	"slices"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// StepState is a step and whether it is done.
type StepState struct {
	Step
	Done   bool
	DoneAt time.Duration // on the run's clock, since it was opened
}

// Sighting is a stage that was seen in a jug, or that was not reached when the jug was used.
type Sighting struct {
	Batch   pour.BatchName
	Jug     string
	Stage   chem.Stage
	Min     float64 // after that batch's lye met its oils
	Reached bool    // false: not reached by then
	Whole   bool    // seen before the batch was split, with all of it in one pot: it holds for every jug of it
}

// Of reports whether it was seen in a jug, or in the pot that it was still part of.
func (x Sighting) Of(n pour.BatchName, jug string) bool {
	return x.Batch == n && (x.Whole || x.Jug == jug)
}

// State is where a run stands: a pure function of the plan's sheet and the events.
type State struct {
	Steps     []StepState
	Next      int // the first step that is neither done nor passed over; len(Steps): there is none
	Sightings []Sighting
	Marks     []logbook.Event            // what counts, in order: everything that was neither taken back nor weighed again
	Again     map[string][]logbook.Event // by the id of a weighing that counts: those of the same thing before it
	Jumps     []logbook.Event            // every jump of the clocks that was not discounted, for showing
	Ended     bool
	Omitted   logbook.Omitted // what was planned and did not go in

	lyeIn    map[pour.BatchName]time.Duration
	reasons  map[pour.BatchName]string // why a batch is meant to be lye-heavy
	cut      bool                      // it is the cut that these are the steps of
	cutBegun bool                      // one of them is done
	cutFrom  time.Duration             // when the first of them was begun
}

// Replay works out where a run stands after its events.
func Replay(sheet pour.Sheet, events []logbook.Event) State {
	s := State{lyeIn: map[pour.BatchName]time.Duration{}}
	s.Marks, s.Again = logbook.Counting(logbook.Standing(events), &sheet)
	s.reasons, s.Omitted = reasonsOf(events), logbook.OmittedBy(s.Marks)
	done := map[string]time.Duration{}
	for _, e := range s.Marks {
		switch e.Kind {
		case logbook.Done:
			done[e.Step] = e.Run
		case logbook.Jumped:
			s.Jumps = append(s.Jumps, e)
		case logbook.Discounted:
			s.Jumps = slices.DeleteFunc(s.Jumps, func(j logbook.Event) bool { return j.ID == e.What })
		case logbook.Ended:
			s.Ended = true
		}
	}
	s.met()
	for _, step := range Steps(sheet) {
		at, ok := done[step.Key]
		s.Steps = append(s.Steps, StepState{Step: step, Done: ok, DoneAt: at})
	}
	for s.Next < len(s.Steps) && (s.Steps[s.Next].Done || s.PassedOver(s.Steps[s.Next].Step)) {
		s.Next++
	}
	s.sight()
	return s
}

// met finds when the batches' lye met their oils.
func (s *State) met() {
	for _, n := range []pour.BatchName{pour.Base, pour.Icing} {
		if at, ok := logbook.LyeInAt(s.Marks, n); ok {
			s.lyeIn[n] = at
		}
	}
}

// sight collects the stages, once the batches' lye-ins are known.
func (s *State) sight() {
	for _, e := range s.Marks {
		in, ok := s.lyeIn[e.Batch]
		if !ok || e.Kind != logbook.Seen && e.Kind != logbook.NotYet {
			continue
		}
		s.Sightings = append(s.Sightings, Sighting{
			Batch: e.Batch, Jug: e.Jug, Stage: e.Stage, Min: (e.Run - in).Minutes(), Reached: e.Kind == logbook.Seen,
			Whole: s.Whole(e),
		})
	}
}

// PassedOver reports whether a step that is not done is not waited for either: it was marked as not done, what it stirs in was left out, or every jug
// that it is about is used up or stays in its jug.
func (s State) PassedOver(step Step) bool {
	switch {
	case s.Omitted.Skipped(step.Key):
		return true
	case step.Jug == "":
		return len(step.Moves) > 0 && !slices.ContainsFunc(step.Moves, func(jug string) bool { return !s.Omitted.Unused(step.Batch, jug) })
	case s.Omitted.Unused(step.Batch, step.Jug) || s.Poured(step.Batch, step.Jug):
		return true
	}
	stirs := step.Kind == pour.TaskColour || step.Kind == pour.TaskScent
	return stirs && s.Omitted.Stirring(step.Batch, step.Kind, step.Jug)
}

// Whole reports whether a mark of a jug holds for every jug of its batch: a stage seen, a trouble or what was done for one while all of it was one pot.
// A scent that was left out is one jug's own, unless all of the batch goes without.
func (s State) Whole(e logbook.Event) bool {
	if e.Kind == logbook.Rescued && (e.Jug == "" || e.What == logbook.ScentLeftOut) {
		return e.Jug == ""
	}
	holds := e.Kind == logbook.Seen || e.Kind == logbook.Troubled || e.Kind == logbook.Rescued
	return holds && e.Jug != "" && s.OnePot(e.Batch, e.Run)
}

// OnePot reports whether all jugs of a batch were still one pot at a time of the run's clock: it is to be split, that was not done by then, and
// neither was anything with a jug of it.
func (s State) OnePot(n pour.BatchName, run time.Duration) bool {
	if _, _, splits := s.stepOf(n, pour.TaskSplit, ""); !splits {
		return false
	}
	return !slices.ContainsFunc(s.Steps, func(x StepState) bool {
		return x.Batch == n && x.Done && x.DoneAt <= run && (x.Kind == pour.TaskSplit || x.Jug != "" || len(x.Moves) > 0)
	})
}

// Elapsed is the time since the base's lye met its oils or, of a cut, since that was begun, at a time of the run's clock. The second result is
// false before.
func (s State) Elapsed(run time.Duration) (time.Duration, bool) {
	if s.cut {
		return run - s.cutFrom, s.cutBegun
	}
	in, ok := s.lyeIn[pour.Base]
	return run - in, ok
}

// SinceLyeIn is Elapsed for either batch.
func (s State) SinceLyeIn(n pour.BatchName, run time.Duration) (time.Duration, bool) {
	in, ok := s.lyeIn[n]
	return run - in, ok
}

// Begun reports whether lye has met oil in a batch: from then on nothing can be taken back.
func (s State) Begun() bool { return len(s.lyeIn) > 0 }

// Kept is how many of her marks stand.
func (s State) Kept() int {
	n := 0
	for _, e := range s.Marks {
		if e.Kind.ByHand() {
			n += 1 + len(s.Again[e.ID])
		}
	}
	return n
}

// Began is when a step that is done was begun, on the run's clock, by when the hands were free for it: with the end of the step done
// before it, and not before its planned minute where it has to wait for that. The lye-in has no length: it is begun when it is done.
func (s State) Began(step StepState) time.Duration {
	if step.Kind == StepLyeIn {
		return step.DoneAt
	}
	free := s.cutFrom
	for _, before := range s.Steps {
		if before.Done && before.DoneAt <= step.DoneAt && before.Key != step.Key {
			free = max(free, before.DoneAt)
		}
	}
	if in, ok := s.lyeIn[pour.Base]; ok && step.waits() {
		if planned := in + time.Duration(s.waitsTillMin(step.Step)*float64(time.Minute)); planned <= step.DoneAt { // else she did not wait
			free = max(free, planned)
		}
	}
	return free
}

// waitsTillMin is the minute after the base's lye-in before which a step that waits cannot start. Once a batch has its lye, what is left of
// it is counted from when that really met its oils: planned as long after that as the plan has it after the planned minute.
func (s State) waitsTillMin(step Step) float64 {
	if step.SkinMin > 0 {
		return s.skinnedMin(step)
	}
	in, _, found := s.stepOf(step.Batch, StepLyeIn, "")
	met, ok := s.lyeInMin(step.Batch)
	if !found || !ok {
		return step.PlannedMin
	}
	return step.PlannedMin - in.PlannedMin + met
}

// skinnedMin is when the top has skinned, min after the base's lye-in: so long after it was really touched last; as planned before that.
func (s State) skinnedMin(step Step) float64 {
	last := time.Duration(-1)
	for _, before := range s.Steps {
		if before.Done && before.touches() {
			last = max(last, before.DoneAt)
		}
	}
	if since, ok := s.Elapsed(last); ok && last >= 0 {
		return since.Minutes() + step.SkinMin
	}
	return step.PlannedMin
}

// lyeInMin is when a batch's lye really met its oils, min after the base's. The second result is false before both have.
func (s State) lyeInMin(n pour.BatchName) (float64, bool) {
	base, began := s.lyeIn[pour.Base]
	own, met := s.lyeIn[n]
	return (own - base).Minutes(), began && met
}

// Poured reports whether a jug has been used up: the last step that moves it is done.
func (s State) Poured(n pour.BatchName, jug string) bool {
	at, ok := s.LastMove(n, jug)
	return ok && at.Done
}

// LastMove is the last step that moves a jug, of those that were not marked as not done.
func (s State) LastMove(n pour.BatchName, jug string) (StepState, bool) {
	for i := len(s.Steps) - 1; i >= 0; i-- {
		if s.Steps[i].moves(n, jug) && !s.Omitted.Skipped(s.Steps[i].Key) {
			return s.Steps[i], true
		}
	}
	return StepState{}, false
}

// OnlyMove is a jug that would not be used at all without a step: nothing else that is done or waited for moves it. Empty: there is none.
func (s State) OnlyMove(of Step) string {
	for _, jug := range of.Moves {
		others := slices.ContainsFunc(s.Steps, func(x StepState) bool {
			return x.Key != of.Key && x.moves(of.Batch, jug) && !s.Omitted.Skipped(x.Key)
		})
		if !others && !s.Omitted.Unused(of.Batch, jug) {
			return jug
		}
	}
	return ""
}

// nextMove is the first step still to be done that moves a jug.
func (s State) nextMove(n pour.BatchName, jug string) (StepState, bool) {
	for _, step := range s.Steps {
		if !step.Done && step.moves(n, jug) && !s.Omitted.Skipped(step.Key) {
			return step, true
		}
	}
	return StepState{}, false
}

// step finds a step by its key.
func (s State) step(key string) (StepState, bool) {
	for _, step := range s.Steps {
		if step.Key == key {
			return step, true
		}
	}
	return StepState{}, false
}

// stepOf finds a step by batch, kind and jug.
func (s State) stepOf(n pour.BatchName, kind pour.TaskKind, jug string) (StepState, int, bool) {
	for i, step := range s.Steps {
		if step.Batch == n && step.Kind == kind && step.Jug == jug {
			return step, i, true
		}
	}
	return StepState{}, 0, false
}
