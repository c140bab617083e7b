package recipe_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/recipe"
	"pourbench/presets"
)

func shelf(t testing.TB) pour.Shelf {
	t.Helper()
	s, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// One line by itself: what is taken of it, "" for nothing, and what is said of what is not. Units by hand: 1 oz is 28.349523125 g, 1 lb 16 oz.
func TestALineIsUnderstoodOrSaysWhyNot(t *testing.T) {
	s := shelf(t)
	const percent, grams = "%", "g"
	for _, c := range []struct {
		line, oil string
		amount    float64
		unit      string
		says      string // or may be meant
	}{
		{"olive oil 35 %", "olive", 35, percent, ""},
		{"35% olive", "olive", 35, percent, ""},
		{"Olive Oil 35 %", "olive", 35, percent, ""},
		{"olive oil: 350 g", "olive", 350, grams, ""},
		{"OLIVE OIL\t350g", "olive", 350, grams, ""},
		{"olive oil,350 g", "olive", 350, grams, ""},
		{"olive oil      12,5 %", "olive", 12.5, percent, ""},
		{"- extra virgin olive oil (organic) .. 350 gr", "olive", 350, grams, ""},
		{"1. Olive oil 350 g", "olive", 350, grams, ""},
		{"• 350 g of olive oil", "olive", 350, grams, ""},
		{"Olea Europaea (Olive) Fruit Oil 1 kg", "olive", 1000, grams, ""},
		{"olive .5 kg", "olive", 500, grams, ""},
		{"shea 2 oz", "shea", 56.69904625, grams, ""},
		{"shea butter, 1 lb 4 oz", "shea", 566.9904625, grams, ""},
		{"shea butter 350 g (12.35 oz)", "shea", 350, grams, ""},
		{"shea butter 350 g 20 %", "shea", 20, percent, ""},
		{"coconut oil (76°) 250 g", "coconut", 250, grams, ""},
		{"76 degree coconut oil 250 g", "coconut", 250, grams, ""},
		{"palm 20 %", "palm", 20, percent, ""},
		{"palm kernel 20 %", "palm-kernel", 20, percent, ""},
		{"palm-kernel 20 percent", "palm-kernel", 20, percent, ""},
		{"rapeseed oil 20 %", "canola", 20, percent, ""},
		{"grape seed 5 %", "grapeseed", 5, percent, ""},
		{"sunflower 5 %", "sunflower", 5, percent, ""},
		{"sunflower oil, high oleic 5 %", "sunflower-ho", 5, percent, ""},
		{"soybean 5", "soybean", 5, percent, "no unit: taken as percent"},
		{"lard 14 g (1 tbsp)", "lard", 14, grams, ""},
		{"tallow 0 %", "tallow", 0, percent, ""},

		{"olive oil", "", 0, "", "how much of it"},
		{"Shea butter onehundred g", "", 0, "", "how much of it"},
		{"olive oil, a pound", "", 0, "", "how much of it"},
		{"olive oil 1.000 g", "", 0, "", "could be 1000 or 1;"},
		{"olive oil 1.250 Gramm", "", 0, "", "could be 1250 or 1.25;"},
		{"olive oil 12,500 g", "", 0, "", "could be 12500 or 12.5;"},
		{"olive oil 0.125 g", "olive", .125, grams, ""},
		{"olive oil 1.250 kg", "olive", 1250, grams, ""},
		{"olive oil 12.500 %", "olive", 12.5, percent, ""},
		{"olive pomase oil 5 %", "", 0, "", "did you mean olive pomace oil"},
		{"oliv oil 5 %", "", 0, "", "did you mean olive oil"},
		{"fractionated coconut oil 5 %", "", 0, "", "coconut oil"},
		{"Helianthus Annuus (Sunflower) Seed Oil 5 %", "", 0, "", "did you mean sunflower oil, high-oleic sunflower oil"}, // the INCI name of both
		{"avocado butter 5 %", "", 0, "", "no oil on the shelf"},
		{"wibble 5 %", "", 0, "", "no oil on the shelf"},
		{"5 %", "", 0, "", "of which oil"},
		{"olive oil 101 %", "", 0, "", "more than 100"},
		{"olive oil 2000 kg", "", 0, "", "more than a bench"},
		{"olive oil -5 %", "", 0, "", "below 0"},
		{"-5 % olive oil", "", 0, "", "below 0"},
		{"olive oil 1,200 g", "", 0, "", "1200"},
		{"olive oil 1 200 g", "", 0, "", "two numbers"},
		{"olive oil 3-5 %", "", 0, "", "one number"},
		{"olive oil 300 - 350 g", "", 0, "", "two numbers"},
		{"olive oil 2 x 350 g", "", 0, "", "two numbers"},
		{"olive oil 1/2 lb", "", 0, "", "one number"},
		{"olive oil 1½ lb", "", 0, "", "decimal"},
		{"olive oil 35 350", "", 0, "", "which of its numbers"},
		{"olive oil 30 % 35 %", "", 0, "", "two amounts in %"},
		{"olive oil 1.2.3 g", "", 0, "", "two decimal signs"},

		{"hemp 1 tbsp", "", 0, "", "tbsp is no weight: write grams"},
		{"hemp seed oil 1 Tbsp", "", 0, "", "Tbsp is no weight"},
		{"2 cups of olive oil", "", 0, "", "cups is no weight"},
		{"8 fl oz olive oil", "", 0, "", "fl is no weight"},
		{"olive oil 250ml", "", 0, "", "ml is no weight"},
		{"hemp seed oil 1 blob", "", 0, "", "blob is no unit known here"},
		{"250g coconut oil 76", "", 0, "", "what is its 76"},
		{"coconut oil 76 250 g", "", 0, "", "two numbers"},

		{"water 330 g", "", 0, "", "worked out here"},
		{"NaOH 140 g", "", 0, "", "worked out here"},
		{"Lye (sodium hydroxide): 140 g", "", 0, "", "worked out here"},
		{"superfat 5 %", "", 0, "", "Lye panel"},
		{"Super Fat: 5%", "", 0, "", "Lye panel"},
		{"lye concentration 33 %", "", 0, "", "worked out here"},
		{"Total oils 1000 g", "", 0, "", "a sum"},
		{"coconut milk 100 g", "", 0, "", "an extra"},
		{"sodium lactate 10 g", "", 0, "", "an extra"},
		{"ultramarine blue 3 g", "", 0, "", "a colourant"},
		{"lavender essential oil 30 g", "", 0, "", "a scent"},
		{"My best soap", "", 0, "", "no amount"},
	} {
		r := recipe.Read(c.line, s)
		l := r.Lines[0]
		got := l.Percent
		if c.unit == grams {
			got = l.G
		}
		switch {
		case c.oil == "" && (l.Kind == recipe.Taken || !strings.Contains(l.Why+l.Meant(), c.says)):
			t.Errorf("%q: %+v, want %q", c.line, l, c.says)
		case c.oil != "" && l.Why != c.says:
			t.Errorf("%q says %q, want %q", c.line, l.Why, c.says)
		case c.oil != "" && (l.Kind != recipe.Taken || l.Oil != c.oil || math.Abs(got-c.amount) > 1e-9 || c.unit == percent && l.G != 0):
			t.Errorf("%q: %+v, want %v %s of %s", c.line, l, c.amount, c.unit, c.oil)
		}
	}
}

// Every oil of the shelf is found by each of its own names, but for one that two of them share.
func TestEveryOilIsFoundByItsNames(t *testing.T) {
	s := shelf(t)
	inci := map[string]int{}
	for _, o := range s.Oils {
		inci[o.INCI]++
	}
	for _, o := range s.Oils {
		all := append([]string{o.Name, o.ID}, o.Also...)
		if inci[o.INCI] == 1 && o.INCI != "" {
			all = append(all, o.INCI)
		}
		for _, name := range all {
			r := recipe.Read("12.5 % "+strings.ToUpper(name), s)
			if l := r.Lines[0]; l.Oil != o.ID || l.Percent != 12.5 {
				t.Errorf("%s as %q: %+v", o.ID, name, l)
			}
		}
	}
}

func TestAWholeRecipe(t *testing.T) {
	s := shelf(t)
	if r := recipe.Read("olive 600 g\ncoconut 400 g\nhemp 1 tbsp\nlard 1 blob", s); r.OilsG != 1000 || r.Open != 2 {
		t.Errorf("a spoon counts as grams: %v g, %d open", r.OilsG, r.Open)
	}
	if r := recipe.Read("olive 600 g\ncastor 400", s); r.Lines[1].G != 400 || r.Lines[1].Why != "no unit: taken as grams" || r.Lines[0].Why != "" {
		t.Errorf("without a unit: %+v", r.Lines)
	}
	if r := recipe.Read("olive 600 g\nwibble 1/2 lb\nwibble 100 g\ncoconut 300 g", s); r.Open != 1 || r.OilsG != 1000 {
		t.Errorf("%d lines hold no room of %v g", r.Open, r.OilsG)
	}
	for what, c := range map[string]struct {
		text     string
		want     []pour.OilPart
		oilsG    float64
		so       string
		odd, off int
	}{
		"percent":                      {"Oils:\nolive 35 %\ncoconut 25 %\n\nshea 15\nwater 330 g\nsuperfat 5 %\n", []pour.OilPart{{Oil: "olive", Percent: 35}, {Oil: "coconut", Percent: 25}, {Oil: "shea", Percent: 15}}, 0, "75.0 % so far, 25.0 % to go", 0, 2},
		"grams":                        {"olive 350 g\ncoconut 250 g\r\nshea 400", []pour.OilPart{{Oil: "olive", Percent: 35}, {Oil: "coconut", Percent: 25}, {Oil: "shea", Percent: 40}}, 1000, "", 0, 0},
		"no units, parts of a hundred": {"olive 60\ncoconut 40", []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 40}}, 0, "", 0, 0},
		"no units, grams":              {"olive 300\ncoconut 100", []pour.OilPart{{Oil: "olive", Percent: 75}, {Oil: "coconut", Percent: 25}}, 400, "", 0, 0},
		"twice":                        {"olive 30 %\ncoconut 40 %\nolive oil 30 %", []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 40}}, 0, "", 0, 0},
		"a name that is not known keeps its room": {"olive 600 g\ncoconut 300 g\nwibble 100 g", []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 30}}, 1000, "90.0 % so far, 10.0 % to go", 1, 0},
		"one in another unit":                     {"olive 60 %\ncoconut 30 %\nshea 50 g", []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 30}}, 0, "90.0 % so far, 10.0 % to go", 1, 0},
		"both units":                              {"olive 600 g 60 %\ncoconut 400 g 40 %", []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 40}}, 0, "", 0, 0},
		"in pounds":                               {"olive 3 lb\ncoconut 16 oz", []pour.OilPart{{Oil: "olive", Percent: 75}, {Oil: "coconut", Percent: 25}}, 4 * 453.59237, "", 0, 0},
	} {
		r := recipe.Read(c.text, s)
		parts := r.Parts()
		if len(parts) != len(c.want) || math.Abs(r.OilsG-c.oilsG) > 1e-9 || r.Unfinished() != c.so || r.Count(recipe.Odd) != c.odd || r.Count(recipe.Aside) != c.off {
			t.Errorf("%s: %+v, %v g, %q, %d odd, %d aside", what, parts, r.OilsG, r.Unfinished(), r.Count(recipe.Odd), r.Count(recipe.Aside))
			continue
		}
		for i, want := range c.want {
			if got := parts[i]; got.Oil != want.Oil || math.Abs(got.Percent-want.Percent) > 1e-6 || !got.Held {
				t.Errorf("%s: %+v, want %+v", what, got, want)
			}
		}
	}
}

// What is meant can be taken in the place of what was written, with its amount.
func TestALineIsRenamed(t *testing.T) {
	s := shelf(t)
	for line, want := range map[string]string{"- oliv oil: 35 %": "olive oil 35 %", "12,5 g shea buttr (raw)": "shea butter 12,5 g", "olivee 1 lb 2 oz": "olive oil 1 lb 2 oz", "shae butter 20": "shea butter 20"} {
		l := recipe.Read(line, s).Lines[0]
		if len(l.Near) == 0 || l.Renamed(l.Near[0]) != want {
			t.Errorf("%q: near %q, renamed %q", line, l.Near, l.Renamed(want))
			continue
		}
		if again := recipe.Read(l.Renamed(l.Near[0]), s).Lines[0]; again.Kind != recipe.Taken {
			t.Errorf("%q is not understood: %+v", l.Renamed(l.Near[0]), again)
		}
	}
}

// A recipe is taken as one edit; one without an oil is refused with what could be written.
func TestARecipeTakesThePlaceOfTheBlend(t *testing.T) {
	s := shelf(t)
	p := pour.Blank()
	p.Name, p.Mould = "x", s.Moulds[0].Mould
	p.Swirl.Technique = "drop"
	p.Base.Jugs = []pour.Jug{{Name: "pot", SharePercent: 100}}
	p.Base.Oils = []pour.OilPart{{Oil: "lard", Percent: 100}}
	r := recipe.Read("olive 60 %\ncoconut 33 %", s)
	q, err := pour.Apply(p, s, r.Edit(pour.Base))
	if err != nil || q.Base.Unfinished() != "93.0 % so far, 7.0 % to go" || !q.Base.Oils[1].Held {
		t.Errorf("%+v, %v", q.Base.Oils, err)
	}
	r = recipe.Read("water 300 g\nwibble 5 %", s)
	if _, err := pour.Apply(p, s, r.Edit(pour.Base)); err == nil || !strings.Contains(err.Error(), "olive oil 35 %") {
		t.Errorf("nothing was taken, and yet: %v", err)
	}
	r = recipe.Read("olive 60 %\nolive 60 %", s)
	if _, err := pour.Apply(p, s, r.Edit(pour.Base)); err == nil {
		t.Error("120 % of one oil was taken")
	}
}
