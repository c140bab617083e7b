package presets_test

import (
	"math"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

func TestEveryOilSaysItsFreeAcidWithinItsLimit(t *testing.T) {
	limits := map[string]float64{ // percent as oleic acid, all from memory
		"olive": 2, "olive-pomace": 1, // Codex STAN 33-1981: virgin oil, pomace oil
		"hemp-seed": 2, "linseed": 2, "rosehip": 2, "murumuru": 2, // Codex CXS 210: virgin oils, acid value 4.0
		"shea": 3, "cocoa-butter": 1.75, // Codex CXS 325R, grade 2; Codex CXS 86
		"castor": 1.01, "sweet-almond": 0.26, // British Pharmacopoeia and Ph. Eur.: acid values 2.0 and 0.5
		"lard": 0.66, "tallow": 1.26, // Codex CXS 211-1999: acid values 1.3 and 2.5
		"lanolin": 0.51, "argan": 0.8, // Ph. Eur.: acid value 1.0; SNIMA 08.5.090, extra virgin
		"mango-butter": 3, "kokum-butter": 3, "neem": 5, "jojoba": 1, "camellia": 1, "sal-butter": 1, // common practice, no source
		"chicken-fat": 1, "duck-fat": 1, "goose-fat": 1,
		"stearic-acid": 100, "oleic-acid": 100, "lauric-acid": 100, // by their kind
		"beeswax": 24 * 0.50346, "carnauba": 7 * 0.50346, "tamanu": 40 * 0.50346, "pine-tar": 100 * 0.50346, // highest acid values
	}
	for _, o := range shelf(t).Oils {
		limit, named := limits[o.ID]
		delete(limits, o.ID)
		if !named {
			limit = 0.3 // Codex CXS 210 (memory): refined oils, acid value 0.6
		}
		if f := o.FreeAcidPercent; !f.Known || f.V <= 0 || f.V > limit {
			t.Errorf("%s: free acid %+v, want known and at most %g", o.ID, f, limit)
		}
	}
	for id := range limits {
		t.Errorf("%s is no oil of the shelf", id)
	}
}

// One mg KOH per g of acid value is 282.468 / 561.053 % oleic acid: ISO 660 (memory).
func TestFreeAcidFollowsFromTheAcidValue(t *testing.T) {
	s := shelf(t)
	for id, value := range map[string]float64{"beeswax": 20.5, "tamanu": 30, "carnauba": 4.5, "pine-tar": 65} {
		o, _ := s.Oil(id)
		if want := value * 282.468 / 561.053; math.Abs(o.FreeAcidPercent.V-want) > 0.35 {
			t.Errorf("%s: free acid %g %%, want %.2f from acid value %g", id, o.FreeAcidPercent.V, want, value)
		}
	}
}

func TestWaxesAndTarsAreKeptApartFromFats(t *testing.T) {
	s := shelf(t)
	for _, c := range []struct {
		id    string
		kind  chem.Kind
		resin bool
	}{
		{"beeswax", chem.WaxEster, true},
		{"lanolin", chem.WaxEster, true},
		{"carnauba", chem.WaxEster, true},
		{"jojoba", chem.WaxEster, false},
		{"pine-tar", chem.FreeAcid, true},
		{"oleic-acid", chem.FreeAcid, false},
		{"lauric-acid", chem.FreeAcid, false},
	} {
		o, ok := s.Oil(c.id)
		if !ok || o.Fat.Kind != c.kind || o.Fat.Resin != c.resin {
			t.Errorf("%s = %s, resin %v; want %s, %v", c.id, o.Fat.Kind, o.Fat.Resin, c.kind, c.resin)
		}
		if g := (chem.Blend{{Fat: o.Fat, G: 100}}).GlycerolG(); g != 0 {
			t.Errorf("%s gives %g g glycerol", c.id, g)
		}
		if c.resin && o.Fat.Kind == chem.WaxEster && o.Fat.UnsaponifiableGKg < 400 {
			t.Errorf("%s: %g g/kg unsaponifiable: half of a wax is alcohols", c.id, o.Fat.UnsaponifiableGKg)
		}
	}
}

// USDA National Nutrient Database for Standard Reference, release 24 (read in a packaged copy), g per 100 g.
func TestExtrasHoldTheWaterAndFatOfTheFoodTable(t *testing.T) {
	s := shelf(t)
	for _, c := range []struct {
		id         string
		water, fat float64
	}{
		{"cow-milk", 88.13, 3.25},
		{"goat-milk", 87.03, 4.14},
		{"buttermilk", 90.13, 0.88},
		{"yoghurt", 87.9, 3.25},
		{"coconut-milk", 72.88, 21.33},
		{"egg-yolk", 52.31, 26.54},
		{"avocado-puree", 73.23, 14.66},
		{"banana-puree", 74.91, 0},
		{"berry-puree", 90.95, 0},
		{"carrot-puree", 88.29, 0},
		{"pumpkin-puree", 91.6, 0},
		{"cucumber-puree", 95.23, 0}, // fat under 0.4 is left out of the five before
		{"colloidal-oats", 8.22, 6.9},
		{"vinegar", 93.81, 0},
		{"honey", 17.1, 0},
		{"tea", 99.7, 0},
	} {
		x, ok := s.Extra(c.id)
		if !ok || math.Abs(x.WaterPercent-c.water) > 0.06 || math.Abs(x.FatPercent-c.fat) > 0.06 {
			t.Errorf("%s: water %g, fat %g; want %g, %g", c.id, x.WaterPercent, x.FatPercent, c.water, c.fat)
		}
	}
	for _, x := range s.Extras {
		if x.FatPercent > 0 && (x.FatSapKOHMgG < 180 || x.FatSapKOHMgG > 260) {
			t.Errorf("%s: its fat has a saponification value of %g, no food fat's", x.ID, x.FatSapKOHMgG)
		}
		if d := x.ClockDosePercent(); x.ClockFactor != 1 && (d < x.DoseLowPercent || d > x.DoseHighPercent || x.ClockAtPercent == 0) {
			t.Errorf("%s: its clock factor is stated at %g %%, its doses are %g to %g", x.ID, x.ClockAtPercent, x.DoseLowPercent, x.DoseHighPercent)
		}
	}
}

// Alkali by plain arithmetic: grams of acid or phenol per gram, its acid groups, and its molar mass.
func TestAcidsAndPhenolsTakeTheirShareOfAlkali(t *testing.T) {
	const koh = 56105.3 // mg per mol
	s := shelf(t)
	for id, want := range map[string]float64{
		"vinegar":     koh * 0.05 / 60.052,       // acetic acid, 5 % by its name
		"yoghurt":     koh * 0.010 / 90.078,      // lactic acid, memory
		"buttermilk":  koh * 0.008 / 90.078,      // lactic acid, memory
		"wine":        2 * koh * 0.008 / 150.087, // tartaric acid, memory
		"berry-puree": 3 * koh * 0.009 / 192.123, // citric acid, memory
	} {
		if x, _ := s.Extra(id); math.Abs(x.AlkaliKOHMgG-want) > 0.01 {
			t.Errorf("%s takes %g mg KOH/g, want %.3f", id, x.AlkaliKOHMgG, want)
		}
	}
	for id, want := range map[string]float64{
		"clove-bud-oil":     koh * 0.80 / 164.2, // eugenol, share from memory
		"cinnamon-leaf-oil": koh * 0.75 / 164.2,
		"basil-oil":         koh * 0.05 / 164.2,
		"thyme-oil":         koh * 0.45 / 150.22,               // thymol and carvacrol
		"benzoin":           koh * (0.15/122.12 + 0.01/152.15), // benzoic acid and vanillin
	} {
		if sc, _ := s.Scent(id); math.Abs(sc.AlkaliKOHMgG-want) > 4 {
			t.Errorf("%s takes %g mg KOH/g, want %.1f", id, sc.AlkaliKOHMgG, want)
		}
	}
	for _, sc := range s.Scents {
		if !sc.Invented {
			continue
		}
		want := koh * sc.VanillinPercent / 100 / 152.15
		for _, a := range sc.Allergens {
			if a.Name == "eugenol" {
				want += koh * a.Percent / 100 / 164.2
			}
		}
		if math.Abs(sc.AlkaliKOHMgG-want) > 0.06 {
			t.Errorf("%s takes %g mg KOH/g, want %.2f for its vanillin and eugenol", sc.ID, sc.AlkaliKOHMgG, want)
		}
	}
}

// Clove and cinnamon leaf seize at a few percent (common practice, no source; the clock's evidence E34 on clove oil).
func TestCloveIsAsQuickAsPracticeSays(t *testing.T) {
	s := shelf(t)
	strong, _, _ := clock.ScentPrior(pour.BehaviourStrong)
	for _, id := range []string{"clove-bud-oil", "cinnamon-leaf-oil", "scree-carnation"} {
		sc, ok := s.Scent(id)
		ln, _, _ := clock.ScentPrior(s.BehaviourOf(sc))
		if !ok || s.BehaviourOf(sc) != pour.BehaviourSeizes || ln <= strong || sc.AlkaliKOHMgG < 60 {
			t.Errorf("%s = %+v: want it to seize and to take up alkali", id, sc)
		}
		at1 := math.Exp(ln * 1 / sc.TestLoadPercent)
		if at1 < 1.5 || at1 > 3 {
			t.Errorf("%s at 1 %% makes the batter %.1f times as fast, want about twice (common practice, no source)", id, at1)
		}
	}
}

func TestMicaAndCharcoalAreWettedNotPasted(t *testing.T) {
	for _, c := range shelf(t).Colourants { // all common practice, no source
		least, most := 2.0, 3.0
		switch {
		case c.Class == "mica" || c.ID == "chlorophyllin":
			least, most = 9, 11
		case c.ID == "activated-charcoal":
			least, most = 5, 8
		}
		if c.CarrierParts < least || c.CarrierParts > most {
			t.Errorf("%s: %g parts of carrier, want %g to %g", c.ID, c.CarrierParts, least, most)
		}
	}
}

func TestFluorescentsAndHennaCarryTheirCautions(t *testing.T) {
	s := shelf(t)
	for _, id := range []string{"fluorescent-pink", "fluorescent-orange", "fluorescent-yellow", "fluorescent-green", "henna", "chlorophyllin"} {
		if c, ok := s.Colourant(id); !ok || c.Caution == "" {
			t.Errorf("%s = %+v: want it with its caution", id, c)
		}
	}
}
