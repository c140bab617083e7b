package pour_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/lot"
	"pourbench/pour/pourtest"
)

// drawLabelled is a drawn plan with a label in one of the markets of the shelf.
func drawLabelled(t *rapid.T, demo pour.Plan, shelf pour.Shelf) pour.Plan {
	p := pourtest.Rich(t, demo, shelf)
	p.Label.Market = rapid.SampledFrom(shelf.Markets).Draw(t, "market").ID
	p.Label.List = rapid.SampledFrom([]string{"", string(label.AsAdded)}).Draw(t, "style")
	p.Label.Names = rapid.SampledFrom([]string{"", pour.NamesEnglish}).Draw(t, "names")
	return p
}

// labelOf works the label of a plan out, the clock's part left out but for its drying.
func labelOf(p pour.Plan, shelf pour.Shelf) (pour.LabelSheet, pour.Sheet) {
	s := pour.Weigh(p, shelf)
	return s.Labelled(shelf, pour.Labelling{}), s
}

// Whatever the plan: the lines sum to the bar, what stands by mass falls, colourants come after it, and nothing that went in is missing.
func TestALabelListsAllThatIsInTheBarByItsMass(t *testing.T) {
	demo, shelf := shelved(t)
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawLabelled(t, demo, shelf)
		l, s := labelOf(p, shelf)
		if l.Refused != "" {
			return
		}
		seen++
		sum, last, came := 0.0, math.Inf(1), map[string]bool{}
		for _, x := range l.Lines {
			sum += x.G
			if x.Class == label.Plain && !x.Free && x.Percent > last+1e-6 {
				t.Errorf("%s, %v %%, stands after %v %%", x.Text, x.Percent, last)
			}
			if x.Class == label.Plain && !x.Free {
				last = x.Percent
			}
			for _, from := range x.From {
				came[from] = true
			}
			if x.Class != label.Unlisted && !x.Name.Gap && !strings.Contains(strings.ToLower(l.Text), strings.ToLower(x.Text)) {
				t.Errorf("%s is not in %q", x.Text, l.Text)
			}
		}
		if !near(sum, l.MadeG.V, 1e-9) || !near(sum, s.MadeG().V, 1e-9) {
			t.Errorf("the lines sum to %v, the bar to %v", sum, s.MadeG())
		}
		for _, w := range s.AsPlanned(shelf) {
			if name := calledOnShelf(w, shelf); w.G > 0 && name != "" && !came[name] && barsHave(&s, w.Batch) {
				t.Errorf("nothing of %s is in the list: %v", name, slices.Sorted(maps.Keys(came)))
			}
		}
	})
	if seen == 0 {
		t.Error("no drawn plan had a label")
	}
}

// barsHave reports whether anything of a batch is in the bars.
func barsHave(s *pour.Sheet, n pour.BatchName) bool {
	return slices.ContainsFunc(s.Cut.Bars, func(b pour.BarPiece) bool {
		if n == pour.Icing {
			return b.IcingG.V > 0
		}
		return b.BaseG.V > 0
	})
}

// calledOnShelf is what the shelf calls an oil, a colourant, an extra or a scent; empty: it is something else, or this shelf lists it nowhere.
func calledOnShelf(w pour.Went, shelf pour.Shelf) string {
	if w.Material.Kind != lot.Oil && w.Material.Kind != lot.Colourant && w.Material.Kind != lot.Extra && w.Material.Kind != lot.Scent {
		return ""
	}
	name := shelf.Named(label.Range{Kind: string(w.Material.Kind), ID: w.Material.ID})
	if name == w.Material.ID {
		return ""
	}
	return name
}

// sameLabel compares lists and allergens.
func sameLabel(t *rapid.T, what string, a, b pour.LabelSheet) {
	t.Helper()
	if a.Text != b.Text {
		t.Errorf("%s changes the list:\n%s\n%s", what, a.Text, b.Text)
	}
	for i := range min(len(a.Lines), len(b.Lines)) {
		if !near(a.Lines[i].Percent, b.Lines[i].Percent, 1e-6) {
			t.Errorf("%s changes %s from %v to %v %%", what, a.Lines[i].Text, a.Lines[i].Percent, b.Lines[i].Percent)
		}
	}
	if len(a.Allergens) != len(b.Allergens) {
		t.Errorf("%s makes %d allergens of %d", what, len(b.Allergens), len(a.Allergens))
	}
}

// Twice as much of everything poured, and oils in another order, change no list and no percentage.
func TestDoublingABatchAndReorderingItsOilsChangeNoList(t *testing.T) {
	demo, shelf := shelved(t)
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawLabelled(t, demo, shelf)
		p.Icing, p.Top, p.Base.CarrierOil, p.Base.ReadyBlend = nil, pour.Top{}, p.Base.Oils[0].Oil, ""
		p.Base.Size, p.Base.OilsG = pour.SizeOils, 700
		l, _ := labelOf(p, shelf)
		if l.Refused != "" {
			return
		}
		seen++
		twice := p.Clone()
		twice.Base.OilsG *= 2
		more, s := labelOf(twice, shelf)
		if more.Refused == "" && len(s.Cut.Bars) > 0 {
			sameLabel(t, "doubling", l, more)
		}
		turned := p.Clone()
		slices.Reverse(turned.Base.Oils)
		other, _ := labelOf(turned, shelf)
		sameLabel(t, "another order of the oils", l, other)
	})
	if seen == 0 {
		t.Error("no drawn plan had a label")
	}
}

// What is weighed counts as what is planned does: handed in as it was planned, it gives the same contents, amounts and superfats.
func TestWhatWasWeighedAsPlannedIsThePlan(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Weigh(drawLabelled(t, demo, shelf), shelf)
		planned, err := s.Amounts(shelf, nil)
		if err != nil {
			return
		}
		weighed, err := s.Amounts(shelf, s.AsPlanned(shelf))
		if err != nil || len(weighed) != len(planned) {
			t.Fatalf("%d amounts of %d: %v", len(weighed), len(planned), err)
		}
		for i, a := range planned {
			if b := weighed[i]; a.ID != b.ID || math.Abs(a.Percent-b.Percent) > 1e-7*max(1, math.Abs(a.Percent)) {
				t.Errorf("%+v as planned, %+v as weighed", a, b)
			}
		}
	})
}
