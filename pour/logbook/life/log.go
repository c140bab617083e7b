package life

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/plain"
)

// asking is how long a mark waits for a file that something else has locked.
const asking = 3 * time.Second

// Logged is an event as it was written, and what it came to.
type Logged struct {
	Event  logbook.Event
	Before Batch // as the batch stood without it
	After  Batch
	Doubts []string // what of it can hardly be; it is logged all the same

	was    logbook.Event // what it takes back or corrects
	counts string        // of a weight of the pour: what counts since
}

// Log appends one event to a pour: one of its life, a correction of any event of its life or of a weight of the pour, or that one is taken back. Wall
// is the moment of it, its day the latest there can be; the session, a few letters, tells this terminal from others. What cannot be is refused
// with how to put it right, and nothing is written; the check and the mark are one under the file's lock. A picture's path is given as it is
// reached from here, and written from the folder of the pour's file.
func Log(book logbook.Book, shelf pour.Shelf, id string, e logbook.Event, wall time.Time, session string) (Logged, error) {
	var out Logged
	var err error
	if e.Kind == logbook.Photo && (e.Corrects == "" || !isFile(PhotoFile(book, e))) {
		if e.Life.Path, err = fromFolder(book, e.Life.Path); err != nil {
			return Logged{}, fmt.Errorf("log %s of %s: %w", e.Kind, id, err)
		}
	}
	today := day.Of(wall)
	out.Event, err = book.Decide(id, shelf, asking, func(p logbook.Pour) (logbook.Event, error) {
		e, err := ofThing(p, shelf, stamped(p, e, wall, session))
		if err != nil {
			return logbook.Event{}, fmt.Errorf("log %s of %s: %w", e.Kind, id, err)
		}
		before := Of(p, shelf, pour.Hand{}, today)
		if e.Kind == logbook.Lotted && e.Life.Count == 0 && before.Bars.Known {
			e.Life.Count = before.Bars.Left
		}
		if e.Corrects == "" {
			e.Life = before.usual(e)
		}
		after := p
		after.Events = append(slices.Clip(p.Events), e)
		now := Of(after, shelf, pour.Hand{}, today)
		c := check{pour: p, before: &before, after: &now, shelf: shelf, e: e, now: wall}
		if err := c.refusal(); err != nil {
			return logbook.Event{}, fmt.Errorf("log %s of %s: %w", e.Kind, id, err)
		}
		out.Before, out.After, out.Doubts = before, now, c.doubts()
		out.was, _ = event(p.Events, cmp.Or(e.Corrects, e.What))
		out.counts = nowCounts(p, after, shelf, e)
		return e, nil
	})
	if err != nil {
		return Logged{}, err
	}
	return out, nil
}

// LogAll appends events that something else decided out of what the file holds, such as what was drawn of packs for the pour: stamped as [Log] does,
// all or none. None is no error.
func LogAll(book logbook.Book, shelf pour.Shelf, id string, wall time.Time, session string, decide func(logbook.Pour) []logbook.Event) ([]logbook.Event, error) {
	return book.DecideAll(id, shelf, asking, func(p logbook.Pour) ([]logbook.Event, error) {
		var out []logbook.Event
		for _, e := range decide(p) {
			e = stamped(p, e, wall, session)
			out, p.Events = append(out, e), append(slices.Clip(p.Events), e)
		}
		return out, nil
	})
}

// usual is what an event says with what it leaves out taken over from the last of its kind: the bars of the last weighing where that was of as
// many, the currency of the last sale.
func (b Batch) usual(e logbook.Event) logbook.Life {
	l := e.Life
	if n := len(b.WeighIns); e.Kind == logbook.WeighIn && len(l.Bars) == 0 && n > 0 {
		if last := b.WeighIns[n-1].Bars; len(last) == len(l.MassesG) && !slices.Contains(last, OneBar) {
			l.Bars = slices.Clone(last)
		}
	}
	if e.Kind == logbook.Sold && l.Price != "" && l.Currency == "" {
		for _, sale := range b.Of(logbook.Sold) {
			if sale.Life.Currency != "" {
				l.Currency = sale.Life.Currency
			}
		}
	}
	return l
}

// stamped is an event with its id and times. What is not of life stands at the run time of the last mark, and while the pour is not over so much later
// as it is by the wall, so that the run goes on from there; a correction at that of what it corrects.
func stamped(p logbook.Pour, e logbook.Event, wall time.Time, session string) logbook.Event {
	e.Wall = wall
	e.What, e.Text, e.Lot, e.Jug = plain.Line(e.What), plain.Text(e.Text), plain.Line(e.Lot), plain.Line(e.Jug)
	e.Life = e.Life.Plain()
	e.ID = freeID(p.Events, session)
	for _, x := range slices.Backward(p.Events) {
		if x.Corrects == "" && !x.Kind.OfLife() { // a correction stands at the run time of what it corrects
			e.Run = x.Run
			if !slices.ContainsFunc(logbook.Standing(p.Events), func(x logbook.Event) bool { return x.Kind == logbook.Ended }) {
				e.Run += max(wall.Sub(x.Wall), 0)
			}
			break
		}
	}
	for _, x := range p.Events {
		if e.Corrects != "" && x.ID == e.Corrects {
			e.Run = x.Run
			e = e.Dated(x)
		}
	}
	return e
}

// freeID names an event by its place and its terminal: files that were written apart and laid together hold no two of one name.
func freeID(events []logbook.Event, session string) string {
	for n := len(events) + 1; ; n++ {
		id := fmt.Sprintf("e%d-%s", n, session)
		if !slices.ContainsFunc(events, func(e logbook.Event) bool { return e.ID == id }) {
			return id
		}
	}
}

// Correction is an event that stands in the place of another once it is logged, the same but for what is changed in it.
func Correction(e logbook.Event) logbook.Event {
	was := e
	e.Corrects, e.Steady, e.Of, e.Sleeps = e.ID, 0, "", false
	e.Life.Bars, e.Life.MassesG = slices.Clone(e.Life.Bars), slices.Clone(e.Life.MassesG)
	return e.Dated(was)
}
