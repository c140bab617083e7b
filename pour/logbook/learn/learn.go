package learn

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"

	"pourbench/chem/clock"
	"pourbench/chem/cure"
	"pourbench/pour"
)

// farShift is how far ln of a scent's speed may be from its prior before the lines are drawn anew (trace model 3.2).
const farShift = 0.5

// Lesson is what a set of logs taught.
type Lesson struct {
	Hand   clock.Hand
	Logs   []LogResult // in the order they were learnt from: by time, exact ones first
	Scents []Finding   // by how many pours they rest on
	Left   []LogResult // logs that taught nothing, with the reason in Why
	Rack   cure.Rack   // what batches that were weighed as they dried taught of the next
	Dried  []Drying    // those batches, in the order of their ids
	Redone bool        // lines were drawn anew, because a scent was far from its prior
}

// Taught is the lesson as plans are worked out with it.
func (l Lesson) Taught() pour.Hand {
	h := pour.Hand{Clock: l.Hand, Rack: l.Rack}
	for _, r := range l.Logs {
		if r.Odd && !slices.Contains(h.Odd, r.Log.Pour) {
			h.Odd = append(h.Odd, r.Log.Pour)
		}
	}
	return h
}

// LogResult is one log in a lesson.
type LogResult struct {
	Log      Log
	Expected float64 // ln speed expected just before this log, from its elders
	Observed float64 // ln speed it showed; for a censored one, the bound
	SD       float64 // of what was expected of it
	Odd      bool    // far from expected: it counts less
	Why      string  // why it taught nothing
}

// Factor is how much sooner (over 1) or later than expected things went.
func (r LogResult) Factor() float64 { return math.Exp(r.Observed - r.Expected) }

// fromLogs works out the hand from all logs (trace model, section 3). The order of the logs does not matter: they are taken by their
// time. Logs without a line get one, on every core; [Lesson.Logs] returns them with it, so that a caller can keep them.
func fromLogs(logs []Log) Lesson {
	all := slices.Clone(logs)
	eachLog(all, func(l Log) Log { return l.worked() })
	var lesson Lesson
	usable := make([]Log, 0, len(all))
	for _, l := range all {
		if l.Line.Stages == 0 {
			lesson.Left = append(lesson.Left, LogResult{Log: l, Why: l.Line.Why})
			continue
		}
		usable = append(usable, l)
	}
	slices.SortStableFunc(usable, byTime)
	p := newPupil(usable)
	p.study(usable)
	if shift, far := p.farScents(); far {
		lesson.Redone = true
		again := slices.Clone(usable)
		eachLog(again, func(l Log) Log { return l.redrawn(shift) })
		p = newPupil(again)
		p.study(again)
		for i := range p.results {
			p.results[i].Log.Line = usable[p.order[i]].Line // what is kept are the lines at the priors
		}
	}
	lesson.Hand, lesson.Logs = p.hand(), p.results
	lesson.Scents = p.findings(usable)
	return lesson
}

func byTime(a, b Log) int {
	return cmp.Or(a.When.Compare(b.When), cmp.Compare(a.Pour, b.Pour), cmp.Compare(a.Batch, b.Batch), cmp.Compare(a.JugName, b.JugName))
}

// eachLog replaces every log by what f makes of it, on every core.
func eachLog(logs []Log, f func(Log) Log) {
	var group sync.WaitGroup
	workers := min(runtime.GOMAXPROCS(0), len(logs))
	for w := range workers {
		group.Go(func() {
			for i := w; i < len(logs); i += workers {
				logs[i] = f(logs[i])
			}
		})
	}
	group.Wait()
}

// redrawn returns the log with its line at shifted scents, where that can make a difference.
func (l Log) redrawn(shift map[string]float64) Log {
	for _, s := range l.Jug.Scents {
		if math.Abs(shift[s.ID]) > farShift {
			if line := l.line(func(id string) float64 { return shift[id] }); line.Stages > 0 {
				l.Line = line
			}
			return l
		}
	}
	return l
}

// pupil studies logs one after the other.
type pupil struct {
	belief  *belief
	results []LogResult
	order   []int // of the results: index in the logs
	squares float64
	exact   int
	pours   map[string]bool
	bearing map[traitKey]map[string]bool // which pours bear on a trait
}

// newPupil knows every trait of the logs, at its prior.
func newPupil(logs []Log) *pupil {
	p := &pupil{belief: newBelief(), pours: map[string]bool{}, bearing: map[traitKey]map[string]bool{}}
	p.belief.trait(clock.PaceTrait, "", clock.PriorPaceSD)
	for _, l := range logs {
		p.row(l)
	}
	return p
}

// row is h of a log, and the pours that bear on each of its traits.
func (p *pupil) row(l Log) []pull {
	h := []pull{{p.belief.trait(clock.PaceTrait, "", clock.PriorPaceSD), 1}}
	if l.Batter.Recipe != "" {
		h = append(h, pull{p.belief.trait(clock.RecipeTrait, l.Batter.Recipe, clock.PriorRecipeSD), 1})
	}
	for i, s := range l.Jug.Scents {
		if w := l.Line.Weights[i]; w != 0 && s.ID != "" {
			h = append(h, pull{p.belief.trait(clock.ScentTrait, s.ID, s.SD), w})
		}
	}
	return h
}

// study learns from the exact logs batch by batch, then from the censored ones.
func (p *pupil) study(logs []Log) {
	for from := 0; from < len(logs); {
		to := from + 1
		for to < len(logs) && logs[to].Pour == logs[from].Pour && logs[to].Batch == logs[from].Batch {
			to++
		}
		p.batch(logs, from, to)
		from = to
	}
	for i, l := range logs {
		if l.Line.Censored {
			p.note(i, l, p.belief.learnBelow(p.row(l), l.Line.Y, l.variance()))
		}
	}
}

// batch learns from the jugs of one batch. Where there are two or more they share an unknown of their own.
func (p *pupil) batch(logs []Log, from, to int) {
	exact := 0
	for _, l := range logs[from:to] {
		if !l.Line.Censored {
			exact++
		}
	}
	shared := -1
	if exact > 1 {
		shared = p.belief.grow(clock.SameBatchSD * clock.SameBatchSD)
	}
	for i := from; i < to; i++ {
		l := logs[i]
		if l.Line.Censored {
			continue
		}
		h := p.row(l)
		if shared >= 0 {
			h = append(h, pull{shared, 1})
		}
		in := p.belief.learn(h, l.Line.Y, l.variance())
		p.squares += in.e * in.e / in.s
		p.exact++
		p.note(i, l, in)
	}
	if shared >= 0 {
		p.belief.shrink()
	}
}

func (p *pupil) note(i int, l Log, in innovation) {
	p.results = append(p.results, LogResult{
		Log: l, Expected: in.expected, Observed: l.Line.Y, SD: math.Sqrt(in.s), Odd: in.odd,
	})
	p.order = append(p.order, i)
	p.pours[l.Pour] = true
	for _, h := range p.row(l) {
		key := p.belief.keys[h.at]
		if p.bearing[key] == nil {
			p.bearing[key] = map[string]bool{}
		}
		p.bearing[key][l.Pour] = true
	}
}

// farScents gives where the scents stand, and whether one of them is far from its prior.
func (p *pupil) farScents() (map[string]float64, bool) {
	shift, far := map[string]float64{}, false
	for i, k := range p.belief.keys {
		if k.kind == clock.ScentTrait {
			shift[k.id] = p.belief.mean[i]
			far = far || math.Abs(p.belief.mean[i]) > farShift
		}
	}
	return shift, far
}

// hand is what was learnt, with the noise (trace model 3.4). Without a log it is the zero hand.
func (p *pupil) hand() clock.Hand {
	if len(p.results) == 0 {
		return clock.Hand{}
	}
	n := float64(p.exact)
	h := clock.Hand{
		Covariance: p.belief.cov, Pours: len(p.pours),
		Noise:   max(1, (clock.PriorFreedom+p.squares)/(clock.PriorFreedom+n)),
		Freedom: clock.PriorFreedom + p.exact,
	}
	for i, k := range p.belief.keys {
		h.Traits = append(h.Traits, clock.Trait{Kind: k.kind, ID: k.id, Mean: p.belief.mean[i], Pours: len(p.bearing[k])})
	}
	return h
}
