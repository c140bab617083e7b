// Package life is what becomes of a poured loaf: its state by the events of its pour's file, what is due, how it dries, where its bars
// went. Nothing here reads the clock: today is handed on.
package life

import (
	"time"

	"pourbench/pour/day"
	"pourbench/pour/logbook"
)

// State is where a batch stands in its life.
type State string

// The states, in the order a batch goes through them.
const (
	UnderWay State = "under way" // its run is not over
	InMould  State = "in the mould"
	Cut      State = "cut" // today or not yet on the rack
	Curing   State = "curing"
	Ready    State = "ready" // dry by the maker's criterion, which says nothing of how safe it is
	Labelled State = "labelled"
	SoldOut  State = "sold out"
	Failed   State = "failed"
	Trial    State = "trial" // two small jugs, no loaf
)

// States lists the states in their order.
func States() []State {
	return []State{UnderWay, InMould, Cut, Curing, Ready, Labelled, SoldOut, Failed, Trial}
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

// Account is where the bars of a batch are: Bars = Sold + Given + Kept + Seconds + Missing + Left, always.
type Account struct {
	Known                                           bool // how many bars there were is known
	Bars, Sold, Given, Kept, Seconds, Missing, Left int  // Missing is what a count found too few, below 0 what it found too many
}

// WeighIn is one weighing of bars that dry.
type WeighIn struct {
	EventID string
	At      time.Time
	Days    float64 // from the cut
	Bars    []int   // from 1 at end A
	MassesG []float64
}

// Batch is a pour in its life.
type Batch struct {
	ID, Name string
	Poured   day.Day
	State    State
	Since    day.Day // since when it is in that state
	Due      []Due   // the next of each kind, soonest first
	Swatches []string
	Bars     Account
	WeighIns []WeighIn
	Events   []logbook.Event // of its life, those that stand, by their moment
	Fault    error           // why its file cannot be used; nil: it can
}
