package whatif_test

import (
	"bytes"
	"slices"
	"testing"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/pour/whatif"
	"pourbench/presets"
)

// hurried is the demo plan made hot and strong enough for several jugs to come too late.
func hurried(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read("demo", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []pour.Edit{
		pour.SetNumber("base.oils_c", 42), pour.SetNumber("base.lye_c", 42), pour.SetNumber("run.pour_min", 0.75),
	} {
		if plan, err = pour.Apply(plan, shelf, e); err != nil {
			t.Fatal(err)
		}
	}
	return plan, shelf
}

func outside(p pour.Plan, shelf pour.Shelf) int {
	n := 0
	sheet := pour.Work(p, shelf, pour.Hand{})
	for _, b := range sheet.Batches() {
		for _, j := range b.Jugs {
			if j.Clock.LateChancePercent.V >= 50 {
				n++
			}
		}
	}
	return n
}

func TestSuggestionsDoWhatTheySayWhenApplied(t *testing.T) {
	plan, shelf := hurried(t)
	was := outside(plan, shelf)
	if was == 0 {
		t.Fatal("the plan is not in a hurry: nothing to suggest for")
	}
	list := whatif.Suggest(plan, shelf, pour.Hand{})
	if len(list) == 0 {
		t.Fatal("nothing is suggested")
	}
	for _, s := range list {
		next, err := pour.Apply(plan, shelf, s.Edit)
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		now := outside(next, shelf)
		t.Logf("%s: %d late before, %d after, solves %v", s, was, now, s.Solves)
		if s.Solves && now > 0 || now > was {
			t.Errorf("%s: solves is %v, yet %d jugs are late of %d before", s, s.Solves, now, was)
		}
		checkEffects(t, s, pour.Work(next, shelf, pour.Hand{}))
	}
	if !list[0].Solves {
		t.Error("no suggestion brings every jug inside its window")
	}
}

func checkEffects(t *testing.T, s whatif.Suggestion, after pour.Sheet) {
	t.Helper()
	if len(s.Jugs) == 0 {
		t.Errorf("%s: no effect on any jug", s)
	}
	for _, e := range s.Jugs {
		for _, b := range after.Batches() {
			for _, j := range b.Jugs {
				if b.Name == e.Batch && j.Name == e.Jug && j.Clock.LateChancePercent != e.LateAfter {
					t.Errorf("%s: %s is said to be late at %v %%, it is %v", s, j.Name, e.LateAfter.V, j.Clock.LateChancePercent.V)
				}
			}
		}
	}
}

func TestNothingIsSuggestedOnceASuggestionHasBroughtEveryJugInside(t *testing.T) {
	plan, shelf := hurried(t)
	list := whatif.Suggest(plan, shelf, pour.Hand{})
	if len(list) == 0 || !list[0].Solves {
		t.Fatal("no suggestion brings every jug inside its window")
	}
	next, err := pour.Apply(plan, shelf, list[0].Edit)
	if err != nil {
		t.Fatal(err)
	}
	if again := whatif.Suggest(next, shelf, pour.Hand{}); len(again) > 0 {
		t.Errorf("after %q it goes on to suggest %q", list[0], again[0])
	}
}

// A base whose every jug is late must not be passed over because its icing is sooner brought inside.
func TestEveryBatchWithAJugOutsideIsHelped(t *testing.T) {
	plan, shelf := hurried(t)
	hand := pour.Hand{Clock: clock.Hand{Traits: []clock.Trait{{Kind: clock.PaceTrait, Mean: 0.9, Pours: 1}}, Covariance: [][]float64{{0.05}}, Pours: 1}}
	helped := map[pour.BatchName]int{}
	out := whatif.Outside(plan, shelf, hand)
	list := whatif.Suggest(plan, shelf, hand)
	for _, s := range list {
		for _, n := range []pour.BatchName{pour.Base, pour.Icing} {
			if slices.ContainsFunc(s.Jugs, func(e whatif.Effect) bool { return e.Batch == n && e.OutsideBefore && e.LateAfter.V < e.LateBefore.V }) {
				helped[n]++
			}
		}
	}
	if helped[pour.Base] < 2 || helped[pour.Icing] < 2 {
		t.Errorf("of %d suggestions the base and the icing are helped by %v; outside are %v", len(list), helped, out)
	}
}

func BenchmarkSuggest(b *testing.B) {
	plan, shelf := hurried(b)
	for b.Loop() {
		if len(whatif.Suggest(plan, shelf, pour.Hand{})) == 0 {
			b.Fatal("nothing is suggested")
		}
	}
}

func BenchmarkWork(b *testing.B) {
	plan, shelf := hurried(b)
	for b.Loop() {
		pour.Work(plan, shelf, pour.Hand{})
	}
}
