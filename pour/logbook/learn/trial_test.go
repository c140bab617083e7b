package learn

import (
	"math"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

func TestATrialOfAScentSetsItsBehaviour(t *testing.T) {
	plan, shelf := lonely(t)
	trial, err := live.TrialPlan(plan, "alp-rose", shelf)
	must(t, err)
	sheet := pour.Work(trial, shelf, pour.Hand{})
	for _, j := range sheet.Base.Jugs {
		if math.Abs(j.BatterG-live.TrialG) > 1e-6 {
			t.Errorf("%s holds %v g", j.Name, j.BatterG)
		}
	}
	load := shelfLoad(shelf, "alp-rose")
	if got := sheet.Base.Jugs[1].ScentLoadPercent; math.Abs(got-load) > 1e-9 {
		t.Errorf("the scented jug has %v %%, the test load is %v %%", got, load)
	}
	m := begins(t, openTestBook(t), sheet, "alp-rose", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	r := m.run
	m.until("base scent " + live.TrialScented)
	since, _ := r.State().Elapsed(r.Live().Run())
	half := func(jug string, stage chem.Stage, factor float64) { // as seen by a maker for whom the scent is that quick
		j := sheet.Base.Jugs[map[string]int{live.TrialPlain: 0, live.TrialScented: 1}[jug]]
		at := time.Duration(j.Clock.Stages[stage].Mid.V*factor*float64(time.Minute)) - since
		m.sees(max(0, at), jug, stage)
		since, _ = r.State().Elapsed(r.Live().Run())
	}
	half(live.TrialScented, chem.Medium, .5)
	half(live.TrialScented, chem.Thick, .45)
	half(live.TrialPlain, chem.Medium, 1)
	half(live.TrialPlain, chem.Thick, 1)
	p := m.record(shelf)
	lesson := fromLogs(logsOf(p, shelf))
	result, err := Trial(p, lesson)
	must(t, err)
	if !result.Learnt || result.Finding.Factor <= result.Finding.Prior {
		t.Errorf("a scent twice as quick as believed (×%.2f) comes out at ×%.2f", result.Finding.Prior, result.Finding.Factor)
	}
	t.Logf("×%.2f believed, ×%.2f (%.2f to %.2f) after the trial: %s", result.Finding.Prior, result.Finding.Factor, result.Finding.Low, result.Finding.High, result.Behaviour)
	m.after(0, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: live.TrialScented, What: logbook.Seizes})
	p = m.record(shelf)
	if result, _ = Trial(p, lesson); result.Behaviour != pour.BehaviourSeizes {
		t.Errorf("a scent that seized is called %s", result.Behaviour)
	}
	for i := range p.Events {
		if p.Events[i].Kind == logbook.Troubled {
			p.Events[i].Run = 0
		}
	}
	if result, _ = Trial(p, lesson); result.Behaviour == pour.BehaviourSeizes {
		t.Error("what seized before the split, without the scent, is called the scent's")
	}
}

func shelfLoad(shelf pour.Shelf, id string) float64 {
	if sc, _ := shelf.Scent(id); sc.TestLoadPercent > 0 {
		return sc.TestLoadPercent
	}
	return clock.PriorLoadPercent
}
