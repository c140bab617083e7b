package closing_test

import (
	"errors"
	"math/big"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/closing"
)

// first is the day before which there is nothing.
const first = day.Day(20_500)

func price(t testing.TB, text string) money.Amount {
	t.Helper()
	a, err := money.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func oil() lot.Material { return lot.Material{Kind: lot.Oil, ID: "olive"} }

// quarter is the worked example of the reference (cost and stock, C1, after IAS 2.25 and 2.27), with cartons, a blend and a spill around it.
func quarter(t testing.TB, f lot.Formula) []stock.Entry {
	carton, blend := lot.Material{Kind: lot.Packaging, ID: "carton"}, lot.Material{Kind: lot.Blend, ID: "mix"}
	return []stock.Entry{
		{ID: "0", Kind: stock.Rule, Day: first - 1, Formula: f, Currency: "EUR"},
		{ID: "1", Kind: stock.Received, Day: first, Pack: "o1", Material: oil(), Q: 5000 * lot.One, Loss: 100 * lot.One, Price: price(t, "38.50"), Postage: price(t, "4.50")},
		{ID: "2", Kind: stock.Received, Day: first + 1, Pack: "o2", Material: oil(), Q: 5000 * lot.One, Loss: 100 * lot.One, Price: price(t, "46.25"), Postage: price(t, "4.75")},
		{ID: "3", Kind: stock.Taken, Day: first + 10, Pack: "o1", For: "a", Q: 4900 * lot.One},
		{ID: "4", Kind: stock.Taken, Day: first + 10, Pack: "o2", For: "a", Q: 1300 * lot.One},
		{ID: "5", Kind: stock.Received, Day: first + 11, Pack: "c1", Material: carton, Q: 200 * lot.One, Price: price(t, "72.00")},
		{ID: "6", Kind: stock.Taken, Day: first + 40, Pack: "c1", For: "a", Q: 144 * lot.One},
		{ID: "7", Kind: stock.Taken, Day: first + 41, Pack: "o2", For: "m1", Q: 600 * lot.One},
		{ID: "8", Kind: stock.Made, Day: first + 41, Pack: "m1", Material: blend, Q: 590 * lot.One},
		{ID: "9", Kind: stock.Lost, Day: first + 42, Pack: "m1", Q: 59 * lot.One, Text: "fell over"},
		{ID: "10", Kind: stock.Taken, Day: first + 43, Pack: "o2", For: "b", Q: 5 * lot.One},
		{ID: "11", Kind: stock.TakenBack, Day: first + 44, Of: "10"},
	}
}

// cents is a fraction rounded half up to the cent by the standard library.
func cents(num, den int64) string { return big.NewRat(num, den).FloatString(2) }

// The figures are those printed in the reference; of what it does not have, fractions of whole cents.
func TestTheQuarterClosesByBothFormulas(t *testing.T) {
	for f, want := range map[lot.Formula]struct{ used, left, blend, lost string }{
		// First in first out: the 600 g of the blend are of the second lot, at 51.00 for 4900 g.
		lot.FIFO: {"56.53", cents(5100*3000, 4900*100), cents(5100*600, 4900*100), cents(5100*60, 4900*100)},
		// Moving average: of 94.00 for 9800 g.
		lot.Average: {"59.47", cents(9400*3000, 9800*100), cents(9400*600, 9800*100), cents(9400*60, 9800*100)},
	} {
		m := closing.Of(quarter(t, f), first, first+60)
		if len(m.Rows) != 3 || m.Formula != f || m.Currency != "EUR" {
			t.Fatalf("%s: %+v", f, m)
		}
		r := m.Rows[0]
		for what, x := range map[string][2]string{
			"bought": {r.Bought.Cost.Cents(), "94.00"}, "used": {r.Batches.Cost.Cents(), want.used}, "left": {r.Left.Cost.Cents(), want.left},
			"into the blend": {r.Blends.Cost.Cents(), want.blend}, "the blend": {m.Rows[1].Made.Cost.Cents(), want.blend},
			"a tenth of it lost": {m.Rows[1].Lost.Cost.Cents(), want.lost}, "cartons used": {m.Rows[2].Batches.Cost.Cents(), "51.84"},
			"grams left": {r.Left.Q.String(), "3200"}, "grams used": {r.Batches.Q.String(), "6200"}, "given back": {r.Back.String(), "5"},
			"all paid": {m.Total.Bought.Cost.Cents(), "166.00"}, "weighed left": {m.Weighed.Left.Q.String(), "3731"}, "pieces left": {m.Pieces.Left.Q.String(), "56"},
		} {
			if x[0] != x[1] {
				t.Errorf("%s: %s is %s, want %s", f, what, x[0], x[1])
			}
		}
		// The same days in two parts: what was there on the 20th day is what was left on the 19th.
		if r := closing.Of(quarter(t, f), first+20, first+60).Rows[0]; r.Opening.Q != 3800*lot.One || r.Bought.Q != 0 || r.Off.Q != 0 || r.Off.Cost.Sign() != 0 {
			t.Errorf("%s: from the 20th day %+v", f, r)
		}
	}
}

// loaf is batch a: 148 bars cut on the day after the pour, 4 of them rejects, one of them kept as the sample later found.
func loaf(marks ...logbook.Event) life.Batch {
	at := (first + 10).At(10, 0, time.UTC)
	events := append([]logbook.Event{{Kind: logbook.Opened}}, marks...)
	for i := range events {
		events[i].ID, events[i].Wall = string(rune('a'+i)), at.Add(time.Duration(i)*time.Minute)
	}
	return life.Of(logbook.Pour{ID: "a", Name: "A", Opened: at, PlanErr: errors.New("none"), Events: events}, pour.Shelf{}, pour.Hand{}, first+90)
}

func mark(kind logbook.EventKind, after day.Day, count int, what string) logbook.Event {
	return logbook.Event{Kind: kind, What: what, Life: logbook.Life{Count: count, Day: (first + after).String()}}
}

// The cost of the batch, 56.53 of oil and 51.84 of cartons, is in its 144 good bars; the cartons came when 100 of them were sold.
func TestTheCostOfABatchIsInItsGoodBars(t *testing.T) {
	cut := mark(logbook.Sliced, 11, 148, "")
	cut.Life.Seconds = 3
	sold := mark(logbook.Sold, 30, 100, "market")
	sold.Life.Price, sold.Life.Currency = "6.50", "EUR"
	b := loaf(cut, mark(logbook.Kept, 12, 1, logbook.KeptSample), sold, mark(logbook.Given, 45, 2, ""), mark(logbook.Sold, 46, 10, "shop"), mark(logbook.Counted, 50, 30, ""))
	m := closing.Of(quarter(t, lot.FIFO), first, first+60)
	costs := func(id string, until day.Day) (money.Amount, bool) { return m.Cost(id, until), true }
	oilCost := new(big.Rat).Add(big.NewRat(43, 1), big.NewRat(51*1300, 4900))
	all := new(big.Rat).Add(oilCost, big.NewRat(5184, 100))
	bars := func(cost *big.Rat, n int64) *big.Rat { return new(big.Rat).Mul(cost, big.NewRat(n, 144)) }
	is := func(what string, got closing.Count, n int, want *big.Rat) {
		t.Helper()
		if got.Bars != n || got.Cost.Cents() != want.FloatString(2) {
			t.Errorf("%s: %d bars at %s, want %d at %s", what, got.Bars, got.Cost.Cents(), n, want.FloatString(2))
		}
	}
	one := closing.BarsOf([]life.Batch{b}, costs, first, first+35)
	is("sold first", one.Sold, 100, bars(oilCost, 100))
	is("left first", one.Left, 44, bars(oilCost, 44))
	if one.Cut != 148 || one.Seconds != 3 || one.Samples != 1 || one.Added.Cents() != oilCost.FloatString(2) || len(one.Taken) != 1 || one.Taken[0].Amount.Cents() != "650.00" {
		t.Errorf("at first %+v", one)
	}
	two := closing.BarsOf([]life.Batch{b}, costs, first+36, first+60)
	is("opening", two.Opening, 44, bars(oilCost, 44))
	is("sold then, with the cartons of those sold before", two.Sold, 10, new(big.Rat).Sub(bars(all, 110), bars(oilCost, 100)))
	is("given", two.Given, 2, bars(all, 2))
	is("missing", two.Missing, 2, bars(all, 2))
	is("left", two.Left, 30, bars(all, 30))
	if two.Added.Cents() != "51.84" || two.NoPrice != 10 || len(two.Taken) != 0 || len(two.Unknown) != 0 {
		t.Errorf("then %+v", two)
	}
}

// What a failed batch cost is written off, and what is not cut yet is in loaves; of a batch whose bars nobody counted it is said.
func TestWhatIsNoBarIsWrittenOffOrInLoaves(t *testing.T) {
	costs := func(string, day.Day) (money.Amount, bool) { return price(t, "10.00"), true }
	early := func(id string, until day.Day) (money.Amount, bool) {
		if until < first+10 {
			return money.Amount{}, true
		}
		return costs(id, until)
	}
	cut := mark(logbook.Sliced, 11, 10, "")
	for what, c := range map[string]struct {
		batch               life.Batch
		off, loaves, onHand string
		wasted              int
	}{
		"not cut":           {loaf(), "0.00", "10.00", "0.00", 0},
		"failed as a loaf":  {loaf(mark(logbook.Failed, 12, 0, "")), "10.00", "0.00", "0.00", 0},
		"failed when sold":  {loaf(cut, mark(logbook.Sold, 13, 4, ""), mark(logbook.Failed, 14, 0, "")), "6.00", "0.00", "0.00", 6},
		"no bar of it good": {loaf(cut, mark(logbook.Seconds, 13, 10, "")), "10.00", "0.00", "0.00", 0},
		"cut":               {loaf(cut), "0.00", "0.00", "10.00", 0},
	} {
		b := closing.BarsOf([]life.Batch{c.batch}, early, first, first+60)
		if b.WrittenOff.Cost.Cents() != c.off || b.WrittenOff.Bars != c.wasted || b.Uncut.Cents() != c.loaves || b.Left.Cost.Cents() != c.onHand || b.Added.Cents() != "10.00" {
			t.Errorf("%s: %+v", what, b)
		}
		// Nothing of it moves later.
		if b := closing.BarsOf([]life.Batch{c.batch}, costs, first+61, first+80); b.WrittenOff.Cost.Sign() != 0 || b.Added.Sign() != 0 || b.Opening.Cost.Plus(b.Loaves).Compare(b.Left.Cost.Plus(b.Uncut)) != 0 {
			t.Errorf("%s, later: %+v", what, b)
		}
	}
	unknown := func(string, day.Day) (money.Amount, bool) { return price(t, "1.00"), false }
	if b := closing.BarsOf([]life.Batch{loaf(cut)}, unknown, first, first+60); len(b.Unknown) != 1 {
		t.Errorf("a cost that is not known: %+v", b)
	}
	one := logbook.Event{Kind: logbook.Cut, Value: 120, What: (first + 11).String()}
	if b := closing.BarsOf([]life.Batch{loaf(one)}, costs, first, first+60); len(b.Unknown) != 1 || b.Uncut.Cents() != "10.00" {
		t.Errorf("bars that nobody counted: %+v", b)
	}
}
