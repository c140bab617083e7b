package pour

import (
	"pourbench/chem"
	"pourbench/chem/clock"
)

// ClockBatter is what the clock is told of one batch of the sheet. The second result is false where the sheet has no such batch.
func (s Sheet) ClockBatter(n BatchName, shelf Shelf) (clock.Batter, bool) {
	t, ok := s.timerOf(n, shelf)
	if !ok {
		return clock.Batter{}, false
	}
	return t.batter(), true
}

// ClockJug is what the clock is told of one jug of a batch, its scents going in when the run gets to them. The second result is
// false where the sheet has no such jug.
func (s Sheet) ClockJug(n BatchName, jug string, shelf Shelf) (clock.Jug, bool) {
	t, ok := s.timerOf(n, shelf)
	if !ok {
		return clock.Jug{}, false
	}
	for i := range t.batch.Jugs {
		if t.batch.Jugs[i].Name == jug {
			return t.jug(&t.batch.Jugs[i]), true
		}
	}
	return clock.Jug{}, false
}

func (s *Sheet) timerOf(n BatchName, shelf Shelf) (timer, bool) {
	b, plan := s.Batch(n), s.Plan.Batch(n)
	if b == nil || plan == nil || len(b.Jugs) == 0 {
		return timer{}, false
	}
	t := timer{sheet: s, batch: b, plan: plan, shelf: shelf}
	t.suits = t.technique()
	return t, true
}

// Span is the stages a batch may be in when it is used: from reaching From until it passes To.
type Span struct{ From, To chem.Stage }

// Span is the stages between which a batch of the plan is used: what its technique allows; for the icing, thick until it is stiff.
// The second result is false where the sheet has no such batch.
func (s Sheet) Span(n BatchName, shelf Shelf) (Span, bool) {
	t, ok := s.timerOf(n, shelf)
	return Span{From: t.suits.from, To: t.suits.to}, ok
}
