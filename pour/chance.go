package pour

import (
	"slices"

	"pourbench/chem"
)

// chances judges every jug from its first act to its last: too thin at the first, too thick at the last. Where the last act moves all of
// them at once, as when the pot is poured out, the pot is judged by the quickest batter in it.
func (t *timer) chances() {
	for i := range t.batch.Jugs {
		t.judgeJug(i)
	}
	if t.batch.Script.Brief.Technique.InPot() {
		t.judgePot()
	}
}

func (t *timer) judgeJug(i int) {
	j, f := &t.batch.Jugs[i], t.forecasts[i]
	if f == nil || !j.Clock.PourAtMin.Known {
		return
	}
	first, last := j.Clock.PourAtMin.V-t.batch.LyeInAtMin, j.Clock.LastAtMin.V-t.batch.LyeInAtMin
	if index, ok := f.TraceIndex((first + last) / 2); ok {
		j.Clock.TraceAtPour = Know(index)
	}
	if past := t.past(); past < chem.Stage(chem.Stages) {
		if p, ok := f.ChancePast(past, last); ok {
			j.Clock.LateChancePercent, j.Clock.LateJug = Know(p*100), j.Name
		}
	}
	if p, ok := f.ChancePast(t.suits.from, first); ok {
		j.Clock.EarlyChancePercent = Know((1 - p) * 100)
	}
}

// judgePot gives the pot the chance of the quickest batter in it when the last of it is poured out.
func (t *timer) judgePot() {
	pot := &t.batch.Jugs[0]
	for _, j := range t.batch.Jugs {
		if j.Clock.LateChancePercent.Known && (!pot.Clock.LateChancePercent.Known || j.Clock.LateChancePercent.V > pot.Clock.LateChancePercent.V) {
			pot.Clock.LateChancePercent, pot.Clock.LateJug = j.Clock.LateChancePercent, j.Name
		}
	}
}

// TooThick names the jugs of a stint that are likely past what the technique allows when it moves them, of those that are warned of: at the
// last act that moves one its chance says so, at an earlier one the end of its window. In the pot the quickest batter is named, not the pot.
func (s *Sheet) TooThick(st Stint) []string {
	b := s.Batch(st.Batch)
	if b == nil {
		return nil
	}
	var out []string
	for i, j := range b.Jugs {
		c := j.Clock
		if !c.LateChancePercent.Known || c.LateChancePercent.V < LikelyPercent || c.LateJug != j.Name {
			continue
		}
		if slices.ContainsFunc(st.Tasks, func(t Task) bool {
			a, ok := s.act(t)
			last := c.LastAtMin.Known && t.StartMin >= c.LastAtMin.V
			past := c.Window.To.Known && t.StartMin >= c.Window.To.V
			return ok && b.Script.Uses(a, i) && (last || past)
		}) {
			out = append(out, j.Name)
		}
	}
	return out
}
