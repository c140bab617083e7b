package house_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/cost"
	"pourbench/pour/house"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

const written = `# mine
format = 1
currency = "EUR" # since 2026
wage_per_hour = "16.00"
energy_per_batch = "1.85"
overhead_per_batch = "31"
fixed_per_month = "385.00"
profit_per_month = "200"
tax_percent = "19"

[[channel]]
name = "market"
fee_percent = "1.75"
fee_per_sale = "0.10"
bars_per_sale = 3
tax_included = true

[[channel]]
name = "shop"
wholesale = true

[[price]]
of = "packaging kraft-box"
each = "0.36"

[[price]]
of = "alkali naoh"
per_kg = "4.20"
`

func amount(t *testing.T, text string) money.Amount {
	t.Helper()
	a, err := money.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func percent(t *testing.T, text string) money.Percent {
	t.Helper()
	p, err := money.ParsePercent(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// told is a house as text, which can be compared.
func told(h cost.House) []string {
	var out []string
	add := func(rows []house.Row) {
		for _, r := range rows {
			out = append(out, r.Key+"="+r.Text())
		}
	}
	add(house.Rows(&h))
	for i := range h.Channels {
		add(house.ChannelRows(&h.Channels[i]))
	}
	for _, p := range h.Prices {
		out = append(out, p.Of+"="+p.Per.Exact())
	}
	return out
}

func TestCostsAreReadAsTheyAreWritten(t *testing.T) {
	got, err := house.Read("costs.toml", written)
	if err != nil {
		t.Fatal(err)
	}
	want := cost.House{
		Currency: "EUR", WagePerHour: amount(t, "16"), EnergyPerBatch: amount(t, "1.85"), OverheadPerBatch: amount(t, "31"), FixedPerMonth: amount(t, "385"),
		ProfitPerMonth: amount(t, "200"), TaxPercent: percent(t, "19"),
		Channels: []cost.Channel{
			{Name: "market", FeePercent: percent(t, "1.75"), FeePerSale: amount(t, "0.1"), BarsPerSale: 3, TaxIncluded: true}, {Name: "shop", Wholesale: true},
		},
		Prices: []cost.Price{{Of: "packaging kraft-box", Per: amount(t, "0.36")}, {Of: "alkali naoh", Per: amount(t, "4.2")}},
	}
	if d := cmp.Diff(told(want), told(got)); d != "" {
		t.Error(d)
	}
	if none, err := house.Read("costs.toml", " \n"); err != nil || none.Stated() || !got.Stated() {
		t.Errorf("no text states %+v, %v", none, err)
	}
}

func TestWhatCannotBeIsRefusedWithItsLineAndAMend(t *testing.T) {
	for text, want := range map[string]string{
		"currency = \"EUR\"\n":                                                              "write format = 1",
		"format = 2\n":                                                                      "none this program reads",
		"format = 1\nwage = \"16\"\n":                                                       "wage_per_hour",
		"format = 1\nwage_per_hour = 16.0\n":                                                "wage_per_hour",
		"format = 1\nwage_per_hour = \"16 EUR\"\n":                                          "such as 7.50",
		"format = 1\nwage_per_hour = \"-3\"\n":                                              "such as 7.50",
		"format = 1\ntax_percent = \"19 %\"\n":                                              "such as 1.75",
		"format = 1\ncurrency = \"\"\n":                                                     "is empty",
		"format = 1\ncurrency = \"much too long\"\n":                                        "currency",
		"format = 1\n[[channel]]\nwholesale = true\n":                                       "name: is missing",
		"format = 1\n[[channel]]\nname = \"a\"\n[[channel]]\nname = \"a\"\n":                "twice",
		"format = 1\n[[channel]]\nname = \"a\"\nfee_percent = \"100\"\n":                    "or more",
		"format = 1\n[[channel]]\nname = \"a\"\nbars_per_sale = 0\n":                        "no number of bars",
		"format = 1\n[[price]]\nof = \"box\"\neach = \"1\"\n":                               "its kind and its id",
		"format = 1\n[[price]]\nof = \"packaging box\"\nper_kg = \"1\"\n":                   "write each",
		"format = 1\n[[price]]\nof = \"alkali naoh\"\neach = \"1\"\n":                       "write per_kg",
		"format = 1\n[[price]]\nof = \"alkali naoh\"\n":                                     "per_kg: is missing",
		strings.Replace(written, "alkali naoh\"\nper_kg", "packaging kraft-box\"\neach", 1): "two prices",
	} {
		_, err := house.Read("costs.toml", text)
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "costs.toml") {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

func TestOneLineIsChangedAndTheRestStays(t *testing.T) {
	for name, c := range map[string]struct {
		do       func(house.Store) error
		old, new string
	}{
		"over what is there": {func(s house.Store) error { return s.Set("currency", "CHF") }, `"EUR" # since`, `"CHF" # since`},
		"out":                {func(s house.Store) error { return s.Set("energy_per_batch", "") }, "energy_per_batch = \"1.85\"\n", ""},
		"a channel":          {func(s house.Store) error { return s.SetChannel("market", "bars_per_sale", "4") }, "bars_per_sale = 3", "bars_per_sale = 4"},
		"more of a channel":  {func(s house.Store) error { return s.SetChannel("shop", "fee_percent", "2") }, "wholesale = true\n", "wholesale = true\nfee_percent = \"2\"\n"},
		"a comma":            {func(s house.Store) error { return s.SetChannel("shop", "fee_percent", "3,5") }, "wholesale = true\n", "wholesale = true\nfee_percent = \"3.5\"\n"},
		"a comma in words":   {func(s house.Store) error { return s.Set("currency", "a,5") }, `"EUR" # since`, `"a,5" # since`},
		"a price's comma": {func(s house.Store) error {
			return s.SetPrice(lot.Material{Kind: lot.Packaging, ID: "kraft-box"}, "0,25")
		}, `"0.36"`, `"0.25"`},
		"another channel": {func(s house.Store) error { return s.SetChannel("post", "fee_per_sale", "1") }, "\"4.20\"\n", "\"4.20\"\n\n[[channel]]\nname = \"post\"\nfee_per_sale = \"1\"\n"},
		"a price": {func(s house.Store) error {
			return s.SetPrice(lot.Material{Kind: lot.Packaging, ID: "kraft-box"}, "0.4")
		}, `"0.36"`, `"0.4"`},
		"another price": {func(s house.Store) error { return s.SetPrice(lot.Material{Kind: lot.Oil, ID: "olive"}, "7.7") }, "\"4.20\"\n", "\"4.20\"\n\n[[price]]\nof = \"oil olive\"\nper_kg = \"7.7\"\n"},
		"nothing":       {func(s house.Store) error { return s.SetPrice(lot.Material{Kind: lot.Oil, ID: "olive"}, "") }, "mine", "mine"},
	} {
		s := store(t, written)
		if err := c.do(s); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		holds(t, name, s, strings.Replace(written, c.old, c.new, 1))
	}
	s := store(t, written)
	if err := s.DropChannel("shop"); err != nil {
		t.Error(err)
	}
	if h, err := house.Load(s.Dir); err != nil || len(h.Channels) != 1 || len(h.Prices) != 2 {
		t.Errorf("%+v, %v", h, err)
	}
}

func store(t *testing.T, text string) house.Store {
	t.Helper()
	s := house.NewStore(filepath.Join(t.TempDir(), "data"))
	if text == "" {
		return s
	}
	if err := os.MkdirAll(s.Dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(s.Path(), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return s
}

func holds(t *testing.T, name string, s house.Store, want string) {
	t.Helper()
	got, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, string(got)); d != "" {
		t.Errorf("%s: %s", name, d)
	}
}

func TestTheFileBeginsWithTheFirstCost(t *testing.T) {
	s := store(t, "")
	if h, err := house.Load(s.Dir); err != nil || h.Stated() {
		t.Errorf("without a file: %+v, %v", h, err)
	}
	if err := s.Set("wage_per_hour", ""); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(s.Path()); err == nil {
		t.Error("stating nothing made a file")
	}
	if err := s.Set("wage_per_hour", "18.50"); err != nil {
		t.Fatal(err)
	}
	if h, err := house.Load(s.Dir); err != nil || h.WagePerHour.Exact() != "18.50" {
		t.Errorf("%+v, %v", h, err)
	}
}

func TestWhatCannotBeIsNotWritten(t *testing.T) {
	s := store(t, written)
	for want, err := range map[string]error{
		"such as 7.50":        s.Set("wage_per_hour", "a lot"),
		"did you mean":        s.Set("wage_per_hours", "1"),
		"such as 1.75":        s.SetChannel("market", "fee_percent", "x"),
		"twice":               s.SetChannel("shop", "name", "market"),
		"no way of selling":   s.DropChannel("nowhere"),
		"bars_per_sale":       s.SetChannel("shop", "bars_per_sale", "many"),
		"price oil olive":     s.SetPrice(lot.Material{Kind: lot.Oil, ID: "olive"}, "dear"),
		"nothing that is sta": s.SetChannel("new", "zzz", "1"),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	holds(t, "after all that", s, written)
}

func TestTheReferenceNamesEveryKey(t *testing.T) {
	ref := house.Reference()
	for _, line := range strings.Split(written, "\n") {
		if key, _, ok := strings.Cut(line, " = "); ok && !strings.Contains(ref, key) {
			t.Errorf("the reference does not name %s", key)
		}
	}
}
