package logbook

import (
	"time"

	"pourbench/chem/clock"
	"pourbench/pour"
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
		case Read:
			switch e.What {
			case ReadOils:
				b.OilsC = e.Value
			case ReadLye:
				b.LyeC = e.Value
			case ReadBatter:
				b.BatterC, b.BatterMeasured = e.Value, true
			}
		case Blended:
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

// batter is what the clock has to know of a batch as it really went; the sheet is that of the actual plan.
func (s State) batter(actual pour.Sheet, n pour.BatchName, shelf pour.Shelf) (clock.Batter, bool) {
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

// jug is what the clock has to know of a jug as it really went. A scent that has not gone in by the minute given is taken to go
// in then at the earliest; one left out of a jug that was used is left out.
func (s State) jug(actual pour.Sheet, n pour.BatchName, name string, shelf pour.Shelf, nowMin float64) (clock.Jug, bool) {
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
	case s.Poured(n, name):
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

// Logs are what a pour teaches: one for every jug in which a stage was seen, or was not yet there when the jug was used. A pour
// that is left out, whose plan cannot be used or that has nothing to teach gives none.
func (p Pour) Logs(shelf pour.Shelf) []Log {
	if p.PlanErr != nil {
		return nil
	}
	s := Replay(pour.Weigh(p.Plan, shelf), p.Events)
	if s.LeftOut || len(s.Sightings) == 0 {
		return nil
	}
	actual := pour.Weigh(s.Actual(p.Plan), shelf)
	var out []Log
	for _, b := range actual.Batches() {
		n := b.Name
		batter, ok := s.batter(actual, n, shelf)
		if !ok {
			continue
		}
		for _, j := range b.Jugs {
			l := Log{Pour: p.ID, When: p.Opened, Batch: string(b.Name), JugName: j.Name, Batter: batter}
			for _, x := range s.Sightings {
				switch at := (StageAt{x.Stage, x.Min}); {
				case x.Batch != n || x.Jug != j.Name:
				case x.Reached:
					l.Seen = append(l.Seen, at)
				default:
					l.NotYet = append(l.NotYet, at)
				}
			}
			if len(l.Seen)+len(l.NotYet) == 0 {
				continue
			}
			if l.Jug, ok = s.jug(actual, n, j.Name, shelf, 0); ok {
				out = append(out, l)
			}
		}
	}
	return out
}
