package pour_test

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/label"
)

// eu is a market with the rules of the EU for a list, as they were looked up (reference: markets, section 1, read at second hand).
func eu() label.Market {
	return label.Market{
		ID: "here", Name: "Here", Heading: "Ingredients:", ScentWord: "Parfum", FreePercent: 1, Allergens: label.AllergensLong, OverPercent: 0.01, HeightBy: label.HeightByMass,
		Heights: []label.Height{{UpTo: 50, MM: 2}, {UpTo: 200, MM: 3}, {UpTo: 1000, MM: 4}, {MM: 6}},
	}
}

// labelled is a plan with a label, worked out.
func labelled(t testing.TB, p pour.Plan, shelf pour.Shelf) pour.LabelSheet {
	t.Helper()
	shelf.Markets = []label.Market{eu()}
	p.Label.Market = "here"
	return pour.Work(p, shelf, pour.Hand{}).Label
}

func TestALabelIsWorkedOutWhereAMarketIsStated(t *testing.T) {
	p, shelf := twoJugs(t)
	if l := pour.Work(p, shelf, pour.Hand{}).Label; l.Market != "" || len(l.Lines) > 0 || l.Refused != "" {
		t.Errorf("a plan that asks for no label has %+v", l)
	}
	l := labelled(t, p, shelf)
	if l.Refused != "" || !strings.HasPrefix(l.Text, "Ingredients: ") {
		t.Fatalf("no list: %q, %q", l.Refused, l.Text)
	}
	sum := 0.0
	for _, line := range l.Lines {
		sum += line.G
	}
	if !near(sum, l.MadeG.V, 1e-9) || !near(l.MadeG.V, 153.601384, 1e-6) {
		t.Errorf("the lines sum to %v, the bar as made is %v, by hand 153.601384", sum, l.MadeG)
	}
	timed := pour.Weigh(p, shelf).Time(shelf, pour.Hand{}).Mingle(shelf, pour.Hand{}, colour.NewJudge())
	if timed.Label.Market != "" {
		t.Error("a label where none is asked for")
	}
}

// fullLabel is a bench as full as they get: 20 oils, 5 scents, 12 jugs with a colour each, sold in the EU.
func fullLabel(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := shelved(t)
	p.Icing, p.Base.Oils, p.Base.Jugs, p.Base.Scents = nil, nil, nil, nil
	for _, o := range shelf.Oils {
		if o.Fat.Kind == chem.Triglyceride && len(p.Base.Oils) < 20 {
			p.Base.Oils = append(p.Base.Oils, pour.OilPart{Oil: o.ID, Percent: 5})
		}
	}
	p.Base.CarrierOil = p.Base.Oils[0].Oil
	for i := range 12 {
		p.Base.Jugs = append(p.Base.Jugs, pour.Jug{Name: fmt.Sprintf("jug %d", i), SharePercent: 100.0 / 12, Colourants: []pour.Dose{{Colourant: shelf.Colourants[i].ID, DosePercent: 0.5}}})
	}
	for _, x := range shelf.Scents {
		if len(x.Allergens) > 0 && len(p.Base.Scents) < 5 {
			p.Base.Scents = append(p.Base.Scents, pour.ScentPart{Scent: x.ID, PercentOfOils: 0.6})
		}
	}
	p.Swirl.First, p.Swirl.Last, p.Run.Order = "", "", nil
	p.Label.Market = "eu"
	if s := pour.Weigh(p, shelf).Time(shelf, pour.Hand{}); s.Label.Refused != "" || len(s.Label.Lines) < 25 || len(s.Base.Scents) != 5 || len(s.Base.Jugs) != 12 {
		t.Fatalf("the bench is not as full as it should be: %q, %d lines, %d scents", s.Label.Refused, len(s.Label.Lines), len(s.Base.Scents))
	}
	return p, shelf
}

// BenchmarkLabel is what a key costs more where the plan has a label.
func BenchmarkLabel(b *testing.B) {
	p, shelf := fullLabel(b)
	s := pour.Weigh(p, shelf).Time(shelf, pour.Hand{})
	b.ReportAllocs()
	for b.Loop() {
		_ = s.Labelled(shelf, pour.Labelling{})
	}
}

// The water that a bar has left is what its lines have less what it loses until it is cured: counted by hand from the list.
func TestALabelSaysWhereWaterWouldStandOnceDried(t *testing.T) {
	p, shelf := twoJugs(t)
	p.Label.List = string(label.AsAdded) // as added, its water comes behind the alkali: 31.43 g less 18.18 g, and 14.49 g
	l := labelled(t, p, shelf)
	at, after := -1, ""
	for i, line := range l.Lines {
		switch {
		case line.Text == "Aqua":
			at = i
		case at >= 0 && line.Class != label.Colourant && line.Class != label.Unlisted && line.G > l.Lines[at].G-(l.MadeG.V-l.CuredG.V):
			after = line.Text
		}
	}
	if at < 0 || after == "" || !strings.HasSuffix(l.Dried, " after "+after) {
		t.Errorf("%q, by hand after %q; %s", l.Dried, after, l.Text)
	}
}
