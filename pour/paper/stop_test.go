package paper

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// negative is a weight or a volume below nothing.
func negative() *regexp.Regexp { return regexp.MustCompile(`-\d[\d.]* ?(g|oz|mL)\b`) }

// drawStopped is a plan with a batch that cannot be mixed: too little oil for its carriers, or more water than its lye wants.
func drawStopped(t *rapid.T) pour.Plan {
	p := testPlan()
	b := &p.Base
	if rapid.Bool().Draw(t, "icing") {
		b = p.Icing
	} else if rapid.Bool().Draw(t, "sized by oils") {
		b.Size, b.OilsG = pour.SizeOils, rapid.Float64Range(50, 5000).Draw(t, "oils")
	}
	if rapid.Bool().Draw(t, "no icing") && b == &p.Base {
		p.Icing = nil
	}
	if rapid.Bool().Draw(t, "ready blend") {
		b.ReadyBlend = "house blend"
	}
	if rapid.Bool().Draw(t, "oz") {
		p.Show.Mass = "oz"
	}
	switch rapid.IntRange(0, 2).Draw(t, "how") {
	case 0:
		b.Carrier = pour.CarrierBatch
		part := rapid.Float64Range(0.01, 1).Draw(t, "olive")
		b.Oils = []pour.OilPart{{Oil: "olive", Percent: part}, {Oil: "coconut", Percent: 100 - part}}
		b.Jugs[0].Colourants = []pour.Dose{{Colourant: "white", DosePercent: rapid.Float64Range(2, 10).Draw(t, "dose"), CarrierParts: 4}}
	case 1:
		b.Extras = []pour.ExtraPart{{Extra: "milk", PercentOfOils: rapid.Float64Range(40, 50).Draw(t, "milk")}}
	default:
		b.StockLyePercent, b.LyeConcentrationPercent = rapid.Float64Range(12, 30).Draw(t, "stock"), 40
	}
	return p
}

func TestNoPaperOfABatchThatCannotBeMixedHoldsAWeightBelowNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := work(drawStopped(t))
		if !s.LyeStopped() {
			t.Fatal("no stop stands on the lye")
		}
		warnings, _ := Check(s, nil)
		for _, text := range []string{Checklist(s, testShelf()), Bench(s, testShelf(), false), warnings} {
			if bad := negative().FindString(text); bad != "" || strings.Contains(text, "NaN") {
				t.Fatalf("the paper says %q:\n%s", bad, text)
			}
		}
	})
}

func TestFiguresThatFollowFromAnUnknownAreNull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := work(drawStopped(t))
		got := figures(t, s)
		null := func(what string, v any) {
			if v != nil {
				t.Fatalf("%s is %v, want null", what, v)
			}
		}
		for _, b := range s.Batches() {
			if b.Refused.Masses == "" {
				continue
			}
			r := got[string(b.Name)].(map[string]any)
			null("batter_g", r["batter_g"])
			null("batter_ml", r["batter_ml"])
			if s.Plan.Batch(b.Name).Size != pour.SizeOils {
				null("oils_g", r["oils_g"])
				null("naoh_pure_g", r["naoh_pure_g"])
			}
			for _, j := range r["jugs"].([]any) {
				jug := j.(map[string]any)
				for _, key := range []string{"batter_g", "batter_weigh_g", "total_g", "superfat_percent", "superfat_low_percent"} {
					null(key, jug[key])
				}
				null("emulsion", jug["stage_min"].(map[string]any)["emulsion"].([]any)[1])
				for _, c := range jug["colourants"].([]any) {
					null("pigment_g", c.(map[string]any)["pigment_g"])
				}
			}
		}
		bars := got["bars"].(map[string]any)
		null("cut_g", bars["cut_g"])
		null("cured_g", bars["cured_g"])
	})
}
