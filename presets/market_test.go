package presets_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/presets"
)

func market(t *testing.T, id string) label.Market {
	t.Helper()
	return marketOn(t, shelf(t), id)
}

func marketOn(t *testing.T, s pour.Shelf, id string) label.Market {
	t.Helper()
	m, ok := s.Market(id)
	if !ok {
		t.Fatalf("no market %s", id)
	}
	return m
}

// The least heights of three faces and of the edges of the tables, worked by another hand (derived from Directive 76/211/EEC annex I 3.1, 16 CFR 500.21(b),
// the NMI guide and C.R.C. c. 417).
func TestLeastHeightsStandAsInTheWorkedTable(t *testing.T) {
	s := shelf(t)
	for _, c := range []struct {
		g, wide, high, longest float64
		want                   map[string]float64
	}{
		{100, 80, 55, 80, map[string]float64{"eu": 3, "gb": 3, "us-soap": 3.18, "us-cosmetic": 3.18, "au": 2, "ca": 3.2}},
		{50, 60, 50, 60, map[string]float64{"eu": 2, "gb": 2, "us-soap": 1.59, "us-cosmetic": 1.59, "au": 2, "ca": 1.6}},
		{250, 120, 140, 140, map[string]float64{"eu": 4, "gb": 4, "us-soap": 4.76, "us-cosmetic": 4.76, "au": 2.5, "ca": 3.2}},
		{200, 10, 10, 120, map[string]float64{"eu": 3, "au": 2}},
		{201, 10, 10, 121, map[string]float64{"eu": 4, "au": 2.5}},
		{51, 10, 10, 231, map[string]float64{"eu": 3, "au": 3.3}},
		{1001, 10, 10, 361, map[string]float64{"eu": 6, "au": 4.8}},
		{50.5, 10, 10, 120.5, map[string]float64{"eu": 3, "gb": 3, "au": 2.5}},
		{1000, 10, 10, 230, map[string]float64{"eu": 4, "gb": 4, "au": 2.5}},
		{9, 10, 10, 360, map[string]float64{"eu": 2, "au": 3.3}},
		// Faces of 5, 25, 100 and 400 sq in, and a hundredth of a cm² more; of 32, 258, 645 and 2580 cm² in Canada, and as much more.
		{100, 50.8, 63.5, 1, map[string]float64{"us-soap": 1.5875, "us-cosmetic": 1.5875, "ca": 3.2}},
		{100, 100, 32.27, 1, map[string]float64{"us-soap": 3.175, "us-cosmetic": 3.175}},
		{100, 127, 127, 1, map[string]float64{"us-soap": 3.175, "us-cosmetic": 3.175}},
		{100, 100, 161.3, 1, map[string]float64{"us-soap": 4.7625, "us-cosmetic": 4.7625}},
		{100, 254, 254, 1, map[string]float64{"us-soap": 4.7625, "us-cosmetic": 4.7625, "ca": 9.5}},
		{100, 100, 645.17, 1, map[string]float64{"us-soap": 6.35, "us-cosmetic": 6.35}},
		{100, 508, 508, 1, map[string]float64{"us-soap": 6.35, "us-cosmetic": 6.35, "ca": 12.7}},
		{100, 100, 2580.65, 1, map[string]float64{"us-soap": 12.7, "us-cosmetic": 12.7}},
		{100, 100, 32, 1, map[string]float64{"ca": 1.6}},
		{100, 100, 32.01, 1, map[string]float64{"ca": 3.2}},
		{100, 100, 258, 1, map[string]float64{"ca": 3.2}},
		{100, 100, 258.01, 1, map[string]float64{"ca": 6.4}},
		{100, 100, 645, 1, map[string]float64{"ca": 6.4}},
		{100, 100, 2580, 1, map[string]float64{"ca": 9.5}},
	} {
		for id, want := range c.want {
			if got := marketOn(t, s, id).LetterMM(c.g, c.wide, c.high, c.longest); math.Abs(got-want) > 0.0051 {
				t.Errorf("%s, %g g on %g × %g: %g mm, want %g", id, c.g, c.wide, c.high, got, want)
			}
		}
	}
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		for _, id := range []string{"eu", "gb", "us-soap", "us-cosmetic", "au", "ca"} {
			if got := marketOn(t, s, id).LetterMM(v, v, 55, v); got != 0 {
				t.Errorf("%s, of what is %g: %g mm", id, v, got)
			}
		}
	}
}

// What a market's rules are, as the reference on label rules has them row by row.
func TestMarketsFollowTheirRules(t *testing.T) {
	s := shelf(t)
	for id, want := range map[string]struct {
		scent, allergens                     string
		whole, last, byName, freeAt, packing bool
		rows                                 int
	}{
		"eu":          {"Parfum", label.AllergensLong, false, false, false, false, false, 20},
		"gb":          {"Parfum", label.AllergensOld, false, false, false, false, false, 8},
		"us-soap":     {"Fragrance", label.AllergensNone, true, false, true, true, true, 7},
		"us-cosmetic": {"Fragrance", label.AllergensNone, true, false, true, true, true, 11},
		"au":          {"Fragrance", label.AllergensNone, true, false, false, false, true, 12},
		"ca":          {"Parfum", label.AllergensLong, true, true, true, true, true, 16},
	} {
		m := marketOn(t, s, id)
		if m.ScentWord != want.scent || m.Allergens != want.allergens || m.WholeINCI != want.whole || m.ScentLast != want.last || m.ByName != want.byName || m.FreeAt != want.freeAt ||
			m.AfterPacking != want.packing || m.FreePercent != 1 || m.OverPercent != 0.01 {
			t.Errorf("%s: %+v", id, m)
		}
		if len(m.Rows) < want.rows {
			t.Errorf("%s has %d rows, want %d or more", id, len(m.Rows), want.rows)
		}
		for _, r := range m.Rows {
			if r.AsOf != m.AsOf || r.AsOf == 0 || r.Document == "" || r.Confidence == "" {
				t.Errorf("%s, %s: %+v", id, r.ID, r)
			}
		}
	}
}

func TestAMakersOwnMarketIsLaidOver(t *testing.T) {
	base := shelf(t)
	own := `
[[market]]
id = "ch"
name = "Switzerland"
as_of = "2027-01-05"
heights = [{ up_to = 100, mm = 2 }, { mm = 3 }]
row = [{ id = "maker", text = "name and address", document = "national law", confidence = "own", finds = "maker" }]

[[market]]
id = "eu"
scent_word = "Perfume"
`
	s, err := presets.Overlay(base, "own.toml", strings.NewReader(own))
	if err != nil {
		t.Fatal(err)
	}
	ch, _ := s.Market("ch")
	eu, _ := s.Market("eu")
	if ch.Short != "ch" || len(ch.Rows) != 1 || ch.Rows[0].AsOf != ch.AsOf || ch.LetterMM(101, 1, 1, 1) != 3 || eu.ScentWord != "Perfume" || len(eu.Rows) != len(market(t, "eu").Rows) {
		t.Errorf("%+v, %+v", ch, eu)
	}
	for text, want := range map[string]string{
		`as_of = "yesterday"`: "is no day",
		"as_of = \"2027-01-05\"\nheights = [{ up_to = 9, mm = 2 }]":                                                               "leave up_to out",
		"as_of = \"2027-01-05\"\nheights = [{ up_to = 9, mm = 2 }, { up_to = 3, mm = 2 }, { mm = 3 }]":                            "from the smallest",
		"as_of = \"2027-01-05\"\nheights = [{ up_to = 9 }, { mm = 2 }]":                                                           "has no mm",
		"as_of = \"2027-01-05\"\nrow = [{ id = \"a\", text = \"x\" }]":                                                            "lacks its text",
		"as_of = \"2027-01-05\"\nrow = [{ id = \"A b\", text = \"x\", document = \"d\", confidence = \"own\" }]":                  "is no id",
		"as_of = \"2027-01-05\"\nrow = [{ id = \"a\", text = \"x\", document = \"d\", confidence = \"own\", finds = \"magic\" }]": "magic",
		"allergens = \"all\"": "all",
		"as_of = \"2027-01-05\"\nprint = { wants = [\"lot\", \"luck\"] }":                                                              "luck",
		"as_of = \"2027-01-05\"\nprint = { lowest = 3 }":                                                                               "lowest",
		"as_of = \"2027-01-05\"\nkilo_from_g = -1":                                                                                     "kilo_from_g",
		"as_of = \"2027-01-05\"\nrow = [{ id = \"a\", text = \"x\", document = \"d\", confidence = \"own\", as_of = \"2027-13-05\" }]": "is no day",
	} {
		_, err := presets.Overlay(base, "own.toml", strings.NewReader("[[market]]\nid = \"x\"\nname = \"X\"\n"+text+"\n"))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", text, err, want)
		}
	}
}

// A row is not further checked than the reference on label rules has it: what was read there, and no other row, is read here.
func TestNoRowClaimsToBeCheckedFurtherThanItWas(t *testing.T) {
	s := shelf(t)
	read := map[string][]string{
		"eu":          {"average"},
		"gb":          {"food"},
		"us-soap":     {"soap"},
		"us-cosmetic": {"list", "allergens"},
		"au":          {"net", "letters", "figures", "average", "drying"},
		"ca": {
			"identity", "contact", "maker", "net", "letters", "band", "list", "chemical", "order", "allergens", "no-room", "leaflet", "cautions", "claims", "notify", "proof",
		},
	}
	memory := map[string][]string{
		"eu":          {"no-room", "notice", "loose", "language", "claims", "packaging", "report", "file"},
		"us-cosmetic": {"identity", "maker", "net", "letters", "small-letters", "free", "safety", "contact", "colours", "average", "import"},
	}
	for id := range read {
		var is, was []string
		for _, r := range marketOn(t, s, id).Rows {
			switch r.Confidence {
			case "read":
				is = append(is, r.ID)
			case "memory":
				was = append(was, r.ID)
			}
		}
		if !slices.Equal(is, read[id]) {
			t.Errorf("%s: read are %q, want %q", id, is, read[id])
		}
		if want, ok := memory[id]; ok && !slices.Equal(was, want) {
			t.Errorf("%s: from memory are %q, want %q", id, was, want)
		}
	}
}

// The clauses of the reference on label rules, each named by a row of its market.
func TestEveryRuleOfTheReferenceHasItsRow(t *testing.T) {
	s := shelf(t)
	for id, clauses := range map[string]string{
		"eu": "Art. 19(1)(a)|Art. 19(1)(b)|Art. 19(1)(c)|Art. 19(1)(d)|Art. 19(1)(e)|Art. 19(1)(f)|Art. 19(1)(g)|Annex III|2023/1545|32023R1545R(02)|Art. 19(2)|Art. 19(3)|Art. 19(4)|Art. 19(5), (6)|" +
			"Art. 20|655/2013|Annex I 3.1|Annex I 3.3|2023/988|2023/2055|2025/40|Arts. 4, 8, 11, 13|Art. 10|1 August 2026|31 July 2028|17 October 2027",
		"gb":          "SI 2019/696|Annex III|old list of 24|Art. 19(5)|SI 1987/1538|SI 2006/659|regs. 4, 5|5 g to 25 kg|SI 1989/1291",
		"us-soap":     "701.20(a)|500.4|500.5|500.6, 500.9|500.21(b)|federal rule|FHSA|state law|500.25",
		"us-cosmetic": "701.11|701.12|701.13|701.20(b)|701.13(i)|701.3|701.3(f)|740.10|s. 609(a)|29 December 2024|RIN 0910-AI90|73, 74, 82; 70.25|19 CFR|ss. 606, 607",
		"au":          "F2020L01469|reg. 4.10|reg. 4.12|three significant|reg. 4.11|reg. 4.7|5 %|dry after packing|Consumer Law|Industrial Chemicals Act 2019|may contain",
		"ca": "s. 20(b)|s. 20(a)|s. 13|ss. 12, 21, 25 to 27|ss. 14 to 16|ss. 2(1)(f), 8|s. 21.2|s. 21.3|s. 21.4(1) to (3)|s. 21.4(4)|s. 21.4(5)|s. 21.5(1)|s. 21.5(3)|s. 24|s. 21|" +
			"French Language|ss. 30, 31|s. 29|12 April 2026|9 October 2024",
	} {
		all := ""
		for _, r := range marketOn(t, s, id).Rows {
			all += strings.Join([]string{r.Text, r.Document, r.Clause}, "\n") + "\n"
		}
		for want := range strings.SplitSeq(clauses, "|") {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no row names %q", id, want)
			}
		}
	}
}

// A maker who looked a market up again writes its day alone, and no row of it is old; the shelf it was laid over keeps its own.
func TestAMarketLookedUpAgainIsNewInAllItsRows(t *testing.T) {
	base := shelf(t)
	s, err := presets.Overlay(base, "own.toml", strings.NewReader("[[market]]\nid = \"gb\"\nas_of = \"2028-02-29\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	today, _ := day.Parse("2028-12-24")
	is, _ := s.Market("gb")
	was, _ := base.Market("gb")
	for _, c := range []struct {
		m     label.Market
		stale bool
	}{{is, false}, {was, true}} {
		checks := label.Checks(c.m, label.Design{}, nil, today)
		if len(checks) == 0 {
			t.Fatal("no rows")
		}
		for _, k := range checks {
			if k.Stale != c.stale {
				t.Errorf("as of %s, %s of %s is old: %v", c.m.AsOf, k.Row.ID, k.Row.AsOf, k.Stale)
			}
		}
	}
}

// How a label is printed in a market, by 16 CFR 500.6, 21 CFR 701.3 and C.R.C. c. 417, ss. 14 to 16.
func TestMarketsSayHowTheirLabelIsPrinted(t *testing.T) {
	us, ca := market(t, "us-cosmetic").Print, market(t, "ca").Print
	if !us.AtFoot(33) || us.AtFoot(32) || us.LeastMM(100) != 1.5875 || us.LeastMM(77) != 0.79375 {
		t.Errorf("United States: %+v", us)
	}
	if !ca.BoldNet || ca.NoBand == "" || ca.LeastMM(44) != 1.6 || ca.LeastMM(10) != 0.8 || ca.Identity != "Soap / Savon" {
		t.Errorf("Canada: %+v", ca)
	}
	if !slices.Contains(market(t, "eu").Print.Wants, label.WantsLot) || slices.Contains(market(t, "us-soap").Print.Wants, label.WantsIngredients) {
		t.Error("what is wanted in the EU, and of soap in the United States")
	}
}
