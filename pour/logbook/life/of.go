package life

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// Of works out where a pour stands on a day by the events of its file. The shelf says what its plan comes to, the hand what her own batches
// taught of the rack.
func Of(p logbook.Pour, shelf pour.Shelf, hand pour.Hand, today day.Day) Batch {
	return told(p, shelf).on(hand, today)
}

// All works out every pour of a book, the latest first, in a file of the folder keeping what it read. One whose file cannot be read is in it, with its fault and nothing else.
func All(book logbook.Book, shelf pour.Shelf, hand pour.Hand, today day.Day) ([]Batch, error) {
	entries, err := book.List()
	if err != nil {
		return nil, fmt.Errorf("gather the batches: %w", err)
	}
	told, out := stories(book, shelf, entries), make([]Batch, len(entries))
	share(len(told), func(i int) { out[i] = told[i].on(hand, today) })
	return out, nil
}

// read tells the story of a pour's file.
func read(book logbook.Book, shelf pour.Shelf, e logbook.Entry) story {
	lost := func(err error) story {
		return story{ID: e.ID, Name: e.Name, Poured: day.Of(e.Opened), Fault: err, Words: e.Words()}
	}
	if e.Fault != nil {
		return lost(e.Fault)
	}
	p, err := book.Read(e.ID, shelf)
	if err != nil {
		return lost(err)
	}
	s := told(p, shelf)
	s.Words = e.Words()
	return s
}

// story is all that a pour's file and the shelf say of a batch, whatever day it is.
type story struct {
	ID, Name string
	Poured   day.Day
	Trial    bool
	Ended    bool
	Whole    bool      // the bars come out of moulds of their own, and nothing is cut
	LyeIn    time.Time // by the clock on the wall, kept as if that were UTC
	Planned  Planned
	Swatches []string
	Events   []logbook.Event // of its life, in their order
	TypedIn  []logbook.Event // weighed with a lot, or drawn from a pack
	WeighIns []WeighIn
	Cut      *Moment // nil: it is not cut
	CutBars  int     // as the cut said; 0: it said nothing
	Fault    error
	PlanErr  error
	Words    string
	Rack     racked
}

// stepsOfCut is what the keys of the cut's own steps begin with.
const stepsOfCut = "cut "

// told gathers what a pour's file says.
func told(p logbook.Pour, shelf pour.Shelf) story {
	s := story{ID: p.ID, Name: p.Name, Poured: day.Of(p.Opened), Trial: p.TrialScent != "" || p.Plan.Trial, PlanErr: p.PlanErr}
	s.LyeIn = onWall(p.Opened)
	var sheet *pour.Sheet
	bars := map[string]int{}
	if p.PlanErr == nil {
		s.Whole = !p.Plan.Mould.IsCut()
		weighed := pour.Weigh(p.Plan, shelf)
		sheet = &weighed
		s.Planned, s.Swatches, bars = planned(sheet), swatches(sheet), barsOf(sheet)
	}
	live := 0
	for _, e := range logbook.Standing(p.Events) {
		switch {
		case e.Kind == logbook.Ended:
			s.Ended = true
		case e.Kind == logbook.Done && e.Step == logbook.LyeIn(pour.Base):
			s.LyeIn, s.Poured = onWall(e.Wall), day.Of(e.Wall)
		}
		if ofLife(e) {
			if e.Kind.OfLife() {
				e.Run = 0 // that of the mark before it in the file, which says nothing
			}
			s.Events = append(s.Events, e)
		}
	}
	s.TypedIn = typedIn(p.Events, sheet)
	inOrder(s.Events, p.Events)
	for _, e := range s.Events {
		if s.cuts(e) && s.Cut == nil {
			at := moment(e)
			s.Cut = &at
		}
		if e.Kind == logbook.Sliced {
			s.CutBars += max(e.Life.Count, len(e.Life.MassesG))
		}
		if strings.HasPrefix(e.Step, stepsOfCut) {
			live = s.Planned.Bars
		}
	}
	if s.CutBars == 0 {
		s.CutBars = live
	}
	s.WeighIns = weighIns(s.Events, bars)
	if s.Cut == nil && len(s.WeighIns) > 0 { // bars that are weighed were cut
		s.Cut = &s.WeighIns[0].When
	}
	for i := range s.WeighIns {
		s.WeighIns[i].Days = s.WeighIns[i].When.DaysSince(*s.Cut)
	}
	if sheet != nil {
		s.Rack = onRack(sheet, s.WeighIns)
	}
	return s
}

// typedIn are the weighings that count and name a lot, but for those of what did not go in after all, and what was drawn of packs.
func typedIn(events []logbook.Event, sheet *pour.Sheet) []logbook.Event {
	counting, _ := logbook.Counting(logbook.Standing(events), sheet)
	omitted := logbook.OmittedBy(counting)
	var out []logbook.Event
	for _, e := range counting {
		if sheet != nil && omitted.Weighing(sheet, e) {
			continue
		}
		if e.Kind == logbook.Weighed && e.Lot != "" || e.Kind == logbook.Drew {
			out = append(out, e)
		}
	}
	return out
}

// Events lists the events of a pour's life that stand, by their moment: those with words of their own, not the steps of a cut that was run live.
func Events(p logbook.Pour) []logbook.Event {
	var out []logbook.Event
	for _, e := range logbook.Standing(p.Events) {
		if ofLife(e) && e.Kind != logbook.Done {
			out = append(out, e)
		}
	}
	inOrder(out, p.Events)
	return out
}

// ofLife reports whether an event is one of the batch's life: those that life has of its own, those of the cut, and a bar of older logs.
func ofLife(e logbook.Event) bool {
	return e.Kind.OfLife() || e.Kind == logbook.Cut || e.Kind == logbook.Cured || strings.HasPrefix(e.Step, stepsOfCut)
}

// cuts reports whether an event says that the loaf was cut or, where there is nothing to cut, that the bars are out of their moulds.
func (s story) cuts(e logbook.Event) bool {
	return s.Whole && e.Kind == logbook.Unmoulded || e.Kind == logbook.Sliced || e.Kind == logbook.Cut || strings.HasPrefix(e.Step, stepsOfCut)
}

// onWall is a moment as the clock on the wall has it, kept as if that were UTC.
func onWall(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, t.Hour(), t.Minute(), 0, 0, time.UTC)
}

// planned is what a sheet says of the bars.
func planned(s *pour.Sheet) Planned {
	cut, cured := pour.AsFigure(s.Bars.CutG), pour.AsFigure(s.Bars.CuredG)
	p := Planned{Bars: s.Bars.Count, CutG: cut, CuredG: cured, CutAfterH: s.Plan.Bed.CutAfterH, CureDays: s.Plan.Bed.CureDays}
	if cut.Known && cured.Known && cut.V > 0 {
		p.CutMoisture = pour.AsFigure(1 - cured.V/cut.V*(1-s.Bars.FinalMoisturePercent/100))
	}
	return p
}

// swatches are the colours of the jugs, those of the icing last; one that is not known is empty.
func swatches(s *pour.Sheet) []string {
	var out []string
	for _, b := range s.Batches() {
		for _, j := range b.Jugs {
			out = append(out, j.Colour.Hex)
		}
	}
	return slices.Clip(out)
}
