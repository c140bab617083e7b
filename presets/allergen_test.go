package presets_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/presets"
)

func tableAllergens(t *testing.T) []map[string]string {
	t.Helper()
	rows := table(t, "allergens.csv")
	if len(rows) != 81+11 {
		t.Fatalf("%d rows", len(rows))
	}
	return rows
}

func parts(cell string) []string {
	var out []string
	for _, part := range strings.Split(cell, ";") {
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, part)
		}
	}
	return out
}

// The list against the regulation's as it was transcribed: 81 names, 24 of them old, and 11 rows of what is prohibited or limited.
func TestAllergensAreThoseOfTheRegulation(t *testing.T) {
	list, rows := shelf(t).Allergens, tableAllergens(t)
	if len(list) != len(rows) {
		t.Fatalf("%d allergens, %d in the table", len(list), len(rows))
	}
	named, old := 0, 0
	for i, want := range rows {
		got := list[i]
		if got.Entry != strings.ToLower(strings.ReplaceAll(want["annex_iii_entry"], "/", "-")) || got.Name != want["label_name"] || !slices.Equal(got.CAS, parts(want["cas"])) {
			t.Errorf("%s %s: %+v", want["annex_iii_entry"], want["label_name"], got)
		}
		status := want["status"]
		for what, pair := range map[string][2]bool{
			"group": {got.Group, want["grouped_name"] == "yes"}, "old": {got.Old, strings.HasPrefix(want["list_age"], "old")},
			"extract": {got.Extract, strings.HasPrefix(want["kind"], "natural")}, "prohibited": {got.Prohibited, status == "prohibited"}, "cap only": {got.CapOnly, status == "cap only"},
		} {
			if pair[0] != pair[1] {
				t.Errorf("%s: %s is %v", got.Name, what, pair[0])
			}
		}
		if status == "name on label" {
			named++
		}
		if got.Old {
			old++
		}
		if got.Confidence != want["confidence"] {
			t.Errorf("%s: confidence %q", got.Name, got.Confidence)
		}
		compareCap(t, got, want["max_pct_other_products"])
		compareCovers(t, got, parts(want["names_covered"]))
	}
	if named != 81 || old != 24 {
		t.Errorf("%d names, %d of them old", named, old)
	}
}

// compareCap holds the limit against the table's, which is of products for the mouth in one row.
func compareCap(t *testing.T, got label.Allergen, cell string) {
	t.Helper()
	number, what, _ := strings.Cut(cell, " ")
	want, _ := strconv.ParseFloat(number, 64)
	if strings.Contains(what, "oral") {
		want = 0
	}
	if got.MostRinse != want {
		t.Errorf("%s: at most %v %%, want %v", got.Name, got.MostRinse, want)
	}
}

// compareCovers finds every plain name of the table in the row; those with remarks in them are written out there.
func compareCovers(t *testing.T, got label.Allergen, names []string) {
	t.Helper()
	for _, name := range names {
		if strings.ContainsAny(name, "(") || strings.Contains(name, "corrigendum") {
			if len(got.Covers) == 0 {
				t.Errorf("%s covers nothing of %q", got.Name, name)
			}
			continue
		}
		if name != got.Name && !slices.ContainsFunc(got.Covers, func(c string) bool { return strings.EqualFold(c, name) }) {
			t.Errorf("%s does not cover %q", got.Name, name)
		}
	}
}

// Every number's last digit checks it; the sum is made here apart from the program.
func TestCASNumbersOfTheList(t *testing.T) {
	at, numbers := map[string][]string{}, 0
	for _, a := range shelf(t).Allergens {
		for _, number := range a.CAS {
			numbers++
			at[number] = append(at[number], a.Entry)
			digits := strings.ReplaceAll(number, "-", "")
			sum := 0
			for i, weight := len(digits)-2, 1; i >= 0; i, weight = i-1, weight+1 {
				sum += weight * int(digits[i]-'0')
			}
			if sum%10 != int(digits[len(digits)-1]-'0') || !label.CheckCAS(number) {
				t.Errorf("%s: %s does not check", a.Name, number)
			}
		}
	}
	if numbers < 150 {
		t.Errorf("only %d numbers", numbers)
	}
	want := map[string]string{"8028-48-6": "350 351", "72968-50-4": "350 351", "8007-00-9": "154 ii-1136", "8024-12-2": "196 ii-450", "84603-73-6": "359 ii-359"}
	for number, entries := range at {
		if len(entries) > 1 && want[number] != strings.Join(entries, " ") {
			t.Errorf("%s stands in %v", number, entries)
		}
		if len(entries) > 1 && len(label.Match(label.Part{Name: "?", CAS: number}, shelf(t).Allergens)) < 2 {
			t.Errorf("%s is picked silently", number)
		}
		delete(want, number)
	}
	if len(want) != 0 {
		t.Errorf("not in two rows: %v", want)
	}
}

// What the statements of the shelf's scents name stands in the list, and an oil that is listed is told to be by its name.
func TestScentsOfTheShelfFindTheirAllergens(t *testing.T) {
	s := shelf(t)
	extracts := 0
	for _, sc := range s.Scents {
		for _, a := range sc.Allergens {
			if rows := label.Match(label.Part{Name: a.Name, CAS: a.CAS, Percent: a.Percent}, s.Allergens); len(rows) != 1 {
				t.Errorf("%s: %s is row %v", sc.ID, a.Name, rows)
			}
		}
		if sc.INCI == "" != (sc.Invented || sc.ID == "cedarwood-oil") {
			t.Errorf("%s has the INCI name %q", sc.ID, sc.INCI)
		}
		plain, _, _ := strings.Cut(sc.INCI, " (")
		if _, after, ok := strings.Cut(sc.INCI, ")"); ok {
			plain += after
		}
		var listed string
		if rows := label.Match(label.Part{Name: plain}, s.Allergens); len(rows) == 1 && s.Allergens[rows[0]].Extract {
			listed = s.Allergens[rows[0]].Name
			extracts++
		}
		if sc.Extract != listed {
			t.Errorf("%s, %s, is the extract %q, by its name %q", sc.ID, plain, sc.Extract, listed)
		}
	}
	if extracts != 12 {
		t.Errorf("%d oils are listed extracts", extracts)
	}
}

// The worked bar of three scents on the whole list: lavender as the shelf has it.
func TestTheWholeListNamesTheWorkedBar(t *testing.T) {
	s := shelf(t)
	lavender, _ := s.Scent("lavender-oil")
	scents := []label.ScentIn{
		{Name: "A", G: 3.3, Parts: []label.Part{{Name: "Limonene", CAS: "5989-27-5", Percent: 12}, {Name: "linalool", Percent: 8}, {Name: "Coumarin", Percent: 0.25}, {Name: "Citral", Percent: 0.1}}},
		{Name: "lavender", G: 0.55, Extract: lavender.Extract, Parts: []label.Part{{Name: "Linalool", Percent: 35}, {Name: "Linalyl Acetate", Percent: 38}, {Name: "Geraniol", Percent: 0.4}}},
		{Name: "B", G: 0.45, Parts: []label.Part{{Name: "Vanillin", Percent: 6}, {Name: "Coumarin", Percent: 1.2}, {Name: "Linalool", Percent: 0.1}, {Name: "Benzyl Alcohol", Percent: 2}, {Name: "Benzyl Salicylate", Percent: 0.8}}},
	}
	for id, want := range map[string]string{
		"eu": "Lavandula Oil/Extract, Linalool, Limonene, Linalyl Acetate, Vanillin, Coumarin", "ca": "Lavandula Oil/Extract, Linalool, Limonene, Linalyl Acetate, Vanillin, Coumarin",
		"gb": "Linalool, Limonene, Coumarin", "us-cosmetic": "", "us-soap": "", "au": "",
	} {
		m, ok := s.Market(id)
		if !ok {
			t.Fatalf("no market %s", id)
		}
		var named []string
		for _, f := range label.Allergens(scents, 140, 126, m, s.Allergens) {
			if f.Named {
				named = append(named, f.Name)
			}
		}
		if got := strings.Join(named, ", "); got != want {
			t.Errorf("%s names %q, want %q", id, got, want)
		}
	}
}

func TestAMakersAllergensAndStatements(t *testing.T) {
	base := shelf(t)
	got, err := presets.Overlay(base, "mine.toml", strings.NewReader(`
[[allergen]]
id = "78"
most_rinse_percent = 0.5
[[allergen]]
id = "my-own"
name = "Moss"
cas = ["64-17-5"]
extract = true
[[scent]]
id = "mine"
name = "mine"
extract = "Moss"
inci = "Mossus Oil"
allergen = [{ name = "moss", cas = "64-17-5; 78-70-6", percent = 3 }]
`))
	if err != nil {
		t.Fatal(err)
	}
	n := len(got.Allergens)
	geraniol, own := got.Allergens[slices.IndexFunc(got.Allergens, func(a label.Allergen) bool { return a.Entry == "78" })], got.Allergens[n-1]
	if n != len(base.Allergens)+1 || geraniol.MostRinse != 0.5 || !geraniol.Old || geraniol.Confidence != "own" || own.Name != "Moss" || !own.Extract {
		t.Errorf("%+v and %+v", geraniol, own)
	}
	sc, _ := got.Scent("mine")
	if sc.Extract != "Moss" || sc.INCI != "Mossus Oil" || len(sc.Allergens) != 1 || sc.Allergens[0] != (pour.Allergen{Name: "moss", CAS: "64-17-5; 78-70-6", Percent: 3}) {
		t.Errorf("%+v", sc)
	}
	for text, want := range map[string]string{
		"[[allergen]]\nid = \"78\"\ncas = [\"106-24-2\"]":                                                                 "is no CAS number",
		"[[allergen]]\nid = \"new\"":                                                                                      "name is missing",
		"[[allergen]]\nid = \"78\"\nmost_rinse_percent = 101":                                                             "100",
		"[[scent]]\nid = \"lavender-oil\"\nextract = \"Lavendula Oil/Extract\"":                                           "Lavandula Oil/Extract",
		"[[scent]]\nid = \"lavender-oil\"\nextract = \"Linalool\"":                                                        "is no extract of the list",
		"[[scent]]\nid = \"lavender-oil\"\nallergen = [{ name = \"linalool\", cas = \"78-70-6; 78-70-7\", percent = 1 }]": "78-70-7",
	} {
		if _, err := presets.Overlay(base, "mine.toml", strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s\n%v", text, err)
		}
	}
	cleared, err := presets.Overlay(base, "mine.toml", strings.NewReader("[[scent]]\nid = \"lavender-oil\"\nextract = \"\""))
	if sc, _ := cleared.Scent("lavender-oil"); err != nil || sc.Extract != "" {
		t.Errorf("an extract taken back: %q, %v", sc.Extract, err)
	}
}
