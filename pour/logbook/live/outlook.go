package live

import (
	"math"
	"slices"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// JugOutlook is what the clock makes of one jug, with everything seen so far.
type JugOutlook struct {
	Batch   pour.BatchName
	Jug     string
	Stages  [chem.Stages]pour.Figure // min after that batch's lye-in; seen ones as they were seen
	Seen    [chem.Stages]bool
	Reached int         // how many stages it has reached: 0 none, 1 emulsion, … ; only what was seen
	Window  pour.Window // of its technique, min after that batch's lye-in
	Pace    float64     // against what was expected before this pour: over 1 is sooner
	Refusal string      // why the clock says nothing of it
	Scented bool        // it is to have a scent; false once that was left out
}

// EarliestMin is the minute after lye-in before which a stage says nothing of the speed: lye is still being poured in.
const EarliestMin = 0.5

// Outlook is what the clock makes of every jug of a run. It takes some milliseconds: work it out after an event, not for every frame.
type Outlook struct{ Jugs []JugOutlook }

// Outlook works out every jug with what has really happened: temperatures, bursts, when the batch was split and scented, and the
// stages seen. A stage that comes sooner in one jug speaks for its sisters too, as far as they share a batter.
func (l Live) Outlook(shelf pour.Shelf, h pour.Hand) Outlook {
	if l.cut {
		return Outlook{} // no jug is left
	}
	s := l.State()
	actual := pour.Weigh(s.Actual(l.Sheet.Plan), shelf)
	var out Outlook
	for _, b := range actual.Batches() {
		n := b.Name
		w := watch{state: s, sheet: actual, batch: n, shelf: shelf, hand: h}
		if since, ok := s.SinceLyeIn(n, l.run); ok {
			w.nowMin = since.Minutes()
		}
		out.Jugs = append(out.Jugs, w.jugs(b)...)
	}
	return out
}

// Jug finds a jug.
func (o Outlook) Jug(n pour.BatchName, name string) (JugOutlook, bool) {
	for _, j := range o.Jugs {
		if j.Batch == n && j.Jug == name {
			return j, true
		}
	}
	return JugOutlook{}, false
}

// watch works out the jugs of one batch.
type watch struct {
	state  State
	sheet  pour.Sheet
	batch  pour.BatchName
	shelf  pour.Shelf
	hand   pour.Hand
	nowMin float64
}

// hint is what the sightings in one jug say of its speed.
type hint struct {
	off  float64 // ln speed over what was expected
	n    float64 // stages seen
	seen bool
	own  bool // some of them since it is a jug of its own
}

func (w watch) jugs(b *pour.BatchSheet) []JugOutlook {
	batter, ok := w.state.Batter(w.sheet, w.batch, w.shelf)
	c, err := clock.New(batter, w.hand.Clock)
	out := make([]JugOutlook, len(b.Jugs))
	portions, hints := make([]clock.Jug, len(b.Jugs)), make([]hint, len(b.Jugs))
	for i, j := range b.Jugs {
		out[i] = JugOutlook{Batch: w.batch, Jug: j.Name, Pace: 1}
		w.sighted(&out[i])
		switch {
		case !ok:
			out[i].Refusal = "the plan cannot be worked out"
		case err != nil:
			out[i].Refusal = err.Error()
		default:
			portions[i], _ = w.state.Jug(w.sheet, w.batch, j.Name, w.shelf, w.nowMin)
			out[i].Scented = len(portions[i].Scents) > 0
			hints[i] = w.hint(c, portions[i], out[i])
		}
	}
	if !ok || err != nil {
		return out
	}
	for i := range out {
		w.forecast(&out[i], batter, portions[i], w.shift(c, portions, hints, i))
	}
	return out
}

// sighted puts in what was seen of a jug.
func (w watch) sighted(j *JugOutlook) {
	for _, x := range w.state.Sightings {
		if x.Of(w.batch, j.Jug) && x.Reached && int(x.Stage) < chem.Stages {
			j.Stages[x.Stage], j.Seen[x.Stage] = pour.Know(x.Min), true
			j.Reached = max(j.Reached, int(x.Stage)+1)
		}
	}
}

// hint is how far the jug's stages were from what was expected.
func (w watch) hint(c *clock.Clock, portion clock.Jug, j JugOutlook) hint {
	var h hint
	expected := math.Log(c.Forecast(portion).Pace)
	for stage, seen := range j.Seen {
		if !seen || j.Stages[stage].V < EarliestMin {
			continue
		}
		if speed, ok := c.SpeedAt(portion, chem.Stage(stage), j.Stages[stage].V); ok {
			h.off += math.Log(speed) - expected
			h.n++
		}
	}
	h.own = slices.ContainsFunc(w.state.Sightings, func(x Sighting) bool { return x.Of(w.batch, j.Jug) && x.Reached && !x.Whole })
	if h.seen = h.n > 0; h.seen {
		h.off /= h.n
	}
	return h
}

// shift is how much faster a jug is taken to be than expected: from its own stages, or else from its sisters', as far as they
// can know: their scents, their handling and the judging of a stage are their own. What was seen while all was one pot is each jug's own, and
// leaves something to learn from a sister that was watched since.
func (w watch) shift(c *clock.Clock, portions []clock.Jug, hints []hint, i int) float64 {
	judged := clock.JudgeSD * clock.JudgeSD
	own := c.Forecast(portions[i]).Sigma
	sum, weight := 0.0, 0.0
	if h := hints[i]; h.seen {
		free := max(0, own*own-judged)
		if h.own || free == 0 {
			return h.off * free / (free + judged/h.n)
		}
		sum, weight = h.off*h.n/judged, h.n/judged+1/free // the jug's own, drawn to what was expected
	}
	plainJug := portions[i]
	plainJug.Scents = nil
	sigma := c.Forecast(plainJug).Sigma
	pouring := clock.PourSD * clock.PourSD // each jug's own, as in learning
	shared := max(0, sigma*sigma-judged-pouring) + clock.SameBatchSD*clock.SameBatchSD
	sisters := 0.0
	for k, h := range hints {
		if h.seen && k != i && (h.own || !hints[i].seen) {
			other := c.Forecast(portions[k]).Sigma
			noise := max(0, other*other-sigma*sigma) + pouring + judged/h.n
			sum += h.off / noise
			sisters += 1 / noise
		}
	}
	switch {
	case weight > 0:
		return sum / (weight + sisters)
	case sisters == 0:
		return 0
	}
	return sum / (sisters + 1/shared)
}

// forecast fills in the stages that were not seen, and the window.
func (w watch) forecast(j *JugOutlook, batter clock.Batter, portion clock.Jug, shift float64) {
	j.Pace = math.Exp(shift)
	c, err := clock.New(batter, quicker(w.hand.Clock, shift))
	if err != nil {
		j.Refusal = err.Error()
		return
	}
	f := c.Forecast(portion)
	j.Refusal = f.Refusal
	for stage, at := range f.Stages {
		if !j.Seen[stage] && at.MidOK {
			mid := at.Mid
			if stage < j.Reached { // a thicker stage was seen already
				mid = min(mid, j.earliest(stage))
			} else if j.Reached > 0 {
				mid = max(mid, j.Stages[j.Reached-1].V)
			}
			j.Stages[stage] = pour.Know(mid)
		}
	}
	span, ok := w.sheet.Span(w.batch, w.shelf)
	if !ok {
		return
	}
	j.Window.From = j.Stages[span.From]
	if past := int(span.To) + 1; past < chem.Stages {
		j.Window.To = j.Stages[past]
	}
}

// earliest is when the first of the thicker stages was seen, in whatever order they were.
func (j JugOutlook) earliest(stage int) float64 {
	first := math.Inf(1)
	for k := stage + 1; k < chem.Stages; k++ {
		if j.Seen[k] {
			first = min(first, j.Stages[k].V)
		}
	}
	return first
}

// quicker is the hand of somebody faster by exp(shift).
func quicker(h clock.Hand, shift float64) clock.Hand {
	traits := append([]clock.Trait(nil), h.Traits...)
	for i := range traits {
		if traits[i].Kind == clock.PaceTrait {
			traits[i].Mean += shift
			h.Traits = traits
			return h
		}
	}
	n := len(traits)
	cov := make([][]float64, n+1)
	for i := range h.Covariance {
		cov[i] = append(append([]float64(nil), h.Covariance[i]...), 0)
	}
	cov[n] = make([]float64, n+1)
	cov[n][n] = clock.PriorPaceSD * clock.PriorPaceSD
	h.Traits = append(traits, clock.Trait{Kind: clock.PaceTrait, Mean: shift})
	h.Covariance = cov
	return h
}
