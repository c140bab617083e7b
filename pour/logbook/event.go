package logbook

import (
	"maps"
	"slices"
	"time"

	"pourbench/chem"
	"pourbench/pour"
)

// EventKind says what an event is.
type EventKind string

// The kinds of event.
const (
	Opened     EventKind = "opened"       // the run was begun
	Resumed    EventKind = "resumed"      // a terminal took the run up again
	Jumped     EventKind = "jumped"       // the clocks disagreed: What is the kind of jump, Value the seconds
	Done       EventKind = "done"         // a step was finished: Step
	Seen       EventKind = "seen"         // a jug reached a stage: Batch, Jug, Stage
	NotYet     EventKind = "not yet"      // a jug was used before it reached a stage: Batch, Jug, Stage
	Troubled   EventKind = "trouble"      // What, of Batch and Jug
	Noted      EventKind = "note"         // Text, of Batch and Jug or of the pour
	Blended    EventKind = "blended"      // the stick blender ran in a batch for Value seconds, ending now
	Read       EventKind = "read"         // a thermometer: What is "oils", "lye" or "batter", Value °C
	Weighed    EventKind = "weighed"      // What was weighed, Value g, Lot, for Batch and Jug; in older logs for base and icing together
	TakenBack  EventKind = "taken back"   // the event with the ID in What does not count
	Ended      EventKind = "ended"        // the run is over
	Cut        EventKind = "cut"          // one bar weighed Value g when it was cut; What: the day, where it is not that of the mark
	Cured      EventKind = "cured"        // one bar weighed Value g after its cure; What: as with Cut
	Result     EventKind = "result"       // Text: how it came out
	LeftOut    EventKind = "left out"     // the pour teaches nothing: Text says why
	TakenIn    EventKind = "taken in"     // it teaches again
	TornRecord EventKind = "torn record"  // Text: an event that was being written when the machine stopped
	Discounted EventKind = "not counted"  // the jump with the ID in What is taken back: the run is Value seconds earlier
	Unpoured   EventKind = "left in jug"  // a jug that was not used
	Rescued    EventKind = "changed plan" // What she did instead of the plan
	Skipped    EventKind = "not done"     // a step that was passed over: Step
	Drew       EventKind = "drew"         // Value g or pieces of What went into Batch and Jug out of a Pack, by an Entry of the ledger of stock
)

// eventKinds lists every kind, in the order they are explained.
func eventKinds() []EventKind {
	return append([]EventKind{
		Opened, Resumed, Jumped, Done, Seen, NotYet, Troubled, Noted, Blended, Read, Weighed, TakenBack, Ended,
		Cut, Cured, Result, LeftOut, TakenIn, TornRecord, Discounted, Unpoured, Rescued, Skipped, Drew,
	}, lifeKinds()...)
}

// Troubles a batter can make.
const (
	Rices     = "rices"     // grains like cooked rice
	Seizes    = "seizes"    // sets within seconds
	Browns    = "browns"    // darkens
	Separates = "separates" // oil or water stands apart
)

// Troubles lists the words for trouble.
func Troubles() []string { return []string{Rices, Seizes, Browns, Separates} }

// LyeHeavy is what a note is about that says why a batch goes on although it is lye-heavy as weighed.
const LyeHeavy = "lye-heavy"

// What a thermometer was held into.
const (
	ReadOils   = "oils"
	ReadLye    = "lye"
	ReadBatter = "batter"
)

// Event is one thing that happened, in the order of the file. Which fields count depends on the kind.
type Event struct {
	ID    string
	Kind  EventKind
	Batch pour.BatchName
	Jug   string
	Step  string     // key of a step of the run
	Stage chem.Stage // of Seen and NotYet
	What  string
	Value float64
	Lot   string
	Text  string
	Pack  string // of Drew: the pack's name in the ledger of stock
	Entry string // of Drew: the ledger's entry, which alone moves anything

	Life     Life
	Corrects string // ID of the event in whose place this one stands

	Run    time.Duration // on the run's own clock: since it was opened
	Wall   time.Time     // what the wall clock said
	Steady time.Duration // what the steady clock said
	Of     string        // which steady clock
	Sleeps bool
}

// Known reports whether an event can be of that kind.
func (k EventKind) Known() bool { return slices.Contains(eventKinds(), k) }

// ByHand reports whether the maker marks events of that kind, rather than the program by itself.
func (k EventKind) ByHand() bool {
	return !slices.Contains([]EventKind{Opened, Resumed, Jumped, TornRecord}, k)
}

// LyeIn is the key of the step that starts a batch's clock: lye meets oil.
func LyeIn(n pour.BatchName) string { return string(n) + " lye in" }

// LyeInAt is when a batch's lye met its oils, on the run's clock, by the events that stand. The second result is false before.
func LyeInAt(standing []Event, n pour.BatchName) (at time.Duration, ok bool) {
	for _, e := range standing {
		if e.Kind == Done && e.Step == LyeIn(n) {
			at, ok = e.Run, true
		}
	}
	return at, ok
}

// Split is the key of the step that splits a batch into its jugs.
func Split(n pour.BatchName) string { return string(n) + " " + string(pour.TaskSplit) }

// SplitAfter reports whether a batch was split after something was marked in it, by the events that stand: it was one pot then, and no jug's own
// scent was in it.
func SplitAfter(standing []Event, e Event) bool {
	return slices.ContainsFunc(standing, func(x Event) bool { return x.Kind == Done && x.Step == Split(e.Batch) && x.Run > e.Run })
}

// Day is the day on which what a mark tells of happened, as year-month-day: that of the mark where it names no other.
func (e Event) Day() string {
	if (e.Kind == Cut || e.Kind == Cured) && e.What != "" {
		return e.What
	}
	if len(e.Life.Day) >= len(dayForm) {
		return e.Life.Day[:len(dayForm)]
	}
	return e.Wall.Format(time.DateOnly)
}

// IsLeftOut reports whether a pour teaches nothing, by the events that stand.
func IsLeftOut(standing []Event) bool {
	out := false
	for _, e := range standing {
		switch e.Kind {
		case LeftOut:
			out = true
		case TakenIn:
			out = false
		}
	}
	return out
}

// Standing returns the events that count: those that were neither taken back nor corrected, and the corrections, which are of the day of what
// they correct where they name none. A weighing that was corrected counts in the order of the pour, where it was weighed: one of the same thing
// after it still is the last.
func Standing(events []Event) []Event {
	gone := map[string]bool{}
	for _, e := range events {
		if e.Kind == TakenBack {
			gone[e.What] = true
		}
	}
	c := chains(events)
	maps.Copy(gone, c.corrected(gone))
	out := make([]Event, 0, len(events))
	moved := c.reweighed(gone)
	for _, e := range events {
		if e.Kind == TakenBack || gone[e.ID] && moved[e.ID] == "" {
			continue
		}
		if by := moved[e.ID]; by == "" {
			out = append(out, c.dated(e))
		} else if by != e.ID {
			out = append(out, c.dated(c.by[by]))
		}
	}
	return out
}
