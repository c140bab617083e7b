package life_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// The lot and the mass of a weight can be put right after the pour, by the keys of its form; the slip before it cannot, nor can anything be made of
// a weight that is none, and it is not taken back.
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
	if len(fields) != 2 {
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
	if got := b.refuses(at(12, 8), logbook.Event{Kind: logbook.TakenBack, What: last.ID}); !strings.Contains(got, "pourbench logbook correct "+b.id+" "+last.ID) {
		t.Error(got)
	}
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
