package logbook

import (
	"cmp"
	"slices"
	"time"

	"pourbench/pour/plain"
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
	Ticked    EventKind = "ticked"    // a line of a market's check list is done for this batch: What is the line's id, Life.Market the market's, Text how
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
		Unmoulded, Sliced, WeighIn, Sniffed, Looked, Tested, Photo, Ticked, Lotted, Sold, Given, Kept, Seconds, Counted, Failed,
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
	Market   string    // id of a market on the shelf
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
	if t, err := time.ParseInLocation(dayForm, e.Day(), e.Wall.Location()); err == nil && e.namesDay() {
		return t.Add(noon), false
	}
	return e.Wall, true
}

// noon is the hour that stands for a day of which no hour is known.
const noon = 12 * time.Hour

// corrections are the events that stand for others, or are stood for, and what is known of them.
type corrections struct {
	by map[string]Event // every event that corrects or is corrected, by its id
}

// chains gathers what corrects what among the events.
func chains(events []Event) corrections {
	c := corrections{map[string]Event{}}
	for _, e := range events {
		if e.Corrects != "" {
			c.by[e.ID] = e
			c.by[e.Corrects] = Event{ID: e.Corrects}
		}
	}
	if len(c.by) == 0 {
		return c
	}
	for _, e := range events {
		if _, there := c.by[e.ID]; there {
			c.by[e.ID] = e
		}
	}
	return c
}

// first is the id of what a chain of corrections began with. Ones that correct each other in a ring, which no program writes, begin with the
// smallest of their ids.
func (c corrections) first(id string) string {
	seen := map[string]bool{}
	for !seen[id] {
		seen[id] = true
		e, ok := c.by[id]
		if !ok || e.Corrects == "" {
			return id
		}
		id = e.Corrects
	}
	ring, at := id, c.by[id].Corrects
	for ; at != id; at = c.by[at].Corrects {
		ring = min(ring, at)
	}
	return ring
}

// corrected gives the ids of the events that do not count because another stands in their place: of all that correct the same one, or what
// corrects it, the last of a chain counts, and of several the latest. A correction that was taken back corrects nothing.
func (c corrections) corrected(takenBack map[string]bool) map[string]bool {
	stands, gone, mended := map[string]Event{}, map[string]bool{}, c.mended(takenBack)
	rank := func(e Event) int {
		if mended[e.ID] {
			return 0
		}
		return 1
	}
	for id, e := range c.by {
		if takenBack[id] {
			continue
		}
		first := c.first(id)
		other, rival := stands[first]
		if rival && cmp.Or(cmp.Compare(rank(other), rank(e)), other.Wall.Compare(e.Wall), cmp.Compare(other.ID, e.ID)) > 0 {
			gone[id] = true
			continue
		}
		if rival {
			gone[other.ID] = true
		}
		stands[first] = e
	}
	return gone
}

// mended gives the ids of the events that another one corrects, or corrects what corrects them.
func (c corrections) mended(takenBack map[string]bool) map[string]bool {
	out := map[string]bool{}
	for id, e := range c.by {
		if takenBack[id] {
			continue
		}
		for at := e.Corrects; at != "" && at != id && !out[at]; at = c.by[at].Corrects {
			out[at] = true
		}
	}
	return out
}

// reweighed gives, by the id of each weighing that was corrected, the correction that stands in its place; the correction's own id gives itself, as it
// stands nowhere else.
func (c corrections) reweighed(gone map[string]bool) map[string]string {
	out := map[string]string{}
	for id, e := range c.by {
		first := c.by[c.first(id)]
		if e.Kind == Weighed && e.Corrects != "" && !gone[id] && first.Kind == Weighed && first.Corrects == "" {
			out[first.ID], out[id] = id, id
		}
	}
	return out
}

// dated gives a correction that names no day the day of what it corrects.
func (c corrections) dated(e Event) Event {
	if e.Corrects == "" || e.namesDay() {
		return e
	}
	from := c.by[e.Corrects]
	for steps := 0; from.Corrects != "" && !from.namesDay() && steps < len(c.by); steps++ {
		from = c.by[from.Corrects]
	}
	if from.Kind == "" || from.ID == e.ID {
		return e
	}
	return e.on(from)
}

// Marked tells when each event was first marked, by the clock on the wall: a correction when that was which its chain of corrections began with.
func Marked(events []Event) func(Event) time.Time {
	c := chains(events)
	return func(e Event) time.Time {
		if first, ok := c.by[c.first(e.ID)]; ok && first.Kind != "" {
			return first.Wall
		}
		return e.Wall
	}
}

// namesDay reports whether an event says its day, rather than leaving it to when it was marked.
func (e Event) namesDay() bool {
	return e.Life.Day != "" || e.What != "" && (e.Kind == Cut || e.Kind == Cured)
}

// Dated is the event on its own day where it names one, and else on that of another, in whose place it stands.
func (e Event) Dated(other Event) Event {
	if e.namesDay() {
		return e
	}
	return e.on(other)
}

// Plain is what can be shown on a terminal, text by text.
func (l Life) Plain() Life {
	for _, s := range []*string{&l.Day, &l.Price, &l.Currency, &l.Audience, &l.Scent, &l.Colour, &l.Path, &l.Market} {
		*s = plain.Line(*s)
	}
	return l
}

// on is an event on the day, and at the hour where that is known, of another.
func (e Event) on(other Event) Event {
	switch at, hour := other.When(); {
	case e.Kind == Cut || e.Kind == Cured:
		e.What = other.Day()
	case hour:
		e.Life.Day = at.Format(momentForm)
	default:
		e.Life.Day = other.Day()
	}
	return e
}
