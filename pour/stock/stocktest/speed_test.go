package stocktest_test

import (
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/closing"
	"pourbench/pour/stock/shopping"
	"pourbench/pour/stock/stocktest"
	"pourbench/pour/stock/trace"
)

// tenYears are ten years of a business: 2000 batches, 60 000 movements.
func tenYears(b *testing.B) stocktest.Business {
	b.Helper()
	return stocktest.Draw(stocktest.Seeded(1), stocktest.TenYears())
}

// written is the ledger of a business in a folder.
func written(b *testing.B, business stocktest.Business) stock.Ledger {
	b.Helper()
	l := stock.New(b.TempDir())
	_, err := l.Decide(business.Today.At(10, 0, time.UTC), "aa", func(stock.State) ([]stock.Entry, error) { return business.Entries, nil })
	if err != nil {
		b.Fatal(err)
	}
	return l
}

func BenchmarkTenYearsOpen(b *testing.B) {
	business := tenYears(b)
	l := written(b, business)
	for b.Loop() {
		s, err := l.State(business.Today)
		if err != nil || len(s.Held) == 0 {
			b.Fatal(err, len(s.Held))
		}
	}
}

func BenchmarkTenYearsWorkedOut(b *testing.B) {
	business := tenYears(b)
	for b.Loop() {
		stock.Of(business.Entries, business.Today)
	}
	b.ReportMetric(float64(len(business.Entries)), "entries")
}

// traced is what a trace begins with.
func traced(b *testing.B) (stock.State, []life.Batch, string) {
	b.Helper()
	business := tenYears(b)
	s := business.State()
	for _, e := range s.Entries {
		if e.Kind == stock.Received && e.Lot != "" {
			return s, business.Batches(), e.Lot
		}
	}
	b.Fatal("nothing was received")
	return s, nil, ""
}

func BenchmarkTenYearsTrace(b *testing.B) {
	s, batches, number := traced(b)
	for b.Loop() {
		g := trace.Of(s, batches)
		things, err := g.Find(number)
		if err != nil {
			b.Fatal(err)
		}
		for _, t := range things {
			if r := g.Recall(t); len(g.Tree(t, trace.Forward).Lines) < 2 || len(r.Batches) == 0 {
				b.Fatal(t, "reaches nothing")
			}
			if _, ok := g.Balance(t); !ok {
				b.Fatal(t, "has no balance")
			}
		}
	}
}

func BenchmarkTenYearsShoppingList(b *testing.B) {
	s := tenYears(b).State()
	var pours []shopping.Pour
	for i := range 10 { // a season of ten pours
		p := shopping.Pour{Name: "Soap", On: s.Today + day.Day(7*i)}
		for m := range s.Held {
			if m.Kind != lot.Blend {
				p.Needs = append(p.Needs, pour.MaterialNeed{Material: m, Q: 500 * lot.One})
			}
		}
		pours = append(pours, p)
	}
	for b.Loop() {
		if l := shopping.Of(s.Stock, nil, pours, nil, shopping.Cheapest); len(l.Pours) != len(pours) {
			b.Fatal("pours are missing")
		}
	}
}

// What the materials of every batch cost, and what the bars of all of them carry of it.
func BenchmarkTenYearsCostOfAllBatches(b *testing.B) {
	business := tenYears(b)
	batches := business.Batches()
	for b.Loop() {
		m := closing.Of(business.Entries, business.First, business.Today)
		costs := func(id string, until day.Day) (money.Amount, bool) { return m.Cost(id, until), true }
		if c := closing.BarsOf(batches, costs, business.First, business.Today); c.Added.Compare(m.Total.Batches.Cost) != 0 {
			b.Fatal("not all cost is in bars")
		}
	}
}
