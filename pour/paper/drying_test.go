package paper

import (
	"math"
	"strings"
	"testing"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/logbook/learn"
)

// A plan that says nothing of its drying bars has the paper it always had; one that does is told day, mass and what to cut.
func TestPapersTellOfDryingWhereThePlanDoes(t *testing.T) {
	p := testPlan()
	for _, text := range everyPaper(p) {
		if strings.Contains(text, "Dry, losing") || strings.Contains(text, "on the label") {
			t.Errorf("a plan of before is told of drying:\n%s", text)
		}
	}
	p.Cure = pour.Cure{WeeklyLossPercent: 0.7, PackDays: 35, LabelG: 90}
	c, show := work(p).Cure, p.Show
	for _, text := range everyPaper(p) {
		text = flat(text)
		for _, want := range []string{
			"Dry, losing less than 0.70 % a week, from about day " + show.Number(c.ReadyDay.Mid.V, 0) + " after the cut",
			"One bar packed on day 35, " + show.Weight(c.PackG.Low.V) + " to " + show.Weight(c.PackG.High.V),
			"For " + show.Weight(90) + " on the label a bar is cut to weigh", show.Weight(c.CutForLabelG.V),
		} {
			if !strings.Contains(text, want) {
				t.Errorf("missing %q:\n%s", want, text)
			}
		}
	}
}

// What own batches taught is told with what it rests on, each batch by itself; where none was weighed nothing is.
func TestTheLessonTellsHowBarsDry(t *testing.T) {
	if text := LessonText(learn.Lesson{}, nil); strings.Contains(text, "DRY") {
		t.Errorf("no bar was weighed:\n%s", text)
	}
	l := learn.Lesson{
		Rack:  cure.Rack{LnD: cure.Learnt{Mean: math.Log(3.42e-11), SD: 0.2, Batches: 3}, Moisture: cure.Learnt{Mean: 0.12, SD: 0.01, Batches: 4}},
		Dried: []learn.Drying{{Pour: "fen", Weighings: 8, Bars: 3, TauDays: 17.04, LossG: 12.06, FirstG: 125}, {Pour: "bog", Weighings: 2, Bars: 1, Why: "too early to tell"}},
	}
	text := flat(LessonText(l, nil))
	for _, want := range []string{ // 17 days of tau are 29.4 to nine tenths, 3.42e-11 · e^±0.256 is 2.6 to 4.4
		"at 3.4e-11 m2/s in your room (2.6e-11 to 4.4e-11 for the next batch), from 3 batches", "in 29 days", "end at 12.0 % of water (10.7 to 13.3 for the next batch), from 4 batches",
		"fen, 8 weighings of 3 bars: tau 17.0 days, 12.1 of 125.0 g a bar will go", "bog, 2 weighings of 1 bar: too early to tell",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("missing %q:\n%s", want, text)
		}
	}
	l.Rack = cure.Rack{LnD: cure.Learnt{Batches: 2}}
	if text := flat(LessonText(l, nil)); !strings.Contains(text, "2 batches have told something so far; from 3 on") {
		t.Error(text)
	}
}
