package pour_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/chem"
	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// shelved gives the built-in shelf and the demo plan.
func shelved(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	return example(t, presets.Plans()[0])
}

// example gives the built-in shelf and one of the example plans.
func example(t testing.TB, name string) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(name)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read(name, bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	return plan, shelf
}

func near(a, b, tolerance float64) bool {
	return math.Abs(a-b) <= tolerance*max(1, math.Abs(a), math.Abs(b))
}

// drawPlan bends the demo plan by random edits, refused ones included: whatever comes out is a plan a maker can reach.
func drawPlan(t *rapid.T, plan pour.Plan, shelf pour.Shelf) pour.Plan {
	edits := rapid.IntRange(0, 12).Draw(t, "edits")
	for i := 0; i < edits; i++ {
		if next, err := pour.Apply(plan, shelf, drawEdit(t, plan, shelf)); err == nil {
			plan = next
		}
	}
	return plan
}

func drawEdit(t *rapid.T, p pour.Plan, shelf pour.Shelf) pour.Edit {
	n := pour.Base
	if p.Icing != nil && rapid.Bool().Draw(t, "icing") {
		n = pour.Icing
	}
	b := p.Batch(n)
	jug := rapid.IntRange(0, len(b.Jugs)-1).Draw(t, "jug")
	percent := rapid.Float64Range(0, 100).Draw(t, "percent")
	oil := rapid.IntRange(0, len(b.Oils)-1).Draw(t, "oil")
	switch rapid.IntRange(0, 18).Draw(t, "kind") {
	case 14:
		return pour.HoldOil(n, oil, rapid.Bool().Draw(t, "held"))
	case 15:
		return pour.AddOil(n, rapid.SampledFrom(shelf.Oils).Draw(t, "new oil").ID)
	case 16:
		return pour.RemoveOil(n, oil)
	case 17:
		return pour.SpreadOils(n)
	case 18:
		return pour.SetOilGrams(n, oil, percent*10, shelf)

	case 0, 1:
		return pour.SetShare(n, jug, percent)
	case 2:
		return pour.HoldShare(n, jug, rapid.Bool().Draw(t, "held"))
	case 3:
		return pour.AddJug(n, jug, "new")
	case 4:
		return pour.RemoveJug(n, jug)
	case 5:
		return pour.MoveJug(n, jug, rapid.IntRange(0, len(b.Jugs)-1).Draw(t, "to"))
	case 6:
		c := rapid.SampledFrom(shelf.Colourants).Draw(t, "colourant")
		return pour.SetColourant(n, jug, len(b.Jugs[jug].Colourants), c)
	case 7:
		return pour.SetOilPercent(n, oil, percent)
	case 8:
		return pour.AddExtra(n, rapid.SampledFrom(shelf.Extras).Draw(t, "extra").ID, percent/20)
	case 9:
		return pour.AddScent(n, rapid.SampledFrom(shelf.Scents).Draw(t, "scent").ID, percent/20, []string{b.Jugs[jug].Name})
	case 10:
		return pour.SetNumber(string(n)+".lye_concentration_percent", 20+percent/4)
	case 11:
		return pour.SetNumber(string(n)+".superfat_percent", percent/5)
	case 12:
		return pour.SetWord(string(n)+".carrier", rapid.SampledFrom([]string{pour.CarrierExtra, pour.CarrierBatch}).Draw(t, "carrier"))
	default:
		return pour.SetNumber(string(n)+".naoh_purity_percent", 80+percent/5)
	}
}

func TestUnitsChangeNothing(t *testing.T) {
	plan, shelf := shelved(t)
	metric := pour.Weigh(plan, shelf)
	other := plan.Clone()
	other.Show.Mass, other.Show.Temperature, other.Show.Length = "oz", "F", "in"
	sheet := pour.Weigh(other, shelf)
	if diff := cmp.Diff(metric.Base.Oils, sheet.Base.Oils); diff != "" {
		t.Error(diff)
	}
	if metric.Base.Lye.NaOH.WeighedG != sheet.Base.Lye.NaOH.WeighedG || metric.Bars != sheet.Bars {
		t.Error("the figures moved with the units")
	}
	show := other.Show
	for _, unit := range []pour.Unit{pour.UnitGram, pour.UnitMM, pour.UnitCelsius, pour.UnitPercent} {
		for _, v := range []float64{0, 1, 36.5, 906.2} {
			if there, _ := show.ToUnit(v, unit); !near(show.FromUnit(there, unit), v, 1e-12) {
				t.Errorf("%v %s does not come back", v, unit)
			}
		}
	}
}

func TestEditsNeverChangeTheirArgument(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		before := drawPlan(t, demo, shelf)
		kept := before.Clone()
		_, _ = pour.Apply(before, shelf, drawEdit(t, before, shelf))
		if diff := cmp.Diff(kept, before); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestHeldSharesStay(t *testing.T) {
	plan, shelf := shelved(t)
	plan, err := pour.Apply(plan, shelf, pour.HoldShare(pour.Base, 3, true))
	if err != nil {
		t.Fatal(err)
	}
	held := plan.Base.Jugs[3].SharePercent
	plan, err = pour.Apply(plan, shelf, pour.SetShare(pour.Base, 1, 30))
	if err != nil {
		t.Fatal(err)
	}
	if plan.Base.Jugs[3].SharePercent != held || plan.Base.Jugs[1].SharePercent != 30 {
		t.Errorf("held %v became %v; set 30 became %v", held, plan.Base.Jugs[3].SharePercent, plan.Base.Jugs[1].SharePercent)
	}
	if _, err = pour.Apply(plan, shelf, pour.SetShare(pour.Base, 1, 95)); err == nil || !strings.Contains(err.Error(), "let one go first") {
		t.Errorf("95 %% beside a held %v %%: %v, want a refusal that says what to do", held, err)
	}
}

// The refusal of a plan that can't be is a sheet that holds nothing and stops everything.
func TestAFaultyPlanStopsTheLye(t *testing.T) {
	plan, shelf := shelved(t)
	for _, bad := range []float64{math.NaN(), math.Inf(1), -1, 200} {
		p := plan.Clone()
		p.Base.Jugs[0].SharePercent = bad
		sheet := pour.Work(p, shelf, pour.Hand{})
		if !sheet.LyeStopped() || len(sheet.Base.Oils) != 0 {
			t.Errorf("share %v: lye stopped %v, %d oils worked out", bad, sheet.LyeStopped(), len(sheet.Base.Oils))
		}
	}
}

func TestTheRunHasOnePairOfHands(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t, demo, shelf)
		if plan.Icing != nil {
			plan.Icing.StartAtMin = rapid.Float64Range(-60, 60).Draw(t, "start")
		}
		sheet := pour.Weigh(plan, shelf)
		keys := rapid.Permutation(taskKeys(sheet)).Draw(t, "order")
		plan.Run.Order = keys
		sheet = pour.Weigh(plan, shelf)
		free := math.Inf(-1)
		for _, task := range sheet.Run {
			if task.Kind == pour.TaskCoolLye {
				continue
			}
			if task.StartMin < free-1e-9 {
				t.Fatalf("%s starts at %v while the hands are busy until %v", task.Key, task.StartMin, free)
			}
			free = task.StartMin + task.LengthMin
		}
		checkOrder(t, sheet)
	})
}

func taskKeys(s pour.Sheet) []string {
	out := make([]string, len(s.Run))
	for i, task := range s.Run {
		out[i] = task.Key
	}
	return out
}

func checkOrder(t *rapid.T, s pour.Sheet) {
	at := map[string]int{}
	for i, task := range s.Run {
		at[task.Key] = i
		if task.Kind == pour.TaskMix && task.Batch == "base" && task.StartMin != 0 {
			t.Fatalf("the base's lye-in is at %v", task.StartMin)
		}
	}
	for _, task := range s.Run {
		poured, isPoured := at[string(task.Batch)+" pour "+task.Jug]
		if piped, ok := at[string(task.Batch)+" pipe "+task.Jug]; ok {
			poured, isPoured = piped, true
		}
		if task.Act == pour.NoAct && task.Jug != "" && isPoured && at[task.Key] > poured {
			t.Fatalf("%s comes after its jug is poured", task.Key)
		}
		if task.Jug != "" && at[task.Key] < at[string(task.Batch)+" split"] {
			t.Fatalf("%s comes before the split", task.Key)
		}
	}
	act := map[string]int{}
	for _, task := range s.Run {
		if task.Act == pour.NoAct {
			continue
		}
		if task.Act != act[string(task.Batch)] {
			t.Fatalf("%s is act %d, but %d acts are done", task.Key, task.Act, act[string(task.Batch)])
		}
		act[string(task.Batch)]++
	}
	if s.Run[len(s.Run)-1].Kind != pour.TaskBed {
		t.Fatalf("the last task is %s", s.Run[len(s.Run)-1].Key)
	}
}

func TestEveryWarningIsInTheTable(t *testing.T) {
	demo, shelf := shelved(t)
	known := map[string]bool{}
	for _, c := range pour.Codes() {
		if known[c.Code] || c.Meaning == "" {
			t.Errorf("code %q stands twice or means nothing", c.Code)
		}
		known[c.Code] = true
	}
	rapid.Check(t, func(t *rapid.T) {
		sheet := pour.Work(drawPlan(t, demo, shelf), shelf, pour.Hand{})
		for _, w := range sheet.Warnings {
			if !known[w.Code] || w.Text == "" || w.Do == "" || w.Where == "" {
				t.Fatalf("warning without code, place, text or advice: %+v", w)
			}
		}
	})
}

func TestWorkIsWeighTimeAndMingle(t *testing.T) {
	plan, shelf := shelved(t)
	weighed := pour.Weigh(plan, shelf)
	if diff := cmp.Diff(pour.Work(plan, shelf, pour.Hand{}), weighed.Time(shelf, pour.Hand{}).Mingle(shelf, pour.Hand{}, colour.NewJudge())); diff != "" {
		t.Error(diff)
	}
	if weighed.Timed || weighed.Base.Jugs[0].Clock.Stages[chem.Light].Mid.Known {
		t.Error("Time changed the sheet it was called on")
	}
}

func BenchmarkWeighDemo(b *testing.B) {
	plan, shelf := shelved(b)
	b.ReportAllocs()
	for b.Loop() {
		_ = pour.Weigh(plan, shelf)
	}
}

func BenchmarkWorkDemo(b *testing.B) {
	plan, shelf := shelved(b)
	b.ReportAllocs()
	for b.Loop() {
		_ = pour.Work(plan, shelf, pour.Hand{})
	}
}

// BenchmarkTimeNineJugsTwentyOils is the clock with its chances on a bench as full as they get.
func BenchmarkTimeNineJugsTwentyOils(b *testing.B) {
	plan, shelf := shelved(b)
	plan.Icing = nil
	plan.Base.Oils = nil
	for _, o := range shelf.Oils {
		if o.Fat.Kind == chem.Triglyceride && len(plan.Base.Oils) < 20 {
			plan.Base.Oils = append(plan.Base.Oils, pour.OilPart{Oil: o.ID, Percent: 5})
		}
	}
	for i := len(plan.Base.Jugs); i < 9; i++ {
		next, err := pour.Apply(plan, shelf, pour.AddJug(pour.Base, i-1, fmt.Sprintf("jug %d", i)))
		if err != nil {
			b.Fatal(err)
		}
		plan = next
	}
	sheet := pour.Weigh(plan, shelf)
	if sheet.Worst() == pour.Stop && len(sheet.Base.Jugs) != 9 {
		b.Fatalf("the bench is not as full as it should be: %v", sheet.Warnings)
	}
	b.ReportAllocs()
	for b.Loop() {
		_ = sheet.Time(shelf, pour.Hand{})
	}
}
