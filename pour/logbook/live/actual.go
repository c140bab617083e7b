package live

import (
	"time"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Actual is the plan with what really happened in it: temperatures that were read, and blender bursts that were noted. Where
// nothing was noted the plan stands.
func (s State) Actual(p pour.Plan) pour.Plan {
	p = p.Clone()
	bursts := map[pour.BatchName][]pour.Burst{}
	for _, e := range s.Marks {
		b := p.Batch(e.Batch)
		if b == nil {
			continue
		}
		switch e.Kind {
		case logbook.Read:
			switch e.What {
			case logbook.ReadOils:
				b.OilsC = e.Value
			case logbook.ReadLye:
				b.LyeC = e.Value
			case logbook.ReadBatter:
				b.BatterC, b.BatterMeasured = e.Value, true
			}
		case logbook.Blended:
			if since, ok := s.SinceLyeIn(e.Batch, e.Run); ok {
				bursts[e.Batch] = append(bursts[e.Batch], pour.Burst{AtMin: max(0, since.Minutes()-e.Value/60), S: e.Value})
			}
		}
	}
	for n, noted := range bursts {
		p.Batch(n).Blend = noted
	}
	return p
}

// Batter is what the clock has to know of a batch as it really went; the sheet is that of the actual plan.
func (s State) Batter(actual pour.Sheet, n pour.BatchName, shelf pour.Shelf) (clock.Batter, bool) {
	b, ok := actual.ClockBatter(n, shelf)
	if !ok {
		return b, false
	}
	if mix, _, found := s.stepOf(n, pour.TaskMix, ""); found && mix.Done {
		if since, ok := s.SinceLyeIn(n, mix.DoneAt); ok {
			b.SplitMin = min(max(0, since.Minutes()), clock.HorizonMin)
		}
	}
	return b, true
}

// Jug is what the clock has to know of a jug as it really went. A scent that has not gone in by the minute given is taken to go
// in then at the earliest; one left out of a jug that was used is left out.
func (s State) Jug(actual pour.Sheet, n pour.BatchName, name string, shelf pour.Shelf, nowMin float64) (clock.Jug, bool) {
	j, ok := actual.ClockJug(n, name, shelf)
	if !ok {
		return j, false
	}
	step, at, found := s.stepOf(n, pour.TaskScent, name)
	switch {
	case !found:
	case step.Done:
		if since, ok := s.SinceLyeIn(n, s.begun(at)); ok {
			for i := range j.Scents {
				j.Scents[i].AtMin = max(0, since.Minutes())
			}
		}
	case s.Poured(n, name) || s.PassedOver(step.Step):
		j.Scents = nil
	default:
		for i := range j.Scents {
			j.Scents[i].AtMin = max(j.Scents[i].AtMin, nowMin)
		}
	}
	return j, true
}

// begun is when a finished step was begun: as long before its end as it takes, but not before the one finished before it.
func (s State) begun(i int) time.Duration {
	step := s.Steps[i]
	at := step.DoneAt - time.Duration(step.LengthMin*float64(time.Minute))
	for k, other := range s.Steps {
		if k != i && other.Done && other.DoneAt <= step.DoneAt && other.DoneAt > at {
			at = other.DoneAt
		}
	}
	return at
}
