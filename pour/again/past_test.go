package again

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// meadow is the demo plan and the built-in shelf.
func meadow(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	must(t, err)
	text, err := presets.Plan("alpine-meadow")
	must(t, err)
	plan, err := planfile.Read("alpine-meadow", bytes.NewReader(text), shelf)
	must(t, err)
	return plan, shelf
}

// opened is when the pours of the tests begin; their lye meets oil three hours later.
func opened() time.Time { return time.Date(2026, 12, 5, 9, 0, 0, 0, time.UTC) }

// diary is a pour as it is marked.
type diary struct {
	pour logbook.Pour
	run  time.Duration
}

func newDiary(id string, plan pour.Plan) *diary {
	return &diary{pour: logbook.Pour{ID: id, Name: plan.Name, Opened: opened(), Plan: plan}}
}

// mark marks something so long after the run was opened.
func (d *diary) mark(at time.Duration, e logbook.Event) {
	d.run = max(d.run, at)
	e.Run, e.Wall = at, opened().Add(at)
	e.ID = strings.Repeat("x", len(d.pour.Events)+1)
	d.pour.Events = append(d.pour.Events, e)
}

// lives logs something of the batch's life on a day, counted from the pour's, with its hour.
func (d *diary) lives(after time.Duration, e logbook.Event) {
	e.Life.Day = opened().Add(after).Format("2006-01-02 15:04")
	d.mark(d.run, e)
}

// lyeIn is when the lye of the pours of the tests meets its oils.
const lyeIn = 3 * time.Hour

// pours does every step as planned, its length stretched by what the caller says of it; the lye and its cooling too.
func (d *diary) pours(t testing.TB, shelf pour.Shelf, took func(key string, planned float64) float64) {
	t.Helper()
	p := look(d.pour, pour.Work(d.pour.Plan, shelf, pour.Hand{}), shelf, pour.Hand{})
	at := lyeIn
	for _, s := range p.state.Steps {
		switch {
		case s.PlannedMin < 0:
			d.mark(lyeIn+time.Duration((s.PlannedMin+s.LengthMin)*float64(time.Minute)), logbook.Event{Kind: logbook.Done, Step: s.Key})
			continue
		case s.Key == logbook.LyeIn(pour.Base):
		default:
			start := lyeIn + time.Duration(s.PlannedMin*float64(time.Minute))
			at = max(at, start) + time.Duration(took(s.Key, s.LengthMin)*float64(time.Minute))
		}
		d.mark(at, logbook.Event{Kind: logbook.Done, Step: s.Key})
	}
	d.mark(at, logbook.Event{Kind: logbook.Ended})
}

func asPlanned(_ string, planned float64) float64 { return planned }

func (d *diary) past(t testing.TB, shelf pour.Shelf) Past {
	t.Helper()
	p, err := Of(d.pour, shelf, pour.Hand{})
	must(t, err)
	return p
}

// fact finds a fact by its path; what it says must hold every word.
func fact(t *testing.T, facts []Fact, path string, words ...string) {
	t.Helper()
	var told []string
	for _, f := range facts {
		if f.Path == path {
			told = append(told, f.Told())
		}
	}
	all := strings.Join(told, "\n")
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("of %s is told %q, which lacks %q", path, all, w)
		}
	}
}

func TestWhatHappenedStandsBesideItsFigure(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Base.OilsC, plan.Base.LyeC = 34, 34
	d := newDiary("2026-12-05-alpine-meadow", plan)
	d.mark(55*time.Minute, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: 38})
	d.mark(55*time.Minute, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadLye, Value: 34.2})
	sheet := pour.Work(plan, shelf, pour.Hand{})
	dose := sheet.Base.Jugs[1].Colourants[0]
	d.mark(56*time.Minute, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, Jug: sheet.Base.Jugs[1].Name, What: dose.Name, Value: dose.PigmentG + 0.4})
	d.pours(t, shelf, func(key string, planned float64) float64 {
		if strings.Contains(key, "colour") {
			return planned + 1
		}
		return planned
	})
	d.mark(lyeIn+5*time.Minute, logbook.Event{Kind: logbook.Blended, Batch: pour.Base, Value: 42})
	d.mark(lyeIn+9*time.Minute, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Seizes})
	d.mark(lyeIn+3*time.Minute, logbook.Event{Kind: logbook.Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Light})
	d.mark(30*time.Hour, logbook.Event{Kind: logbook.Result, Text: "rustic"})
	d.lives(lyeIn+26*time.Hour, logbook.Event{Kind: logbook.Unmoulded, What: logbook.FirmSoft})
	d.lives(lyeIn+8*7*24*time.Hour, logbook.Event{Kind: logbook.Sniffed, Life: logbook.Life{Scent: plan.Base.Scents[0].Scent}, Value: 1})
	d.lives(lyeIn+48*time.Hour, logbook.Event{Kind: logbook.Looked, What: logbook.LookAsh, Value: 3})
	d.lives(lyeIn+48*time.Hour, logbook.Event{Kind: logbook.Looked, What: logbook.LookColour, Batch: pour.Base, Jug: "fern", Life: logbook.Life{Colour: "#446633"}})
	p := d.past(t, shelf)
	facts, same := p.Happened(plan.Show)
	fern := slices.IndexFunc(plan.Base.Jugs, func(j pour.Jug) bool { return j.Name == "fern" })
	poppy := slices.IndexFunc(plan.Base.Jugs, func(j pour.Jug) bool { return j.Name == "poppy" })
	name := func(i int) string { return "base.jug[" + string(rune('0'+i)) + "].name" }
	fact(t, facts, "base.oils_c", "planned 34 °C, was 38 °C")
	fact(t, facts, "base.jugs[1].colourants[0].pigment_g", "too much", dose.Name, "0.4")
	fact(t, facts, name(poppy), "seized 9 min after lye-in")
	fact(t, facts, name(fern), "seen as #446633")
	fact(t, facts, "base.blend", "42 s at 4.5 min")
	fact(t, facts, "", "came out: rustic")
	fact(t, facts, "bed.cut_after_h", "soft 26 h after lye-in")
	fact(t, facts, "base.scent[0].scent", "faint by week 8")
	fact(t, facts, "bed.keep", "much ash")
	if slices.ContainsFunc(facts, func(f Fact) bool { return f.Path == "base.lye_c" }) || same == 0 {
		t.Errorf("lye that was 0.2 °C warmer is told, or nothing (%d) was as planned", same)
	}
	if !slices.ContainsFunc(facts, func(f Fact) bool { return strings.HasSuffix(f.Path, "length_min") && strings.Contains(f.Said, "took") }) {
		t.Error("a minute more for every colour is not told")
	}
}

// A jug that is poured two minutes late is said to be two minutes late, and the ones behind it with it.
func TestALateStepIsTold(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	d := newDiary("late", plan)
	first := true
	d.pours(t, shelf, func(key string, planned float64) float64 {
		if strings.Contains(key, "split") && first {
			first = false
			return planned + 2
		}
		return planned
	})
	p := d.past(t, shelf)
	facts, _ := p.Happened(plan.Show)
	late := 0
	for _, f := range facts {
		if strings.HasSuffix(f.Path, "start_min") && strings.HasPrefix(f.Said, "2 min late") {
			late++
		}
	}
	if late < 3 {
		t.Errorf("%d steps are 2 min late: %v", late, facts)
	}
}

func TestAPourThatWentAsPlannedTellsNothing(t *testing.T) {
	plan, shelf := meadow(t)
	d := newDiary("plain", plan)
	d.pours(t, shelf, asPlanned)
	p := d.past(t, shelf)
	if facts, same := p.Happened(plan.Show); len(facts) > 0 || same < 10 {
		t.Errorf("%d figures as planned, and told: %v", same, facts)
	}
	if list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{}); len(list) > 0 {
		t.Errorf("suggested: %+v", list)
	}
}

func TestTheNewPlanIsThePouredOneButForItsMomentAndName(t *testing.T) {
	plan, shelf := meadow(t)
	plan.PourAt, plan.Template = opened(), true
	d := newDiary("2026-12-05-alpine-meadow", plan)
	d.pours(t, shelf, asPlanned)
	next := d.past(t, shelf).Plan()
	if !next.PourAt.IsZero() || next.Template || next.AgainOf != "2026-12-05-alpine-meadow" || next.Name != plan.Name+", again" {
		t.Errorf("the new plan is %q of %q, at %v, template %v", next.Name, next.AgainOf, next.PourAt, next.Template)
	}
	if faults := next.Check(shelf); len(faults) > 0 {
		t.Error(faults)
	}
	var text strings.Builder
	must(t, planfile.Write(&text, next))
	read, err := planfile.Read("again", strings.NewReader(text.String()), shelf)
	must(t, err)
	if read.AgainOf != next.AgainOf {
		t.Errorf("read back it pours %q again", read.AgainOf)
	}
	next.Name, next.AgainOf, next.PourAt, next.Template = plan.Name, "", plan.PourAt, true
	if changes := pour.Differences(plan, next); len(changes) > 0 {
		t.Errorf("besides, it differs by %v", changes)
	}
}

func TestWhatCannotBePouredAgainSaysWhatHelps(t *testing.T) {
	plan, shelf := meadow(t)
	trial := newDiary("t", plan)
	trial.pour.TrialScent = "alp-rose"
	if _, err := Of(trial.pour, shelf, pour.Hand{}); err == nil || !strings.Contains(err.Error(), "trial of alp-rose") {
		t.Error(err)
	}
	gone := newDiary("g", pour.Plan{})
	gone.pour.PlanErr = strictError("scent \"heliotrope\" is not on the shelf")
	if _, err := Of(gone.pour, shelf, pour.Hand{}); err == nil || !strings.Contains(err.Error(), "own shelf file") || !strings.Contains(err.Error(), "heliotrope") {
		t.Error(err)
	}
	if n := len(Seen([]logbook.Pour{trial.pour, gone.pour}, shelf)); n != 0 {
		t.Errorf("%d of them are looked back on", n)
	}
}

type strictError string

func (e strictError) Error() string { return string(e) }

// What went wrong before the split went wrong in all of the batch: it is no jug's fact, blames no jug and no scent of it, and bears out what was feared of
// any jug.
func TestTroubleBeforeTheSplitBlamesNoJug(t *testing.T) {
	plan, shelf := meadow(t)
	for at, alone := range map[time.Duration]bool{time.Minute: false, 9 * time.Minute: true} {
		d := newDiary("x", plan)
		d.pours(t, shelf, asPlanned)
		d.mark(lyeIn+at, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Rices})
		p := d.past(t, shelf)
		facts, _ := p.Happened(plan.Show)
		whole := slices.ContainsFunc(facts, func(f Fact) bool {
			return f.What == "all of the base" && strings.HasPrefix(f.Said, "riced") && f.Path == ""
		})
		if whole == alone || (len(p.troubles()) == 1) != alone || (len(p.troubledScents()) > 0) != alone {
			t.Errorf("%s after lye-in: of the whole %v, jugs %v, scents %v", at, whole, p.troubles(), p.troubledScents())
		}
		a := &asker{past: p}
		if said := a.borneOut(pour.Warning{Where: "base jug pot"}); (said == "all of the base riced") == alone {
			t.Errorf("%s after lye-in, the pot's warning is borne out by %q", at, said)
		}
	}
}

// What happened to a jug stays with it when the jugs are put in another order, and goes when it does.
func TestFactsFollowWhatTheyAreOf(t *testing.T) {
	plan, shelf := meadow(t)
	d := newDiary("x", plan)
	d.pours(t, shelf, asPlanned)
	last := len(plan.Base.Jugs) - 1
	jug := plan.Base.Jugs[last].Name
	d.mark(lyeIn+9*time.Minute, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: jug, What: logbook.Rices})
	p := d.past(t, shelf)
	facts, _ := p.Happened(plan.Show)
	moved, err := pour.Apply(plan, shelf, pour.MoveJug(pour.Base, last, 1))
	must(t, err)
	sheet := pour.Weigh(moved, shelf)
	if at := On(facts, &p.Sheet, &sheet); len(at["base.jug[1].name"]) != 1 || len(at["base.jugs[1].late_chance_percent"]) != 1 {
		t.Errorf("told at %v", at)
	}
	without, err := pour.Apply(plan, shelf, pour.RemoveJug(pour.Base, last))
	must(t, err)
	sheet = pour.Weigh(without, shelf)
	if at := On(facts, &p.Sheet, &sheet); len(at) > 0 {
		t.Errorf("of a jug that is gone is told %v", at)
	}
}

// Every path of every figure and field of a sheet leads to itself in the same sheet, and to itself where only a jug's place has changed.
func TestEveryPathLeadsToItself(t *testing.T) {
	plan, shelf := meadow(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	paths := sheet.Explained()
	if len(paths) < 300 {
		t.Fatalf("only %d figures", len(paths))
	}
	for _, path := range paths {
		if at, ok := moved(path, &sheet, &sheet); !ok || at != path {
			t.Errorf("%s leads to %s, %v", path, at, ok)
		}
	}
	turned, err := pour.Apply(plan, shelf, pour.MoveJug(pour.Base, 2, 1))
	must(t, err)
	now := pour.Work(turned, shelf, pour.Hand{})
	back := map[string]bool{}
	for _, path := range paths {
		at, ok := moved(path, &sheet, &now)
		if !ok || strings.HasPrefix(path, "neighbours[") || strings.HasPrefix(path, "orders[") {
			continue
		}
		if home, ok := moved(at, &now, &sheet); !ok || home != path {
			t.Errorf("%s leads to %s and that back to %s", path, at, home)
		}
		back[path] = true
	}
	if !back["base.jugs[1].share_percent"] || !back["base.jugs[2].colourants[0].pigment_g"] {
		t.Error("figures of jugs have lost their way")
	}
}

// What was seen two days after the cut was not seen at the cut, and what is told stands by its days, in whatever order it was typed.
func TestWhatWasSeenAfterTheCutIsToldByItsDays(t *testing.T) {
	plan, shelf := meadow(t)
	d := newDiary("x", plan)
	d.pours(t, shelf, asPlanned)
	for _, e := range []struct {
		days int
		what string
	}{{20, "third"}, {3, "second"}, {1, "first"}} {
		d.lives(lyeIn+time.Duration(e.days*24)*time.Hour, logbook.Event{Kind: logbook.Looked, What: e.what, Value: 2})
	}
	d.lives(lyeIn+24*time.Hour, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 10}})
	p := d.past(t, shelf)
	facts, _ := p.Happened(plan.Show)
	var told []string
	for _, f := range facts {
		if f.What == "looked at the bars" {
			told = append(told, f.Said)
		}
	}
	if want := []string{"some first at the cut", "some second 2 days after the cut", "some third by week 3"}; !slices.Equal(told, want) {
		t.Errorf("told %q, not %q", told, want)
	}
}
