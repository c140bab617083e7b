package label_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour/label"
)

// someAllergens are rows of Annex III of Regulation (EC) 1223/2009 as amended by (EU) 2023/1545, and of what it prohibits, as far as these tests need them.
func someAllergens() []label.Allergen {
	old := func(name string, cas ...string) label.Allergen {
		return label.Allergen{Name: name, CAS: cas, Old: true}
	}
	return []label.Allergen{
		old("Linalool", "78-70-6"),
		old("Limonene", "138-86-3", "7705-14-8", "5989-27-5", "5989-54-8"),
		old("Coumarin", "91-64-5"),
		{Name: "Citral", Covers: []string{"Citral", "Geranial", "Neral"}, CAS: []string{"5392-40-5", "141-27-5", "106-26-3"}, Group: true, Old: true},
		old("Geraniol", "106-24-1"),
		old("Benzyl Alcohol", "100-51-6"),
		old("Benzyl Salicylate", "118-58-1"),
		{Name: "Linalyl Acetate", CAS: []string{"115-95-7"}},
		{Name: "Vanillin", CAS: []string{"121-33-5"}},
		{Name: "Pinene", Covers: []string{"alpha-Pinene", "beta-Pinene"}, CAS: []string{"80-56-8", "127-91-3"}},
		{Name: "Lavandula Oil/Extract", Covers: []string{"Lavandula Angustifolia Oil"}, CAS: []string{"8000-28-0"}, Group: true, Extract: true},
		{Name: "Citrus Aurantium Flower Oil", CAS: []string{"8028-48-6", "72968-50-4"}, Extract: true},
		{Name: "Citrus Aurantium Peel Oil", CAS: []string{"8028-48-6", "72968-50-4"}, Extract: true},
		{Name: "Methyl Eugenol", CAS: []string{"93-15-2"}, CapOnly: true, MostRinse: 0.001},
		{Name: "Atranol", CAS: []string{"526-37-4"}, Prohibited: true},
		{Name: "Isoeugenol", CAS: []string{"97-54-1"}, Old: true, MostRinse: 0.02},
	}
}

// a1 is the worked example: 110 g of base with 3 % of fragrance A and 0.5 % of lavender oil, 30 g of icing with 1.5 % of fragrance B.
func a1() []label.ScentIn {
	return []label.ScentIn{
		{Name: "A", G: 3.3, Parts: []label.Part{{Name: "d-Limonene", CAS: "5989-27-5", Percent: 12}, {Name: "Linalool", Percent: 8}, {Name: "Coumarin", CAS: "91-64-5", Percent: 0.25}, {Name: "Neral", Percent: 0.1}}},
		{Name: "lavender", G: 0.55, Extract: "Lavandula Oil/Extract", Parts: []label.Part{{Name: "LINALOOL", Percent: 35}, {Name: "Linalyl Acetate", Percent: 38}, {Name: "Geraniol", Percent: 0.4}}},
		{Name: "B", G: 0.45, Parts: []label.Part{
			{Name: "Vanillin", Percent: 6}, {Name: "Coumarin", Percent: 1.2}, {Name: "Linalool", Percent: 0.1}, {Name: "Benzyl Alcohol", Percent: 2}, {Name: "Benzyl Salicylate", Percent: 0.8},
		}},
	}
}

// The worked example's table to 0.00001 g and %, whose traps are: coumarin is under the threshold in either scent, over it in both on the cured bar and
// under it on the cut one; vanillin is in the icing alone.
func TestAllergensOfAWorkedExample(t *testing.T) {
	found := label.Allergens(a1(), 140, 126, listEU(), someAllergens())
	for i, want := range []struct {
		name          string
		g, cut, cured float64
		named         bool
		from          string
	}{
		{"Lavandula Oil/Extract", 0.55, 0.39286, 0.43651, true, "lavender"},
		{"Linalool", 0.45695, 0.32639, 0.36266, true, "A lavender B"},
		{"Limonene", 0.396, 0.28286, 0.31429, true, "A"},
		{"Linalyl Acetate", 0.209, 0.14929, 0.16587, true, "lavender"},
		{"Vanillin", 0.027, 0.01929, 0.02143, true, "B"},
		{"Coumarin", 0.01365, 0.00975, 0.01083, true, "A B"},
		{"Benzyl Alcohol", 0.009, 0.00643, 0.00714, false, "B"},
		{"Benzyl Salicylate", 0.0036, 0.00257, 0.00286, false, "B"},
		{"Citral", 0.0033, 0.00236, 0.00262, false, "A"},
		{"Geraniol", 0.0022, 0.00157, 0.00175, false, "lavender"},
	} {
		if len(found) != 10 {
			t.Fatalf("%d allergens, want 10", len(found))
		}
		f := found[i]
		from := ""
		for _, s := range f.From {
			from += " " + s.Scent
		}
		if f.Name != want.name || f.Named != want.named || from != " "+want.from || f.Unlisted {
			t.Errorf("%d: %+v, want %+v", i, f, want)
		}
		within(t, f.Name+", g", f.G, want.g, 0.000005)
		within(t, f.Name+", % of cut", f.CutPercent, want.cut, 0.000005)
		within(t, f.Name+", % of cured", f.CuredPercent, want.cured, 0.000005)
	}
	within(t, "linalool of lavender", found[1].From[1].G, 0.1925, 0.000005)
}

func namedIn(found []label.Found) string {
	var names []string
	for _, f := range found {
		if f.Named {
			names = append(names, f.Name)
		}
	}
	return strings.Join(names, ", ")
}

func TestWhichListOfAllergensAMarketHas(t *testing.T) {
	long := "Lavandula Oil/Extract, Linalool, Limonene, Linalyl Acetate, Vanillin, Coumarin"
	for _, c := range []struct {
		m    label.Market
		want string
	}{{listEU(), long}, {listCA(), long}, {listGB(), "Linalool, Limonene, Coumarin"}, {listUS(), ""}, {listAU(), ""}} {
		found := label.Allergens(a1(), 140, 126, c.m, someAllergens())
		if got := namedIn(found); got != c.want || len(found) != 10 {
			t.Errorf("%s names %q of %d, want %q", c.m.ID, got, len(found), c.want)
		}
	}
}

// Above 0.01 % is named, exactly so much is not, whatever binary rounding makes of it.
func TestExactlyTheThresholdIsNotNamed(t *testing.T) {
	for percent, want := range map[float64]bool{0.01: false, 0.01001: true, 0.0099999: false} {
		for _, cured := range []float64{100, 126, 97.3, 1e4} {
			one := []label.ScentIn{{Name: "A", G: cured / 7, Parts: []label.Part{{Name: "Coumarin", Percent: 7 * percent}}}}
			if got := namedIn(label.Allergens(one, cured, cured, listEU(), someAllergens())); (got != "") != want {
				t.Errorf("%v %% of %v g: %q", percent, cured, got)
			}
			thirds := []label.ScentIn{one[0], one[0], one[0]}
			for i := range thirds {
				thirds[i].G /= 3
				thirds[i].Name += strings.Repeat("'", i)
			}
			if got := namedIn(label.Allergens(thirds, cured, cured, listEU(), someAllergens())); (got != "") != want {
				t.Errorf("%v %% of %v g from three scents: %q", percent, cured, got)
			}
		}
	}
}

// A group is one name for the sum of its members; each alone is under the threshold here.
func TestAGroupIsNamedOnItsSum(t *testing.T) {
	pine := []label.ScentIn{{Name: "pine", G: 1, Parts: []label.Part{{Name: "a", CAS: "80-56-8", Percent: 0.6}, {Name: "beta-pinene", Percent: 0.6}}}}
	found := label.Allergens(pine, 100, 100, listEU(), someAllergens())
	if len(found) != 1 || found[0].Name != "Pinene" || !found[0].Named || len(found[0].From) != 1 {
		t.Errorf("%+v", found)
	}
	within(t, "pinene", found[0].G, 0.012, 1e-12)
}

// All of an oil that is listed counts once, though its statement names it again or by another of its names, and its parts count beside.
func TestAListedOilCountsWithAllOfItsMassOnce(t *testing.T) {
	for _, extract := range []string{"Lavandula Oil/Extract", "lavandula angustifolia oil"} {
		oil := []label.ScentIn{{Name: "lavender", G: 2, Extract: extract, Parts: []label.Part{{Name: "lavender", CAS: "8000-28-0", Percent: 100}, {Name: "Linalool", Percent: 35}}}}
		found := label.Allergens(oil, 100, 90, listEU(), someAllergens())
		if len(found) != 2 || found[0].Name != "Lavandula Oil/Extract" || found[0].G != 2 || found[1].Name != "Linalool" {
			t.Errorf("%s: %+v", extract, found)
		}
	}
	// Some of it in a fragrance counts with its part.
	mixed := []label.ScentIn{{Name: "meadow", G: 2, Parts: []label.Part{{Name: "Lavandula Angustifolia Oil", Percent: 10}}}}
	found := label.Allergens(mixed, 100, 90, listEU(), someAllergens())
	if len(found) != 1 || found[0].Name != "Lavandula Oil/Extract" {
		t.Fatalf("%+v", found)
	}
	within(t, "of 2 g", found[0].G, 0.2, 1e-12)
}

// One number in two rows of the list is asked about; what no list has is shown; neither is ever named or counted elsewhere.
func TestWhatCannotBeTakenForOneRowIsNeverNamed(t *testing.T) {
	scent := []label.ScentIn{{Name: "orange", G: 2, Extract: "Nowhere Oil", Parts: []label.Part{{Name: "orange", CAS: "8028-48-6", Percent: 90}, {Name: "Hedione", CAS: "24851-98-7", Percent: 5}}}}
	found := label.Allergens(scent, 100, 90, listEU(), someAllergens())
	if len(found) != 3 || namedIn(found) != "" {
		t.Fatalf("%+v", found)
	}
	for i, want := range []string{"Nowhere Oil", "orange", "Hedione"} {
		if f := found[i]; f.Name != want || !f.Unlisted || (len(f.Either) == 2) != (want == "orange") {
			t.Errorf("%d: %+v", i, f)
		}
	}
	if e := found[1].Either; len(e) == 2 && (e[0] != "Citrus Aurantium Flower Oil" || e[1] != "Citrus Aurantium Peel Oil") {
		t.Errorf("it is asked whether it is %v", e)
	}
}

// A part whose number is not decided is not added to a row of the same name.
func TestAnUndecidedPartStaysBesideItsNamesake(t *testing.T) {
	scents := []label.ScentIn{
		{Name: "A", G: 1, Parts: []label.Part{{Name: "Citrus Aurantium Peel Oil", Percent: 10}}},
		{Name: "B", G: 1, Parts: []label.Part{{Name: "citrus aurantium peel oil, cold", CAS: "8028-48-6", Percent: 10}}},
	}
	found := label.Allergens(scents, 100, 90, listEU(), someAllergens())
	if len(found) != 2 || found[0].Unlisted == found[1].Unlisted {
		t.Errorf("%+v", found)
	}
}

// Prohibited is over at any amount, a cap is over above it, and neither is a name for the label.
func TestProhibitedAndCapped(t *testing.T) {
	scents := func(eugenol, iso float64) []label.ScentIn {
		return []label.ScentIn{{Name: "A", G: 1, Parts: []label.Part{{Name: "Atranol", Percent: 0.0001}, {Name: "Methyl Eugenol", Percent: eugenol}, {Name: "Isoeugenol", Percent: iso}}}}
	}
	for _, c := range []struct {
		eugenol, iso float64
		over         string
	}{{0.1, 2, "Atranol"}, {0.1001, 2.001, "Isoeugenol Methyl Eugenol Atranol"}} {
		var over, named []string
		for _, f := range label.Allergens(scents(c.eugenol, c.iso), 120, 100, listEU(), someAllergens()) {
			if f.Over {
				over = append(over, f.Name)
			}
			if f.Named {
				named = append(named, f.Name)
			}
			if f.Prohibited != (f.Name == "Atranol") || f.Most != map[string]float64{"Methyl Eugenol": 0.001, "Isoeugenol": 0.02}[f.Name] {
				t.Errorf("%+v", f)
			}
		}
		if strings.Join(over, " ") != c.over || strings.Join(named, " ") != "Isoeugenol" {
			t.Errorf("%v, %v: over %v, named %v", c.eugenol, c.iso, over, named)
		}
	}
}

func TestAllergensOfNoBar(t *testing.T) {
	for _, cured := range []float64{0, -1, math.NaN()} {
		found := label.Allergens(a1(), cured, cured, listEU(), someAllergens())
		if len(found) != 10 || namedIn(found) != "" || !math.IsNaN(found[0].CuredPercent) || !math.IsNaN(found[0].CutPercent) {
			t.Errorf("a bar of %v g: %+v", cured, found[0])
		}
	}
	if found := label.Allergens([]label.ScentIn{{Name: "A", Parts: a1()[0].Parts, Extract: "Pinene"}}, 100, 90, listEU(), someAllergens()); len(found) != 0 {
		t.Errorf("no scent has %+v", found)
	}
	if found := label.Allergens(a1(), 140, 126, listEU(), nil); namedIn(found) != "" || len(found) == 0 || !found[0].Unlisted {
		t.Errorf("without a list: %+v", found)
	}
}
