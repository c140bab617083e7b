package pour_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/label"
)

// allOf is what charges weigh together.
func allOf(charges []label.Charge) float64 {
	sum := 0.0
	for _, c := range charges {
		sum += c.G
	}
	return sum
}

// Whatever the plan, the charges of its average bar sum to the bar as cut and what goes onto it later.
func TestWhatIsInABarSumsToIt(t *testing.T) {
	demo, shelf := shelved(t)
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Weigh(drawnCut(t, demo, shelf), shelf)
		charges, err := s.Contents(shelf, nil)
		if err != nil {
			return
		}
		seen++
		late := 0.0
		for _, l := range s.Toppings {
			if !l.OnLoaf() {
				late += l.AddsG.V
			}
		}
		if want := s.Bars.CutG + late; !near(allOf(charges), want, 1e-9) {
			t.Errorf("the charges sum to %v, the bar to %v", allOf(charges), want)
		}
	})
	if seen == 0 {
		t.Error("no drawn plan had a bar")
	}
}

// twoJugs is the round loaf with a colour in oil, a scent in one jug, an icing on every bar and impure alkali.
func twoJugs(t *testing.T) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := handMade(t), roundShelf(t)
	p.Base.NaOHPurityPercent = 98
	p.Base.Jugs = []pour.Jug{{Name: "pot", SharePercent: 75}, {Name: "coal", SharePercent: 25, Colourants: []pour.Dose{{Colourant: "coal", DosePercent: 2}}}}
	p.Base.CarrierOil = "birch"
	p.Base.Scents = []pour.ScentPart{{Scent: "hay", PercentOfOils: 3, Into: []string{"pot"}}}
	return p, shelf
}

// By hand: a kilogram of oils, demand 0.6 × 190 + 0.4 × 250 = 214 g KOH; of that 95 % as NaOH is 214 × 0.95 × 39.99677 / 56.1053 = 144.93004 g, weighed 147.88780,
// water 147.88780 × 68 / 32 = 314.26157; batter 1462.14936. A quarter of it, 365.53734 g, takes 2 % coal, 7.31075, in 5 parts of oil, 36.55373; 30 g of scent
// go into the rest. All 1536.01384 g lie along 250 mm, a tenth of it in every bar.
func TestByHandWhatIsInABar(t *testing.T) {
	p, shelf := twoJugs(t)
	s := pour.Weigh(p, shelf)
	charges, err := s.Contents(shelf, nil)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]float64{}
	for _, c := range charges {
		got[string(c.Kind)+" "+c.From] += c.G
	}
	for what, want := range map[string]float64{
		"fat amber": 60, "fat birch": 40 + 3.6553734, "naoh " + pour.NameNaOH: 14.4930039, "lost " + pour.NameNaOH: 0.2957756, "water water": 31.4261565,
		"colour coal": 0.7310747, "scent hay": 3,
	} {
		if math.Abs(got[what]-want) > 1e-5 {
			t.Errorf("%s: %v g, by hand %v", what, got[what], want)
		}
		delete(got, what)
	}
	if len(got) > 0 {
		t.Errorf("more is in it: %v", got)
	}
}

// A bar that its pieces fill and more has no list, and says why.
func TestABarThatIsAllPiecesHasNoContents(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	p.Base.Size = pour.SizeMould
	p.Top.Embeds = []pour.Embed{{Name: "brick", Outline: pour.OutlineBox, LengthMM: 30, WidthMM: 80, HeightMM: 60, Material: pour.EmbedMelt, MadeOf: []pour.MadeOf{{Name: "Glycerin", Percent: 100}}}}
	s := pour.Weigh(p, shelf)
	if _, err := s.Contents(shelf, nil); err == nil || !strings.Contains(err.Error(), "more room than it has") {
		t.Errorf("a bar with %v g of base has contents: %v", s.Cut.Bars[0].BaseG, err)
	}
}
