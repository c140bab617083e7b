package house_test

import (
	"os"
	"strings"
	"testing"

	"pourbench/pour/house"
	"pourbench/pour/strict"
)

const written = `# mine
currency = "EUR"
wage_per_hour = "16.00" # what I want
energy_per_batch = "1.85"
overhead_per_batch = "31"
fixed_per_month = "385"

[[channel]]
name = "market"
fee_percent = "1.75"
fee_per_sale = "0.10"

[[price]]
of = "packaging kraft-box"
per = "0.36"
`

// The amounts are those of the worked example C1 of the reference (cost and stock).
func TestCostsAreRead(t *testing.T) {
	h, err := house.Read("costs.toml", written)
	if err != nil {
		t.Fatal(err)
	}
	box, ok := h.Price("packaging kraft-box")
	if h.Currency != "EUR" || h.WagePerHour.String() != "16.00" || h.OverheadPerBatch.String() != "31.00" || len(h.Channels) != 1 ||
		h.Channels[0].FeePercent.String() != "1.75" || h.Channels[0].FeePerSale.String() != "0.10" || !ok || box.String() != "0.36" {
		t.Errorf("read as %+v", h)
	}
}

func TestWhatCannotBeIsRefusedWithItsPlace(t *testing.T) {
	for src, want := range map[string]string{
		"wage_per_hour = 16":                                        "costs.toml:1:1: wage_per_hour",
		`wage_per_hour = "16,00"`:                                   "no amount of money",
		`wage = "16"`:                                               "wage_per_hour",
		`tax_percent = "100"`:                                       "0 to below 100",
		"[[channel]]\nfee_percent = \"2\"":                          "name",
		"[[price]]\nof = \"box\"\nper = \"1\"":                      "is no material",
		"[[channel]]\nname = \"a\"\n[[channel]]\nname = \"a\"":      "stands there twice",
		"[[channel]]\nname = \"a\"\nbars_per_sale = 0":              "out of range",
		"[[channel]]\nname = \"a\"\nwholesale = \"yes\"":            "wholesale",
		"[[price]]\nof = \"packaging box\"\nper = \"1\"\nyes = 1\n": "yes",
	} {
		if _, err := house.Read("costs.toml", src); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v; want %q", src, err, want)
		}
	}
}

func TestAChangeKeepsWhatHandsWrote(t *testing.T) {
	dir := t.TempDir()
	s := house.NewStore(dir)
	if _, err := s.Set("currency", strict.Quote("CHF")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(house.Path(dir), []byte(written), 0o600); err != nil {
		t.Fatal(err)
	}
	must := func(_ any, err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(s.Set("wage_per_hour", strict.Quote("18.50")))
	must(s.Price("packaging kraft-box", "0.40"))
	must(s.Price("alkali naoh", "4.20"))
	must(s.Channel("market", strict.Pair{Key: "fee_percent", Value: strict.Quote("2")}))
	must(s.Channel("shop", strict.Pair{Key: "wholesale", Value: "true"}))
	src, err := os.ReadFile(house.Path(dir))
	if err != nil {
		t.Fatal(err)
	}
	want := strings.NewReplacer(`"16.00" #`, `"18.50" #`, `"0.36"`, `"0.40"`, `"1.75"`, `"2"`).Replace(written)
	if !strings.HasPrefix(string(src), want[:strings.Index(want, "[[price]]")]) || !strings.Contains(string(src), "alkali naoh") {
		t.Errorf("the file is now\n%s", src)
	}
	h, err := house.Load(dir)
	if err != nil || len(h.Channels) != 2 || !h.Channels[1].Wholesale || len(h.Prices) != 2 {
		t.Errorf("read back as %+v, %v", h, err)
	}
	if _, err := s.Set("wage_per_hour", strict.Quote("a lot")); err == nil {
		t.Error("a wage that is no amount was written")
	}
	if again, err := os.ReadFile(house.Path(dir)); err != nil || string(again) != string(src) {
		t.Errorf("a refused change left\n%s", again)
	}
}

func TestTheReferenceNamesEveryKey(t *testing.T) {
	for _, key := range []string{"currency", "wage_per_hour", "fee_percent", "bars_per_sale", "of", "per"} {
		if !strings.Contains(house.Reference(), key) {
			t.Errorf("%s is not told of", key)
		}
	}
}
