package presets_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pourbench/pour/label"
)

// fats are the rows of the table that are oils of the shelf, by their ids there.
func fats(t *testing.T) map[string]map[string]string {
	t.Helper()
	out := map[string]map[string]string{}
	for _, row := range table(t, "label_names.csv") {
		id := strings.ReplaceAll(row["key"], "_", "-")
		switch row["key"] {
		case "(other) lauric acid":
			id = "lauric-acid"
		case "(other) carnauba":
			id = "carnauba"
		}
		if strings.HasPrefix(row["group"], "oil") && !strings.HasPrefix(id, "(") {
			out[id] = row
		}
	}
	return out
}

// The names of fats and their soaps against the table: as added, in the EU, of sodium and potassium, how far they were checked. Where none was found, what
// makers write is on the shelf as that.
func TestFatsAreListedByTheNamesOfTheTable(t *testing.T) {
	s, unassigned := shelf(t), 0
	for id, row := range fats(t) {
		o, ok := s.Oil(id)
		if !ok {
			t.Errorf("%s is not on the shelf", id)
			continue
		}
		n := s.LabelName(row["as_added_us"])
		if n.INCI != o.INCI || o.INCI != row["as_added_us"] || n.EU() != row["as_added_eu"] {
			t.Errorf("%s: %q, in the EU %q; want %q, %q", id, o.INCI, n.EU(), row["as_added_us"], row["as_added_eu"])
		}
		if o.INCISource.Confidence != row["as_added_confidence"] {
			t.Errorf("%s was checked as %q, want %q", id, o.INCISource.Confidence, row["as_added_confidence"])
		}
		soap, none := row["sodium_salt"], row["sodium_salt_confidence"] == "not found"
		if none {
			soap = row["fallback_sodium_salt"]
			unassigned++
		}
		if o.INCISoap != soap || o.INCIPotassium != row["potassium_salt"] || o.SaltUnassigned != none {
			t.Errorf("%s: soaps %q, %q, unassigned %v; want %q, %q, %v", id, o.INCISoap, o.INCIPotassium, o.SaltUnassigned, soap, row["potassium_salt"], none)
		}
		if got := o.SaltSource.Confidence; !none && soap != "" && got != row["sodium_salt_confidence"] {
			t.Errorf("%s: its soap was checked as %q, want %q", id, got, row["sodium_salt_confidence"])
		}
	}
	if unassigned != 10 {
		t.Errorf("%d soaps without an assigned name, want 10", unassigned)
	}
}

// asOurs are the names of the table that stand on the shelf otherwise, and why.
func asOurs() map[string][2]string {
	return map[string][2]string{
		"CI 77510": {"Ferric Ferrocyanide", "CI 77510"}, // of the two the table leaves open, the one makers can buy
		"CI 77266": {"Black 2", "CI 77266"},             // without the remark
		"CI 77019": {"Mica", "Mica"},                    // the table's own note: listed as Mica
		"CI 77861": {"Tin Oxide", "CI 77861"},
	}
}

// The names of everything else against the table: a name, and no mixture, row of a group, or text that leaves two open.
func TestOtherThingsAreListedByTheNamesOfTheTable(t *testing.T) {
	s, seen := shelf(t), 0
	mixture := regexp.MustCompile(`;|^split|^e\.g\.|sheet|by its INCI name|\+| or `)
	for _, row := range table(t, "label_names.csv") {
		us, eu := row["as_added_us"], row["as_added_eu"]
		own, ours := asOurs()[row["key"]]
		switch {
		case ours:
			us, eu = own[0], own[1]
		case strings.HasPrefix(us, "(") || strings.Contains(us, "memory)") || row["group"] == "colourant" && strings.Contains(us, " / "):
			us = eu // no US name, or two
		}
		eu, _, _ = strings.Cut(eu, " (group")
		skip := mixture.MatchString(us) || mixture.MatchString(eu) || row["group"] == "topping" || strings.HasPrefix(row["group"], "mica") || row["group"] == "glitter"
		if _, oil := fats(t)[strings.ReplaceAll(row["key"], "_", "-")]; oil || skip {
			continue
		}
		seen++
		n := s.LabelName(eu)
		if !strings.HasPrefix(us, "CI ") && row["group"] == "colourant" && n.INCI != us || n.EU() != eu {
			t.Errorf("%s: %q, in the EU %q; want %q, %q", row["key"], n.INCI, n.EU(), us, eu)
		}
		if by := s.LabelName(us); row["group"] != "colourant" && (by.INCI != us || by.Confidence != row["as_added_confidence"]) {
			t.Errorf("%s by %q: %q, checked as %q, want as %q", row["key"], us, by.INCI, by.Confidence, row["as_added_confidence"])
		}
		if salt := row["sodium_salt"]; salt != "" && n.Salts.Sodium != salt {
			t.Errorf("%s: its salt %q, want %q", row["key"], n.Salts.Sodium, salt)
		}
	}
	if seen < 80 {
		t.Errorf("only %d names were held against the table", seen)
	}
}

// Every colour is named by its number in the EU and stands last, with the annex as its source, or is a word the annex has.
func TestColoursAreNamedByTheirNumbers(t *testing.T) {
	words := []string{"Caramel", "Anthocyanins", "Beetroot Red"} // entries 146, 149 and 148 have no CI number
	number := regexp.MustCompile(`^CI \d{5}(:\d)?$`)
	for _, n := range shelf(t).Names {
		if eu := n.EU(); n.Colour != (number.MatchString(eu) || slices.Contains(words, eu)) {
			t.Errorf("%s: %q in the EU, a colour: %v", n.ID, eu, n.Colour)
		}
	}
}

func TestNamesAreFoundByAnyOfTheirForms(t *testing.T) {
	s := shelf(t)
	for text, want := range map[string]string{
		"Aqua": "Water", "water": "Water", "EAU": "Water", "  sea   salt ": "Sea Salt", "Maris Sal": "Sea Salt", "lye": "Sodium Hydroxide", "Cera Alba": "Beeswax",
		"Zea Mays Starch": "Zea Mays (Corn) Starch", "cornflour": "Zea Mays (Corn) Starch", "E171": "Titanium Dioxide", "CI 77891": "Titanium Dioxide", "sugar": "Sucrose",
		"Helianthus Annuus Seed Oil": "Helianthus Annuus (Sunflower) Seed Oil", "sweet orange oil": "Citrus Aurantium Dulcis (Orange) Peel Oil", "Sodium Cocoate": "Sodium Cocoate",
		"Theobroma Cacao Seed Butter": "Theobroma Cacao (Cocoa) Seed Butter", "CI 77019": "Mica", "Parfum": "Fragrance", "sodium citrate": "Sodium Citrate",
	} {
		if n := s.LabelName(text); n.INCI != want || n.Confidence == "" {
			t.Errorf("%q is %q (%s), want %q", text, n.INCI, n.Confidence, want)
		}
	}
	if n := s.LabelName("Kaolin"); n.Colour || n.EU() != "Kaolin" {
		t.Errorf("kaolin by its name is %+v, want the clay and not the colour", n)
	}
	if n := s.LabelName("CI 77004"); !n.Colour || n.INCI != "Kaolin" {
		t.Errorf("CI 77004 is %+v, want the colour", n)
	}
	for _, text := range []string{"", "moon dust", "Sodium Kokum Butterate"} {
		if n := s.LabelName(text); n.INCI != text || n.Confidence != "" || n.Colour {
			t.Errorf("%q is %+v, want the text as it stands, unverified", text, n)
		}
	}
}

// A word that several names share is no name that anybody looked up: what they have in common, and unverified.
func TestAWordOfSeveralNamesPicksNone(t *testing.T) {
	s := shelf(t)
	for text, want := range map[string]label.Name{
		"Iron Oxides":   {INCI: "Iron Oxides", Colour: true},
		"Beta-Carotene": {INCI: "Beta-Carotene", Colour: true},
		"CI 15850":      {INCI: "CI 15850", Plain: "CI 15850", Colour: true}, // Red 6 or Red 7
	} {
		if got := s.LabelName(text); got != want {
			t.Errorf("%q is %+v, want %+v", text, got, want)
		}
	}
	if n := s.LabelName("Red 7"); n.EU() != "CI 15850" || n.Confidence == "" {
		t.Errorf("Red 7 is %+v", n)
	}
}

// No two names share a word by which something is bought: who writes it would get the wrong one of them.
func TestNoWordStandsForTwoNames(t *testing.T) {
	s, of := shelf(t), map[string]string{}
	for _, n := range s.Names {
		for _, word := range n.Also {
			if got := s.LabelName(word); got.INCI != n.INCI || got.EU() != n.EU() {
				t.Errorf("%q of %s stands for %q", word, n.ID, got.INCI)
			}
			if was := of[strings.ToLower(word)]; was != "" {
				t.Errorf("%q stands for %s and for %s", word, was, n.ID)
			}
			of[strings.ToLower(word)] = n.ID
		}
	}
}

func TestOwnNamesStandByThemselves(t *testing.T) {
	s, err := overlay(t, `
[[oil]]
id = "beeswax"
inci = "My Wax"
[[oil]]
id = "kokum-butter"
inci_soap = "Sodium Kokum Seedate"
[[name]]
id = "rose-water"
inci = "Rosa Damascena (Rose) Flower Water"
english = "rose water"
[[name]]
id = "sea-salt"
inci = "My Salt"
`)
	if err != nil {
		t.Fatal(err)
	}
	wax, _ := s.Oil("beeswax")
	if n := s.LabelName("My Wax"); n.EU() != "My Wax" || wax.INCISource.Confidence != "own" || wax.SaltSource.Confidence == "own" {
		t.Errorf("a wax of her own name: %+v, %+v", n, wax)
	}
	kokum, _ := s.Oil("kokum-butter")
	if kokum.SaltUnassigned || kokum.SaltSource.Confidence != "own" || kokum.INCISource.Confidence == "own" {
		t.Errorf("a soap whose name she stated: unassigned %v, %+v", kokum.SaltUnassigned, kokum.SaltSource)
	}
	if n := s.LabelName("rosa damascena flower water"); n.English != "rose water" || n.Confidence != "own" {
		t.Errorf("her own name: %+v", n)
	}
	if n := s.LabelName("sea salt"); n.INCI != "My Salt" || n.EU() != "My Salt" {
		t.Errorf("a salt she calls otherwise: %+v", n)
	}
	if _, err := overlay(t, "[[name]]\nid = \"x\"\n"); err == nil || !strings.Contains(err.Error(), "inci is missing") {
		t.Errorf("a name without a name: %v", err)
	}
}
