package logbook

import (
	"testing"

	"pourbench/pour"
)

// Of two weighings of a thing the last counts and knows the first; another batch, jug or step is another thing; and of two things that bear one name
// in one jug two weighings count, the last two.
func TestTheLastWeighingOfAThingCounts(t *testing.T) {
	plan, shelf := meadow(t)
	sheet := pour.Weigh(plan, shelf)
	jug := &sheet.Base.Jugs[1]
	twin := jug.Colourants[0]
	jug.Colourants = append(jug.Colourants, twin)
	weighed := func(id, jug, what string, g float64) Event {
		return Event{ID: id, Kind: Weighed, Batch: pour.Base, Jug: jug, What: what, Value: g}
	}
	icing := weighed("f", "", "olive oil", 20)
	icing.Batch = pour.Icing
	standing := []Event{
		weighed("a", "", "olive oil", 356.2),
		{ID: "b", Kind: Noted, Text: "phone"},
		icing, weighed("c", "", "Olive oil", 300), weighed("d", "", "olive oil", 250.2),
		weighed("t1", jug.Name, twin.CarrierName, 1), weighed("t2", jug.Name, twin.CarrierName, 2), weighed("t3", jug.Name, twin.CarrierName, 3),
		{ID: "r1", Kind: Read, Batch: pour.Base, What: ReadLye, Value: 60},
		{ID: "r2", Kind: Read, Batch: pour.Base, What: ReadLye, Value: 40},
	}
	counting, again := Counting(standing, &sheet)
	ids := func(list []Event) (out string) {
		for _, e := range list {
			out += e.ID + " "
		}
		return out
	}
	if got := ids(counting); got != "b f d t2 t3 r1 r2 " {
		t.Errorf("what counts is %q", got)
	}
	if ids(again["d"]) != "a c " || ids(again["t2"]) != "t1 " || len(again) != 2 {
		t.Errorf("weighed again are %v", again)
	}
	if counting, _ := Counting(standing[5:8], nil); ids(counting) != "t3 " {
		t.Errorf("without a sheet %q counts", ids(counting))
	}
	if ids(standing) != "a b f c d t1 t2 t3 r1 r2 " {
		t.Error("what stands was changed")
	}
}

// A weight that was corrected counts where it was weighed: one of the same thing after it still is the last. Taken back, the first stands again; and one
// that corrects what is not there stands where it is.
func TestACorrectedWeightCountsWhereItWasWeighed(t *testing.T) {
	weighed := func(id, corrects string, g float64) Event {
		return Event{ID: id, Kind: Weighed, Batch: pour.Base, What: "olive oil", Value: g, Corrects: corrects}
	}
	events := []Event{weighed("a", "", 356.2), weighed("b", "", 250.2), {ID: "n", Kind: Noted}, weighed("a2", "a", 351), weighed("a3", "a2", 352), weighed("x", "gone", 9)}
	ids := func(list []Event) (out string) {
		for _, e := range list {
			out += e.ID + " "
		}
		return out
	}
	if got := ids(Standing(events)); got != "a3 b n x " {
		t.Errorf("what stands is %q", got)
	}
	counting, again := Counting(Standing(events[:5]), nil)
	if ids(counting) != "b n " || ids(again["b"]) != "a3 " {
		t.Errorf("what counts is %q, before it %v", ids(counting), again)
	}
	events = append(events, Event{ID: "t", Kind: TakenBack, What: "a3"}, Event{ID: "u", Kind: TakenBack, What: "a2"})
	if got := ids(Standing(events)); got != "a b n x " {
		t.Errorf("with the corrections taken back %q stands", got)
	}
}
