package stock_test

import (
	"testing"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
)

func at(t testing.TB, s string) day.Day {
	t.Helper()
	d, err := day.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func price(t testing.TB, s string) money.Amount {
	t.Helper()
	a, err := money.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The worked example of the reference (cost and stock, C1, after IAS 2.25 and 2.27): two lots of 5000 g with a loss of 2 % in use, 6200 g taken.
func TestTwoLotsByBothFormulas(t *testing.T) {
	olive := lot.Material{Kind: lot.Oil, ID: "olive"}
	entries := func(f lot.Formula) []stock.Entry {
		return []stock.Entry{
			{ID: "0", Kind: stock.Rule, Formula: f, Currency: "EUR", Day: at(t, "2026-01-01")},
			{ID: "1", Kind: stock.Received, Pack: "olive-1", Material: olive, Q: 5000 * lot.One, Loss: 100 * lot.One, Price: price(t, "38.50"), Postage: price(t, "4.50"), Day: at(t, "2026-03-03")},
			{ID: "2", Kind: stock.Received, Pack: "olive-2", Material: olive, Q: 5000 * lot.One, Loss: 100 * lot.One, Price: price(t, "46.25"), Postage: price(t, "4.75"), Day: at(t, "2026-03-20")},
			{ID: "3", Kind: stock.Taken, Pack: "olive-1", For: "meadow", Q: 4900 * lot.One, Day: at(t, "2026-04-01")},
			{ID: "4", Kind: stock.Taken, Pack: "olive-2", For: "meadow", Q: 1300 * lot.One, Day: at(t, "2026-04-01")},
		}
	}
	for f, want := range map[lot.Formula][2]string{lot.FIFO: {"56.53", "37.47"}, lot.Average: {"59.47", "34.53"}} {
		s := stock.Of(entries(f), at(t, "2026-05-01"))
		taken := s.Costs["3"].Plus(s.Costs["4"])
		h := s.Held[olive]
		q, left := h.Layers.Total()
		if taken.Over(1, 2).String() != want[0] || left.Over(1, 2).String() != want[1] || q != 3600*lot.One || taken.Plus(left).Compare(price(t, "94.00")) != 0 {
			t.Errorf("%s: taken %s, left %s of %s g; want %s and %s of 3600", f, taken, left, q, want[0], want[1])
		}
	}
}

func TestALedgerIsWrittenAndRead(t *testing.T) {
	l := stock.New(t.TempDir())
	now := time.Date(2026, 11, 28, 10, 0, 0, 0, time.UTC)
	in := stock.Entry{Kind: stock.Received, Pack: "olive-1", Material: lot.Material{Kind: lot.Oil, ID: "olive"}, Lot: "A12", Q: 50005000, Price: price(t, "38.5"), Expires: at(t, "2027-05-31")}
	_, err := l.Decide(now, "aa", func(stock.State) ([]stock.Entry, error) { return []stock.Entry{in}, nil })
	if err != nil {
		t.Fatal(err)
	}
	s, err := l.State(day.Of(now))
	if err != nil {
		t.Fatal(err)
	}
	p, ok := s.Pack("olive-1")
	if !ok || p.Left != in.Q || p.Expires != in.Expires || p.Price.Compare(in.Price) != 0 || p.Lot != "A12" {
		t.Errorf("the pack came back as %+v", p)
	}
}
