package live

import (
	"math"
	"slices"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// marked is the demo's state after events at minutes of the run; lye is in at minute 2.
func marked(t *testing.T, events map[float64]logbook.Event) (State, pour.Sheet, pour.Shelf) {
	t.Helper()
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	list := []logbook.Event{{ID: "in", Kind: logbook.Done, Step: "base lye in", Run: minutes(2)}}
	for at, e := range events {
		e.Run, e.ID = minutes(at), time.Duration(at*1e9).String()
		list = append(list, e)
	}
	slices.SortFunc(list, func(a, b logbook.Event) int { return int(a.Run - b.Run) })
	return Replay(sheet, list), sheet, shelf
}

func TestThePlanAsItReallyWentHoldsWhatWasReadAndBlended(t *testing.T) {
	s, sheet, _ := marked(t, map[float64]logbook.Event{
		1:   {Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: 41},
		1.1: {Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadLye, Value: 29},
		1.2: {Kind: logbook.Read, Batch: pour.Icing, What: logbook.ReadOils, Value: 33},
		2.2: {Kind: logbook.Blended, Batch: pour.Base, Value: 30},  // longer than its lye is in: from its beginning
		3:   {Kind: logbook.Blended, Batch: pour.Base, Value: 15},  // from 0.75 to 1 min after lye-in
		3.1: {Kind: logbook.Blended, Batch: pour.Icing, Value: 10}, // its lye is not in: nothing is known of when
		4:   {Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadBatter, Value: 37.5},
	})
	got := s.Actual(sheet.Plan)
	if b := got.Base; b.OilsC != 41 || b.LyeC != 29 || b.BatterC != 37.5 || !b.BatterMeasured {
		t.Errorf("oils %v, lye %v, batter %v (measured %v)", b.OilsC, b.LyeC, b.BatterC, b.BatterMeasured)
	}
	if got.Icing.OilsC != 33 || got.Icing.LyeC != sheet.Plan.Icing.LyeC || got.Icing.BatterMeasured {
		t.Errorf("the icing's oils are %v, its lye %v", got.Icing.OilsC, got.Icing.LyeC)
	}
	if want := []pour.Burst{{AtMin: 0, S: 30}, {AtMin: .75, S: 15}}; !slices.Equal(got.Base.Blend, want) {
		t.Errorf("blended %v, want %v", got.Base.Blend, want)
	}
	if !slices.Equal(got.Icing.Blend, sheet.Plan.Icing.Blend) {
		t.Errorf("the icing's bursts became %v", got.Icing.Blend)
	}
	if sheet.Plan.Base.OilsC == 41 {
		t.Error("the plan itself was changed")
	}
}

func TestABatchIsSplitWhenItsMixingWasDone(t *testing.T) {
	for done, want := range map[float64]float64{7: 5, 1.5: 0, 5000: clock.HorizonMin} {
		s, sheet, shelf := marked(t, map[float64]logbook.Event{done: {Kind: logbook.Done, Step: "base mix"}})
		b, ok := s.Batter(sheet, pour.Base, shelf)
		if !ok || b.SplitMin != want {
			t.Errorf("mixed at minute %v of the run it is split at %v, want %v", done, b.SplitMin, want)
		}
	}
	s, sheet, shelf := marked(t, nil)
	planned, _ := sheet.ClockBatter(pour.Base, shelf)
	if b, ok := s.Batter(sheet, pour.Base, shelf); !ok || b.SplitMin != planned.SplitMin {
		t.Errorf("not mixed yet it is split at %v, planned %v", b.SplitMin, planned.SplitMin)
	}
}

// A step is begun as long before its end as it takes, but not before the one that was finished before it.
func TestAStepIsBegunWhenTheHandsWereFree(t *testing.T) {
	_, s := handRun(30)
	s.Steps[1].Done, s.Steps[1].DoneAt = true, minutes(20)
	s.Steps[2].Done, s.Steps[2].DoneAt = true, minutes(21)
	for i, want := range map[int]float64{0: 6, 1: 19, 2: 20} { // mix ends at 11 and takes 5, split at 20 and 1, pour at 21 and 2
		if got := s.begun(i); got != minutes(want) {
			t.Errorf("%s was begun at %v, want %v min", s.Steps[i].Key, got, want)
		}
	}
}

func TestAScentGoesInWhenItWasOrAtTheEarliestNow(t *testing.T) {
	s, sheet, shelf := marked(t, nil)
	var jug, key string
	for _, step := range s.Steps {
		if step.Kind == pour.TaskScent && step.Batch == pour.Base {
			jug, key = step.Jug, step.Key
		}
	}
	planned, ok := sheet.ClockJug(pour.Base, jug, shelf)
	if !ok || len(planned.Scents) == 0 {
		t.Fatal("the demo has no scented jug")
	}
	at := planned.Scents[0].AtMin
	atOf := func(s State, now float64) float64 {
		t.Helper()
		j, ok := s.Jug(sheet, pour.Base, jug, shelf, now)
		if !ok || len(j.Scents) != len(planned.Scents) {
			t.Fatalf("%d scents", len(j.Scents))
		}
		return j.Scents[0].AtMin
	}
	if got := atOf(s, at-1); got != at {
		t.Errorf("before its minute it goes in at %v, planned %v", got, at)
	}
	if got := atOf(s, at+4); got != at+4 {
		t.Errorf("four minutes late it goes in at %v, planned %v", got, at)
	}
	step, i, _ := s.stepOf(pour.Base, pour.TaskScent, jug)
	done, _, _ := marked(t, map[float64]logbook.Event{30: {Kind: logbook.Done, Step: key}})
	if got, want := atOf(done, 90), 30-2-step.LengthMin; math.Abs(got-want) > 1e-6 {
		t.Errorf("scented by minute 28 after lye-in it went in at %v, want %v", got, want)
	}
	poured := map[float64]logbook.Event{}
	for n, other := range s.Steps {
		if n != i && slices.Contains(other.Moves, jug) {
			poured[40+float64(n)] = logbook.Event{Kind: logbook.Done, Step: other.Key}
		}
	}
	used, _, _ := marked(t, poured)
	if j, ok := used.Jug(sheet, pour.Base, jug, shelf, 90); !ok || len(j.Scents) != 0 {
		t.Errorf("poured without its scent it has %d", len(j.Scents))
	}
	if _, ok := s.Jug(sheet, pour.Base, "nobody", shelf, 0); ok {
		t.Error("a jug that is not there was found")
	}
}

// Somebody faster by a shift: the pace's mean moves by it and nothing else, and the prior's pace is added where nothing was learnt.
func TestSomebodyQuickerIsTheSameHandAtAnotherPace(t *testing.T) {
	h := clock.Hand{
		Traits:     []clock.Trait{{Kind: clock.RecipeTrait, ID: "r", Mean: .1}, {Kind: clock.PaceTrait, Mean: .2}},
		Covariance: [][]float64{{.04, .01}, {.01, .09}}, Pours: 3,
	}
	got := quicker(h, .5)
	if got.Traits[0].Mean != .1 || got.Traits[1].Mean != .7 || h.Traits[1].Mean != .2 || got.Pours != 3 {
		t.Errorf("%+v of %+v", got.Traits, h.Traits)
	}
	h.Traits, h.Covariance = h.Traits[:1], [][]float64{{.04}}
	got = quicker(h, .5)
	if len(got.Traits) != 2 || got.Traits[1].Kind != clock.PaceTrait || got.Traits[1].Mean != .5 || len(h.Traits) != 1 {
		t.Errorf("%+v", got.Traits)
	}
	if want := [][]float64{{.04, 0}, {0, .2025}}; len(got.Covariance) != 2 || !slices.Equal(got.Covariance[0], want[0]) || math.Abs(got.Covariance[1][1]-.2025) > 1e-12 || got.Covariance[1][0] != 0 {
		t.Errorf("the covariance is %v, want %v", got.Covariance, want)
	}
}

// What was seen stands as it was seen, and a stage that was not lies between its neighbours that were.
func TestAnOutlookHoldsToWhatWasSeen(t *testing.T) {
	s, sheet, shelf := marked(t, map[float64]logbook.Event{
		11: {Kind: logbook.Done, Step: "base split"},
		12: {Kind: logbook.Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Light},
		14: {Kind: logbook.Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Thick},
		15: {Kind: logbook.NotYet, Batch: pour.Base, Jug: "poppy", Stage: chem.Medium},
	})
	l := Live{Sheet: sheet, Events: s.Marks, run: minutes(16)}
	o := l.Outlook(shelf, pour.Hand{})
	fern, ok := o.Jug(pour.Base, "fern")
	if !ok || !fern.Seen[chem.Light] || fern.Seen[chem.Medium] || !fern.Seen[chem.Thick] || fern.Reached != int(chem.Thick)+1 {
		t.Fatalf("%+v", fern)
	}
	if fern.Stages[chem.Light].V != 10 || fern.Stages[chem.Thick].V != 12 {
		t.Errorf("light at %v, thick at %v", fern.Stages[chem.Light], fern.Stages[chem.Thick])
	}
	if m, e, st := fern.Stages[chem.Medium].V, fern.Stages[chem.Emulsion].V, fern.Stages[chem.Stiff].V; m > 12 || e > 10 || st < 12 {
		t.Errorf("emulsion at %v, medium at %v, stiff at %v", e, m, st)
	}
	for _, j := range sheet.Base.Jugs {
		planned, _ := sheet.ClockJug(pour.Base, j.Name, shelf)
		if got, _ := o.Jug(pour.Base, j.Name); got.Scented != (len(planned.Scents) > 0) {
			t.Errorf("%s is scented: %v", j.Name, got.Scented)
		}
	}
	poppy, _ := o.Jug(pour.Base, "poppy")
	if poppy.Reached != 0 || poppy.Seen[chem.Medium] {
		t.Errorf("a stage that was not there counts as reached: %+v", poppy)
	}
	if _, ok := o.Jug(pour.Base, "nobody"); ok {
		t.Error("a jug that is not there has an outlook")
	}
	if _, ok := o.Jug(pour.Icing, "fern"); ok {
		t.Error("the base's jug was found in the icing")
	}
	// A stage seen right after lye-in, as by a slip of the hand, says nothing of the pace.
	slip, _, _ := marked(t, map[float64]logbook.Event{2.4: {Kind: logbook.Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Light}})
	l.Events, l.run = slip.Marks, minutes(3)
	if got, _ := l.Outlook(shelf, pour.Hand{}).Jug(pour.Base, "fern"); got.Pace != 1 {
		t.Errorf("a stage seen at 0.4 min makes the pace %v", got.Pace)
	}
}

func TestATrialsGuideNamesTheStagesToMark(t *testing.T) {
	steps := TrialSteps()
	if len(steps) != 6 {
		t.Fatalf("%d steps", len(steps))
	}
	for i, want := range []string{"light", "medium", "thick"} {
		if got := steps[2+i]; got != "Mark "+want+" for each jug as soon as you see it." {
			t.Errorf("step %d is %q", 3+i, got)
		}
	}
}

func TestATrialIsRefusedWhereItCannotBe(t *testing.T) {
	plan, shelf := example(t, "alpine-meadow")
	if _, err := TrialPlan(plan, "unheard-of", shelf); err == nil {
		t.Error("a trial of a scent nobody has")
	}
	bad := plan.Clone()
	bad.Base.SuperfatPercent = 1000
	if got, err := TrialPlan(bad, "alp-rose", shelf); err == nil || got.Name != bad.Name {
		t.Errorf("a trial of a plan that cannot be: %v, %q", err, got.Name)
	}
}

// By hand: what a jug's own stages say counts by what is free of judging, 0.15² for one of n stages: off·free ÷ (free + 0.0225/n).
func TestAJugsOwnStagesCountByHowSurelyTheyAreJudged(t *testing.T) {
	s, sheet, shelf := marked(t, nil)
	batter, ok := s.Batter(sheet, pour.Base, shelf)
	c, err := clock.New(batter, clock.Hand{})
	if !ok || err != nil {
		t.Fatal(err)
	}
	fern, _ := s.Jug(sheet, pour.Base, "fern", shelf, 0)
	sigma := c.Forecast(fern).Sigma
	free := sigma*sigma - .0225
	for n, want := range map[float64]float64{1: .3 * free / (free + .0225), 3: .3 * free / (free + .0075)} {
		got := watch{}.shift(c, []clock.Jug{fern}, []hint{{off: .3, n: n, seen: true}}, 0)
		if math.Abs(got-want) > 1e-12 {
			t.Errorf("%v stages 0.3 off shift the jug by %v, want %v", n, got, want)
		}
	}
}
