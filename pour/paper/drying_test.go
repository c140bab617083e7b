package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
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
