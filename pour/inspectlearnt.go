package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/chem/clock"
)

// learntFactor is how many times sooner or later what her pours taught must make a stage before it is said beside the times.
const learntFactor = 1.25

// warnLearnt says of the base whose times were moved by what her own pours taught how they would be without them, and names the pours that
// were far from expected: they may be a slip.
func (t *timer) warnLearnt(h Hand, with *clock.Clock, batter clock.Batter) {
	if t.batch.Name != Base || h.Clock.Pours == 0 || len(t.batch.Jugs) == 0 {
		return
	}
	alone, err := clock.New(batter, clock.Hand{})
	if err != nil {
		return
	}
	j := &t.batch.Jugs[0]
	taught, model := with.Forecast(t.jug(j)).Stages[chem.Medium], alone.Forecast(t.jug(j)).Stages[chem.Medium]
	if !taught.MidOK || !model.MidOK || max(taught.Mid, model.Mid) < learntFactor*min(taught.Mid, model.Mid) {
		return
	}
	show, where := t.sheet.Plan.Show, string(t.batch.Name)
	t.sheet.warn(warning("times-learnt", where, fmt.Sprintf("the times are by %s of yours: %s is at medium after about %s, without what they taught it would be about %s",
		fmt.Sprintf("%d pour%s", h.Clock.Pours, map[bool]string{true: "", false: "s"}[h.Clock.Pours == 1]), j.Name, show.Minutes(taught.Mid), show.Minutes(model.Mid)), "pourbench logbook learned shows which pour taught what"))
	if len(h.Odd) > 0 {
		t.sheet.warn(warning("pour-odd", where, fmt.Sprintf("the times are moved by a pour that was far from expected, as a stage marked by a slip of the finger is: %s", strings.Join(h.Odd, ", ")),
			fmt.Sprintf("if that is not how it was, let it teach nothing: pourbench logbook leave-out %s WHY", slices.Max(h.Odd))))
	}
}
