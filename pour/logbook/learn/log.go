package learn

import (
	"math"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

// Log is what one jug of one pour says about the maker's hand: what the clock has to know of it, and when its stages came.
type Log struct {
	Pour    string // id of the pour
	When    time.Time
	Batch   string
	JugName string
	Batter  clock.Batter
	Jug     clock.Jug
	Seen    []StageAt
	NotYet  []StageAt // used at that minute, not there yet; counts only where nothing was seen
	Line    Line      // zero: not worked out yet
}

// StageAt is a stage and the minute after lye-in at which it was seen or not yet there.
type StageAt struct {
	Stage chem.Stage
	Min   float64
}

// Line is a log as one straight-line observation of ln speed: y = β + u + Σ w·δf + noise (trace model 3.1 and 3.2).
type Line struct {
	Worked   bool
	Y        float64   // ln speed that puts the stages where they were seen, their mean
	Stages   int       // how many were; 0: there is no observation, Why says the reason
	Weights  []float64 // w, in the order of the jug's scents
	Censored bool      // the speed was below Y, not at it
	Why      string
}

// logsOf is what a pour teaches: one for every jug in which a stage was seen, or was not yet there when the jug was used. A pour
// that is left out, whose plan cannot be used or that has nothing to teach gives none.
func logsOf(p logbook.Pour, shelf pour.Shelf) []Log {
	if p.PlanErr != nil {
		return nil
	}
	s := live.Replay(pour.Weigh(p.Plan, shelf), p.Events)
	if logbook.IsLeftOut(s.Marks) || len(s.Sightings) == 0 {
		return nil
	}
	actual := pour.Weigh(s.Actual(p.Plan), shelf)
	var out []Log
	for _, b := range actual.Batches() {
		n := b.Name
		batter, ok := s.Batter(actual, n, shelf)
		if !ok {
			continue
		}
		for _, j := range b.Jugs {
			l := Log{Pour: p.ID, When: p.Opened, Batch: string(b.Name), JugName: j.Name, Batter: batter}
			for _, x := range s.Sightings {
				switch at := (StageAt{x.Stage, x.Min}); {
				case x.Batch != n || x.Jug != j.Name: // what was seen of the whole pot counts once, where it was marked
				case x.Reached:
					l.Seen = append(l.Seen, at)
				default:
					l.NotYet = append(l.NotYet, at)
				}
			}
			if len(l.Seen)+len(l.NotYet) == 0 {
				continue
			}
			if l.Jug, ok = s.Jug(actual, n, j.Name, shelf, 0); ok {
				out = append(out, l)
			}
		}
	}
	return out
}

// worked returns the log with its line, from the scents' priors.
func (l Log) worked() Log {
	if !l.Line.Worked {
		l.Line = l.line(func(string) float64 { return 0 })
	}
	return l
}

// line makes the straight line at scent speeds shifted from their priors. It is drawn back to the priors, so that lines from
// different shifts mix.
func (l Log) line(shift func(scent string) float64) Line {
	out := Line{Worked: true}
	c, err := clock.New(l.Batter, clock.Hand{})
	if err != nil {
		out.Why = err.Error()
		return out
	}
	jug := l.Jug
	jug.Scents = append([]clock.Scent(nil), l.Jug.Scents...)
	for i := range jug.Scents {
		jug.Scents[i].LnFactor += shift(jug.Scents[i].ID)
	}
	out.Weights = make([]float64, len(jug.Scents))
	seen := l.Seen
	if out.Censored = len(seen) == 0; out.Censored {
		seen = l.NotYet
	}
	for _, at := range seen {
		if l.tells(at) {
			out.take(c, jug, at)
		}
	}
	if out.Stages == 0 {
		out.Why = "no stage was seen after the blending and after half a minute"
		return out
	}
	n := float64(out.Stages)
	out.Y /= n
	for i, s := range jug.Scents {
		out.Weights[i] /= n
		out.Y += out.Weights[i] * shift(s.ID)
	}
	return out
}

// take adds one sighting, if a speed explains it. A censored line keeps the tightest bound: the lowest speed.
func (o *Line) take(c *clock.Clock, jug clock.Jug, at StageAt) {
	speed, ok := c.SpeedAt(jug, at.Stage, at.Min)
	if !ok {
		return
	}
	y := math.Log(speed)
	if o.Censored && o.Stages > 0 && y >= o.Y {
		return
	}
	w, ok := c.ScentWeights(jug, at.Stage, at.Min)
	if !ok {
		return
	}
	if o.Censored {
		o.Y, o.Weights, o.Stages = y, w, 1
		return
	}
	o.Y += y
	o.Stages++
	for i := range w {
		o.Weights[i] += w[i]
	}
}

// tells reports whether a sighting says something of the speed: not while the blender ran, nor right after lye-in.
func (l Log) tells(at StageAt) bool {
	if at.Min < live.EarliestMin {
		return false
	}
	for _, bursts := range [][]clock.Burst{l.Batter.Bursts, l.Jug.Bursts} {
		for _, b := range bursts {
			if at.Min >= b.AtMin && at.Min <= b.AtMin+b.S/60 {
				return false
			}
		}
	}
	return true
}

// variance is s² of the log: the pour, and the judging of each stage (trace model 3.1).
func (l Log) variance() float64 {
	return clock.PourSD*clock.PourSD + clock.JudgeSD*clock.JudgeSD/float64(l.Line.Stages)
}

// Predicted is when the clock, with a hand, expects the stages of this log, min after lye-in: to be set beside Seen. With the zero
// hand it is what a maker without logs was told. The second result is false where the clock refuses.
func (l Log) Predicted(h clock.Hand) ([chem.Stages]clock.Time, bool) {
	c, err := clock.New(l.Batter, h)
	if err != nil {
		return [chem.Stages]clock.Time{}, false
	}
	f := c.Forecast(l.Jug)
	return f.Stages, f.Refusal == ""
}
