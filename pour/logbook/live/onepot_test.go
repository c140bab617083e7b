package live

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// What is seen before the split is seen in all there is: every jug of the base has it, with its minute, no jug of the icing has; and once it is split
// a jug has its own.
func TestAStageSeenBeforeTheSplitHoldsForTheWholeBatch(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	for _, key := range []string{"base lye in", "icing lye in"} {
		live, _, _ = live.Do(key, c.now())
	}
	c.pass(90 * time.Second)
	live, _, err := live.stage(pour.Base, "gentian", chem.Light, c.now())
	must(t, err)
	o := live.Outlook(shelf, pour.Hand{})
	for _, j := range o.Jugs {
		of := j.Batch == pour.Base
		if j.Seen[chem.Light] != of || of && (j.Reached != int(chem.Light)+1 || j.Stages[chem.Light].V != 1.5 || j.Pace <= 1) {
			t.Errorf("%s of the %s: seen %v, reached %d at %v, pace %v", j.Jug, j.Batch, j.Seen, j.Reached, j.Stages[chem.Light], j.Pace)
		}
	}
	poppy, _ := o.Jug(pour.Base, "poppy")
	c.pass(time.Second)
	for _, key := range []string{"base mix", "base split"} {
		live, _, _ = live.Do(key, c.now())
	}
	c.pass(time.Minute)
	live, _, err = live.stage(pour.Base, "gentian", chem.Medium, c.now())
	must(t, err)
	after := live.Outlook(shelf, pour.Hand{})
	own, _ := after.Jug(pour.Base, "gentian")
	sister, _ := after.Jug(pour.Base, "poppy")
	if !own.Seen[chem.Medium] || sister.Seen[chem.Medium] || !sister.Seen[chem.Light] {
		t.Errorf("after the split gentian has %v, poppy %v", own.Seen, sister.Seen)
	}
	if sister.Pace == poppy.Pace {
		t.Error("a sister that was watched since says nothing to a jug that was seen in the pot alone")
	}
	s := live.State()
	if len(s.Sightings) != 2 || !s.Sightings[0].Whole || s.Sightings[1].Whole {
		t.Errorf("the sightings are %+v", s.Sightings)
	}
	if s.OnePot(pour.Base, live.Run()) || !s.OnePot(pour.Icing, live.Run()) {
		t.Error("the base is split, the icing is not")
	}
	split := slices.IndexFunc(s.Steps, func(x StepState) bool { return x.Batch == pour.Base && x.Kind == pour.TaskSplit })
	s.Steps[split].Done = false // forgotten, and a jug of it was coloured or poured
	for i := range s.Steps {
		if x := &s.Steps[i]; x.Batch == pour.Base && (x.Jug != "" || len(x.Moves) > 0) && s.OnePot(pour.Base, live.Run()) {
			x.Done, x.DoneAt = true, live.Run()
			if s.OnePot(pour.Base, live.Run()) || !s.OnePot(pour.Base, live.Run()-time.Second) {
				t.Errorf("after %s all of it is taken for one pot, or it was not before", x.Key)
			}
			x.Done = false
		}
	}
	live, _, err = live.Mark(logbook.Event{Kind: logbook.TakenBack, What: "90000-a"}, c.now())
	must(t, err)
	if j, _ := live.Outlook(shelf, pour.Hand{}).Jug(pour.Base, "poppy"); j.Seen[chem.Light] {
		t.Error("taken back, it still stands")
	}
}

// What goes wrong before the split goes wrong in all there is: every jug of the base has it, its time is over with it, and what helps is said of all of it,
// with nothing of thinner ones; no jug of the icing has it. Split since, it still is every jug's, and what goes wrong then is the jug's own.
func TestTroubleBeforeTheSplitIsOfTheWholeBatch(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	c := newClock()
	live, _ := start(sheet, "a", c.now())
	for _, key := range []string{"base lye in", "icing lye in"} {
		live, _, _ = live.Do(key, c.now())
	}
	c.pass(time.Minute)
	trouble := func(what string) {
		t.Helper()
		next, _, err := live.Mark(logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "gentian", What: what}, c.now())
		must(t, err)
		live = next
	}
	trouble(logbook.Seizes)
	board := func() map[string]JugBoard {
		out := map[string]JugBoard{}
		for _, j := range live.Board(live.Outlook(shelf, pour.Hand{})).Jugs {
			out[string(j.Batch)+" "+j.Jug] = j
		}
		return out
	}
	jugs := board()
	for _, j := range jugs {
		if of := j.Batch == pour.Base; j.Seized != of || slices.Contains(j.Troubles, logbook.Seizes) != of {
			t.Errorf("%s of the %s: seized %v, troubles %v", j.Jug, j.Batch, j.Seized, j.Troubles)
		}
	}
	helps := jugs["base poppy"].Rescues
	if len(helps) == 0 || helps[0].Kind != SpoonIt || helps[0].Step != "" || !strings.Contains(helps[0].Do, "spoon all of the base in") {
		t.Errorf("what helps is %+v", helps)
	}
	for _, r := range helps {
		if r.Kind == UseInBottom {
			t.Error("it is to go under thinner ones")
		}
	}
	c.pass(time.Second)
	for _, key := range []string{"base mix", "base split"} {
		live, _, _ = live.Do(key, c.now())
	}
	c.pass(time.Minute)
	trouble(logbook.Browns)
	jugs = board()
	if own, sister := jugs["base gentian"], jugs["base poppy"]; len(own.Troubles) != 2 || len(sister.Troubles) != 1 || sister.Rescues[0].Kind != UseInBottom {
		t.Errorf("after the split gentian has %v, poppy %v, %+v", own.Troubles, sister.Troubles, sister.Rescues)
	}
}
