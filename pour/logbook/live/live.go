package live

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/plain"
)

// Live is a run under way, without a file: the sheet it follows, what has happened, and the run's clock. It is a value; every
// action returns the next one and the events to be journaled.
type Live struct {
	Sheet  pour.Sheet
	Events []logbook.Event

	run     time.Duration
	last    Moment
	session string
	ticked  bool
	cut     bool // it is the cut of a loaf that was poured before
}

// start begins a run of a sheet. The session names the terminal in the events' IDs.
func start(sheet pour.Sheet, session string, m Moment) (Live, []logbook.Event) {
	l := Live{Sheet: sheet, session: session, last: m.kept()}
	return l.add(logbook.Event{Kind: logbook.Opened})
}

// resume takes a run up again where its events leave it.
func resume(sheet pour.Sheet, events []logbook.Event, session string, m Moment) (Live, []logbook.Event) {
	l := Live{Sheet: sheet, Events: slices.Clip(events), session: session, last: m.kept()}
	if e, ok := lastClocked(events); ok {
		l.run, l.last = e.Run, momentOf(e)
	}
	l, jumped := l.advance(m)
	l, resumed := l.add(logbook.Event{Kind: logbook.Resumed})
	return l, append(jumped, resumed...)
}

// Run is the time on the run's own clock, since it was opened.
func (l Live) Run() time.Duration { return l.run }

// State is where the run stands.
func (l Live) State() State {
	if l.cut {
		return ReplayCut(l.Sheet, l.Events)
	}
	return Replay(l.Sheet, l.Events)
}

// Tick moves the run's clock on. It journals nothing but jumps; a gap between two ticks is one of them.
func (l Live) Tick(m Moment) (Live, []logbook.Event) {
	before, ticked := l.run, l.ticked
	l, events := l.advance(m)
	l.ticked = true
	if gap := l.run - before; ticked && len(events) == 0 && gap > gapS {
		return l.add(jumpEvent(jump{Slept, gap}))
	}
	return l, events
}

// advance moves the clock to a moment and notes a jump.
func (l Live) advance(m Moment) (Live, []logbook.Event) {
	m = m.kept()
	passed, jump := since(l.last, m)
	l.run, l.last = l.run+passed, m
	if jump == nil {
		return l, nil
	}
	return l.add(jumpEvent(*jump))
}

func jumpEvent(j jump) logbook.Event {
	return logbook.Event{Kind: logbook.Jumped, What: string(j.Kind), Value: j.By.Seconds()}
}

// add stamps an event and takes it in.
func (l Live) add(e logbook.Event) (Live, []logbook.Event) {
	e.Run, e.Wall, e.Steady, e.Of, e.Sleeps = l.run, l.last.Wall, l.last.Steady, l.last.Of, l.last.Sleeps
	e.What, e.Text, e.Lot, e.Jug = plain.Line(e.What), plain.Text(e.Text), plain.Line(e.Lot), plain.Line(e.Jug)
	e.ID = freeID(l.Events, l.run, l.session)
	for _, x := range l.Events {
		if e.Corrects != "" && x.ID == e.Corrects { // it stands at the run time of what it corrects, and says nothing of the clocks
			e.Run, e.Steady, e.Of, e.Sleeps = x.Run, 0, "", false
			e = e.Dated(x)
		}
	}
	l.Events = append(slices.Clip(l.Events), e)
	return l, []logbook.Event{e}
}

// Mark journals any event at a moment, once it makes sense for this run. The event's kind and what goes with it are the caller's;
// times and ID are set here.
func (l Live) Mark(e logbook.Event, m Moment) (Live, []logbook.Event, error) {
	if err := l.sensible(e, m.Wall); err != nil {
		return l, nil, err
	}
	l, jumped := l.advance(m)
	l, marked := l.add(e)
	return l, append(jumped, marked...), nil
}

// Do finishes the step with that key, out of its turn if need be.
func (l Live) Do(key string, m Moment) (Live, []logbook.Event, error) {
	return l.Mark(logbook.Event{Kind: logbook.Done, Step: key}, m)
}

// Back takes back the last thing she marked: a step, a stage, a trouble, a weight, that a weight was of another thing, the end of the pour.
func (l Live) Back(m Moment) (Live, []logbook.Event, error) {
	marks, cut := logbook.Standing(l.Events), ReplayCut(l.Sheet, l.Events)
	for _, e := range slices.Backward(l.Events) { // what corrects stands in its place, but was marked last
		if i := slices.IndexFunc(marks, func(x logbook.Event) bool { return x.ID == e.ID }); i < 0 || l.cut != cut.cutMark(e) {
			continue
		}
		if slices.Contains([]logbook.EventKind{
			logbook.Done, logbook.Seen, logbook.NotYet, logbook.Troubled, logbook.Blended, logbook.Read, logbook.Weighed, logbook.Noted,
			logbook.Result, logbook.Unpoured, logbook.Rescued, logbook.Skipped, logbook.Ended, logbook.Cut,
		}, e.Kind) {
			return l.Mark(logbook.Event{Kind: logbook.TakenBack, What: e.ID}, m)
		}
	}
	return l, nil, errors.New("take back: nothing has been marked yet")
}

// Discount takes back a jump that the run followed although no time had passed, as when the wall clock was set forward on a machine
// that cannot tell that from sleep. The run is earlier by that much from here on.
func (l Live) Discount(id string, m Moment) (Live, []logbook.Event, error) {
	for _, e := range l.State().Jumps {
		followed := e.What == string(Slept) || e.What == string(Reopened)
		if e.ID != id || !followed || e.Value <= 0 {
			continue
		}
		l, jumped := l.advance(m)
		l.run -= time.Duration(e.Value * float64(time.Second)).Round(time.Microsecond) // as finely as the file keeps it
		l, marked := l.add(logbook.Event{Kind: logbook.Discounted, What: id, Value: e.Value})
		return l, append(jumped, marked...), nil
	}
	return l, nil, fmt.Errorf("not count the jump %q: the run followed no such jump", id)
}

// own reports whether an event was marked at this terminal.
func (l Live) own(e logbook.Event) bool {
	rest, ok := strings.CutPrefix(e.ID, fmt.Sprintf("%d-%s", e.Run.Milliseconds(), l.session))
	return ok && (rest == "" || rest[0] == '-')
}

// freeID makes an ID no event of the run has.
func freeID(events []logbook.Event, run time.Duration, session string) string {
	id := fmt.Sprintf("%d-%s", run.Milliseconds(), session)
	taken := func(id string) bool {
		return slices.ContainsFunc(events, func(e logbook.Event) bool { return e.ID == id })
	}
	for k := 2; taken(id); k++ {
		id = fmt.Sprintf("%d-%s-%d", run.Milliseconds(), session, k)
	}
	return id
}

// sensible refuses an event this run cannot have, with how to put it right.
func (l Live) sensible(e logbook.Event, now time.Time) error {
	if !e.Kind.Known() {
		return fmt.Errorf("journal %q: there is no such kind of event", e.Kind)
	}
	if math.IsNaN(e.Value) || math.IsInf(e.Value, 0) {
		return fmt.Errorf("note %s: %v is no number", e.Kind, e.Value)
	}
	if n := utf8.RuneCountInString(e.Text + e.What + e.Lot); n > logbook.MostLetters {
		return fmt.Errorf("note %s: %d letters are more than the %d that fit; write less", e.Kind, n, logbook.MostLetters)
	}
	s := l.State()
	switch e.Kind {
	case logbook.Done:
		step, ok := s.step(e.Step)
		if !ok {
			return fmt.Errorf("finish the step %q: this run has no such step", e.Step)
		}
		if step.Done {
			return fmt.Errorf("finish the step %q: it is done already; take it back first", e.Step)
		}
	case logbook.Skipped:
		return s.sensibleSkip(e)
	case logbook.Rescued:
		if e.Jug != "" {
			return l.hasJug(e)
		}
	case logbook.Seen, logbook.NotYet:
		return l.sensibleStage(e, s)
	case logbook.Troubled:
		if !slices.Contains(logbook.Troubles(), e.What) {
			return fmt.Errorf("note trouble %q: it can be %v; for anything else write a note", e.What, logbook.Troubles())
		}
		return l.hasJug(e)
	case logbook.Blended:
		if e.Value <= 0 || e.Value > 3600 {
			return fmt.Errorf("note a burst of %v s: it lasts from 1 to 3600 s", e.Value)
		}
	case logbook.Read:
		if !slices.Contains([]string{logbook.ReadOils, logbook.ReadLye, logbook.ReadBatter}, e.What) || e.Value < -20 || e.Value > 150 {
			return fmt.Errorf("note a reading of %q at %v °C: read oils, lye or batter, from -20 to 150 °C", e.What, e.Value)
		}
	case logbook.Weighed, logbook.Cut, logbook.Cured:
		if e.Value < 0 || e.Value > 1e6 {
			return fmt.Errorf("note a weight of %v g: it lies from 0 to 1000000 g", e.Value)
		}
		if e.Step != "" {
			if _, ok := ReplayCut(l.Sheet, nil).step(e.Step); !ok {
				return fmt.Errorf("note the weight of the step %q: the cut has no such step", e.Step)
			}
		}
		return l.sensibleThing(e, now)
	case logbook.TakenBack:
		if !slices.ContainsFunc(l.Events, func(x logbook.Event) bool { return x.ID == e.What }) {
			return fmt.Errorf("take back the mark %q: this run has no such mark", e.What)
		}
	}
	return nil
}

// sensibleSkip refuses to mark a step as not done that is done, or that nothing goes on without.
func (s State) sensibleSkip(e logbook.Event) error {
	step, ok := s.step(e.Step)
	switch {
	case !ok:
		return fmt.Errorf("mark the step %q as not done: this run has no such step", e.Step)
	case step.Done:
		return fmt.Errorf("mark the step %q as not done: it is done; take that back first", e.Step)
	case s.Omitted.Skipped(e.Step):
		return fmt.Errorf("mark the step %q as not done: it is marked so already", e.Step)
	case step.OnLoaf():
		return fmt.Errorf("mark the step %q as not done: what lies on the loaf or in it counts as the plan has it; write a note of what was otherwise", e.Step)
	case !step.Skippable():
		return fmt.Errorf("mark the step %q as not done: nothing is poured without it; where the pour is over, end it", e.Step)
	case s.OnlyMove(step.Step) != "":
		return fmt.Errorf("mark the step %q as not done: nothing else pours %s; mark that as left in its jug", e.Step, s.OnlyMove(step.Step))
	}
	return nil
}

// sensibleThing refuses a weight of something in a jug that is not there, or of a bar on a day that cannot be.
func (l Live) sensibleThing(e logbook.Event, now time.Time) error {
	switch {
	case e.Kind == logbook.Weighed && e.Jug != "":
		return l.hasJug(e)
	case e.Kind == logbook.Weighed || e.What == "":
		return nil
	}
	day, err := time.Parse(time.DateOnly, e.What)
	if err != nil {
		return fmt.Errorf("note the day %q: write it as year-month-day, such as %s", e.What, now.Format(time.DateOnly))
	}
	if e.What = day.Format(time.DateOnly); e.What > now.Format(time.DateOnly) {
		return fmt.Errorf("note the day %s: it is still to come", e.What)
	}
	if len(l.Events) > 0 && e.What < l.Events[0].Wall.Format(time.DateOnly) {
		return fmt.Errorf("note the day %s: the pour was begun on %s", e.What, l.Events[0].Wall.Format(time.DateOnly))
	}
	return nil
}

func (l Live) sensibleStage(e logbook.Event, s State) error {
	if e.Stage < 0 || int(e.Stage) >= chem.Stages {
		return fmt.Errorf("note stage %d: the stages are emulsion, light, medium, thick and stiff", int(e.Stage))
	}
	if _, ok := s.lyeIn[e.Batch]; !ok {
		return fmt.Errorf("note %s in %s: mark first that the %s's lye met its oils", e.Stage, e.Jug, e.Batch)
	}
	return l.hasJug(e)
}

func (l Live) hasJug(e logbook.Event) error {
	b := l.Sheet.Plan.Batch(e.Batch)
	if b != nil && slices.ContainsFunc(b.Jugs, func(j pour.Jug) bool { return j.Name == e.Jug }) {
		return nil
	}
	return fmt.Errorf("note %s: the %s has no jug %q", e.Kind, e.Batch, e.Jug)
}
