package label_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour/label"
)

// byText is what a list says of each of its texts, g.
func byText(t *testing.T, style label.Style, charges ...label.Charge) map[string]float64 {
	t.Helper()
	g := map[string]float64{}
	for _, l := range lines(t, style, charges, listEU()) {
		g[l.Text] = l.G
	}
	return g
}

func compareG(t *testing.T, got, want map[string]float64) {
	t.Helper()
	for text, g := range want {
		within(t, text, got[text], g, 0.0005)
	}
	for text, g := range got {
		if _, wanted := want[text]; !wanted && g > 0.0005 {
			t.Errorf("%v g of %q, which is not wanted", g, text)
		}
	}
}

func alkali(in string, kind label.Kind, g float64) label.Charge {
	n := naohName()
	if kind == label.KOH {
		n = kohName()
	}
	return label.Charge{In: in, Kind: kind, Name: n, From: "lye", G: g}
}

func acid(in string, n label.Name, g, kohMgG, waterG float64, salts label.Salts) label.Charge {
	return label.Charge{In: in, Kind: label.Acid, Name: n, From: strings.ToLower(n.INCI), G: g, Acid: label.Taking{KOHMgG: kohMgG, WaterG: waterG, Salts: salts}}
}

// Citric acid, anhydrous (C6H8O7, 192.123): 3 mol of alkali, 3 of water; lactic acid (C3H6O3, 90.078): 1 and 1. The figures are derived: 0.6245 g NaOH,
// 1.3432 g of sodium citrate (258.068 / 192.123) and 0.2813 g of water for each g; 0.4440, 1.2440 and 0.2000 for lactic acid.
func TestAcidsBecomeTheirSalts(t *testing.T) {
	citric := acid("base", named("Citric Acid", "", ""), 10, 3*56105.3/192.123, 3*18.015/192.123,
		label.Salts{Sodium: "Sodium Citrate", Potassium: "Potassium Citrate", Confidence: "read"})
	lactic := acid("base", named("Lactic Acid", "", ""), 10, 56105.3/90.078, 18.015/90.078,
		label.Salts{Sodium: "Sodium Lactate", Potassium: "Potassium Lactate", Confidence: "read"})
	solution := label.Charge{In: "base", Kind: label.Other, Name: named("Sodium Lactate", "", ""), From: "sodium lactate", G: 6}

	compareG(t, byText(t, label.AsSalts, citric, alkali("base", label.NaOH, 6.24549)), map[string]float64{"Sodium Citrate": 13.4325, "Aqua": 2.8130})
	compareG(t, byText(t, label.AsSalts, lactic, solution, alkali("base", label.NaOH, 4.44024)), map[string]float64{"Sodium Lactate": 12.4403 + 6, "Aqua": 1.9999})
	// Half of the alkali leaves half of the acid; two moles of three are potassium.
	compareG(t, byText(t, label.AsSalts, citric, alkali("base", label.NaOH, 6.24549/2)), map[string]float64{"Sodium Citrate": 6.7162, "Aqua": 1.4065, "Citric Acid": 5})
	compareG(t, byText(t, label.AsSalts, lactic, alkali("base", label.NaOH, 4.44024/3), alkali("base", label.KOH, 2*6.22852/3)), map[string]float64{
		"Sodium Lactate": 12.4403 / 3, "Potassium Lactate": 2 * 14.2286 / 3, "Aqua": 1.9999,
	})
	compareG(t, byText(t, label.AsAdded, citric, lactic, solution), map[string]float64{"Citric Acid": 10, "Lactic Acid": 10, "Sodium Lactate": 6})
}

// An acid that is a little of what was put in has no line of its own: 100 g of vinegar that take up 4.6714 g KOH.
func TestALittleAcidStaysWhereItIs(t *testing.T) {
	vinegar := acid("base", named("Vinegar", "Acetum", ""), 100, 46.714, 0, label.Salts{})
	compareG(t, byText(t, label.AsSalts, vinegar, alkali("base", label.KOH, 4.6714)), map[string]float64{"Acetum": 104.6714})
	compareG(t, byText(t, label.AsSalts, vinegar, alkali("base", label.NaOH, 1.66512)), map[string]float64{"Acetum": 101.6651})
}

// Two alkalis: a third of the moles sodium. Stearic acid takes its alkali before the oil does and gives water; beeswax gives no glycerin.
func TestTwoAlkalisAcidsAndWaxes(t *testing.T) {
	stearic := label.Charge{In: "base", Kind: label.Fat, From: "stearic acid", G: 100, Fat: chem.Fat{Kind: chem.FreeAcid, Sap: 197.2}, Name: named("Stearic Acid", "", "")}
	stearic.Name.Salts = label.Salts{Sodium: "Sodium Stearate", Potassium: "Potassium Stearate", Confidence: "read"}
	wax := label.Charge{In: "base", Kind: label.Fat, From: "beeswax", G: 50, Fat: chem.Fat{Kind: chem.WaxEster, Sap: 94}, Name: named("Beeswax", "Cera Alba", "")}
	wax.Name.Salts = label.Salts{Sodium: "Sodium Beeswax", Unassigned: true}
	// 100 g of acid: 0.351482 mol; 200 g of olive: 0.682645; 50 g of wax: 0.083771. Alkali 0.734690 mol: the acid in full, half of the rest.
	got := lines(t, label.AsSalts, []label.Charge{
		stearic, oil("base", oliveName(), "olive oil", 191.5, 200), wax, alkali("base", label.NaOH, 0.734690/3*39.99677), alkali("base", label.KOH, 0.734690*2/3*56.1053),
	}, listEU())
	want := map[string]float64{
		"Sodium Stearate":         (100-6.33195)/3 + 0.351482/3*39.99677,
		"Potassium Stearate":      (100-6.33195)*2/3 + 0.351482*2/3*56.1053,
		"Aqua":                    6.33195,
		"Sodium Olivate":          (100-10.47796)/3 + 0.3413225/3*39.99677,
		"Potassium Olivate":       (100-10.47796)*2/3 + 0.3413225*2/3*56.1053,
		"Glycerin":                10.47796,
		"Olea Europaea Fruit Oil": 100,
		"Saponified Cera Alba":    25 + 0.0418855*(39.99677+2*56.1053)/3,
		"Cera Alba":               25,
	}
	g := map[string]float64{}
	for _, l := range got {
		g[l.Text] = l.G
		if l.Text == "Saponified Cera Alba" && (!strings.Contains(l.Unverified, "assigned") || !strings.Contains(l.Unverified, `"Sodium Beeswax"`)) {
			t.Errorf("a wax's soap is unsure because %q", l.Unverified)
		}
	}
	compareG(t, g, want)
}

func TestASoapLineOfAWaxSaysWhatElseIsInIt(t *testing.T) {
	n := named("Beeswax", "Cera Alba", "")
	n.Salts = label.Salts{Sodium: "Sodium Waxate", Confidence: "read"}
	wax := label.Charge{Kind: label.Fat, G: 50, Fat: chem.Fat{Kind: chem.WaxEster, Sap: 94}, Name: n}
	for _, l := range lines(t, label.AsSalts, []label.Charge{wax, alkali("", label.NaOH, 1)}, listEU()) {
		if said := strings.Contains(l.Unverified, "fatty alcohol"); said != (l.Text == "Sodium Waxate") {
			t.Errorf("%q is unsure because %q", l.Text, l.Unverified)
		}
	}
}

// A soap without an assigned name is described, and what makers write is told on screens and never printed.
func TestAnUnassignedSaltIsNeverNamed(t *testing.T) {
	for _, salts := range []label.Salts{{Sodium: "Sodium Kokum Butterate", Unassigned: true}, {}} {
		n := named("Garcinia Indica Seed Butter", "", "kokum butter")
		n.Salts = salts
		got := lines(t, label.AsSalts, []label.Charge{oil("base", n, "kokum butter", 190, 100), alkali("base", label.NaOH, 10)}, listEU())
		text := label.Text(got, nil, listEU())
		if strings.Contains(text, "Kokum") || !strings.Contains(text, "Saponified Garcinia Indica Seed Butter") {
			t.Errorf("%+v: %s", salts, text)
		}
		i := 0
		for got[i].Text != "Saponified Garcinia Indica Seed Butter" {
			i++
		}
		if l := got[i]; !strings.HasPrefix(l.Unverified, "no assigned name") || strings.Contains(l.Unverified, "Kokum Butterate") != (salts.Sodium != "") {
			t.Errorf("%+v: unsure because %q", salts, l.Unverified)
		}
	}
}

// What is not sure is said on the line and stands in no text.
func TestWhatIsNotSureIsSaidOnScreensOnly(t *testing.T) {
	unknown := label.Charge{Kind: label.Other, Name: label.Name{INCI: "stardust"}, From: "stardust", G: 2}
	doubted := label.Charge{Kind: label.Other, Name: named("Sucrose", "", ""), From: "sprinkles", G: 3, Doubt: "its share is not stated"}
	got := lines(t, label.AsSalts, []label.Charge{unknown, doubted}, listEU())
	if !strings.Contains(got[1].Unverified, "not looked up") || got[0].Unverified != "its share is not stated" {
		t.Errorf("%q and %q", got[0].Unverified, got[1].Unverified)
	}
	if text := label.Text(got, nil, listEU()); text != "Ingredients: Sucrose, stardust" {
		t.Error(text)
	}
	for _, l := range lines(t, label.AsSalts, s1(), listEU()) {
		if l.Unverified != "" {
			t.Errorf("%s is unsure because %s", l.Text, l.Unverified)
		}
	}
}

// Base and icing react each by itself: the icing's alkali is not enough for its own fat, the base's is too much, and neither helps the other.
func TestMixingsDoNotReactWithEachOther(t *testing.T) {
	got := byText(t, label.AsSalts,
		oil("base", oliveName(), "olive oil", 191.5, 100), alkali("base", label.NaOH, 20), oil("icing", coconutName(), "coconut oil", 256.5, 50),
		oil("sprinkles", sheaName(), "shea butter", 177.5, 5))
	full := 100 * 191.5 / 56105.3
	compareG(t, got, map[string]float64{
		"Sodium Olivate": 100 + full*39.99677 - full/3*92.094, "Glycerin": full / 3 * 92.094, "Sodium Hydroxide": 20 - full*39.99677,
		"Cocos Nucifera Oil": 50, "Butyrospermum Parkii Butter": 5,
	})
}

// All lye reacts in a bar with fat to spare: no hydroxide is listed, and what was weighed beside pure alkali is in the balance alone.
func TestReactedLyeIsNotListed(t *testing.T) {
	charges := append(s1(), label.Charge{In: "base", Kind: label.Lost, Name: naohName(), G: 1.5})
	for _, m := range listed() {
		got := lines(t, label.AsSalts, charges, m)
		text := label.Text(got, nil, m)
		if strings.Contains(text, "Hydroxide") || strings.Contains(text, "carbonate") {
			t.Errorf("%s: %s", m.ID, text)
		}
		if last := got[len(got)-1]; last.Class != label.Unlisted || last.G != 1.5 || last.Free {
			t.Errorf("%s: the balance ends with %+v", m.ID, last)
		}
	}
}

// A name that was looked up says itself whether it is a colourant; one that was not stands with the colourants where it came as one.
func TestWhatStandsWithTheColourants(t *testing.T) {
	for _, c := range []struct {
		kind label.Kind
		n    label.Name
		want label.Class
	}{
		{label.Colour, whiteName(), label.Colourant},
		{label.Other, whiteName(), label.Colourant},
		{label.Colour, named("Mica", "", ""), label.Plain},
		{label.Colour, label.Name{INCI: "sunset"}, label.Colourant},
		{label.Other, label.Name{INCI: "sunset"}, label.Plain},
	} {
		for _, style := range []label.Style{label.AsAdded, label.AsSalts} {
			if got := lines(t, style, []label.Charge{{Kind: c.kind, Name: c.n, G: 1}}, listEU()); got[0].Class != c.want {
				t.Errorf("%s %s stands with what is %s", c.kind, c.n.INCI, got[0].Class)
			}
		}
	}
}

func TestWhatALineCameWith(t *testing.T) {
	palm := named("Elaeis Guineensis (Palm) Oil", "", "")
	got := lines(t, label.AsAdded, []label.Charge{
		oil("base", palm, "palm olein", 199, 20), oil("icing", palm, "palm oil", 199, 30), oil("icing", palm, "palm olein", 199, 5), {Kind: label.Other, Name: palm, G: 1},
	}, listEU())
	if len(got) != 1 || got[0].G != 56 || strings.Join(got[0].From, ", ") != "palm oil, palm olein" {
		t.Errorf("%+v", got)
	}
}

func TestMadeRefusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	good := oil("base", oliveName(), "olive oil", 190, 1)
	for what, bad := range map[string]label.Charge{
		"below 0": {G: -1}, "no number": {G: nan}, "endless": {G: math.Inf(1)}, "no value": oil("base", oliveName(), "", nan, 1), "value below 0": oil("base", oliveName(), "", -1, 1),
		"endless value": oil("base", oliveName(), "", math.Inf(1), 1), "acid": acid("base", oliveName(), 1, nan, 0, label.Salts{}),
		"water": acid("base", oliveName(), 1, 1, 1.1, label.Salts{}), "water below 0": acid("base", oliveName(), 1, 1, -0.1, label.Salts{}),
		"acid below 0": acid("base", oliveName(), 1, -1, 0, label.Salts{}), "endless acid": acid("base", oliveName(), 1, math.Inf(1), 0, label.Salts{}),
	} {
		for _, style := range []label.Style{label.AsAdded, label.AsSalts} {
			if made, err := label.Made(style, []label.Charge{good, bad}, listEU(), false); !errors.Is(err, label.ErrList) || made != nil {
				t.Errorf("%s: %v, %v", what, made, err)
			}
		}
	}
	if _, err := label.Made("", []label.Charge{good}, listEU(), false); !errors.Is(err, label.ErrList) || !strings.Contains(err.Error(), "as_salts") {
		t.Errorf("no style: %v", err)
	}
	for _, style := range []label.Style{label.AsAdded, label.AsSalts} {
		if made, err := label.Made(style, []label.Charge{alkali("base", label.NaOH, 0), oil("base", oliveName(), "", 190, 0)}, listEU(), false); err != nil || len(made) != 0 {
			t.Errorf("nothing of something: %v, %v", made, err)
		}
	}
}
