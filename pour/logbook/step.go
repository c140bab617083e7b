package logbook

import (
	"slices"

	"pourbench/pour"
)

// StepLyeIn is the kind of the step that starts a batch's clock: lye meets oil. It has no length; the mixing follows.
const StepLyeIn = "lye in"

// Step is one step of a run: a task of the plan, or the moment lye meets oil.
type Step struct {
	Key        string // stable name: the task's, or "base lye in"
	Kind       string // one of pour's Task… words, or StepLyeIn
	Batch      pour.BatchName
	Jug        string
	PlannedMin float64 // start on the plan's run clock, 0 = the base's lye meets its oils
	LengthMin  float64
}

// Steps lists the steps of a sheet's run in the order they are done.
func Steps(s pour.Sheet) []Step {
	out := make([]Step, 0, len(s.Run)+2)
	for _, t := range s.Run {
		batch := pour.BatchName(t.Batch)
		if t.Kind == pour.TaskMix {
			out = append(out, Step{Key: lyeInKey(batch), Kind: StepLyeIn, Batch: batch, PlannedMin: t.StartMin})
		}
		out = append(out, Step{Key: t.Key, Kind: t.Kind, Batch: batch, Jug: t.Jug, PlannedMin: t.StartMin, LengthMin: t.LengthMin})
	}
	return out
}

func lyeInKey(n pour.BatchName) string { return string(n) + " " + StepLyeIn }

// pours reports whether the step uses a jug up.
func (s Step) pours() bool { return s.Kind == pour.TaskPour || s.Kind == pour.TaskPipe }

// waits reports whether the step has a minute before which it cannot start, however early the hands are free.
func (s Step) waits() bool {
	return slices.Contains([]string{StepLyeIn, pour.TaskSplit, pour.TaskScent}, s.Kind)
}
