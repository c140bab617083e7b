package live

import (
	"fmt"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// patience is how long a mark waits for a file that another terminal is writing to, and asking how long a command waits for one that
// something else has locked. A run that has marks waiting already holds up nobody: it tries again with every look.
const (
	patience = 50 * time.Millisecond
	asking   = 3 * time.Second
)

// Run is a run under way that journals every mark before it counts. Another terminal may follow the same pour: each takes in
// what the other has written. It is not safe for use by several goroutines.
//
// A file that cannot be written, because another program has it locked or the disk is full, holds up neither clock nor marks: they
// wait here in their order, [Run.Unwritten] says so, and every look tries again.
type Run struct {
	ID   string       // of its file; empty: nothing was marked yet, and there is none
	Pour logbook.Pour // as it was opened; Live has the events

	book    logbook.Book
	clock   Clock
	shelf   pour.Shelf
	live    Live
	size    int64           // of the file, when it was last read or written
	waiting []logbook.Event // marks that are not in the file yet
	why     error
}

// Begin starts the run of a sheet. Its file is made with the first mark, and ID is empty until then: a run that is opened and left leaves
// nothing; that the logbook can be written is tried at once. The session, a few letters, tells this terminal from others. A scent
// trial names its scent.
func Begin(b logbook.Book, sheet pour.Sheet, trialScent string, shelf pour.Shelf, c Clock, session string) (*Run, error) {
	m := c()
	if err := b.Try(); err != nil {
		return nil, fmt.Errorf("open a pour: %w", err)
	}
	live, first := start(sheet, session, m)
	r := &Run{book: b, clock: c, shelf: shelf, live: live, waiting: first}
	r.Pour = logbook.Pour{Name: sheet.Plan.Name, Opened: m.Wall, TrialScent: trialScent, Plan: sheet.Plan}
	return r, nil
}

// Resume takes up a pour where its file leaves it: after a killed terminal, or beside another terminal.
func Resume(b logbook.Book, id string, shelf pour.Shelf, h pour.Hand, c Clock, session string) (*Run, error) {
	return open(b, id, shelf, h, c, session, false)
}

// open takes up the pour of a file, or the cut of its loaf.
func open(b logbook.Book, id string, shelf pour.Shelf, h pour.Hand, c Clock, session string, cut bool) (*Run, error) {
	p, err := b.Read(id, shelf)
	if err != nil {
		return nil, err
	}
	if p.PlanErr != nil {
		return nil, fmt.Errorf("resume the pour %s: %w", id, p.PlanErr)
	}
	sheet := pour.Work(p.Plan, shelf, h)
	if cut {
		if err := cutting(p, &sheet); err != nil {
			return nil, err
		}
	}
	live, events := resume(sheet, p.Events, session, c())
	live.cut = cut
	r := &Run{ID: id, Pour: p, book: b, clock: c, shelf: shelf} // size 0: the first act reads the file again
	r.journal(events, patience)
	r.live = live
	return r, nil
}

// Add journals an event of a pour that is over, or that another terminal runs: a weight, a result, that it is left out. Its times and
// ID are set here.
func Add(b logbook.Book, id string, shelf pour.Shelf, c Clock, session string, e logbook.Event) error {
	p, err := b.Read(id, shelf)
	if err != nil {
		return err
	}
	live := Live{Sheet: pour.Weigh(p.Plan, shelf), Events: p.Events, session: session, last: c().kept()}
	if e, ok := lastClocked(p.Events); ok {
		live.run, live.last = e.Run, momentOf(e)
	}
	_, events, err := live.Mark(e, c())
	if err != nil {
		return err
	}
	_, _, err = b.Append(id, asking, events[len(events)-1]) // that nobody looked meanwhile is no news here
	return err
}

// Live is the run as it stands.
func (r *Run) Live() Live { return r.live }

// State is where the run stands.
func (r *Run) State() State { return r.live.State() }

// Unwritten are the marks that count already and are not in the file, in their order, and why they are not. The reason may stand
// without a mark: then the file can no longer be read.
func (r *Run) Unwritten() ([]logbook.Event, error) {
	if r.unmarked() {
		return nil, nil
	}
	return slices.Clone(r.waiting), r.why
}

// unmarked reports whether nothing was marked yet, so that there is nothing to keep.
func (r *Run) unmarked() bool {
	return r.ID == "" && !slices.ContainsFunc(r.waiting, func(e logbook.Event) bool { return e.Kind.ByHand() })
}

// WriteOut tries once more to write the marks that wait, for as long as wait while something else has the file.
func (r *Run) WriteOut(wait time.Duration) error {
	r.follow()
	r.journal(nil, wait)
	return r.why
}

// follow takes in what another terminal, or a hand with an editor, has written since. What it cannot read it leaves, with the reason.
func (r *Run) follow() {
	if r.ID == "" {
		r.why = nil // the file is made anew with the next try
		return
	}
	size, err := r.book.Size(r.ID)
	if r.why = err; err != nil || size == r.size {
		return
	}
	p, err := r.book.Read(r.ID, r.shelf)
	if r.why = err; err != nil {
		return
	}
	r.waiting = slices.DeleteFunc(r.waiting, func(e logbook.Event) bool { // a write that was said to have failed came through
		return slices.ContainsFunc(p.Events, func(w logbook.Event) bool { return w.ID == e.ID })
	})
	r.live.Events, r.size = append(p.Events, r.waiting...), size
}

// journal writes the marks that wait and new ones after them, or lets all of them wait.
func (r *Run) journal(events []logbook.Event, wait time.Duration) {
	r.waiting = append(r.waiting, events...)
	if len(r.waiting) == 0 || r.why != nil || r.unmarked() {
		return
	}
	if r.ID == "" {
		r.create()
		return
	}
	before, after, err := r.book.Append(r.ID, wait, r.waiting...)
	if r.why = err; err != nil {
		return
	}
	r.waiting = nil
	if before == r.size { // else another terminal came in between: the next look takes in both
		r.size = after
	}
}

// create makes the pour's file, with everything so far in it.
func (r *Run) create() {
	p := &r.Pour
	id, err := r.book.Create(p.Plan, p.TrialScent, p.Opened, r.waiting)
	if r.why = err; err != nil {
		return
	}
	r.ID, p.ID, r.waiting = id, id, nil // size 0: the next look reads it again
}

// act does one thing: what the other terminal did comes first, the journal before the state. An error is a refusal: nothing happened.
func (r *Run) act(do func(Live, Moment) (Live, []logbook.Event, error)) error {
	r.follow()
	live, events, err := do(r.live, r.clock())
	if err != nil {
		r.journal(nil, 0)
		return err
	}
	wait := patience
	if len(r.waiting) > 0 {
		wait = 0
	}
	r.journal(events, wait)
	r.live = live
	return nil
}

// Tick moves the clock on; call it about once a second. It takes in what another terminal has written, and journals jumps.
func (r *Run) Tick() {
	_ = r.act(func(l Live, m Moment) (Live, []logbook.Event, error) { // a tick is never refused
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

// FileText is what a file that could not be made would hold.
func (r *Run) FileText() (string, error) {
	return logbook.FileText(r.Pour.Plan, r.Pour.TrialScent, r.Pour.Opened, r.waiting)
}

// Forget leaves nothing behind of a run in which no lye has met oil: its file is removed. A file that another terminal is in, or in
// which lye is in, stays, with the reason.
func (r *Run) Forget() error {
	if r.live.cut {
		return fmt.Errorf("forget the pour %s: its loaf is being cut", r.ID)
	}
	if r.ID == "" {
		r.waiting = nil
		return nil
	}
	if r.follow(); r.why != nil {
		return fmt.Errorf("forget the pour %s: %w", r.ID, r.why)
	}
	mine := slices.IndexFunc(r.live.Events, r.live.own)
	others := slices.ContainsFunc(r.live.Events[max(mine, 0):], func(e logbook.Event) bool { return e.Kind == logbook.Resumed && !r.live.own(e) })
	switch {
	case r.State().Begun():
		return fmt.Errorf("forget the pour %s: lye has met oil in it", r.ID)
	case others:
		return fmt.Errorf("forget the pour %s: another terminal took it up", r.ID)
	}
	gone, err := r.book.ForgetAt(r.ID, r.size)
	if err == nil && !gone {
		err = fmt.Errorf("forget the pour %s: another terminal wrote to it just now", r.ID)
	}
	if err == nil {
		r.ID, r.waiting = "", nil
	}
	return err
}
