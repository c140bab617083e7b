package learn

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Whatever is compared of a batch names the figure that it stands beside: explained under that name is what was planned.
func TestEveryDifferenceNamesTheFigureItIsOf(t *testing.T) {
	plan, shelf := meadow(t)
	sheet := pour.Work(plan, shelf, pour.Hand{})
	book := openTestBook(t)
	m := begins(t, book, sheet, "", shelf, time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	for _, b := range sheet.Batches() {
		for _, what := range []string{logbook.ReadOils, logbook.ReadLye, logbook.ReadBatter} {
			m.after(time.Second, logbook.Event{Kind: logbook.Read, Batch: b.Name, What: what, Value: 33})
		}
		for _, w := range b.Weighings() {
			m.after(time.Second, logbook.Event{Kind: logbook.Weighed, Batch: b.Name, Jug: w.Jug, What: w.Name, Value: w.G + 1})
		}
	}
	for _, w := range sheet.Totals {
		m.after(time.Second, logbook.Event{Kind: logbook.Weighed, What: w.Name, Value: w.G + 1})
	}
	for _, s := range m.run.State().Steps {
		m.after(time.Minute, logbook.Event{Kind: logbook.Done, Step: s.Key})
	}
	m.sees(time.Minute, "fern", chem.Medium)
	m.after(0, logbook.Event{Kind: logbook.Cut, Value: 131})
	m.after(0, logbook.Event{Kind: logbook.Cured, Value: 121})
	for _, t := range sheet.CutRun {
		if i := sheet.CutPiece(t); i >= 0 {
			kind := logbook.Weighed
			if sheet.Pieces()[i].Bar > 0 {
				kind = logbook.Cut
			}
			m.after(time.Second, logbook.Event{Kind: kind, Step: t.Key, Value: 120})
		}
	}
	seen := map[string]bool{}
	for _, d := range Compare(m.record(shelf), sheet) {
		seen[d.Path] = true
		a, err := sheet.Explain(d.Path, shelf, pour.Hand{})
		if err != nil {
			t.Errorf("%s is said to be %q: %v", d.What, d.Path, err)
			continue
		}
		if d.Planned.Known != a.Value.Known || math.Abs(d.Planned.V-a.Value.V) > 0.051 {
			t.Errorf("%s: planned %v, and %s is %v", d.What, d.Planned, d.Path, a.Value)
		}
	}
	for _, want := range []string{
		"base.oils_c", "icing.lye_c", "base.mix_c", "base.lye_in_at_min", "icing.lye_in_at_min", "base.naoh_to_weigh_g", "base.water_to_add_g", "base.oils[1].weigh_g", "base.jugs[1].batter_weigh_g",
		"base.jugs[1].colourants[0].pigment_g", "base.jugs[1].colourants[0].carrier_g", "bars.cut_g", "bars.cured_g", "cut.bars[3].cut_g", "run[4].start_min", "cut_run[0].start_min",
	} {
		if !seen[want] {
			t.Errorf("nothing is compared with %s; there are %d", want, len(seen))
		}
	}
	fern := slices.IndexFunc(plan.Base.Jugs, func(j pour.Jug) bool { return j.Name == "fern" })
	if at := fmt.Sprintf("base.jugs[%d].stage_min.medium[1]", fern); !seen[at] {
		t.Errorf("a stage of fern is not compared with %s", at)
	}
}
