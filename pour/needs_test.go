package pour_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/lot"
	"pourbench/pour/pourtest"
	"pourbench/presets"
)

// What a plan needs of its materials is what its list of everything to weigh adds up to, thing by thing, and embeds are all there by the piece.
func TestNeedsAddUpToWhatIsWeighed(t *testing.T) {
	for _, name := range presets.Plans() {
		plan, shelf := example(t, name)
		addUp(t, pour.Weigh(plan, shelf), shelf)
	}
	plan, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		addUp(t, pour.Weigh(pourtest.Rich(t, plan, shelf), shelf), shelf)
	})
}

func addUp(t interface {
	Helper()
	Errorf(string, ...any)
}, s pour.Sheet, shelf pour.Shelf,
) {
	t.Helper()
	needs := s.Needs(shelf)
	have := map[string]float64{}
	pieces := map[string]int{}
	for _, n := range needs {
		if n.Material.Kind == lot.Embed {
			pieces[n.Name] += int(n.Q / lot.One)
			continue
		}
		have[n.Kind+" "+n.Name] += n.Q.V()
	}
	for _, w := range s.Totals {
		key := w.Kind + " " + w.Name
		if w.Kind == pour.WeighEmbed || math.IsNaN(w.G) {
			continue
		}
		if refused := slices.ContainsFunc(s.Batches(), func(b *pour.BatchSheet) bool { return b.Refused.Masses != "" }); refused && w.Kind != pour.WeighTopping {
			continue
		}
		if math.Abs(have[key]-w.G) > 1e-3 {
			t.Errorf("%s: the list has %v g, the needs %v g", key, w.G, have[key])
		}
		delete(have, key)
	}
	for key, g := range have {
		if g > 0 && !slices.ContainsFunc(s.Totals, func(w pour.Weighing) bool { return math.IsNaN(w.G) }) {
			t.Errorf("%s is needed, %v g of it, and not on the list", key, g)
		}
	}
	for _, k := range s.Embeds {
		if pieces[k.Name] != len(k.Pieces) {
			t.Errorf("%d pieces of %s are needed of %d", pieces[k.Name], k.Name, len(k.Pieces))
		}
	}
}

// Every material is named as the shelf names it, so that packs of it are found: five batters of which each line stands in its plan.
func TestNeedsNameTheMaterial(t *testing.T) {
	shelf := roundShelf(t)
	p := handMade(t)
	b := &p.Base
	b.CarrierOil = "birch"
	b.Extras = []pour.ExtraPart{{Extra: "salt", PercentOfOils: 2}, {Extra: "coal", PercentOfOils: 1}}
	b.Jugs = []pour.Jug{{Name: "pot", SharePercent: 60}, {Name: "jug", SharePercent: 40, Colourants: []pour.Dose{
		{Colourant: "coal", DosePercent: 1, Carrier: pour.CarryOil}, {Colourant: "clay", DosePercent: 1, Carrier: pour.CarryGlycerin},
	}}}
	b.Scents = []pour.ScentPart{{Scent: "hay", PercentOfOils: 3, Into: []string{"jug"}}}
	s := pour.Weigh(p, shelf)
	got := map[string]float64{}
	for _, n := range s.Needs(shelf) {
		got[n.Jug+": "+n.Material.String()] += n.Q.V()
	}
	// 600 g and 400 g of a kilogram; demand 600*190 + 400*250 = 214 g KOH, 0.95*214*0.7128870 = 144.93 g NaOH, 144.9 on the scale.
	for key, want := range map[string]float64{
		": oil amber": 600, ": oil birch": 400, ": alkali naoh": 144.9, ": extra salt": 20, ": colourant coal": 10, "jug: scent hay": 30,
	} {
		if math.Abs(got[key]-want) > 1e-9 {
			t.Errorf("of %q there are %v g, want %v", key, got[key], want)
		}
	}
	for _, key := range []string{": other water", "jug: colourant coal", "jug: oil birch", "jug: colourant clay", "jug: extra glycerin"} {
		if got[key] <= 0 {
			t.Errorf("nothing of %q is needed: %v", key, got)
		}
	}
	b.ReadyBlend, b.StockLyePercent, b.LyeConcentrationPercent = "House Blend", 50, 30
	s = pour.Weigh(p, shelf)
	var names []string
	for _, n := range s.Needs(shelf) {
		names = append(names, n.Material.String())
	}
	if !slices.Contains(names, "blend house-blend") || !slices.Contains(names, "blend stock-lye") || slices.Contains(names, "oil amber") || slices.Contains(names, "alkali naoh") {
		t.Errorf("a ready blend and a stock lye are named %q", names)
	}
}

// What cannot be mixed needs nothing; what cannot be known is no zero.
func TestABatchThatCannotBeMixedNeedsNothing(t *testing.T) {
	p := handMade(t)
	p.Base.Oils = []pour.OilPart{{Oil: "amber", Percent: 40, Held: true}}
	s := pour.Weigh(p, roundShelf(t))
	if needs := s.Needs(roundShelf(t)); len(needs) != 0 {
		t.Errorf("an unfinished blend needs %+v", needs)
	}
}
