// Package life is what becomes of a poured loaf: its state by the events of its pour's file, what is due, how it dries, where its bars
// went. Nothing here reads the clock: today is handed on. Events count by their own days, in whatever order they came into the file.
package life

import (
	"slices"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// State is where a batch stands in its life.
type State string

// The states, in the order a batch goes through them.
const (
	UnderWay  State = "under way" // its run is not over
	InMould   State = "in the mould"
	Unmoulded State = "out of the mould" // and not cut yet
	Cut       State = "cut"              // today
	Curing    State = "curing"
	Ready     State = "ready" // dry by the maker's criterion, which says nothing of how safe it is
	Labelled  State = "labelled"
	SoldOut   State = "sold out" // no bar is left
	Failed    State = "failed"
	Trial     State = "trial" // two small jugs, no loaf
)

// States lists the states in their order.
func States() []State {
	return []State{UnderWay, InMould, Unmoulded, Cut, Curing, Ready, Labelled, SoldOut, Failed, Trial}
}

// DueKind says what is due.
type DueKind string

// What can be due. The calendar has an entry for each.
const (
	DueUnmould DueKind = "unmould"
	DueCut     DueKind = "cut"
	DueTurn    DueKind = "turn"
	DueWeigh   DueKind = "weigh"
	DueReady   DueKind = "ready"
)

// Due is something that is to be done, or to be expected, on a day.
type Due struct {
	Kind        DueKind
	Day         day.Day
	Early, Late day.Day // the band of a forecast; both Day where there is none
	Nth         int     // of several of a kind, from 1
	Text        string  // as "weigh in 2 days", "ready 29 Dec, 24 Dec to 6 Jan"
}

// Planned is what the plan says of the bars, by the sheet.
type Planned struct {
	Bars        int
	CutG        pour.Figure // one usual bar as it is cut
	CuredG      pour.Figure
	CutMoisture pour.Figure // of it, a fraction
	CutAfterH   float64     // hours in the mould
	CureDays    float64     // on the rack
}

// Batch is a pour in its life.
type Batch struct {
	ID, Name string
	Poured   day.Day
	State    State
	Since    day.Day // since when it is in that state
	Due      []Due   // the next of each kind, soonest first
	Swatches []string
	Planned  Planned
	Bars     Account
	CutDay   *day.Day // nil: it is not cut; of bars with moulds of their own, when they came out
	Course   Course   // from the mould to the end of the rack
	WeighIns []WeighIn
	Drying   Drying   // how its bars dry
	Ready    Forecast // when they are dry by the maker's criterion: by the weighings or, before there are two, by the plan
	Lots     []Lot
	Events   []logbook.Event // of its life, those that stand, by their moment
	TypedIn  []logbook.Event // what its file says of lots: weighed with a lot typed beside it, or drawn from a pack; those that stand, in their order
	Fault    error           // why its file cannot be used; nil: it can
	PlanErr  error           // why its plan cannot be used with today's shelf: then nothing is known of what was planned

	words   string // of its file, in small letters, for a search
	cutBars int    // as the cut said; 0: it said nothing
}

// Lot is bars that were labelled.
type Lot struct {
	Lot   string
	Count int
	Day   day.Day
}

// Of returns the events of a kind, by their moment.
func (b Batch) Of(kind logbook.EventKind) []logbook.Event {
	var out []logbook.Event
	for _, e := range b.Events {
		if e.Kind == kind {
			out = append(out, e)
		}
	}
	return out
}

// Is reports whether the batch is in one of some states.
func (b Batch) Is(states ...State) bool { return slices.Contains(states, b.State) }
