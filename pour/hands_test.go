package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/script"
)

// paced is the demo without its icing in a technique, with hands whose every minute can be told from every other.
func paced(t testing.TB, technique script.Technique) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := shelved(t)
	p.Icing, p.Swirl = nil, pour.Swirl{Technique: string(technique), Passes: 3, Turns: 1.5, HeightMM: 120}
	r := &p.Run
	r.PourMin, r.ChangeMin, r.IntoPotMin, r.TurnMin, r.PourOutMin = 2, 0.1, 3, 0.7, 5
	r.WireMin, r.CombMin, r.SpoonMin, r.LevelMin, r.PipeMin, r.Order = 1.1, 1.3, 7, 0.4, 1.7, nil
	return p, shelf
}

// The demo has five jugs, all with a share. Rounds cost a change of jug for every act but the bed; passes of one pot and strokes cost none.
func TestTheHandsNeedAsLongAsTheirActs(t *testing.T) {
	for technique, want := range map[script.Technique]map[pour.TaskKind]float64{
		script.Layers:      {"pour": 5*2 + 15*0.1, "level": 0.4},
		script.Drop:        {"pour": 5*2 + 14*0.1, "level": 0.4},
		script.Pot:         {"into the pot": 4*3 + 8*0.1, "turn": 1.5 * 0.7, "pour out": 5, "level": 0.4},
		script.PotSpots:    {"into the pot": 4*3 + 20*0.1, "turn": 1.5 * 0.7, "pour out": 5, "level": 0.4},
		script.HangerLoops: {"pour": 5*2 + 15*0.1, "draw the wire": 1.1, "level": 0.4},
		script.Combed:      {"pour": 5*2 + 15*0.1, "comb": 3 * 1.3, "level": 0.4},
		script.Spooned:     {"spoon": 5*7 + 15*0.1, "level": 3 * 0.4},
	} {
		p, shelf := paced(t, technique)
		got := map[pour.TaskKind]float64{}
		for _, task := range pour.Weigh(p, shelf).Run {
			if task.Act != pour.NoAct {
				got[task.Kind] += task.LengthMin
			}
		}
		for kind, min := range want {
			equal(t, string(technique)+", "+string(kind), got[kind], min, 1e-9)
		}
		if len(got) != len(want) {
			t.Errorf("%s takes %v", technique, got)
		}
	}
	p, shelf := paced(t, script.Layers)
	p.Swirl.Passes = 1 // no rounds: no change of jug
	sum := 0.0
	for _, task := range pour.Weigh(p, shelf).Run {
		if task.Kind == pour.TaskPour {
			sum += task.LengthMin
		}
	}
	equal(t, "plain layers", sum, 10, 1e-9)
}

func TestOneBagTakesAsLongAsItsJugsAndATrialItsWatch(t *testing.T) {
	p, shelf := paced(t, script.Drop)
	icing := p.Base.Clone()
	icing.Size, icing.PerBarG, icing.Scents, icing.Extras = pour.SizeBar, 25, nil, nil
	p.Icing = &icing
	for _, bags := range []string{pour.BagEach, pour.BagOne} {
		p.Icing.Bags = bags
		piped, n := 0.0, 0
		for _, task := range pour.Weigh(p, shelf).Run {
			if task.Kind == pour.TaskPipe {
				piped, n = piped+task.LengthMin, n+1
			}
		}
		equal(t, "piping, a bag "+bags, piped, 5*1.7, 1e-9)
		if want := map[string]int{pour.BagEach: 5, pour.BagOne: 1}[bags]; n != want {
			t.Errorf("a bag %s is piped in %d acts", bags, n)
		}
	}
	p.Icing, p.Trial = nil, true
	for _, task := range pour.Weigh(p, shelf).Run {
		if task.Kind == pour.TaskWatch && task.LengthMin != 40 {
			t.Errorf("a trial is watched for %v min", task.LengthMin)
		}
	}
}

// The fields offered for editing are those of the acts there are, in their order.
func TestTheHandsOfAPlanAreThoseItsActsUse(t *testing.T) {
	for technique, want := range map[script.Technique]string{
		script.Drop:    "run.pour_min run.change_min run.level_min",
		script.Pot:     "run.into_pot_min run.change_min run.turn_min run.pour_out_min run.level_min",
		script.Hanger:  "run.pour_min run.change_min run.wire_min run.level_min",
		script.Combed:  "run.pour_min run.change_min run.comb_min run.level_min",
		script.Spooned: "run.spoon_min run.change_min run.level_min",
	} {
		p, shelf := paced(t, technique)
		s := pour.Weigh(p, shelf)
		if got := strings.Join(s.HandsUsed(), " "); got != want {
			t.Errorf("%s uses %s", technique, got)
		}
	}
}

// Seven rounds on a coarse scale: a jug's acts sum to what the jug holds, rounded once and not seven times.
func TestGramsOfActsSumToTheirJug(t *testing.T) {
	for _, technique := range script.Techniques() {
		for _, step := range []float64{0.1, 1, 5} {
			p, shelf := paced(t, technique)
			p.Swirl.Passes, p.Show.ScaleStepG = 7, step
			s := pour.Weigh(p, shelf)
			grams, out, all := map[string]float64{}, 0.0, 0.0
			for _, task := range s.Run {
				if task.Jug != "" && task.Act != pour.NoAct {
					grams[task.Jug] += task.G.V
				}
				if task.Kind == pour.TaskKind(script.PourOut) {
					out += task.G.V
				}
			}
			for i, j := range s.Base.Jugs {
				all += j.TotalG
				if i > 0 || !technique.InPot() {
					equal(t, string(technique)+", "+j.Name, grams[j.Name], math.Round(j.TotalG/step)*step, 1e-9)
				}
			}
			if technique.InPot() {
				equal(t, string(technique)+", poured out", out, math.Round(all/step)*step, 1e-9)
			}
		}
	}
}

// A jug is in the hands from its first act to the last that moves it, with the pot or under a tool.
func TestEveryJugIsJudgedFromItsFirstActToItsLast(t *testing.T) {
	for _, technique := range script.Techniques() {
		p, shelf := paced(t, technique)
		p.Base.SplitAtMin = 1
		s := pour.Work(p, shelf, pour.Hand{})
		b, _ := s.ClockBatter(pour.Base, shelf)
		c, err := clock.New(b, clock.Hand{})
		if err != nil {
			t.Fatal(err)
		}
		span, _ := s.Span(pour.Base, shelf)
		most, quickest := 0.0, ""
		for i, j := range s.Base.Jugs {
			first, last := firstAndLast(s, j.Name)
			if technique.InPot() && i == 0 {
				first = timeOf(s, script.Turn)
			}
			equal(t, string(technique)+", first act of "+j.Name, j.Clock.PourAtMin.V, first, 0)
			equal(t, string(technique)+", last act of "+j.Name, j.Clock.LastAtMin.V, last, 0)
			jug, _ := s.ClockJug(pour.Base, j.Name, shelf)
			f := c.Forecast(jug)
			late, _ := f.ChancePast(span.To+1, last)
			ready, _ := f.ChancePast(span.From, first)
			equal(t, string(technique)+", not yet ready "+j.Name, j.Clock.EarlyChancePercent.V, 100*(1-ready), 1e-9)
			trace, _ := f.TraceIndex((first + last) / 2)
			equal(t, string(technique)+", trace half-way of "+j.Name, j.Clock.TraceAtPour.V, trace, 1e-9)
			if 100*late > most {
				most, quickest = 100*late, j.Name
			}
			if span.To < chem.Stiff && (i > 0 || !technique.InPot()) {
				equal(t, string(technique)+", late "+j.Name, j.Clock.LateChancePercent.V, 100*late, 1e-9)
			}
		}
		if pot := s.Base.Jugs[0]; technique.InPot() && span.To < chem.Stiff && (pot.Clock.LateChancePercent.V != most || pot.Clock.LateJug != quickest) {
			t.Errorf("%s: the pot is late by %v as %s, its quickest is %s with %v", technique, pot.Clock.LateChancePercent.V, pot.Clock.LateJug, quickest, most)
		}
	}
}

// firstAndLast are the starts of the first and the last task that moves a jug: its own, and those of the pot and of a tool.
func firstAndLast(s pour.Sheet, jug string) (first, last float64) {
	moving := []pour.TaskKind{"turn", "pour out", "draw the wire", "comb"}
	first = math.Inf(1)
	for _, task := range s.Run {
		if task.Act != pour.NoAct && (task.Jug == jug || slices.Contains(moving, task.Kind)) {
			first, last = min(first, task.StartMin), max(last, task.StartMin)
		}
	}
	return first, last
}

func timeOf(s pour.Sheet, kind script.Kind) float64 {
	for _, task := range s.Run {
		if task.Kind == pour.TaskKind(kind) {
			return task.StartMin
		}
	}
	return math.NaN()
}

// The minutes that are paid for hold piping, embeds and toppings, each by its own minutes, and what the plan states as other work comes on top. Cooling lye is nobody's work.
func TestTheHandsPaidForPipeSetAndStrew(t *testing.T) {
	p, shelf := paced(t, script.Layers)
	minutes := func() float64 { s := pour.Weigh(p, shelf); return s.HandsMin() }
	plain := minutes()
	p.Top.Toppings = []pour.Topping{{Name: "seeds", GPerBar: 0.5, HandsMin: 3, Parts: []pour.ToppingPart{{Material: "poppy-seeds", Percent: 100}}}}
	equal(t, "a topping", minutes()-plain, 3, 1e-9)
	p.Top.Toppings = nil
	p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 12, HeightMM: 10, SetMin: 0.5}}
	equal(t, "embeds, one in each bar", minutes()-plain, 0.5*float64(len(pour.Weigh(p, shelf).Cut.Bars)), 1e-9)
	p.Top.Embeds, p.Cost.HandsMin = nil, 25
	equal(t, "other work", minutes()-plain, 25, 1e-9)
	p.Cost.HandsMin, p.Run.CoolLyeMin = 0, p.Run.CoolLyeMin+40
	equal(t, "cooling", minutes()-plain, 0, 1e-9)
	q, iced := shelved(t)
	if q.Icing == nil {
		t.Fatal("the example has no icing")
	}
	slow := q.Clone()
	slow.Run.PipeMin += 2
	a, b := pour.Weigh(q, iced), pour.Weigh(slow, iced)
	equal(t, "piping two minutes longer a jug", b.HandsMin()-a.HandsMin(), 2*float64(len(q.Icing.Jugs)), 1e-9)
}
