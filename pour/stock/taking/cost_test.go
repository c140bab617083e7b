package taking_test

import (
	"testing"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/stocktest"
	"pourbench/pour/stock/taking"
)

func amount(t testing.TB, s string) money.Amount {
	t.Helper()
	a, err := money.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The materials of the reference's example (cost and stock, C1): two lots of oil of 5000 g with a loss of 2 %, landed at 43.00 and 51.00, of which
// 6200 g were taken, are 56.53 first in, first out; 3720 g of coconut oil that no pack covers, in two jugs, at 6.40 a kilogram are 23.81. Of
// packaging 144 pieces at 0.36 are 51.84.
func TestABatchCostsWhatWasTakenForIt(t *testing.T) {
	_, shelf := example(t)
	for i := range shelf.Oils {
		if shelf.Oils[i].ID == "coconut" {
			shelf.Oils[i].PricePerKG = amount(t, "6.40")
		}
	}
	box := lot.Material{Kind: lot.Packaging, ID: "box"}
	day := on(t, "2026-04-10")
	lot1, lot2 := received("l1", olive(), 5000, on(t, "2026-03-03"), 0), received("l2", olive(), 5000, on(t, "2026-03-20"), 0)
	lot1.Loss, lot1.Price, lot1.Postage = 100*lot.One, amount(t, "38.50"), amount(t, "4.50")
	lot2.Loss, lot2.Price, lot2.Postage = 100*lot.One, amount(t, "46.25"), amount(t, "4.75")
	boxes := received("b1", box, 200, on(t, "2026-03-20"), 0)
	boxes.Price = amount(t, "72.00")
	s := stock.Of([]stock.Entry{
		lot1, lot2, boxes,
		{ID: "t1", Kind: stock.Taken, Pack: "l1", Q: 4900 * lot.One, For: "pour", Day: day},
		{ID: "t2", Kind: stock.Taken, Pack: "l2", Q: 1300 * lot.One, For: "pour", Day: day},
		{ID: "t3", Kind: stock.Taken, Pack: "b1", Q: 144 * lot.One, For: "pour", Day: day},
		{ID: "t4", Kind: stock.Taken, Pack: "l2", Q: 100 * lot.One, For: "another", Day: day},
	}, day)
	shelf.Stock = s.Stock
	coconut := func(g lot.Quantity, jug string) taking.Want {
		return taking.Want{MaterialNeed: pour.MaterialNeed{Material: lot.Material{Kind: lot.Oil, ID: "coconut"}, Name: "coconut oil", Jug: jug, Q: g * lot.One}}
	}
	lines, notes := taking.Goods(s, shelf, "pour", []taking.Want{want(6200, ""), coconut(3000, ""), coconut(720, "fern")})
	want := map[string]string{"olive": "56.53", "box": "51.84", "coconut oil": "23.81"}
	for _, l := range lines {
		if l.Amount.Cents() != want[l.Name] || l.Lacks != "" || (l.Kind == cost.Packaging) != (l.Name == "box") {
			t.Errorf("%s is %s (%s), want %s: %+v", l.Name, l.Amount.Cents(), l.Lacks, want[l.Name], l)
		}
		delete(want, l.Name)
	}
	if len(want) > 0 || len(notes) != 1 {
		t.Errorf("not in it: %v; it says %q", want, notes)
	}
}

// Of twelve bars, two of them seconds and one the sample, nine carry the cost.
func TestSampleAndSecondsCarryNoCost(t *testing.T) {
	b := life.Batch{Bars: life.Account{Known: true, Bars: 12, Seconds: 2, Kept: 2, Given: 1}, Events: []logbook.Event{
		{Kind: logbook.Kept, What: logbook.KeptSample, Life: logbook.Life{Count: 1}}, {Kind: logbook.Kept, What: "own", Life: logbook.Life{Count: 1}},
	}}
	if bars, known := taking.Bars(b); !known || bars != (cost.Bars{Cut: 12, Good: 9, Testers: 1}) {
		t.Errorf("it has %+v", bars)
	}
}

// What all batches and blends of some years cost is what each of them by itself does, line by line, and all of it is what left the layers.
func TestAllBatchesCostWhatEachDoes(t *testing.T) {
	_, shelf := example(t)
	s := stocktest.Draw(stocktest.Seeded(7), stocktest.Size{Batches: 40, Materials: 12, Each: 6}).State()
	all := taking.Costs(s)
	var sum, left money.Amount
	for id, is := range all {
		var own money.Amount
		lines, _ := taking.Goods(s, shelf, id, nil)
		for _, l := range lines {
			own = own.Plus(l.Amount)
		}
		if own.Compare(is) != 0 {
			t.Errorf("%s costs %s, by its lines %s", id, is, own)
		}
		sum = sum.Plus(is)
	}
	for _, e := range s.Entries {
		if e.Kind == stock.Taken {
			left = left.Plus(s.Costs[e.ID])
		}
	}
	if len(all) < 40 || sum.Compare(left) != 0 || sum.Sign() <= 0 {
		t.Errorf("%d of them cost %s, taken was %s", len(all), sum, left)
	}
}

func BenchmarkCostsOfTenYears(b *testing.B) {
	s := stocktest.Draw(stocktest.Seeded(1), stocktest.TenYears()).State()
	b.ReportMetric(float64(len(s.Entries)), "entries")
	for b.Loop() {
		taking.Costs(s)
	}
}

// What was not taken stands at what lies there, once for all jugs: 3000 g at 10.00 a kilogram and 720 g at 5.00 are 33.60, and not 37.20.
func TestWhatLiesThereIsCountedOnceForAllJugs(t *testing.T) {
	_, shelf := example(t)
	first, second := received("l1", olive(), 3000, on(t, "2026-03-03"), 0), received("l2", olive(), 3000, on(t, "2026-03-20"), 0)
	second.Price = amount(t, "15.00")
	s := stock.Of([]stock.Entry{first, second}, on(t, "2026-04-10"))
	shelf.Stock = s.Stock
	fern := want(720, "")
	fern.Jug = "fern"
	lines, _ := taking.Goods(s, shelf, "pour", []taking.Want{want(3000, ""), fern})
	if len(lines) != 1 || lines[0].Amount.Cents() != "33.60" {
		t.Errorf("it costs %+v", lines)
	}
}
