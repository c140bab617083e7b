package again

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// suggested finds the suggestion for a path whose words hold some others.
func suggested(list []Suggestion, path string, words ...string) (Suggestion, bool) {
	i := slices.IndexFunc(list, func(s Suggestion) bool {
		return s.Path == path && !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(s.Says+" "+s.Why, w) })
	})
	if i < 0 {
		return Suggestion{}, false
	}
	return list[i], true
}

// brought applies the suggestion for a path and returns the number that stands there then.
func brought(t *testing.T, list []Suggestion, plan pour.Plan, shelf pour.Shelf, path string, words ...string) float64 {
	t.Helper()
	s, ok := suggested(list, path, words...)
	if !ok {
		t.Fatalf("nothing is suggested for %s: %s", path, told(list))
	}
	if s.Why == "" || s.Brings == "" {
		t.Errorf("%s: why %q, brings %q", s.Says, s.Why, s.Brings)
	}
	next, err := pour.Apply(plan, shelf, s.Edit)
	must(t, err)
	v, _, _ := pour.Number(next, path)
	return v
}

func told(list []Suggestion) string {
	var b strings.Builder
	for _, s := range list {
		fmt.Fprintf(&b, "\n%s: %s | %s | %s", s.Path, s.Says, s.Why, s.Brings)
	}
	return b.String()
}

// warm is a pour whose oils and lye were 4 °C warmer than planned, with lye in after an hour of cooling.
func warm(t *testing.T, id string, plan pour.Plan, shelf pour.Shelf) Past {
	t.Helper()
	plan.Base.OilsC, plan.Base.LyeC = 34, 34
	d := newDiary(id, plan)
	d.mark(lyeIn-time.Minute, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: 38})
	d.mark(lyeIn-time.Minute, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadLye, Value: 38})
	d.pours(t, shelf, asPlanned)
	return d.past(t, shelf)
}

func TestTemperaturesAreSuggestedAsTheyWereOrALongerWaitForThem(t *testing.T) {
	plan, shelf := meadow(t)
	p := warm(t, "warm", plan, shelf)
	next := p.Plan()
	list := p.Suggest(next, []Past{p, warm(t, "warm too", plan, shelf)}, shelf, pour.Hand{})
	if v := brought(t, list, next, shelf, "base.oils_c", "planned 34 °C, was 38 °C", "1 of 1 other pour"); v != 38 {
		t.Errorf("oils at %v", v)
	}
	if v := brought(t, list, next, shelf, "base.lye_c", "as they really were"); v != 38 {
		t.Errorf("lye at %v", v)
	}
	waited := 144.0 // the demo's lye is made 2 h 24 min before
	if v := brought(t, list, next, shelf, "run.cool_lye_min", "let it cool"); v <= waited || math.Mod(v, 5) != 0 {
		t.Errorf("it cools for %v min", v)
	}
	if next.Base.OilsC != 34 {
		t.Error("the typed plan has changed")
	}
	typed := next
	typed.Base.OilsC = 38
	if _, ok := suggested(p.Suggest(typed, nil, shelf, pour.Hand{}), "base.oils_c"); ok {
		t.Error("what is done is suggested again")
	}
}

// Stirring takes a minute for a jug in this pour, planned half of one; in two others it took two. The middle is 2: the number of the field is what the
// steps took, since each is one stirring.
func TestMinutesOfTheHandsAreThoseOfAllPours(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil // one pair of hands in one batch
	stirred := func(id string, each float64) Past {
		d := newDiary(id, plan)
		d.pours(t, shelf, func(key string, planned float64) float64 {
			if strings.Contains(key, "colour") {
				return each
			}
			return planned
		})
		return d.past(t, shelf)
	}
	own := stirred("own", 1)
	if plan.Run.StirMin != 0.5 {
		t.Fatalf("the demo stirs for %v min", plan.Run.StirMin)
	}
	if v, steps := own.handMin("run.stir_min", shelf); steps == 0 || math.Abs(v-1) > 1e-6 {
		t.Errorf("stirring took %v in %d steps", v, steps)
	}
	if v, steps := own.handMin("run.pour_min", shelf); steps > 0 && math.Abs(v-plan.Run.PourMin) > 0.01 {
		t.Errorf("pouring took %v, planned %v", v, plan.Run.PourMin)
	}
	list := own.Suggest(own.Plan(), nil, shelf, pour.Hand{})
	if v := brought(t, list, own.Plan(), shelf, "run.stir_min", "took 1:00", "one pour only"); v != 1 {
		t.Errorf("stir for %v", v)
	}
	list = own.Suggest(own.Plan(), []Past{stirred("a", 2), stirred("b", 2)}, shelf, pour.Hand{})
	if v := brought(t, list, own.Plan(), shelf, "run.stir_min", "middle of 3 pours is 2:00"); v != 2 {
		t.Errorf("stir for %v", v)
	}
	list = own.Suggest(own.Plan(), []Past{stirred("a", 0.5), stirred("b", 0.5)}, shelf, pour.Hand{})
	if s, ok := suggested(list, "run.stir_min"); ok {
		t.Errorf("the odd pour is followed: %+v", s)
	}
	list = own.Suggest(own.Plan(), []Past{stirred("a", 0.5)}, shelf, pour.Hand{})
	if s, ok := suggested(list, "run.stir_min"); ok {
		t.Errorf("one of two pours moves the plan: %+v", s)
	}
}

// The telephone rings while one of the colours is stirred: that one takes two and a half minutes, the others the half that is planned.
func TestOneStepInWhichTheTelephoneRangMovesNoMinutes(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	rang, stirs := false, 0
	d := newDiary("rang", plan)
	d.pours(t, shelf, func(key string, planned float64) float64 {
		if strings.Contains(key, "colour") {
			stirs++
			if !rang {
				rang = true
				return 2.5
			}
		}
		return planned
	})
	own := d.past(t, shelf)
	if stirs < 3 {
		t.Fatalf("%d colours are stirred", stirs)
	}
	if v, steps := own.handMin("run.stir_min", shelf); steps != stirs || math.Abs(v-plan.Run.StirMin) > 1e-6 {
		t.Errorf("stirring took %v in %d steps", v, steps)
	}
	if s, ok := suggested(own.Suggest(own.Plan(), nil, shelf, pour.Hand{}), "run.stir_min"); ok {
		t.Errorf("a telephone call is planned: %+v", s)
	}
}

func TestBurstsSplitAndStartAreSuggestedAsTheyWere(t *testing.T) {
	plan, shelf := meadow(t)
	d := newDiary("x", plan)
	d.pours(t, shelf, func(key string, planned float64) float64 {
		if key == "base mix" || key == "icing mix" {
			return planned + 3
		}
		return planned
	})
	d.mark(lyeIn+2*time.Minute, logbook.Event{Kind: logbook.Blended, Batch: pour.Base, Value: 30})
	p := d.past(t, shelf)
	list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{})
	if v := brought(t, list, p.Plan(), shelf, "base.split_at_min"); v != plan.Base.SplitAtMin+3 {
		t.Errorf("split at %v, planned %v", v, plan.Base.SplitAtMin)
	}
	s, ok := suggested(list, "base.blend", "30 s at 1.5 min")
	if !ok {
		t.Fatal(told(list))
	}
	next, err := pour.Apply(p.Plan(), shelf, s.Edit)
	must(t, err)
	if len(next.Base.Blend) != 1 || next.Base.Blend[0] != (pour.Burst{AtMin: 1.5, S: 30}) {
		t.Errorf("bursts %v", next.Base.Blend)
	}
}

// A mixing that was marked done as the lye went in is no minute to split at: the demo is an emulsion a quarter of a minute in.
func TestNoSplitBeforeTheEmulsionIsSuggested(t *testing.T) {
	plan, shelf := meadow(t)
	for _, r := range []struct {
		took float64
		want bool
	}{{0, false}, {1, true}} {
		d := newDiary("x", plan)
		d.pours(t, shelf, func(key string, planned float64) float64 {
			if key == "base mix" {
				return r.took
			}
			return planned
		})
		p := d.past(t, shelf)
		list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{})
		if s, ok := suggested(list, "base.split_at_min"); ok != r.want {
			t.Errorf("mixed for %v min: %+v", r.took, s)
		}
	}
}

// A jug that seized gets what takes its warning away on the plan as it was poured; every suggestion can be made, and none brings a stop.
func TestAJugThatSeizedIsMendedOnThePlanAsItWasPoured(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	plan.Base.OilsC, plan.Base.LyeC = 30, 30
	d := newDiary("x", plan)
	d.mark(lyeIn-time.Minute, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: 38})
	d.mark(lyeIn-time.Minute, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadLye, Value: 38})
	slow := func(_ string, planned float64) float64 { return planned * 1.6 }
	d.pours(t, shelf, slow)
	d.mark(lyeIn+9*time.Minute, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Seizes})
	p := d.past(t, shelf)
	next := p.Plan()
	mild := plan.Clone()
	mild.Base.Scents[0].Scent, mild.Base.Scents[0].PercentOfOils = "edelweiss-linen", 1
	easy := newDiary("easy", mild)
	easy.pours(t, shelf, slow) // as slow: the hands of one of two pours move no plan
	list := p.Suggest(next, []Past{easy.past(t, shelf)}, shelf, pour.Hand{})
	mends := 0
	for _, s := range list {
		if strings.Contains(s.Why, "as it was really poured") {
			mends++
		}
		made, err := pour.Apply(next, shelf, s.Edit)
		if err != nil {
			t.Errorf("%s: %v", s.Says, err)
			continue
		}
		if stops(pour.Work(made, shelf, pour.Hand{})) > 0 {
			t.Errorf("%s brings a stop", s.Says)
		}
	}
	if mends == 0 {
		t.Errorf("nothing is mended: %s", told(list))
	}
	if !strings.Contains(told(list), "poppy seized; edelweiss linen gave no trouble in easy") {
		t.Errorf("no other scent is offered for that of poppy: %s", told(list))
	}
	for _, s := range list {
		if s.Path == "" && strings.Contains(s.Says, "cooler") {
			t.Errorf("cooler than it was is no cooler than planned: %s", s.Says)
		}
	}
}

// Another scent is put forward where it is no faster by its own word and where somebody told that the pour went well: in the marks of the run, or in
// words about a pour that was written in afterwards.
func TestAScentIsPutForwardOnlyWhereItIsNoFasterAndItsPourWasTold(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	plan.Base.Scents = slices.Clone(plan.Base.Scents[:1])
	plan.Base.Scents[0].Scent, plan.Base.Scents[0].PercentOfOils, plan.Base.Scents[0].Into = "meadow-hay", 1, []string{"fern"}
	d := newDiary("own", plan)
	d.pours(t, shelf, asPlanned)
	d.mark(lyeIn+9*time.Minute, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "fern", What: logbook.Seizes})
	own := d.past(t, shelf)
	with := func(scent string) *diary {
		mild := plan.Clone()
		mild.Base.Scents[0].Scent = scent
		return newDiary("other", mild)
	}
	ran := func(scent string) *diary { x := with(scent); x.pours(t, shelf, asPlanned); return x }
	written := func(words string) *diary { // as it is logged where nothing was marked
		x := with("arve-pine")
		x.mark(lyeIn, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)})
		x.mark(lyeIn, logbook.Event{Kind: logbook.Noted, Text: "written in on 2026-12-06, after the pour: its steps and their times were not marked"})
		x.mark(lyeIn, logbook.Event{Kind: logbook.Ended})
		if words != "" {
			x.mark(lyeIn, logbook.Event{Kind: logbook.Result, Text: words})
		}
		return x
	}
	riced := ran("arve-pine")
	riced.mark(riced.run, logbook.Event{Kind: logbook.Result, Text: "it riced in the end"})
	for _, r := range []struct {
		name  string
		other *diary
		want  string
	}{
		{"as calm, marked as it was poured", ran("arve-pine"), "fern seized; arve pine gave no trouble in other; arve pine is no faster by the shelf"},
		{"faster by the shelf", ran("alp-rose"), ""},
		{"of unknown speed", ran("honey-clover"), ""},
		{"written in, nothing told", written(""), ""},
		{"written in, and told", written("smooth to the end"), `no trouble of arve pine is told of other: "smooth to the end"; arve pine is no faster`},
		{"written in, and told of trouble", written("Seized in the jug"), ""},
		{"told of trouble after the run", riced, ""},
	} {
		list := own.Suggest(own.Plan(), []Past{r.other.past(t, shelf)}, shelf, pour.Hand{})
		s, ok := suggested(list, "base.scent[0].scent")
		if ok != (r.want != "") || !strings.Contains(s.Why, r.want) {
			t.Errorf("%s: suggested %v, %q", r.name, ok, s.Why)
		}
	}
	slower := shelf
	slower.Scents = slices.Clone(shelf.Scents)
	slower.Scents[slices.IndexFunc(slower.Scents, func(s pour.Scent) bool { return s.ID == "meadow-hay" })].Behaviour = pour.BehaviourSlows
	if s, ok := suggested(own.Suggest(own.Plan(), []Past{ran("arve-pine").past(t, slower)}, slower, pour.Hand{}), "base.scent[0].scent"); ok {
		t.Errorf("one that slows down is given up for one that does not: %q", s.Why)
	}
}

// A jug that riced is suggested first, where that helps it; it stands first in the run then.
func TestAJugThatSpoiltIsPouredFirst(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	plan.Swirl.Passes = 2 // in more rounds a jug's last turn comes late whichever is first
	plan.Swirl.Seed = 3   // on whose faces fern first brings no muddy pair
	d := newDiary("x", plan)
	d.pours(t, shelf, asPlanned)
	d.mark(lyeIn+9*time.Minute, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "fern", What: logbook.Rices})
	p := d.past(t, shelf)
	next := p.Plan()
	list := p.Suggest(next, nil, shelf, pour.Hand{})
	i := slices.IndexFunc(list, func(s Suggestion) bool { return s.Says == "pour fern first" && s.Why == "fern riced" })
	before := pour.Work(next, shelf, pour.Hand{})
	if i < 0 {
		t.Fatalf("not suggested: %s", told(list))
	}
	made, err := pour.Apply(next, shelf, list[i].Edit)
	must(t, err)
	after := pour.Work(made, shelf, pour.Hand{})
	if k := after.PourOrder()[0]; after.Base.Jugs[k].Name != "fern" || lateOf(after, "fern") >= lateOf(before, "fern") {
		t.Errorf("%s is poured first, fern late %v %%, was %v %%", after.Base.Jugs[k].Name, lateOf(after, "fern"), lateOf(before, "fern"))
	}
}

func TestAFaintScentIsRaisedOrSwapped(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	id := plan.Base.Scents[0].Scent
	plan.Base.Scents = plan.Base.Scents[:1]
	plan.Base.Scents[0].PercentOfOils = 1
	sniffed := func(pourID, scent string, weeks int, strength float64) Past {
		with := plan.Clone()
		with.Base.Scents[0].Scent = scent
		d := newDiary(pourID, with)
		d.pours(t, shelf, asPlanned)
		d.lives(lyeIn+24*time.Hour, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 10}})
		d.lives(lyeIn+24*time.Hour, logbook.Event{Kind: logbook.Sniffed, Value: 4, Life: logbook.Life{Scent: scent}})
		d.lives(lyeIn+24*time.Hour+time.Duration(weeks*7*24)*time.Hour, logbook.Event{Kind: logbook.Sniffed, Value: strength})
		return d.past(t, shelf)
	}
	own := sniffed("own", id, 8, 1)
	next := own.Plan()
	list := own.Suggest(next, nil, shelf, pour.Hand{})
	if v := brought(t, list, next, shelf, "base.scent[0].percent_of_oils", "faint by week 8"); math.Abs(v-1.3) > 1e-9 { // 1 × 1.25 to a tenth
		t.Errorf("raised to %v", v)
	}
	if _, ok := suggested(list, "base.scent[0].scent"); ok {
		t.Error("a scent is swapped for one nobody has sniffed")
	}
	other := shelf.Scents[slices.IndexFunc(shelf.Scents, func(s pour.Scent) bool { return s.ID == "edelweiss-linen" })].ID
	list = own.Suggest(next, []Past{sniffed("held", other, 9, 3), sniffed("too soon", id, 2, 3)}, shelf, pour.Hand{})
	if s, ok := suggested(list, "base.scent[0].scent", "still strong by week 9 in held"); !ok {
		t.Error(told(list))
	} else if made, err := pour.Apply(next, shelf, s.Edit); err != nil || made.Base.Scents[0].Scent != other {
		t.Errorf("put in its place: %v, %v", made.Base.Scents, err)
	}
	if s, ok := suggested(own.Suggest(next, []Past{sniffed("faded", other, 8, 1)}, shelf, pour.Hand{}), "base.scent[0].scent"); ok {
		t.Errorf("swapped for one that faded too: %s", s.Why)
	}
}

// Nothing that goes over a limit is suggested.
func TestAScentIsNotRaisedOverItsLimit(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	plan.Base.Scents = plan.Base.Scents[:1]
	i := slices.IndexFunc(shelf.Scents, func(s pour.Scent) bool { return s.ID == plan.Base.Scents[0].Scent })
	shelf.Scents = slices.Clone(shelf.Scents)
	in := pour.Weigh(plan, shelf).Base.Scents[0].InBarPercent
	shelf.Scents[i].LimitPercent = in * 1.1
	d := newDiary("own", plan)
	d.pours(t, shelf, asPlanned)
	d.lives(lyeIn+60*24*time.Hour, logbook.Event{Kind: logbook.Sniffed, Value: 0})
	p := d.past(t, shelf)
	if s, ok := suggested(p.Suggest(p.Plan(), nil, shelf, pour.Hand{}), "base.scent[0].percent_of_oils"); ok {
		t.Errorf("over its limit: %s, %s", s.Says, s.Brings)
	}
	shelf.Scents[i].LimitPercent = in * 2
	if _, ok := suggested(p.Suggest(p.Plan(), nil, shelf, pour.Hand{}), "base.scent[0].percent_of_oils"); !ok {
		t.Error("under its limit it is not raised either")
	}
}

func TestTheCutComesWhenTheLoafIsFirm(t *testing.T) {
	plan, shelf := meadow(t)
	for _, c := range []struct {
		word string
		at   float64
		want float64 // 0: nothing
	}{{logbook.FirmSoft, 26, 32}, {logbook.FirmSticky, 20, 26}, {logbook.FirmFirm, 30, 30}, {logbook.FirmFirm, plan.Bed.CutAfterH + 1, 0}, {logbook.FirmCrumbly, 48, 42}, {logbook.FirmHard, 40, 34}, {"odd", 48, 0}} {
		d := newDiary("x", plan)
		d.pours(t, shelf, asPlanned)
		d.lives(lyeIn+time.Duration(c.at*float64(time.Hour)), logbook.Event{Kind: logbook.Unmoulded, What: c.word})
		p := d.past(t, shelf)
		list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{})
		if _, ok := suggested(list, "bed.cut_after_h"); !ok {
			if c.want != 0 {
				t.Errorf("%s after %v h: nothing", c.word, c.at)
			}
			continue
		}
		if v := brought(t, list, p.Plan(), shelf, "bed.cut_after_h"); v != c.want {
			t.Errorf("%s after %v h: cut after %v, want %v", c.word, c.at, v, c.want)
		}
	}
}

func TestAnotherBedIsSuggestedByHerOwnPoursAlone(t *testing.T) {
	plan, shelf := meadow(t)
	ashy := func(id, keep string, much float64) Past {
		with := plan
		with.Bed.Keep = keep
		d := newDiary(id, with)
		d.pours(t, shelf, asPlanned)
		d.lives(lyeIn+48*time.Hour, logbook.Event{Kind: logbook.Looked, What: logbook.LookAsh, Value: much})
		return d.past(t, shelf)
	}
	own := ashy("own", pour.BedBare, 3)
	if s, ok := suggested(own.Suggest(own.Plan(), nil, shelf, pour.Hand{}), "bed.keep"); !ok || !strings.Contains(s.Why, "common practice, no source") {
		t.Errorf("without evidence of her own: %v, %q", ok, s.Why)
	}
	clean, not := ashy("a", pour.BedInsulate, 0), ashy("b", pour.BedInsulate, 4)
	list := own.Suggest(own.Plan(), []Past{clean}, shelf, pour.Hand{})
	s, ok := suggested(list, "bed.keep", "of 1 pour put to bed insulate, 1 had")
	if !ok {
		t.Fatal(told(list))
	}
	if made, err := pour.Apply(own.Plan(), shelf, s.Edit); err != nil || made.Bed.Keep != pour.BedInsulate {
		t.Errorf("put to bed %s, %v", made.Bed.Keep, err)
	}
	if _, ok := suggested(own.Suggest(own.Plan(), []Past{clean, not}, shelf, pour.Hand{}), "bed.keep"); ok {
		t.Error("half of them with ash speak for it")
	}
}

func TestAColourIsStatedAsItCameOut(t *testing.T) {
	plan, shelf := meadow(t)
	d := newDiary("x", plan)
	d.pours(t, shelf, asPlanned)
	d.lives(lyeIn+48*time.Hour, logbook.Event{Kind: logbook.Looked, What: logbook.LookColour, Jug: "fern", Life: logbook.Life{Colour: "#446633"}})
	p := d.past(t, shelf)
	i := p.jugAt(pour.Base, "fern")
	s, ok := suggested(p.Suggest(p.Plan(), nil, shelf, pour.Hand{}), fmt.Sprintf("base.jug[%d].batter_colour", i))
	if !ok {
		t.Fatal("not suggested")
	}
	if made, err := pour.Apply(p.Plan(), shelf, s.Edit); err != nil || made.Base.Jugs[i].BatterColour != "#446633" {
		t.Error(made.Base.Jugs[i], err)
	}
}

// A bar of 130 g that weighs 110.5 g has lost 15 %. By the plan 1 − M of the cured bar is no water, so with the plan's masses c at the cut and k cured
// the water left is 1 − k (1 − M) ÷ (0.85 c).
func TestTheWaterLeftIsWhatTheBarsReallyLost(t *testing.T) {
	plan, shelf := meadow(t)
	d := newDiary("x", plan)
	d.pours(t, shelf, asPlanned)
	d.mark(d.run, logbook.Event{Kind: logbook.Cut, Value: 130})
	d.mark(d.run, logbook.Event{Kind: logbook.Cured, Value: 110.5})
	p := d.past(t, shelf)
	s := p.Sheet.Bars
	want := 100 * (1 - s.CuredG*(1-s.FinalMoisturePercent/100)/(0.85*s.CutG))
	list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{})
	if math.Abs(want-plan.Base.FinalMoisturePercent) < 1 || want < 0 {
		t.Fatalf("the test wants %v %% of water, the plan has %v: no difference to see", want, plan.Base.FinalMoisturePercent)
	}
	if v := brought(t, list, p.Plan(), shelf, "base.final_moisture_percent", "loses 15.0 %"); math.Abs(v-want) > 0.25 {
		t.Errorf("%v %% of water, want %v", v, want)
	}
}

// Bars that follow the drying law with a slow mode of 30 days are dry later than the four weeks that were planned: by the law a week's loss of a bar that
// loses B of A is B (f(t) − f(t + 7)), and it falls under half a percent on the day that is suggested.
func TestALongerCureIsSuggestedByItsWeighings(t *testing.T) {
	plan, shelf := meadow(t)
	plan.Icing = nil
	plan.Bed.CureDays = 28
	d := newDiary("x", plan)
	d.pours(t, shelf, asPlanned)
	sheet := d.past(t, shelf).Sheet
	bar, err := sheet.DryingBar(cure.Rack{})
	must(t, err)
	const tau, a, part = 30.0, 130.0, 0.17
	mass := func(day float64) float64 { return a * (1 - part*(1-bar.Box.Left(day/tau))) }
	d.lives(lyeIn+24*time.Hour, logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{MassesG: []float64{mass(0), mass(0), mass(0)}}})
	for _, day := range []float64{3, 7, 14, 21, 28, 42, 56} {
		d.lives(lyeIn+24*time.Hour+time.Duration(day*24)*time.Hour, logbook.Event{Kind: logbook.WeighIn, Life: logbook.Life{MassesG: []float64{mass(day), mass(day), mass(day)}}})
	}
	want := 0.0
	for 100*(mass(want)-mass(want+7))/mass(want) >= 0.5 {
		want += 0.01
	}
	p := d.past(t, shelf)
	list := p.Suggest(p.Plan(), nil, shelf, pour.Hand{})
	if v := brought(t, list, p.Plan(), shelf, "bed.cure_days", "says when it is dry"); math.Abs(v-want) > 1.5 {
		t.Errorf("cure for %v days, by the law %v", v, want)
	}
	facts, _ := p.Happened(plan.Show)
	fact(t, facts, "bed.cure_days", "later than planned", "planned day 28")
	lost := 100 * part
	if s, ok := suggested(list, "base.final_moisture_percent"); ok && !strings.Contains(s.Why, fmt.Sprintf("loses %.0f", lost)) && !strings.Contains(s.Why, fmt.Sprintf("loses %.0f", lost-0.5)) {
		t.Errorf("of bars that lose %v %%: %s", lost, s.Why)
	}
}

// A change that brings a stop is not suggested, whatever speaks for it; one that changes nothing or cannot be is not either.
func TestAChangeThatBringsAStopIsNotSuggested(t *testing.T) {
	plan, shelf := meadow(t)
	a := asker{plan: plan, shelf: shelf, show: plan.Show, before: pour.Work(plan, shelf, pour.Hand{})}
	a.suggest("base.superfat_percent", "leave no superfat", "a test", pour.SetNumber("base.superfat_percent", -5))
	a.suggest("name", "keep the name", "a test", pour.SetName(plan.Name))
	a.suggest("base.superfat_percent", "more than there is", "a test", pour.SetNumber("base.superfat_percent", 99))
	if len(a.found) > 0 {
		t.Errorf("suggested: %s", told(a.found))
	}
	if a.suggest("bed.cure_days", "cure longer", "a test", pour.SetNumber("bed.cure_days", 40)); len(a.found) != 1 {
		t.Error("nothing is suggested at all")
	}
}
