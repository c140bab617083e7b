package life_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// The lot and the mass of a weight can be put right after the pour, by the keys of its form; the slip before it cannot, nor can anything be made of
// a weight that is none.
func TestAWeightOfThePourIsCorrectedAfterIt(t *testing.T) {
	b := newBench(t)
	marks := poured()
	weigh := func(id, what string, g float64, lot string) {
		e := marks[0]
		e.Kind, e.ID, e.Batch, e.What, e.Value, e.Lot = logbook.Weighed, id, pour.Base, what, g, lot
		marks = append(marks, e)
	}
	weigh("w1", "olive oil", 600.2, "g lot OLV-77")
	weigh("w2", "olive oil", 343.8, "g lot OLV-77")
	ended := marks[2]
	marks = append(slices.Delete(marks, 2, 3), ended)
	var err error
	b.id, err = b.book.Create(b.plan, "", pouredAt(), marks)
	must(t, err)
	e := life.Correction(marks[3])
	fields := map[string]life.Field{}
	for _, f := range life.Fields(&e, b.plan) {
		fields[f.Key] = f
	}
	must(t, fields["mass"].Set("344,1"))
	must(t, fields["lot"].Set("OLV-77"))
	if len(fields) != 5 {
		t.Errorf("its keys are %v", fields)
	}
	if told := life.Tell(b.logs(at(12, 7), e).Event, b.plan.Show); told != "base olive oil, 344.10 g, lot OLV-77" {
		t.Errorf("it is told as %q", told)
	}
	typed := b.on(date(12, 9)).TypedIn
	if len(typed) != 1 || typed[0].Lot != "OLV-77" || typed[0].Value != 344.1 {
		t.Errorf("typed in are %+v", typed)
	}
	slip := life.Correction(marks[2])
	if got := b.refuses(at(12, 8), slip); !strings.Contains(got, "olive oil was weighed again after it; correct e6-t1 in its place") {
		t.Error(got)
	}
	p, err := b.book.Read(b.id, b.shelf)
	must(t, err)
	last := p.Events[len(p.Events)-1]
	out := b.logs(at(12, 8), logbook.Event{Kind: logbook.Unmoulded}).Event.ID
	if back := b.logs(at(12, 8), logbook.Event{Kind: logbook.TakenBack, What: out}).Event; back.Run != ended.Run {
		t.Errorf("what comes after a correction is at %s of the run, which ended at %s", back.Run, ended.Run)
	}
	other := life.Correction(last)
	other.Kind, other.Life.Count = logbook.Given, 1
	if got := b.refuses(at(12, 8), other); !strings.Contains(got, "what stands in its place has to be one") {
		t.Error(got)
	}
}

// weighs pours once more, with weights of the base among the marks, and gives their names.
func (b *bench) weighs(list ...logbook.Event) []string {
	b.Helper()
	marks := poured()
	ended := marks[2]
	marks = marks[:2]
	for i, w := range list {
		e := marks[0]
		e.Kind, e.ID, e.Batch, e.Jug, e.What, e.Value, e.Lot = logbook.Weighed, fmt.Sprint("w", i), pour.Base, w.Jug, w.What, w.Value, w.Lot
		marks = append(marks, e)
	}
	var err error
	b.id, err = b.book.Create(b.plan, "", pouredAt(), append(marks, ended))
	must(b, err)
	p, err := b.book.Read(b.id, b.shelf)
	must(b, err)
	var ids []string
	for _, e := range p.Events {
		if e.Kind == logbook.Weighed {
			ids = append(ids, e.ID)
		}
	}
	return ids
}

// counting are the weights of a batch that count, as they are told.
func (b *bench) counting() string {
	b.Helper()
	p, err := b.book.Read(b.id, b.shelf)
	must(b, err)
	sheet := pour.Weigh(b.plan, b.shelf)
	list, _ := logbook.Counting(logbook.Standing(p.Events), &sheet)
	var out []string
	for _, e := range list {
		if e.Kind == logbook.Weighed {
			out = append(out, life.Tell(e, b.plan.Show))
		}
	}
	return strings.Join(out, "; ")
}

// A weight that was entered for the wrong thing is taken back after the pour: the one before it counts again, and with none the thing is as planned.
// Taking back a correction is undoing it.
func TestAWeightOfThePourIsTakenBackAfterIt(t *testing.T) {
	b := newBench(t)
	ids := b.weighs(logbook.Event{What: "olive oil", Value: 343.8, Lot: "OLV-77"}, logbook.Event{What: "olive oil", Value: 41, Lot: "CAS-9"})
	back := func(id string) string {
		return b.logs(at(12, 7), logbook.Event{Kind: logbook.TakenBack, What: id}).Tell(b.plan.Show)
	}
	mend := life.Correction(logbook.Event{Kind: logbook.Weighed, ID: ids[1], Batch: pour.Base, What: "olive oil", Value: 42})
	mended := b.logs(at(12, 7), mend).Event.ID
	if got, want := back(mended), "taken back: base olive oil, 42.00 g; base olive oil, 41.00 g, lot CAS-9 counts again ("+ids[1]+")"; got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	if got, want := back(ids[1]), "taken back: base olive oil, 41.00 g, lot CAS-9; base olive oil, 343.80 g, lot OLV-77 counts again ("+ids[0]+")"; got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	if typed := b.on(date(12, 9)).TypedIn; len(typed) != 1 || typed[0].Lot != "OLV-77" {
		t.Errorf("typed in are %+v", typed)
	}
	if got := back(ids[0]); !strings.HasSuffix(got, "; olive oil counts as planned") || b.counting() != "" {
		t.Errorf("it says %q, and %q counts", got, b.counting())
	}
	if got := b.refuses(at(12, 8), logbook.Event{Kind: logbook.TakenBack, What: ids[0]}); !strings.Contains(got, "does not count any more") {
		t.Error(got)
	}
}

// Of which thing a weight was can be said after the pour, of a slip too: what the plan has in one place alone by its name, else with batch and jug.
func TestOfWhichThingAWeightWasIsSaidAfterThePour(t *testing.T) {
	b := newBench(t)
	ids := b.weighs(logbook.Event{What: "olive oil", Value: 41, Lot: "CAS-9"}, logbook.Event{What: "olive oil", Value: 343.8})
	says := func(id string, e logbook.Event) logbook.Event {
		e.Kind, e.ID, e.Wall = logbook.Weighed, id, pouredAt()
		return life.Correction(e)
	}
	castor := says(ids[0], logbook.Event{Batch: pour.Base, What: "Castor Oil", Value: 41, Lot: "CAS-9"})
	if got := b.logs(at(12, 7), castor).Tell(b.plan.Show); !strings.HasPrefix(got, "base castor oil, 41.00 g, lot CAS-9, on 2026-12-05, in the place of "+ids[0]) {
		t.Errorf("it says %q", got)
	}
	if got := b.counting(); got != "base castor oil, 41.00 g, lot CAS-9; base olive oil, 343.80 g" {
		t.Errorf("%q counts", got)
	}
	if typed := b.on(date(12, 9)).TypedIn; len(typed) != 1 || typed[0].What != "castor oil" {
		t.Errorf("typed in are %+v", typed)
	}
	for what, c := range map[string]struct{ e, says string }{
		"nothing of the plan": {"castor oill", `did you mean "castor oil"?`},
		"each jug has it":     {pour.WeighBatter, "batter is not weighed into the base by the plan; write where: batch=base jug="},
	} {
		if got := b.refuses(at(12, 8), says(ids[1], logbook.Event{Batch: pour.Base, What: c.e, Value: 300})); !strings.Contains(got, c.says) {
			t.Errorf("%s: %s", what, got)
		}
	}
	jug := b.plan.Base.Jugs[1].Name
	batter := says(ids[1], logbook.Event{Batch: pour.Base, Jug: jug, What: pour.WeighBatter, Value: 343.8})
	if got := b.logs(at(12, 8), batter).Tell(b.plan.Show); !strings.HasSuffix(got, "; olive oil counts as planned") {
		t.Errorf("it says %q", got)
	}
	if got := b.counting(); got != "base castor oil, 41.00 g, lot CAS-9; base "+pour.WeighBatter+", 343.80 g, in "+jug {
		t.Errorf("%q counts", got)
	}
}

// What was weighed into a pour that nobody marked is written in after it, found by a part of its name: it counts as weighed, says when it was written
// in, stands at the end of the run, can be put right and taken back. What the plan has nowhere, or in several places, is refused.
func TestAWeightIsWrittenInAfterThePour(t *testing.T) {
	b := newBench(t)
	b.pours()
	weigh := func(what string, g float64) logbook.Event {
		return logbook.Event{Kind: logbook.Weighed, What: what, Value: g}
	}
	wrote := b.logs(at(12, 9), weigh("OLIVE", 350.5))
	e := wrote.Event
	if e.What != "olive oil" || e.Batch != pour.Base || e.Day() != "2026-12-09" || len(wrote.Doubts) > 0 {
		t.Errorf("it is %+v, doubted by %v", e, wrote.Doubts)
	}
	p, err := b.book.Read(b.id, b.shelf)
	must(t, err)
	if ended := p.Events[len(p.Events)-2]; e.Run != ended.Run {
		t.Errorf("it is at %s of a run that ended at %s", e.Run, ended.Run)
	}
	counts := func() []logbook.Event {
		p, err := b.book.Read(b.id, b.shelf)
		must(t, err)
		sheet := pour.Weigh(p.Plan, b.shelf)
		now, _ := logbook.Counting(logbook.Standing(p.Events), &sheet)
		return slices.DeleteFunc(now, func(e logbook.Event) bool { return e.Kind != logbook.Weighed })
	}
	if now := counts(); len(now) != 1 || now[0].Value != 350.5 {
		t.Errorf("what counts is %+v", now)
	}
	marks := life.Marks(p.Events)
	if n := len(marks); n == 0 || marks[n-1].Event.ID != e.ID || !marks[n-1].Standing {
		t.Errorf("the marks are %+v", marks)
	}
	right := life.Correction(e)
	right.Value, right.Lot = 344, "A7"
	b.logs(at(12, 9), right)
	if now := counts(); len(now) != 1 || now[0].Value != 344 || now[0].Lot != "A7" {
		t.Errorf("corrected, what counts is %+v", now)
	}
	batter := weigh("batter", 466)
	for what, c := range map[string]logbook.Event{
		"is missing":                              weigh("", 3),
		"write one of olive oil":                  weigh("unobtain", 3),
		"can be olive oil, or coconut oil":        weigh("oil", 3),
		"batch base, or batch icing":              weigh("water", 240),
		"several places; write where: batch base": batter,
	} {
		if got := b.refuses(at(12, 9), c); !strings.Contains(got, what) {
			t.Errorf("want %q, got %s", what, got)
		}
	}
	batter.Jug = "Fern"
	if e := b.logs(at(12, 9), batter).Event; e.Jug != "fern" || e.Batch != pour.Base {
		t.Errorf("the batter of fern is %+v", e)
	}
	batter.Jug, batter.Batch = "fern", pour.Icing
	if got := b.refuses(at(12, 9), batter); !strings.Contains(got, "the plan weighs batter elsewhere; write where: batch base jug pot") {
		t.Error(got)
	}
	far := b.logs(at(12, 9), weigh("olive oil", 3438))
	if len(far.Doubts) != 1 || !strings.Contains(far.Doubts[0], "times the planned") {
		t.Errorf("ten times too much is doubted by %v", far.Doubts)
	}
	b.logs(at(12, 9), logbook.Event{Kind: logbook.TakenBack, What: far.Event.ID})
	if now := counts(); len(now) != 2 {
		t.Errorf("taken back, what counts is %+v", now)
	}
}

// A weight that is written in while its pour is left under way does not set the run's clock back.
func TestAWeightWrittenInDoesNotSetTheRunBack(t *testing.T) {
	b := newBench(t)
	marks := slices.DeleteFunc(poured(), func(e logbook.Event) bool { return e.Kind == logbook.Ended })
	var err error
	b.id, err = b.book.Create(b.plan, "", pouredAt(), marks)
	must(t, err)
	last := marks[len(marks)-1]
	wrote := b.logs(last.Wall.Add(20*time.Minute), logbook.Event{Kind: logbook.Weighed, What: "olive", Value: 344}).Event
	if want := last.Run + 20*time.Minute; wrote.Run != want {
		t.Errorf("it is at %s of the run, want %s", wrote.Run, want)
	}
}
