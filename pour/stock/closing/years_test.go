package closing_test

import (
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock"
	"pourbench/pour/stock/closing"
	"pourbench/pour/stock/stocktest"
)

// Any stretch of any years closes: nothing is off in grams, in pieces or in money, and what batches cost is in their bars to the last digit.
func TestAnyStretchOfDaysCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := stocktest.Draw(stocktest.Seeded(rapid.Uint64().Draw(t, "seed")), stocktest.Size{Batches: 10, Materials: 9, Each: 5, Clean: true})
		from := b.First + day.Day(rapid.IntRange(0, int(b.Today-b.First)).Draw(t, "from"))
		to := from + day.Day(rapid.IntRange(0, 60).Draw(t, "days"))
		m := closing.Of(b.Entries, from, to)
		for _, r := range append(m.Rows, m.Total) {
			if r.Off.Q != 0 || r.Off.Cost.Sign() != 0 {
				t.Fatalf("%s is off by %s and %s of %+v", r.Material, r.Off.Q, r.Off.Cost, r)
			}
		}
		if m.Total.Made.Cost.Compare(m.Total.Blends.Cost) != 0 {
			t.Fatalf("what was made cost %s, of things that cost %s", m.Total.Made.Cost, m.Total.Blends.Cost)
		}
		bars := closing.BarsOf(b.Batches(), func(id string, until day.Day) (money.Amount, bool) { return m.Cost(id, until), true }, from, to)
		if bars.Added.Compare(m.Total.Batches.Cost) != 0 {
			t.Fatalf("%s went into bars of the %s used", bars.Added, m.Total.Batches.Cost)
		}
		balanced(t, bars)
	})
}

// balanced demands that bars and their cost are all somewhere.
func balanced(t *rapid.T, c closing.Bars) {
	in := c.Opening.Cost.Plus(c.Loaves).Plus(c.Added)
	out := c.Sold.Cost.Plus(c.Given.Cost).Plus(c.Own.Cost).Plus(c.Missing.Cost).Plus(c.WrittenOff.Cost).Plus(c.Left.Cost).Plus(c.Uncut)
	if in.Compare(out) != 0 {
		t.Fatalf("%s went in and %s out: %+v", in, out, c)
	}
	bars := c.Sold.Bars + c.Given.Bars + c.Own.Bars + c.Missing.Bars + c.WrittenOff.Bars + c.Left.Bars + c.Seconds + c.Samples
	if c.Opening.Bars+c.Cut != bars {
		t.Fatalf("%d bars came and %d are somewhere: %+v", c.Opening.Bars+c.Cut, bars, c)
	}
}

// What is left when a stretch ends is what there is when the next one begins, and two stretches move what the whole moves.
func TestOneStretchGoesOnWhereTheOtherEnded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := stocktest.Draw(stocktest.Seeded(rapid.Uint64().Draw(t, "seed")), stocktest.Size{Batches: 8, Materials: 6, Each: 4, Clean: true})
		cut := b.First + day.Day(rapid.IntRange(0, int(b.Today-b.First)).Draw(t, "cut"))
		one, two, whole := closing.Of(b.Entries, b.First, cut), closing.Of(b.Entries, cut+1, b.Today), closing.Of(b.Entries, b.First, b.Today)
		if one.Total.Left.Cost.Compare(two.Total.Opening.Cost) != 0 || one.Weighed.Left.Q != two.Weighed.Opening.Q || one.Pieces.Left.Q != two.Pieces.Opening.Q {
			t.Fatalf("left %+v, opening %+v", one.Total.Left, two.Total.Opening)
		}
		if one.Total.Bought.Cost.Plus(two.Total.Bought.Cost).Compare(whole.Total.Bought.Cost) != 0 || one.Weighed.Batches.Q+two.Weighed.Batches.Q != whole.Weighed.Batches.Q {
			t.Fatalf("%+v and %+v are not %+v", one.Total, two.Total, whole.Total)
		}
		// What is left at last is what the business has by its own account, and what was paid is on the invoices.
		left, paid := lot.Quantity(0), money.Amount{}
		for _, q := range b.Told.Left {
			left += q
		}
		for _, e := range stock.Standing(b.Entries) {
			if e.Kind == stock.Received {
				paid = paid.Plus(e.Price).Plus(e.Postage)
			}
		}
		if whole.Weighed.Left.Q+whole.Pieces.Left.Q != left || whole.Total.Bought.Cost.Compare(paid) != 0 {
			t.Fatalf("%s and %s are left, want %s; %s paid, want %s", whole.Weighed.Left.Q, whole.Pieces.Left.Q, left, whole.Total.Bought.Cost, paid)
		}
	})
}
