package label_test

import (
	"math"
	"testing"

	"pourbench/chem"
	"pourbench/pour/label"
)

// How lists are written in five places, as far as these tests need it.
func listEU() label.Market {
	return label.Market{ID: "eu", Heading: "Ingredients:", ScentWord: "Parfum", FreePercent: 1, Allergens: label.AllergensLong, OverPercent: 0.01}
}

func listGB() label.Market {
	m := listEU()
	m.ID, m.Allergens = "gb", label.AllergensOld
	return m
}

func listUS() label.Market {
	return label.Market{
		ID: "us-cosmetic", Heading: "Ingredients:", WholeINCI: true, English: true, ScentWord: "Fragrance", ByName: true, FreePercent: 1, FreeAt: true,
		Allergens: label.AllergensNone,
	}
}

func listCA() label.Market {
	return label.Market{
		ID: "ca", Heading: "Ingredients - Ingrédients:", WholeINCI: true, EUTrivial: true, ScentWord: "Parfum", ScentLast: true, ByName: true, FreePercent: 1,
		FreeAt: true, Allergens: label.AllergensLong, OverPercent: 0.01,
	}
}

func listAU() label.Market {
	return label.Market{ID: "au", Heading: "Ingredients:", WholeINCI: true, English: true, ScentWord: "Parfum", FreePercent: 1, Allergens: label.AllergensNone}
}

func listed() []label.Market {
	return []label.Market{listEU(), listGB(), listUS(), listCA(), listAU()}
}

// Names as in the table of names this was worked out with.
func oliveName() label.Name {
	return label.Name{
		INCI: "Olea Europaea (Olive) Fruit Oil", Plain: "Olea Europaea Fruit Oil", English: "olive oil", Confidence: "memory",
		Salts: label.Salts{Sodium: "Sodium Olivate", Potassium: "Potassium Olivate", Confidence: "read (2nd-hand)"},
	}
}

func coconutName() label.Name {
	return label.Name{
		INCI: "Cocos Nucifera (Coconut) Oil", Plain: "Cocos Nucifera Oil", English: "coconut oil", Confidence: "memory",
		Salts: label.Salts{Sodium: "Sodium Cocoate", Potassium: "Potassium Cocoate", Confidence: "read (2nd-hand)"},
	}
}

func sheaName() label.Name {
	return label.Name{
		INCI: "Butyrospermum Parkii (Shea) Butter", Plain: "Butyrospermum Parkii Butter", English: "shea butter", Confidence: "read (2nd-hand)",
		Salts: label.Salts{Sodium: "Sodium Shea Butterate", Potassium: "Potassium Shea Butterate", Confidence: "read (2nd-hand)"},
	}
}

func named(inci, plain, english string) label.Name {
	return label.Name{INCI: inci, Plain: plain, English: english, Confidence: "read"}
}

func whiteName() label.Name {
	return label.Name{INCI: "Titanium Dioxide", Plain: "CI 77891", English: "titanium dioxide", Colour: true, Confidence: "read (2nd-hand)"}
}

func waterName() label.Name { return named("Water", "Aqua", "water") }

func naohName() label.Name { return named("Sodium Hydroxide", "", "lye") }

func kohName() label.Name { return named("Potassium Hydroxide", "", "lye") }

func oil(in string, n label.Name, from string, sap, g float64) label.Charge {
	return label.Charge{In: in, Kind: label.Fat, Name: n, From: from, G: g, Fat: chem.Fat{Kind: chem.Triglyceride, Sap: sap}}
}

// s1 is the worked example: olive 500, coconut 300, shea 200 g, 5 % lye discount, lye of 33 %, scent 30 g, titanium dioxide 4 g.
func s1() []label.Charge {
	const sodium = (500*191.5 + 300*256.5 + 200*177.5) / 56105.3 * 0.95 * 39.99677
	return []label.Charge{
		oil("base", oliveName(), "olive oil", 191.5, 500),
		oil("base", coconutName(), "coconut oil", 256.5, 300),
		oil("base", sheaName(), "shea butter", 177.5, 200),
		{In: "base", Kind: label.NaOH, Name: naohName(), From: "lye", G: sodium},
		{In: "base", Kind: label.Water, Name: waterName(), From: "water", G: sodium * 67 / 33},
		{In: "base", Kind: label.Scent, Name: label.Name{INCI: "garden"}, From: "garden", G: 30},
		{In: "base", Kind: label.Colour, Name: whiteName(), From: "titanium white", G: 4},
	}
}

func lines(t testing.TB, style label.Style, charges []label.Charge, m label.Market) []label.Line {
	t.Helper()
	made, err := label.Made(style, charges, m, false)
	if err != nil {
		t.Fatal(err)
	}
	return label.List(made, m)
}

// within fails the test where got is further than tolerance from want, or no number.
func within(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tolerance)
	}
}

// line is what a list is to say: text, g and percent.
type line struct {
	text       string
	g, percent float64
	free       bool
}

func compareLines(t *testing.T, got []label.Line, want []line) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%d lines, want %d", len(got), len(want))
	}
	for i := range min(len(got), len(want)) {
		if got[i].Text != want[i].text || got[i].Free != want[i].free {
			t.Errorf("line %d is %q, free %v; want %q, %v", i, got[i].Text, got[i].Free, want[i].text, want[i].free)
		}
		within(t, got[i].Text+", g", got[i].G, want[i].g, 0.01)
		within(t, got[i].Text+", %", got[i].Percent, want[i].percent, 0.001)
	}
}

// The worked example's tables, to 0.01 g and 0.001 %.
func TestAWorkedExampleAsSalts(t *testing.T) {
	compareLines(t, lines(t, label.AsSalts, s1(), listEU()), []line{
		{"Sodium Olivate", 490.08, 33.537, false},
		{"Sodium Cocoate", 297.12, 20.333, false},
		{"Aqua", 286.28, 19.591, false},
		{"Sodium Shea Butterate", 195.59, 13.385, false},
		{"Glycerin", 108.22, 7.406, false},
		{"Parfum", 30, 2.053, false},
		{"Olea Europaea Fruit Oil", 25, 1.711, false},
		{"Cocos Nucifera Oil", 15, 1.026, false},
		{"Butyrospermum Parkii Butter", 10, 0.684, true},
		{"CI 77891", 4, 0.274, false},
	})
}

func TestAWorkedExampleAsAdded(t *testing.T) {
	compareLines(t, lines(t, label.AsAdded, s1(), listEU()), []line{
		{"Olea Europaea Fruit Oil", 500, 34.217, false},
		{"Cocos Nucifera Oil", 300, 20.530, false},
		{"Aqua", 286.28, 19.591, false},
		{"Butyrospermum Parkii Butter", 200, 13.687, false},
		{"Sodium Hydroxide", 141, 9.649, false},
		{"Parfum", 30, 2.053, false},
		{"CI 77891", 4, 0.274, false},
	})
}

func TestAWorkedExampleSumsToItsBatch(t *testing.T) {
	for _, style := range []label.Style{label.AsAdded, label.AsSalts} {
		g, percent := 0.0, 0.0
		for _, l := range lines(t, style, s1(), listEU()) {
			g, percent = g+l.G, percent+l.Percent
		}
		within(t, string(style), g, 1461.28, 0.005)
		within(t, string(style)+", %", percent, 100, 1e-9)
	}
}

// The worked example's texts in three places.
func TestAWorkedExampleAsPrinted(t *testing.T) {
	found := []label.Found{{Name: "Linalool", Named: true}, {Name: "Citral"}, {Name: "Coumarin", Named: true}}
	for what, c := range map[string]struct {
		style label.Style
		m     label.Market
		found []label.Found
		want  string
	}{
		"EU, salts": {label.AsSalts, listEU(), found, "Ingredients: Sodium Olivate, Sodium Cocoate, Aqua, Sodium Shea Butterate, Glycerin, Parfum, Olea Europaea Fruit Oil, " +
			"Cocos Nucifera Oil, Butyrospermum Parkii Butter, Linalool, Coumarin, CI 77891"},
		"EU, added": {label.AsAdded, listEU(), found, "Ingredients: Olea Europaea Fruit Oil, Cocos Nucifera Oil, Aqua, Butyrospermum Parkii Butter, Sodium Hydroxide, Parfum, " +
			"Linalool, Coumarin, CI 77891"},
		"US, added": {label.AsAdded, listUS(), nil, "Ingredients: Olea Europaea (Olive) Fruit Oil, Cocos Nucifera (Coconut) Oil, Water, Butyrospermum Parkii (Shea) Butter, " +
			"Sodium Hydroxide, Fragrance, Titanium Dioxide"},
		"Canada, added": {label.AsAdded, listCA(), nil, "Ingredients - Ingrédients: Olea Europaea (Olive) Fruit Oil, Cocos Nucifera (Coconut) Oil, Aqua, " +
			"Butyrospermum Parkii (Shea) Butter, Sodium Hydroxide, Titanium Dioxide, Parfum"},
		"Canada, with allergens": {label.AsAdded, listCA(), found, "Ingredients - Ingrédients: Olea Europaea (Olive) Fruit Oil, Cocos Nucifera (Coconut) Oil, Aqua, " +
			"Butyrospermum Parkii (Shea) Butter, Sodium Hydroxide, Linalool, Coumarin, Titanium Dioxide, Parfum"},
	} {
		if got := label.Text(lines(t, c.style, s1(), c.m), c.found, c.m); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", what, got, c.want)
		}
	}
	if got := label.Text(nil, found[:0], listEU()); got != "" {
		t.Errorf("a list of nothing says %q", got)
	}
}
