package pour_test

import (
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
)

// What is said beside the times is what two sheets show: one with what pours taught and one without. A hand that moves nothing is not said.
func TestTimesThatPoursMovedSayWhatTheyWouldBeWithoutThem(t *testing.T) {
	p, shelf := hanger(t)
	hand := taughtFast()
	with, without := pour.Work(p, shelf, hand), pour.Work(p, shelf, pour.Hand{})
	at := func(s pour.Sheet) string { return s.Plan.Show.Minutes(s.Base.Jugs[0].Clock.Stages[chem.Medium].Mid.V) }
	w, ok := found(with, "times-learnt")
	for _, want := range []string{"2 pours of yours", "medium after about " + at(with), "it would be about " + at(without)} {
		if !strings.Contains(w.Text, want) {
			t.Errorf("%v: %q lacks %q", ok, w.Text, want)
		}
	}
	if at(with) == at(without) {
		t.Error("the case tells nothing")
	}
	w, _ = found(with, "pour-odd")
	if !strings.Contains(w.Text, "2026-12-05-slip") || !strings.Contains(w.Do, "logbook leave-out 2026-12-05-slip ") {
		t.Errorf("the odd pour is told as %q %q", w.Text, w.Do)
	}
	hand.Odd = nil
	if w, ok := found(pour.Work(p, shelf, hand), "pour-odd"); ok {
		t.Errorf("without an odd pour: %+v", w)
	}
	hand.Clock.Traits[0].Mean = .1
	if w, ok := found(pour.Work(p, shelf, hand), "times-learnt"); ok {
		t.Errorf("a tenth faster is said: %+v", w)
	}
}
