package logbook

import (
	"cmp"
	"slices"
	"time"
)

// The kinds of event in a batch's life after the pour. They are dated by their [Life.Day] and not by the run's clock, and may be logged in
// any order.
const (
	Unmoulded EventKind = "unmoulded" // out of the mould: What is how firm
	Sliced    EventKind = "sliced"    // the loaf was cut: MassesG of the bars or their Count, CrumbsG, Seconds
	WeighIn   EventKind = "weigh-in"  // the same bars weighed again while they dry: Bars, MassesG
	Sniffed   EventKind = "sniffed"   // Value 0 to 4 of a Scent or of the bar, Text
	Looked    EventKind = "looked"    // What aspect, Value 0 to 4, of a Jug where it is a colour, then Colour as seen
	Tested    EventKind = "tested"    // What test, Value
	Photo     EventKind = "photo"     // Path, from the folder of the pour's file
	Lotted    EventKind = "lot"       // Count of bars labelled as Lot
	Sold      EventKind = "sold"      // Count by the channel What at a Price each, to an Audience
	Given     EventKind = "given"     // Count to an Audience
	Kept      EventKind = "kept"      // Count of bars kept: What is "sample", the batch's own record, or "own"
	Seconds   EventKind = "seconds"   // Count of bars found not good enough to sell
	Counted   EventKind = "counted"   // Count of bars that are left by counting them
	Failed    EventKind = "failed"    // Text: why
)

// lifeKinds lists the kinds of a batch's life, in the order they usually come.
func lifeKinds() []EventKind {
	return []EventKind{
		Unmoulded, Sliced, WeighIn, Sniffed, Looked, Tested, Photo, Lotted, Sold, Given, Kept, Seconds, Counted, Failed,
	}
}

// OfLife reports whether events of that kind are of the batch's life after the pour.
func (k EventKind) OfLife() bool { return slices.Contains(lifeKinds(), k) }

// Life is what an event of a batch's life carries besides its value and words. Which fields count depends on the kind.
type Life struct {
	Day      string    // when it was: year-month-day, with or without hour:minute; empty: when it was marked
	Bars     []int     // the bars that were weighed, from 1 at end A; empty: the first ones, in the order of the masses
	MassesG  []float64 // of the bars, g
	CrumbsG  float64   // what the cut left beside the bars, g
	Count    int       // bars
	Seconds  int       // of the bars cut, those not good enough to sell
	Price    string    // of one bar, a decimal number
	Currency string    // its code, as EUR
	Audience string    // the maker's own word for who it was for
	Scent    string    // id of the scent that was sniffed; empty: the bar
	Colour   string    // as #rrggbb
	Path     string    // of a picture, from the folder of the pour's file
}

// The forms of a day in a file.
const (
	dayForm    = time.DateOnly
	momentForm = "2006-01-02 15:04"
)

// When is the moment of an event of a batch's life, and whether its hour is known: by its day at noon where only that was said, and when it
// was marked where nothing was.
func (e Event) When() (at time.Time, hour bool) {
	if t, err := time.ParseInLocation(momentForm, e.Life.Day, e.Wall.Location()); err == nil {
		return t, true
	}
	if t, err := time.ParseInLocation(dayForm, e.Day(), e.Wall.Location()); err == nil && (e.Life.Day != "" || e.What != "" && (e.Kind == Cut || e.Kind == Cured)) {
		return t.Add(noon), false
	}
	return e.Wall, true
}

// noon is the hour that stands for a day of which no hour is known.
const noon = 12 * time.Hour

// corrected gives the ids of the events that do not count because another stands in their place. Where two correct the same one, the later
// counts; a correction that was taken back corrects nothing.
func corrected(events []Event, takenBack map[string]bool) map[string]bool {
	last := map[string]Event{}
	gone := map[string]bool{}
	for _, e := range events {
		if e.Corrects == "" || takenBack[e.ID] {
			continue
		}
		gone[e.Corrects] = true
		other, twice := last[e.Corrects]
		if twice && cmp.Or(other.Wall.Compare(e.Wall), cmp.Compare(other.ID, e.ID)) > 0 {
			gone[e.ID] = true
			continue
		}
		if twice {
			gone[other.ID] = true
		}
		last[e.Corrects] = e
	}
	return gone
}
