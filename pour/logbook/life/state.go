package life

import (
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// on is the batch as it stands on a day.
func (s story) on(hand pour.Hand, today day.Day) Batch {
	b := Batch{
		ID: s.ID, Name: s.Name, Poured: s.Poured, Swatches: s.Swatches, Planned: s.Planned, WeighIns: s.WeighIns, Events: s.Events,
		Fault: s.Fault, PlanErr: s.PlanErr, words: s.Words, TypedIn: s.TypedIn, cutBars: s.CutBars,
	}
	b.Bars = account(s.Events, s.CutBars, s.Cut != nil, s.Planned.Bars)
	if s.Cut != nil {
		cut := s.Cut.Day
		b.CutDay = &cut
	}
	for _, e := range b.Of(logbook.Lotted) {
		b.Lots = append(b.Lots, Lot{e.Lot, e.Life.Count, moment(e).Day})
	}
	if s.Fault == nil && s.PlanErr == nil {
		b.Drying = s.Rack.by(hand.Rack.Without(s.ID))
	}
	b.Course = s.course(&b, today)
	if d := b.Drying; d.Known {
		b.Ready = Around(b.Course.CutDay(), d.Ready.Low(), d.Ready.V, d.Ready.High())
		b.Course.Ready = b.Ready
	}
	b.State, b.Since = s.state(&b, today)
	b.Due = b.due(today)
	return b
}

// state is where the batch stands, and since when.
func (s story) state(b *Batch, today day.Day) (State, day.Day) {
	switch {
	case s.Fault != nil:
		return "", s.Poured
	case s.Trial:
		return Trial, s.Poured
	}
	if e, ok := latest(b.Of(logbook.Failed)); ok {
		return Failed, moment(e).Day
	}
	if at, ok := s.soldOut(b.Bars); ok {
		return SoldOut, at
	}
	if len(b.Lots) > 0 {
		return Labelled, b.Lots[0].Day
	}
	if s.Cut != nil {
		return s.drying(b, today)
	}
	if e, ok := latest(b.Of(logbook.Unmoulded)); ok {
		return Unmoulded, moment(e).Day
	}
	if !s.Ended && len(s.Events) == 0 {
		return UnderWay, s.Poured
	}
	return InMould, s.Poured
}

// drying is where a cut loaf stands whose bars are neither labelled nor gone.
func (s story) drying(b *Batch, today day.Day) (State, day.Day) {
	if e, ok := latest(b.Of(logbook.Cured)); ok { // its maker says so herself
		return Ready, moment(e).Day
	}
	if s.Cut.Day >= today {
		return Cut, s.Cut.Day
	}
	// By weighings it is ready on its day; nobody who weighed nothing is told so before the late end of the band. Never before its plan's cure is over.
	done := b.Course.Done()
	ready := done.Late
	if b.Drying.Weighed {
		ready = done.Day
	}
	if b.Ready.Known && ready <= today {
		return Ready, ready
	}
	return Curing, s.Cut.Day
}

func latest(events []logbook.Event) (logbook.Event, bool) {
	if len(events) == 0 {
		return logbook.Event{}, false
	}
	return events[len(events)-1], true
}

// soldOut is the day on which the last bar went, where none is left.
func (s story) soldOut(a Account) (day.Day, bool) {
	if !a.Known || a.Bars == 0 || a.Left > 0 {
		return 0, false
	}
	last := s.Poured
	for _, e := range s.Events {
		switch e.Kind {
		case logbook.Sold, logbook.Given, logbook.Kept, logbook.Seconds, logbook.Counted:
			last = moment(e).Day
		}
	}
	return last, true
}
