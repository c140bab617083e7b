package presets_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour/label"
	"pourbench/presets"
)

func market(t *testing.T, id string) label.Market {
	t.Helper()
	m, ok := shelf(t).Market(id)
	if !ok {
		t.Fatalf("no market %s", id)
	}
	return m
}

// The least heights of three faces and of the edges of the tables, worked by another hand (derived from Directive 76/211/EEC annex I 3.1, 16 CFR 500.21(b),
// the NMI guide and C.R.C. c. 417).
func TestLeastHeightsStandAsInTheWorkedTable(t *testing.T) {
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
	} {
		for id, want := range c.want {
			if got := market(t, id).LetterMM(c.g, c.wide, c.high, c.longest); math.Abs(got-want) > 0.0051 {
				t.Errorf("%s, %g g on %g × %g: %g mm, want %g", id, c.g, c.wide, c.high, got, want)
			}
		}
	}
	if got := market(t, "eu").LetterMM(0, 80, 55, 80); got != 0 {
		t.Errorf("of an unknown weight %g mm", got)
	}
}

// What a market's rules are, as the reference on label rules has them row by row.
func TestMarketsFollowTheirRules(t *testing.T) {
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
		m := market(t, id)
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
	} {
		_, err := presets.Overlay(base, "own.toml", strings.NewReader("[[market]]\nid = \"x\"\nname = \"X\"\n"+text+"\n"))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", text, err, want)
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
