package taking_test

import (
	"math"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/logbook"
	"pourbench/pour/stock/taking"
)

// scented is the example with a scent in one jug of its icing, too.
func scented(t testing.TB) (*pour.Sheet, pour.Shelf) {
	t.Helper()
	plan, shelf := example(t)
	plan.Icing.Scents = []pour.ScentPart{{Scent: "alp-rose", PercentOfOils: 2, Into: []string{"sky"}, AtMin: plan.Icing.SplitAtMin}}
	sheet := pour.Weigh(plan, shelf)
	return &sheet, shelf
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a)) }

// A scent that was left out, before the split or after it, weighed out or not, is in no bar and taken of no bottle; of a scent that went into two jugs,
// only the other's part is. An icing's is as a base's. What is left on the scale is the sheet's own list, jug by jug.
func TestWhatWasLeftOutIsInNoBarAndTakenOfNoPack(t *testing.T) {
	s, shelf := scented(t)
	out := func(n pour.BatchName, jug string) logbook.Event {
		return logbook.Event{Kind: logbook.Rescued, Batch: n, Jug: jug, What: "leave its scent out"}
	}
	weighed := logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, Jug: "poppy", What: "alp rose", Value: 5, Lot: "R9"}
	split := logbook.Event{Kind: logbook.Done, Step: "base split"}
	not := func(step string) logbook.Event { return logbook.Event{Kind: logbook.Skipped, Step: step} }
	for name, c := range map[string]struct {
		marks []logbook.Event
		left  []string // batch, jug and scent of which nothing goes in
	}{
		"nothing":             {nil, nil},
		"after the split":     {[]logbook.Event{split, out(pour.Base, "fern")}, []string{"base fern meadow hay"}},
		"before the split":    {[]logbook.Event{out(pour.Base, "fern"), split}, []string{"base fern meadow hay"}},
		"weighed out already": {[]logbook.Event{weighed, out(pour.Base, "poppy")}, []string{"base poppy alp rose"}},
		"weighed after that":  {[]logbook.Event{out(pour.Base, "poppy"), weighed}, []string{"base poppy alp rose"}},
		"of all of the base":  {[]logbook.Event{out(pour.Base, ""), split}, []string{"base poppy alp rose", "base pot meadow hay", "base fern meadow hay"}},
		"of the icing":        {[]logbook.Event{out(pour.Icing, "sky")}, []string{"icing sky alp rose"}},
		"the step not done":   {[]logbook.Event{not("icing scent sky"), not("base colour fern")}, []string{"icing sky alp rose"}},
		"stirred in at last":  {[]logbook.Event{out(pour.Base, "fern"), {Kind: logbook.Done, Step: "base scent fern"}}, nil},
	} {
		goes := map[string]float64{} // by scent
		left := func(n pour.BatchName, jug, scent string) bool {
			for _, l := range c.left {
				if l == string(n)+" "+jug+" "+scent {
					return true
				}
			}
			return false
		}
		wants := map[string]float64{}
		for _, w := range taking.Wants(s, shelf, c.marks) {
			if w.Kind == pour.WeighScent {
				wants[string(w.Batch)+" "+w.Jug+" "+w.Name] = w.Q.V()
			}
		}
		for _, b := range s.Batches() {
			for _, j := range b.Jugs {
				for _, x := range j.Scents {
					key := string(b.Name) + " " + j.Name + " " + x.Name
					if _, in := wants[key]; in == left(b.Name, j.Name, x.Name) {
						t.Errorf("%s: %s is wanted: %v", name, key, in)
					}
					if !left(b.Name, j.Name, x.Name) {
						goes[string(b.Name)+" "+x.Name] += x.G
					}
				}
			}
		}
		went, _ := taking.Went(s, shelf, c.marks)
		charges, err := s.Contents(shelf, went)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range s.Batches() {
			bar := 0.0
			for _, bars := range s.Cut.Bars { // the mean bar's part of the batch
				g := bars.BaseG.V
				if b.Name == pour.Icing {
					g = bars.IcingG.V
				}
				bar += g / float64(len(s.Cut.Bars)) / b.Size.PouredG * (1 - b.Size.LossPercent/100)
			}
			in := map[string]float64{}
			for _, x := range charges {
				if x.Kind == label.Scent && x.In == string(b.Name) {
					in[string(b.Name)+" "+x.From] += x.G
				}
			}
			for _, line := range b.Scents {
				key := string(b.Name) + " " + line.Name
				want := goes[key] * bar
				if !near(in[key], want) {
					t.Errorf("%s: %g g of %s are in a bar, want %g", name, in[key], key, want)
				}
			}
		}
	}
}

// A jug that stays as it is: of what is in all jugs, that much less is in the bars, and nothing of its own. Its batter was made all the same, so oils and
// lye are taken of their packs; its colour and scent were not stirred in, unless the step says so.
func TestAJugThatWasNotPouredIsInNoBar(t *testing.T) {
	s, shelf := scented(t)
	marks := []logbook.Event{{Kind: logbook.Unpoured, Batch: pour.Base, Jug: "poppy"}}
	went, weighed := taking.Went(s, shelf, marks)
	if weighed != 0 || went == nil {
		t.Fatalf("%d were weighed, %d went in", weighed, len(went))
	}
	share := 0.0
	for _, j := range s.Plan.Base.Jugs {
		if j.Name == "poppy" {
			share = j.SharePercent / 100
		}
	}
	planned := s.AsPlanned(shelf)
	at := 0
	for _, p := range planned {
		if p.Batch == pour.Base && p.Jug == "poppy" {
			continue
		}
		want := p.G
		if p.Batch == pour.Base && p.Jug == "" {
			want *= 1 - share
		}
		if w := went[at]; w.Material != p.Material || w.Jug != p.Jug || !near(w.G, want) {
			t.Errorf("%+v went in, want %g of %+v", w, want, p)
		}
		at++
	}
	if at != len(went) {
		t.Errorf("%d went in, want %d", len(went), at)
	}
	all, now := taking.Wants(s, shelf, nil), taking.Wants(s, shelf, marks)
	stirred := taking.Wants(s, shelf, append(marks, logbook.Event{Kind: logbook.Done, Step: "base colour poppy"}))
	own, colours := 0, 0
	for _, w := range all {
		if w.Batch == pour.Base && w.Jug == "poppy" {
			own++
			if w.Kind != pour.WeighScent {
				colours++
			}
		}
	}
	if own == 0 || colours == 0 || len(now) != len(all)-own || len(stirred) != len(now)+colours {
		t.Errorf("of %d wants %d are left, %d once its colour is in; %d are its own, %d its colour", len(all), len(now), len(stirred), own, colours)
	}
}
