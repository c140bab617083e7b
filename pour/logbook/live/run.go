package live

import (
	"fmt"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Run is a run under way that journals every mark before it counts. Another terminal may follow the same pour: each takes in
// what the other has written. It is not safe for use by several goroutines.
type Run struct {
	ID   string
	Pour logbook.Pour // as it was opened; Live has the events

	book  logbook.Book
	clock Clock
	shelf pour.Shelf
	live  Live
	size  int64 // of the file, when it was last read or written
}

// Begin opens a pour of a sheet and starts its run. The session, a few letters, tells this terminal from others. A scent trial
// names its scent.
func Begin(b logbook.Book, sheet pour.Sheet, trialScent string, shelf pour.Shelf, c Clock, session string) (*Run, error) {
	m := c()
	live, first := start(sheet, session, m)
	id, err := b.Create(sheet.Plan, trialScent, m.Wall, first)
	if err != nil {
		return nil, err
	}
	r := &Run{ID: id, book: b, clock: c, shelf: shelf, live: live}
	r.Pour = logbook.Pour{ID: id, Name: sheet.Plan.Name, Opened: m.Wall, TrialScent: trialScent, Plan: sheet.Plan}
	return r, nil
}

// Resume takes up a pour where its file leaves it: after a killed terminal, or beside another terminal.
func Resume(b logbook.Book, id string, shelf pour.Shelf, h clock.Hand, c Clock, session string) (*Run, error) {
	p, err := b.Read(id, shelf)
	if err != nil {
		return nil, err
	}
	if p.PlanErr != nil {
		return nil, fmt.Errorf("resume the pour %s: %w", id, p.PlanErr)
	}
	live, events := resume(pour.Work(p.Plan, shelf, h), p.Events, session, c())
	if _, _, err := b.Append(id, events...); err != nil {
		return nil, err
	}
	return &Run{ID: id, Pour: p, book: b, clock: c, shelf: shelf, live: live}, nil // size 0: the first act reads the file again
}

// Add journals an event of a pour that is over, or that another terminal runs: a weight, a result, that it is left out. Its times and
// ID are set here.
func Add(b logbook.Book, id string, shelf pour.Shelf, c Clock, session string, e logbook.Event) error {
	p, err := b.Read(id, shelf)
	if err != nil {
		return err
	}
	live := Live{Sheet: pour.Weigh(p.Plan, shelf), Events: p.Events, session: session, last: c().kept()}
	if n := len(p.Events); n > 0 {
		live.run, live.last = p.Events[n-1].Run, momentOf(p.Events[n-1])
	}
	_, events, err := live.Mark(e, c())
	if err != nil {
		return err
	}
	_, _, err = b.Append(id, events[len(events)-1]) // that nobody looked meanwhile is no news here
	return err
}

// Live is the run as it stands.
func (r *Run) Live() Live { return r.live }

// State is where the run stands.
func (r *Run) State() State { return r.live.State() }

// follow takes in what another terminal, or a hand with an editor, has written since.
func (r *Run) follow() error {
	size, err := r.book.Size(r.ID)
	if err != nil {
		return err
	}
	if size == r.size {
		return nil
	}
	p, err := r.book.Read(r.ID, r.shelf)
	if err != nil {
		return err
	}
	r.live.Events, r.size = p.Events, size
	return nil
}

// act does one thing: what the other terminal did comes first, the journal before the state.
func (r *Run) act(do func(Live, Moment) (Live, []logbook.Event, error)) error {
	if err := r.follow(); err != nil {
		return err
	}
	live, events, err := do(r.live, r.clock())
	if err != nil {
		return err
	}
	if len(events) > 0 {
		before, after, err := r.book.Append(r.ID, events...)
		if err != nil {
			return err
		}
		if before == r.size { // else another terminal came in between: the next look takes in both
			r.size = after
		}
	}
	r.live = live
	return nil
}

// Tick moves the clock on; call it about once a second. It takes in what another terminal has written, and journals jumps.
func (r *Run) Tick() error {
	return r.act(func(l Live, m Moment) (Live, []logbook.Event, error) {
		l, events := l.Tick(m)
		return l, events, nil
	})
}

// Back takes back the last mark.
func (r *Run) Back() error { return r.act(Live.Back) }

// Do finishes the step with that key, out of its turn if need be.
func (r *Run) Do(key string) error {
	return r.act(func(l Live, m Moment) (Live, []logbook.Event, error) { return l.Do(key, m) })
}

// Mark journals an event; see [logbook.EventKind] for what goes with which.
func (r *Run) Mark(e logbook.Event) error {
	return r.act(func(l Live, m Moment) (Live, []logbook.Event, error) { return l.Mark(e, m) })
}

// Discount takes back a jump of the clocks that the run followed although no time had passed.
func (r *Run) Discount(id string) error {
	return r.act(func(l Live, m Moment) (Live, []logbook.Event, error) { return l.Discount(id, m) })
}
