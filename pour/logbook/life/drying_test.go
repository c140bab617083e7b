package life_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// snow is an example that comes with the program, worked out.
func snow(t *testing.T) pour.Sheet {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan("first-snow")
	if err != nil {
		t.Fatal(err)
	}
	p, err := planfile.Read("first-snow", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	return pour.Work(p, shelf, pour.Hand{})
}

// in is a weighing of bars of those numbers; none: the first ones.
func in(day float64, bars []int, g ...float64) life.WeighIn {
	return life.WeighIn{Days: day, Bars: bars, MassesG: g}
}

func TestBeforeAnythingIsWeighedABatchDriesAsPlanned(t *testing.T) {
	s := snow(t)
	d := life.Dry(&s, nil, cure.Rack{})
	if !d.Known || d.Weighed || d.Why != nil || d.Ready.V != s.Cure.ReadyDay.Mid.V || d.Criterion != 0.5 {
		t.Fatalf("%+v", d)
	}
	if says := d.Tell(); !strings.Contains(says, "common practice") || !strings.Contains(says, "under 0.5 % a week") {
		t.Error(says)
	}
	one := life.Dry(&s, []life.WeighIn{in(0, nil, 100, 102)}, cure.Rack{})
	if !one.Known || one.Weighed || one.Fit.AG != 101 || !slices.Equal(one.Bars, []int{1, 2}) {
		t.Errorf("weighed at the cut: %+v", one)
	}
	late := life.Dry(&s, []life.WeighIn{in(9, nil, 100, 102)}, cure.Rack{})
	if late.Fit.AG != s.Bars.CutG {
		t.Errorf("weighed once, days after the cut: %v g as cut", late.Fit.AG)
	}
}

// The bars that were weighed every time are followed, by their means: the arithmetic is the test's.
func TestTheSameBarsAreFollowed(t *testing.T) {
	s := snow(t)
	all := []life.WeighIn{
		in(7, []int{3, 1, 2}, 113, 111, 112),
		in(0, nil, 120, 121, 122, 123, 124), // all as they were sliced
		in(2, []int{2, 3}, 117, 118),
		in(3, []int{9, 8}, 50, 51), // others
		in(14, []int{2, 3, 7}, 110, 111.4, 99),
	}
	d := life.Dry(&s, all, cure.Rack{})
	want := []cure.Weighing{{Day: 0, G: 121.5}, {Day: 2, G: 117.5}, {Day: 7, G: 112.5}, {Day: 14, G: 110.7}}
	if !slices.Equal(d.Bars, []int{2, 3}) || !slices.EqualFunc(d.Means, want, func(a, b cure.Weighing) bool { return a.Day == b.Day && math.Abs(a.G-b.G) < 1e-9 }) {
		t.Fatalf("bars %v: %v", d.Bars, d.Means)
	}
	if d.Fit == nil || math.Abs(d.Fit.SDG-math.Sqrt((0.15*0.15+0.99/12)/2)) > 1e-12 {
		t.Errorf("%+v", d.Fit)
	}
}

func TestWeighingsThatFollowTheLawTellTheDay(t *testing.T) {
	s := snow(t)
	d := life.Dry(&s, dried(&s, 21, 0.09, 0, 1, 2, 4, 7, 10, 14, 21), cure.Rack{})
	if !d.Weighed || !d.Known || d.Why != nil || d.Ready.SD <= 0 || !strings.Contains(d.Tell(), "by 8 weighings") {
		t.Fatalf("%+v: %s", d, d.Tell())
	}
	if math.Abs(d.Fit.TauDays()-21) > 5 {
		t.Errorf("tau %v", d.Fit.TauDays())
	}
	odd := dried(&s, 21, 0.09, 0, 1, 2, 4, 7, 10, 14, 21)
	odd[4].MassesG[0] += 3
	d = life.Dry(&s, odd, cure.Rack{})
	if !d.Weighed || d.Known || d.Fit == nil || !errors.Is(d.Why, &cure.Refusal{Reason: cure.Misfit}) || !d.Misfit() || !strings.Contains(d.Tell(), "does not follow the drying law") {
		t.Errorf("%+v", d)
	}
	rising := dried(&s, 21, 0.09, 0, 1)
	rising[1].MassesG[0] += 8
	if d = life.Dry(&s, rising, cure.Rack{}); d.Weighed || d.Known || d.Fit != nil || !errors.Is(d.Why, &cure.Refusal{Reason: cure.Rising}) {
		t.Errorf("%+v", d)
	}
}

// A kitchen scale's whole grams are read as such, whatever step the plan's scale has; where a slip keeps them from following the law, what the last
// week took is told and no day: the arithmetic is the test's.
func TestWholeGramsTellTheDayOrWhatWasLostLately(t *testing.T) {
	s := snow(t)
	s.Plan.Show.ScaleStepG = 0.1
	all := dried(&s, 24, 0.1, 0, 1, 2, 4, 7, 10, 14, 21)
	for i := range all {
		all[i].MassesG[0] = math.Round(all[i].MassesG[0])
	}
	d := life.Dry(&s, all, cure.Rack{})
	if !d.Known || d.ReadG != 1 || math.Abs(d.SDG-math.Sqrt(0.15*0.15+0.99/12)) > 1e-12 || math.Abs(d.Ready.V-fineDay(&s)) > 1.3*d.Ready.SD || strings.Contains(d.Tell(), "no day") {
		t.Errorf("%+v: %s", d, d.Tell())
	}
	if d = life.Dry(&s, dried(&s, 24, 0.1, 0, 1, 2, 4, 7, 10, 14, 21), cure.Rack{}); d.ReadG != 0 || math.Abs(d.SDG-0.15) > 1e-12 {
		t.Errorf("tenths are read to %v g, good to %v", d.ReadG, d.SDG)
	}
	all[4].MassesG[0] += 5
	d = life.Dry(&s, all, cure.Rack{})
	was, is := all[6].MassesG[0], all[7].MassesG[0]
	want := fmt.Sprintf("day is given. As weighed it lost %.1f %%, give or take %.1f, in the 7 days to day 21; under 0.5 %% a week you call it dry", 100*(was-is)/was, 1.28155*math.Sqrt(2*(0.0225+0.0825))/was*100)
	if d.Known || !d.Misfit() || !strings.HasSuffix(d.Tell(), want) {
		t.Errorf("%q, want %q", d.Tell(), want)
	}
	rising := dried(&s, 24, 0.1, 0, 3)
	rising[1].MassesG[0] = rising[0].MassesG[0] + 8
	if says := life.Dry(&s, rising, cure.Rack{}).Tell(); !strings.Contains(says, "no day is given. As weighed it gained") || !strings.Contains(says, "in the 3 days to day 3") {
		t.Error(says)
	}
}

// fineDay is when that bar is dry by a scale of 0.1 g.
func fineDay(s *pour.Sheet) float64 {
	return life.Dry(s, dried(s, 24, 0.1, 0, 1, 2, 4, 7, 10, 14, 21), cure.Rack{}).Ready.V
}

// dried is one bar of a plan that dries by the law, weighed to a tenth of a gram.
func dried(s *pour.Sheet, tau, loss float64, days ...float64) []life.WeighIn {
	bar, err := s.DryingBar(cure.Rack{})
	if err != nil {
		panic(err) // the example has bars
	}
	var all []life.WeighIn
	for _, day := range days {
		g := bar.CutG * (1 - loss*(1-bar.Box.Left(day/tau)))
		all = append(all, in(day, []int{4}, math.Round(g*10)/10))
	}
	return all
}

func TestWeighingsOfOtherBarsTellNothing(t *testing.T) {
	s := snow(t)
	d := life.Dry(&s, []life.WeighIn{in(0, []int{1, 2}, 100, 100), in(7, []int{3}, 95)}, cure.Rack{})
	if !errors.Is(d.Why, life.ErrOtherBars) || d.Weighed || d.Known != true {
		t.Errorf("%+v", d)
	}
	s.Base.Refused.Masses = "nothing in this batch takes up alkali"
	if d = life.Dry(&s, nil, cure.Rack{}); d.Known || d.Fit != nil || d.Tell() != s.Base.Refused.Masses {
		t.Errorf("%+v", d)
	}
}

func TestOwnBatchesAreTheForecastsPrior(t *testing.T) {
	s := snow(t)
	rack := cure.Rack{LnD: cure.Learnt{Mean: math.Log(2e-11), SD: 0.25, Batches: 4}}
	d := life.Dry(&s, nil, rack)
	if d.Own != 4 || !strings.Contains(d.Tell(), "by 4 of your own batches") || d.Fit.TauDays() == 16 {
		t.Errorf("%+v: %s", d, d.Tell())
	}
}

// The bar of older logs is followed alone, and never mixed with bars that have numbers.
func TestTheBarOfOlderLogsIsFollowedWhereNoOtherIs(t *testing.T) {
	s := snow(t)
	old := []life.WeighIn{in(0, []int{life.OneBar}, 130), in(28, []int{life.OneBar}, 119)}
	d := life.Dry(&s, old, cure.Rack{})
	if !d.Weighed || len(d.Means) != 2 || d.Means[1].G != 119 {
		t.Errorf("%+v", d)
	}
	d = life.Dry(&s, append(old, in(1, []int{2}, 128)), cure.Rack{})
	if !slices.Equal(d.Bars, []int{2}) || len(d.Means) != 1 || d.Weighed {
		t.Errorf("%+v", d)
	}
}
