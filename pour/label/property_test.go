package label_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
	"pourbench/pour/label"
)

// drawn are substances that bars are drawn of. Palm and its olein have one name, kokum's soap has none, the last colour is in no table.
func drawn() []label.Charge {
	palm := named("Elaeis Guineensis (Palm) Oil", "", "palm oil")
	palm.Salts = label.Salts{Sodium: "Sodium Palmate", Potassium: "Potassium Palmate", Confidence: "read"}
	kokum := named("Garcinia Indica Seed Butter", "", "")
	kokum.Salts = label.Salts{Sodium: "Sodium Kokum Butterate", Unassigned: true}
	stearic := label.Charge{Kind: label.Fat, Name: named("Stearic Acid", "", ""), Fat: chem.Fat{Kind: chem.FreeAcid, Sap: 197}}
	stearic.Name.Salts = label.Salts{Sodium: "Sodium Stearate", Potassium: "Potassium Stearate", Confidence: "read"}
	return []label.Charge{
		oil("", oliveName(), "olive oil", 191.5, 0), oil("", coconutName(), "coconut oil", 256.5, 0), oil("", palm, "palm oil", 199, 0), oil("", palm, "palm olein", 199, 0),
		oil("", kokum, "kokum butter", 190, 0), stearic,
		{Kind: label.Fat, Name: named("Beeswax", "Cera Alba", "beeswax"), Fat: chem.Fat{Kind: chem.WaxEster, Sap: 94}},
		alkali("", label.NaOH, 0), alkali("", label.KOH, 0),
		{Kind: label.Lost, Name: naohName()},
		{Kind: label.Water, Name: waterName()},
		acid("", named("Citric Acid", "", ""), 0, 876.084, 0.2813, label.Salts{Sodium: "Sodium Citrate", Potassium: "Potassium Citrate", Confidence: "read"}),
		acid("", named("Milk", "Lac", "milk"), 0, 5, 0, label.Salts{}),
		{Kind: label.Scent, Name: label.Name{INCI: "garden"}, From: "garden"},
		{Kind: label.Scent, Name: label.Name{INCI: "meadow"}, From: "meadow"},
		{Kind: label.Colour, Name: whiteName()},
		{Kind: label.Colour, Name: label.Name{INCI: "Red 40", Plain: "CI 16035", Colour: true, Confidence: "read"}},
		{Kind: label.Colour, Name: label.Name{INCI: "sunset"}},
		{Kind: label.Other, Name: named("Mica", "", "")},
		{Kind: label.Other, Name: named("Sucrose", "", "sugar")},
		{Kind: label.Other, Name: label.Name{INCI: "stardust"}},
	}
}

// drawBar draws what went into a bar of up to three mixings, with much or little alkali or none.
func drawBar(t *rapid.T) []label.Charge {
	of := drawn()
	n := rapid.IntRange(1, 30).Draw(t, "charges")
	bar := make([]label.Charge, n)
	for i := range bar {
		bar[i] = rapid.SampledFrom(of).Draw(t, "of")
		bar[i].In = rapid.SampledFrom([]string{"base", "icing", "stars"}).Draw(t, "in")
		bar[i].G = rapid.Float64Range(0.001, 50).Draw(t, "g")
	}
	return bar
}

func drawList(t *rapid.T) (label.Style, label.Market, bool) {
	return rapid.SampledFrom([]label.Style{label.AsAdded, label.AsSalts}).Draw(t, "style"), rapid.SampledFrom(listed()).Draw(t, "market"), rapid.Bool().Draw(t, "English")
}

func listOf(t *rapid.T, style label.Style, bar []label.Charge, m label.Market, english bool) []label.Line {
	t.Helper()
	made, err := label.Made(style, bar, m, english)
	if err != nil {
		t.Fatal(err)
	}
	return label.List(made, m)
}

func TestLinesSumToTheBar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bar := drawBar(t)
		style, m, english := drawList(t)
		in, out, percent := 0.0, 0.0, 0.0
		for _, c := range bar {
			in += c.G
		}
		for _, l := range listOf(t, style, bar, m, english) {
			out += l.G
			percent += l.Percent
		}
		if math.Abs(in-out) > 1e-9*in {
			t.Fatalf("%v g in, %v g out", in, out)
		}
		if in > 0 && math.Abs(percent-100) > 1e-9 {
			t.Fatalf("%v %%", percent)
		}
	})
}

// What stands by mass does not rise, no text stands twice, and what is free is at the end of what stands by mass.
func TestOrderIsByMass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style, m, english := drawList(t)
		last, free, seen := math.Inf(1), false, map[string]bool{}
		for _, l := range listOf(t, style, drawBar(t), m, english) {
			if seen[strings.ToLower(l.Text)] {
				t.Fatalf("%q stands twice", l.Text)
			}
			seen[strings.ToLower(l.Text)] = true
			if l.Class == label.Colourant || l.Class == label.Unlisted || l.Class == label.Perfume && m.ScentLast {
				continue
			}
			if l.Percent > last+1e-5 || free && !l.Free {
				t.Fatalf("%q with %v %% after %v %%", l.Text, l.Percent, last)
			}
			last, free = l.Percent, l.Free
		}
	})
}

// A list of twice as much, or of the same things in another order, is the same list.
func TestDoublingAndAnotherOrderChangeNoList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bar := drawBar(t)
		style, m, english := drawList(t)
		once := listOf(t, style, bar, m, english)
		mixed := rapid.Permutation(bar).Draw(t, "order")
		for i := range mixed {
			mixed[i].G *= 2
		}
		twice := listOf(t, style, mixed, m, english)
		if a, b := label.Text(once, nil, m), label.Text(twice, nil, m); a != b {
			t.Fatalf("%s\nand twice as much, in another order,\n%s", a, b)
		}
		for i := range once {
			if math.Abs(once[i].Percent-twice[i].Percent) > 1e-9 {
				t.Fatalf("%s: %v %% and %v %%", once[i].Text, once[i].Percent, twice[i].Percent)
			}
		}
	})
}

// Nothing that went in as it is is missing from a list as added, and nothing that alkali made or left is from one as salts: told by the chemistry of the
// whole mixing, not by the code's own entries.
func TestAListNeverLosesAnIngredient(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bar := drawBar(t)
		style, m, english := drawList(t)
		lines := listOf(t, style, bar, m, english)
		from := map[string]bool{}
		for _, l := range lines {
			for _, name := range l.From {
				from[name] = true
			}
		}
		text := label.Text(lines, nil, m)
		for i := range lines {
			if l := lines[i]; l.Class != label.Unlisted && !slices.Contains(strings.Split(strings.TrimPrefix(text, m.Heading+" "), ", "), l.Text) {
				t.Fatalf("%q is not in %q", l.Text, text)
			}
		}
		for _, c := range bar {
			if c.G > 0 && c.From != "" && c.Kind != label.NaOH && c.Kind != label.KOH && !from[c.From] {
				t.Fatalf("%s went in and nothing came of it: %s", c.From, text)
			}
			if want := wanted(style, &c, m); c.G > 0 && !strings.Contains(text, want) {
				t.Fatalf("%s: %q is not in %q", c.From, want, text)
			}
		}
	})
}

// wanted is a word that a list has to have for a charge, whatever its names are in this market.
func wanted(style label.Style, c *label.Charge, m label.Market) string {
	salt := style == label.AsSalts
	switch {
	case c.Kind == label.Scent:
		return m.ScentWord
	case c.Kind == label.Other && c.Name.Confidence == "", c.Kind == label.Colour && c.Name.Confidence == "":
		return c.Name.INCI
	case !salt && (c.Kind == label.NaOH || c.Kind == label.KOH) && !m.English:
		return c.Name.INCI
	case !salt && c.Kind == label.Fat && c.Name.INCI == "Stearic Acid":
		return c.Name.INCI
	}
	return ""
}

func TestDoublingChangesNoAllergen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := someAllergens()
		scents := make([]label.ScentIn, rapid.IntRange(1, 5).Draw(t, "scents"))
		total := map[string]float64{}
		for i := range scents {
			scents[i].Name, scents[i].G = fmt.Sprint("scent ", i), rapid.Float64Range(0.001, 5).Draw(t, "g")
			for range rapid.IntRange(0, 6).Draw(t, "parts") {
				a := rapid.SampledFrom(list).Draw(t, "row")
				p := label.Part{Name: a.Name, Percent: rapid.Float64Range(0.0001, 20).Draw(t, "percent")}
				scents[i].Parts = append(scents[i].Parts, p)
				total[a.Name] += scents[i].G * p.Percent / 100
			}
		}
		once := label.Allergens(scents, 110, 100, listEU(), list)
		for _, f := range once {
			sum := 0.0
			for _, s := range f.From {
				sum += s.G
			}
			if math.Abs(sum-f.G) > 1e-12*max(1, sum) || math.Abs(f.G-total[f.Name]) > 1e-12*max(1, sum) {
				t.Fatalf("%s: %v g, %v from its scents, %v by hand", f.Name, f.G, sum, total[f.Name])
			}
		}
		mixed := rapid.Permutation(scents).Draw(t, "order")
		for i := range mixed {
			mixed[i].G *= 2
		}
		if a, b := namedIn(once), namedIn(label.Allergens(mixed, 220, 200, listEU(), list)); a != b {
			t.Fatalf("%q and, of twice as much, %q", a, b)
		}
	})
}
