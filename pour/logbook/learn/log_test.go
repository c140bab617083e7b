package learn

import (
	"errors"
	"math"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/live"
)

func TestAStageTellsNothingRightAfterLyeInOrWhileABlenderRuns(t *testing.T) {
	l := Log{
		Batter: clock.Batter{Bursts: []clock.Burst{{AtMin: 1, S: 30}, {AtMin: 4, S: 60}}},
		Jug:    clock.Jug{Bursts: []clock.Burst{{AtMin: 8, S: 6}}},
	}
	for at, want := range map[float64]bool{
		0: false, .49: false, .5: true, .99: true, 1: false, 1.25: false, 1.5: false, 1.51: true, 3.99: true, 4: false, 5: false, 5.01: true,
		7.99: true, 8: false, 8.1: false, 8.11: true,
	} {
		if got := l.tells(StageAt{chem.Light, at}); got != want {
			t.Errorf("a stage at %v min tells: %v", at, got)
		}
	}
}

// By hand: 0.20² + 0.15²/n for n stages (trace model 3.1).
func TestALogOfManyStagesIsJudgedMoreSurely(t *testing.T) {
	for n, want := range map[int]float64{1: .0625, 2: .05125, 4: .045625} {
		near(t, "s²", Log{Line: Line{Stages: n}}.variance(), want)
	}
}

// drawn is a log of stages seen or not yet there, its line drawn at a scent shifted from its prior.
func drawn(seen, notYet []StageAt, shift float64) Log {
	l := workedLogs()[2]
	l.Seen, l.NotYet = seen, notYet
	l.Line = l.line(func(string) float64 { return shift })
	return l
}

// A line is the mean of its stages' lines, one of stages not yet there the lowest of them: her speed was below each.
func TestALineIsTheMeanOfItsStagesOrTheirTightestBound(t *testing.T) {
	medium, thick := StageAt{chem.Medium, 4}, StageAt{chem.Thick, 6}
	a, b := drawn([]StageAt{medium}, nil, 0).Line, drawn([]StageAt{thick}, nil, 0).Line
	both := drawn([]StageAt{medium, thick}, []StageAt{{chem.Stiff, 2}}, 0).Line
	near(t, "y", both.Y, (a.Y+b.Y)/2)
	near(t, "w", both.Weights[0], (a.Weights[0]+b.Weights[0])/2)
	if both.Stages != 2 || both.Censored || a.Stages != 1 || a.Y == b.Y {
		t.Errorf("%+v of %+v and %+v", both, a, b)
	}
	for _, order := range [][]StageAt{{medium, thick}, {thick, medium}} {
		bound := drawn(nil, order, 0).Line
		lowest := a
		if b.Y < a.Y {
			lowest = b
		}
		if bound.Y != lowest.Y || bound.Weights[0] != lowest.Weights[0] || bound.Stages != 1 || !bound.Censored {
			t.Errorf("not yet at %v: %+v, want the lower of %v and %v", order, bound, a.Y, b.Y)
		}
	}
	// Drawn at a scent that much quicker and drawn back by its weight, the line is nearly the same: y + w·shift, to first order.
	moved := drawn([]StageAt{medium}, nil, .1).Line
	if math.Abs(moved.Y-a.Y) > .01 || moved.Y == a.Y {
		t.Errorf("shifted by 0.1 and drawn back y is %v, at the prior %v", moved.Y, a.Y)
	}
	if early := drawn([]StageAt{{chem.Light, .2}}, nil, 0).Line; early.Stages != 0 || early.Why == "" || !early.Worked {
		t.Errorf("from a stage that tells nothing: %+v", early)
	}
	hopeless := Log{Seen: []StageAt{medium}}
	if line := hopeless.line(func(string) float64 { return 0 }); line.Stages != 0 || line.Why == "" {
		t.Errorf("from a batter the clock refuses: %+v", line)
	}
	if _, ok := hopeless.Predicted(clock.Hand{}); ok {
		t.Error("a time is predicted for a batter the clock refuses")
	}
}

func TestWhatAPourTeachesIsWhatWasSeenInEachJug(t *testing.T) {
	plan, shelf := lonely(t)
	from := time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC)
	m := begins(t, openTestBook(t), pour.Weigh(plan, shelf), "", shelf, from)
	m.after(0, logbook.Event{Kind: logbook.Noted, Text: "a warm day"})
	if len(logsOf(m.record(shelf), shelf)) != 0 {
		t.Error("a pour in which nothing was seen teaches something")
	}
	m.after(time.Minute, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)})
	m.sees(3*time.Minute, "fern", chem.Light)
	m.sees(2*time.Minute, "fern", chem.Medium)
	m.after(time.Minute, logbook.Event{Kind: logbook.NotYet, Batch: pour.Base, Jug: "fern", Stage: chem.Thick})
	m.after(0, logbook.Event{Kind: logbook.NotYet, Batch: pour.Base, Jug: "poppy", Stage: chem.Medium})
	p := m.record(shelf)
	logs := logsOf(p, shelf)
	if len(logs) != 2 {
		t.Fatalf("%d logs", len(logs))
	}
	for _, l := range logs {
		if l.Pour != p.ID || !l.When.Equal(from) || l.Batch != "base" || l.Batter.OilG == 0 || l.Jug.Fraction == 0 {
			t.Errorf("the log is of %q %v %q, %v g of oils", l.Pour, l.When, l.Batch, l.Batter.OilG)
		}
	}
	seen := func(list []StageAt, want ...StageAt) bool {
		for i := range list {
			if i >= len(want) || list[i].Stage != want[i].Stage || math.Abs(list[i].Min-want[i].Min) > 1e-9 {
				return false
			}
		}
		return len(list) == len(want)
	}
	poppy, fern := logs[0], logs[1]
	if fern.JugName != "fern" {
		poppy, fern = fern, poppy
	}
	if !seen(fern.Seen, StageAt{chem.Light, 3}, StageAt{chem.Medium, 5}) || !seen(fern.NotYet, StageAt{chem.Thick, 6}) {
		t.Errorf("fern: seen %v, not yet %v", fern.Seen, fern.NotYet)
	}
	if !seen(poppy.Seen) || !seen(poppy.NotYet, StageAt{chem.Medium, 6}) {
		t.Errorf("poppy: seen %v, not yet %v", poppy.Seen, poppy.NotYet)
	}
	broken := p
	broken.PlanErr = errors.New("an oil is gone")
	if len(logsOf(broken, shelf)) != 0 {
		t.Error("a pour whose plan cannot be used teaches something")
	}
}

// A scent's word is that of the usual factor nearest by its logarithm; the priors are ×0.8, ×1, ×2, ×2.7 and ×8.
func TestAScentsWordIsTheNearest(t *testing.T) {
	for factor, want := range map[float64]string{
		.5: pour.BehaviourSlows, .88: pour.BehaviourSlows, .91: pour.BehaviourNone, 1.4: pour.BehaviourNone, 1.43: pour.BehaviourFast,
		2.3: pour.BehaviourFast, 2.4: pour.BehaviourStrong, 4.6: pour.BehaviourStrong, 4.8: pour.BehaviourSeizes, 20: pour.BehaviourSeizes,
	} {
		if got := behaviourNear(math.Log(factor)); got != want {
			t.Errorf("×%v is called %s, want %s", factor, got, want)
		}
	}
}

func TestFindingsStandByHowManyPoursTheyRestOn(t *testing.T) {
	scented := func(n int, id, name string) Log {
		l := plainLog(n, "", .2)
		l.Jug.Scents = []clock.Scent{{ID: id, Name: name, LnFactor: math.Log(2), SD: .35, RefLoadPercent: 3, LoadPercent: 3}}
		l.Line.Weights = []float64{1}
		return l
	}
	unknown := scented(5, "", "nameless")
	weightless := scented(6, "w", "weightless")
	weightless.Line.Weights[0] = 0
	lesson := fromLogs([]Log{scented(1, "z", "zest"), scented(2, "b", "balm"), scented(3, "a", "anise"), scented(4, "b", "balm"), unknown, weightless})
	var got []string
	for _, f := range lesson.Scents {
		got = append(got, f.ID)
		if f.Prior < 1.999 || f.Prior > 2.001 || f.LoadPercent != 3 || !(f.Low < f.Factor && f.Factor < f.High) {
			t.Errorf("%+v", f)
		}
	}
	if want := []string{"b", "a", "z"}; len(got) != 3 || got[0] != want[0] || got[1] != want[1] || got[2] != want[2] {
		t.Errorf("%q, want %q", got, want)
	}
	if lesson.Scents[0].Pours != 2 || lesson.Scents[1].Pours != 1 {
		t.Errorf("they rest on %d and %d pours", lesson.Scents[0].Pours, lesson.Scents[1].Pours)
	}
	// One log of one scent alone, by hand: prior 0.35² on the scent, 0.45² on the pace, noise 0.0625, weight 1, y = 0.2.
	one := fromLogs([]Log{scented(1, "z", "zest")}).Scents[0]
	gain := .1225 / (.1225 + .2025 + .0625)
	near(t, "factor", one.Factor, 2*math.Exp(gain*.2))
	sd := math.Sqrt(.1225 * (1 - gain))
	near(t, "low", one.Low, one.Factor*math.Exp(-1.2815515655446004*sd))
	near(t, "high", one.High, one.Factor*math.Exp(1.2815515655446004*sd))
}

func TestATrialTellsWhatTheScentDidBesideItsSpeed(t *testing.T) {
	trouble := func(id, jug, what string) logbook.Event {
		return logbook.Event{ID: id, Kind: logbook.Troubled, Batch: pour.Base, Jug: jug, What: what}
	}
	lesson := Lesson{Scents: []Finding{{ID: "other", Behaviour: pour.BehaviourSlows}, {ID: "rose", Behaviour: pour.BehaviourFast, Factor: 2.2}}}
	for _, x := range []struct {
		name      string
		events    []logbook.Event
		behaviour string
		rices     bool
	}{
		{"nothing", nil, pour.BehaviourFast, false},
		{"the plain jug's trouble", []logbook.Event{trouble("a", live.TrialPlain, logbook.Seizes), trouble("b", live.TrialPlain, logbook.Rices)}, pour.BehaviourFast, false},
		{"browns", []logbook.Event{trouble("a", live.TrialScented, logbook.Browns)}, pour.BehaviourFast, false},
		{"rices", []logbook.Event{trouble("a", live.TrialScented, logbook.Rices)}, pour.BehaviourFast, true},
		{"separates", []logbook.Event{trouble("a", live.TrialScented, logbook.Separates)}, pour.BehaviourFast, true},
		{"seizes", []logbook.Event{trouble("a", live.TrialScented, logbook.Seizes)}, pour.BehaviourSeizes, false},
		{"taken back", []logbook.Event{trouble("a", live.TrialScented, logbook.Seizes), {ID: "b", Kind: logbook.TakenBack, What: "a"}}, pour.BehaviourFast, false},
	} {
		got, err := Trial(logbook.Pour{ID: "x", TrialScent: "rose", Events: x.events}, lesson)
		must(t, err)
		if got.Scent != "rose" || got.Behaviour != x.behaviour || got.Rices != x.rices || !got.Learnt || got.Finding.Factor != 2.2 {
			t.Errorf("%s: %+v", x.name, got)
		}
	}
	if got, err := Trial(logbook.Pour{TrialScent: "unheard"}, lesson); err != nil || got.Learnt || got.Behaviour != pour.BehaviourUnknown {
		t.Errorf("a scent nothing tells of: %+v, %v", got, err)
	}
	if _, err := Trial(logbook.Pour{ID: "x"}, lesson); err == nil {
		t.Error("a pour that is no trial was read as one")
	}
}
