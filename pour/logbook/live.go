package logbook

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/plain"
)

// Live is a run under way, without a file: the sheet it follows, what has happened, and the run's clock. It is a value; every
// action returns the next one and the events to be journaled.
type Live struct {
	Sheet  pour.Sheet
	Events []Event

	run     time.Duration
	last    Moment
	session string
	ticked  bool
}

// Start begins a run of a sheet. The session names the terminal in the events' IDs.
func Start(sheet pour.Sheet, session string, m Moment) (Live, []Event) {
	l := Live{Sheet: sheet, session: session, last: m.kept()}
	return l.add(Event{Kind: Opened})
}

// Resume takes a run up again where its events leave it.
func Resume(sheet pour.Sheet, events []Event, session string, m Moment) (Live, []Event) {
	l := Live{Sheet: sheet, Events: slices.Clip(events), session: session, last: m.kept()}
	if n := len(events); n > 0 {
		l.run, l.last = events[n-1].Run, events[n-1].moment()
	}
	l, jumped := l.look(m)
	l, resumed := l.add(Event{Kind: Resumed})
	return l, append(jumped, resumed...)
}

// Run is the time on the run's own clock, since it was opened.
func (l Live) Run() time.Duration { return l.run }

// State is where the run stands.
func (l Live) State() State { return Replay(l.Sheet, l.Events) }

// Tick moves the run's clock on. It journals nothing but jumps; a gap between two ticks is one of them.
func (l Live) Tick(m Moment) (Live, []Event) {
	before, ticked := l.run, l.ticked
	l, events := l.look(m)
	l.ticked = true
	if gap := l.run - before; ticked && len(events) == 0 && gap > gapS {
		return l.add(jumpEvent(Jump{Slept, gap}))
	}
	return l, events
}

// Absorb takes in events another terminal has journaled.
func (l Live) Absorb(events []Event) Live {
	l.Events = append(slices.Clip(l.Events), events...)
	return l
}

// look moves the clock to a moment and notes a jump.
func (l Live) look(m Moment) (Live, []Event) {
	m = m.kept()
	passed, jump := Since(l.last, m)
	l.run, l.last = l.run+passed, m
	if jump == nil {
		return l, nil
	}
	return l.add(jumpEvent(*jump))
}

func jumpEvent(j Jump) Event { return Event{Kind: Jumped, What: string(j.Kind), Value: j.By.Seconds()} }

// add stamps an event and takes it in.
func (l Live) add(e Event) (Live, []Event) {
	e.Run, e.Wall, e.Steady, e.Of, e.Sleeps = l.run, l.last.Wall, l.last.Steady, l.last.Of, l.last.Sleeps
	e.What, e.Text, e.Lot, e.Jug = plain.Line(e.What), plain.Text(e.Text), plain.Line(e.Lot), plain.Line(e.Jug)
	e.ID = freeID(l.Events, l.run, l.session)
	l.Events = append(slices.Clip(l.Events), e)
	return l, []Event{e}
}

// Mark journals any event at a moment, once it makes sense for this run. The event's kind and what goes with it are the caller's;
// times and ID are set here.
func (l Live) Mark(e Event, m Moment) (Live, []Event, error) {
	if err := l.sensible(e); err != nil {
		return l, nil, err
	}
	l, jumped := l.look(m)
	l, marked := l.add(e)
	return l, append(jumped, marked...), nil
}

// Next finishes the next step.
func (l Live) Next(m Moment) (Live, []Event, error) {
	s := l.State()
	if s.Next >= len(s.Steps) {
		return l, nil, errors.New("finish a step: every step is done")
	}
	return l.Do(s.Steps[s.Next].Key, m)
}

// Do finishes the step with that key, out of its turn if need be.
func (l Live) Do(key string, m Moment) (Live, []Event, error) {
	return l.Mark(Event{Kind: Done, Step: key}, m)
}

// Back takes back the last thing she marked: a step, a stage, a trouble or a blender burst.
func (l Live) Back(m Moment) (Live, []Event, error) {
	marks := standing(l.Events)
	for i := len(marks) - 1; i >= 0; i-- {
		if slices.Contains([]EventKind{Done, Seen, NotYet, Troubled, Blended, Read, Unpoured, Rescued}, marks[i].Kind) {
			return l.Mark(Event{Kind: TakenBack, What: marks[i].ID}, m)
		}
	}
	return l, nil, errors.New("step back: nothing has been marked yet")
}

// Stage notes that a jug has reached a stage now.
func (l Live) Stage(n pour.BatchName, jug string, stage chem.Stage, m Moment) (Live, []Event, error) {
	return l.Mark(Event{Kind: Seen, Batch: n, Jug: jug, Stage: stage}, m)
}

// Trouble notes trouble in a jug: one of [Troubles].
func (l Live) Trouble(n pour.BatchName, jug, what string, m Moment) (Live, []Event, error) {
	return l.Mark(Event{Kind: Troubled, Batch: n, Jug: jug, What: what}, m)
}

// Note keeps a text, of a jug or, with an empty jug, of the pour.
func (l Live) Note(n pour.BatchName, jug, text string, m Moment) (Live, []Event, error) {
	return l.Mark(Event{Kind: Noted, Batch: n, Jug: jug, Text: text}, m)
}

// Discount takes back a jump that the run followed although no time had passed, as when the wall clock was set forward on a machine
// that cannot tell that from sleep. The run is earlier by that much from here on.
func (l Live) Discount(id string, m Moment) (Live, []Event, error) {
	for _, e := range l.State().Jumps {
		followed := e.What == string(Slept) || e.What == string(Reopened)
		if e.ID != id || !followed || e.Value <= 0 {
			continue
		}
		l, jumped := l.look(m)
		l.run -= e.jump().By
		l, marked := l.add(Event{Kind: Discounted, What: id, Value: e.Value})
		return l, append(jumped, marked...), nil
	}
	return l, nil, fmt.Errorf("not count the jump %q: the run followed no such jump", id)
}

// sensible refuses an event this run cannot have, with how to put it right.
func (l Live) sensible(e Event) error {
	if !slices.Contains(eventKinds(), e.Kind) {
		return fmt.Errorf("journal %q: there is no such kind of event", e.Kind)
	}
	if math.IsNaN(e.Value) || math.IsInf(e.Value, 0) {
		return fmt.Errorf("note %s: %v is no number", e.Kind, e.Value)
	}
	s := l.State()
	switch e.Kind {
	case Done:
		step, ok := s.step(e.Step)
		if !ok {
			return fmt.Errorf("finish the step %q: this run has no such step", e.Step)
		}
		if step.Done {
			return fmt.Errorf("finish the step %q: it is done already; take it back first", e.Step)
		}
	case Seen, NotYet:
		return l.sensibleStage(e, s)
	case Troubled:
		if !slices.Contains(Troubles(), e.What) {
			return fmt.Errorf("note trouble %q: it can be %v; for anything else write a note", e.What, Troubles())
		}
		return l.hasJug(e)
	case Blended:
		if e.Value <= 0 || e.Value > 3600 {
			return fmt.Errorf("note a burst of %v s: it lasts from 1 to 3600 s", e.Value)
		}
	case Read:
		if !slices.Contains([]string{ReadOils, ReadLye, ReadBatter}, e.What) || e.Value < -20 || e.Value > 150 {
			return fmt.Errorf("note a reading of %q at %v °C: read oils, lye or batter, from -20 to 150 °C", e.What, e.Value)
		}
	case Weighed, Cut, Cured:
		if e.Value < 0 || e.Value > 1e6 {
			return fmt.Errorf("note a weight of %v g: it lies from 0 to 1000000 g", e.Value)
		}
	}
	return nil
}

func (l Live) sensibleStage(e Event, s State) error {
	if e.Stage < 0 || int(e.Stage) >= chem.Stages {
		return fmt.Errorf("note stage %d: the stages are emulsion, light, medium, thick and stiff", int(e.Stage))
	}
	if _, ok := s.lyeIn[e.Batch]; !ok {
		return fmt.Errorf("note %s in %s: mark first that the %s's lye met its oils", e.Stage, e.Jug, e.Batch)
	}
	return l.hasJug(e)
}

func (l Live) hasJug(e Event) error {
	b := l.Sheet.Plan.Batch(e.Batch)
	if b != nil && slices.ContainsFunc(b.Jugs, func(j pour.Jug) bool { return j.Name == e.Jug }) {
		return nil
	}
	return fmt.Errorf("note %s: the %s has no jug %q", e.Kind, e.Batch, e.Jug)
}
