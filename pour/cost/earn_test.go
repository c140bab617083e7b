package cost_test

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// The two printed pairs of the reference: a markup of 50 % is a margin of 33.33 %, a margin of 50 % is a markup of 100 %.
func TestMarginAndMarkup(t *testing.T) {
	for margin, markup := range map[string]string{"50": "100.00", "33.333333333": "50.00", "0": "0.00", "20": "25.00"} {
		got, ok := cost.MarkupOf(percent(t, margin))
		if is(t, "the markup of "+margin, got.Rounded(2), markup); !ok {
			t.Errorf("a margin of %s has no markup", margin)
		}
	}
	if _, ok := cost.MarkupOf(percent(t, "100")); ok {
		t.Error("a margin of 100 % has a markup")
	}
}

func TestAPriceForAMargin(t *testing.T) {
	b := c1(t, lot.FIFO)
	unit, _ := b.Unit()
	on := terms(t)
	price, err := on.ForMargin(unit, percent(t, "60"))
	if err != nil {
		t.Fatal(err)
	}
	is(t, "the price", price.Cents(), "5.67") // 2.267747 ÷ 0.4
	on.Channel.TaxIncluded, on.Tax = true, percent(t, "19")
	taxed, _ := on.ForMargin(unit, percent(t, "60"))
	is(t, "the price with tax", taxed.Cents(), "6.75") // 5.66937 × 1.19
	on.Price = taxed
	e, err := b.Earns(on)
	if err != nil {
		t.Fatal(err)
	}
	is(t, "its margin", e.Margin.Rounded(6), "60.000000")
	if _, err := on.ForMargin(unit, percent(t, "100")); err == nil || !strings.Contains(err.Error(), "below 100") {
		t.Errorf("a margin of all: %v", err)
	}
}

// (cost + wanted profit + fixed fee) ÷ (1 - fee rate) of the reference, and back: what is asked then leaves that profit, with a tax too.
func TestAPriceForAProfit(t *testing.T) {
	on := terms(t)
	price, err := on.ForProfit(amount(t, "2.30"), amount(t, "2.00"))
	if err != nil {
		t.Fatal(err)
	}
	is(t, "the price", price.Over(1, 6).String(), "4.478372") // 4.40 ÷ 0.9825
	for _, included := range []bool{true, false} {
		on.Channel.TaxIncluded, on.Tax = included, percent(t, "19")
		on.Price, _ = on.ForProfit(amount(t, "2.30"), amount(t, "2.00"))
		is(t, "what is left", on.Net().Minus(on.Fee()).Minus(amount(t, "2.30")).Over(1, 6).String(), "2.000000")
	}
	on.Channel.FeePercent = percent(t, "90")
	if _, err := on.ForProfit(amount(t, "2.30"), amount(t, "2.00")); err == nil {
		t.Error("90 % of a price with 19 % tax is more than its net, and was not refused")
	}
}

func TestAFeeIsOfWhatIsPaidAndSharedByTheBarsOfASale(t *testing.T) {
	on := terms(t)
	on.Tax, on.Channel.BarsPerSale = percent(t, "10"), 4
	is(t, "tax on top", on.Fee().Exact(), "0.150125") // 7.15 × 1.75 % + 0.10 ÷ 4
	on.Channel.TaxIncluded = true
	is(t, "tax in it", on.Fee().Exact(), "0.13875") // 6.50 × 1.75 % + 0.025
	is(t, "the net", on.Net().Over(1, 4).String(), "5.9091")
}

func TestNoNumberOfBarsBreaksEvenWhereABarLeavesNothing(t *testing.T) {
	b, on := c1(t, lot.FIFO), terms(t)
	for price, want := range map[string]string{"2.00": "leaves nothing", "2.19": "leaves nothing"} {
		on.Price = amount(t, price)
		e, err := b.Earns(on)
		if err != nil || !strings.Contains(e.Never, want) || e.BreakEven != 0 {
			t.Errorf("at %s: %d bars, %q, %v", price, e.BreakEven, e.Never, err)
		}
	}
	on = terms(t)
	on.Fixed = money.Amount{}
	if e, _ := b.Earns(on); !strings.Contains(e.Never, "no fixed cost") {
		t.Errorf("without a fixed cost: %q", e.Never)
	}
	on.Profit = amount(t, "385") // the same to cover
	if e, _ := b.Earns(on); e.BreakEven != 91 {
		t.Errorf("with a profit wanted %d bars", e.BreakEven)
	}
}

func TestWhatIsNotKnownIsNotWorkedOut(t *testing.T) {
	b, on := c1(t, lot.FIFO), terms(t)
	on.Price = money.Amount{}
	if _, err := b.Earns(on); err == nil || !strings.Contains(err.Error(), "no price") {
		t.Errorf("without a price: %v", err)
	}
	b.Bars.Testers = b.Bars.Good
	if _, err := b.Earns(terms(t)); err == nil || !strings.Contains(err.Error(), "given away") {
		t.Errorf("all given away: %v", err)
	}
	b.Bars = cost.Bars{Cut: 148}
	if _, known := b.Unit(); known || len(b.Lacking()) != 1 {
		t.Errorf("without a good bar it is known, lacking %q", b.Lacking())
	}
	b = c1(t, lot.FIFO)
	b.Lines[0].Lacks = "no pack, no price"
	least, known := b.Total()
	if _, err := b.Earns(terms(t)); known || err == nil || least.Cents() != "326.56" || len(b.Lacking()) != 1 || b.Swings(&on, 3, percent(t, "10")) != nil {
		t.Errorf("with a line that is not known: %s, %v, %v", least.Cents(), known, err)
	}
	none := cost.House{}.Bill(nil, 3600, cost.Bars{Good: 10})
	if _, known := none.Unit(); known || len(none.Uncounted) != 3 || len(none.Lacking()) != 1 {
		t.Errorf("a bill of nothing is known: %+v", none)
	}
}

// Those given away cost what they cost, and only what is sold brings money.
func TestTestersAreCarriedByTheBarsSold(t *testing.T) {
	b := c1(t, lot.FIFO)
	b.Bars.Testers = 4
	e, err := b.Earns(terms(t))
	if err != nil {
		t.Fatal(err)
	}
	is(t, "a good bar", e.Unit.Cents(), "2.27")
	sold, known := b.UnitSold()
	is(t, "a bar sold", sold.Over(1, 6).String(), "2.332540") // 326.5556 ÷ 140
	if !known {
		t.Error("what a bar sold costs is not known")
	}
	if dearer := sold.Minus(e.Unit); dearer.Over(1, 9).String() != e.Testers.Over(1, 9).String() {
		t.Errorf("it carries %s of the testers, they come to %s", dearer.Exact(), e.Testers.Exact())
	}
	b.Bars.Testers = b.Bars.Good
	if none, known := b.UnitSold(); known || none.Sign() != 0 {
		t.Errorf("where none is sold a bar sold costs %s", none.Exact())
	}
	b.Bars.Testers = 4
	is(t, "its part of the testers", e.Testers.Over(1, 6).String(), "0.064793") // 4 × 2.267747 ÷ 140
	is(t, "variable", e.Variable.Over(1, 4).String(), "2.3249")                 // 295.5556 ÷ 140 + 0.21375
	is(t, "an hour", e.PerHour.Cents(), "101.16")                               // (140 × 6.28625 - 222.5556) ÷ 6.5
	is(t, "the profit", e.Profit.Over(1, 4).String(), "3.9537")                 // 6.28625 - 326.5556 ÷ 140
}

func TestTheThreeLargestCostsDearerAndCheaper(t *testing.T) {
	on := terms(t)
	swings := c1(t, lot.FIFO).Swings(&on, 3, percent(t, "10"))
	want := []struct{ name, share, up, down, leaves string }{
		{"labour", "31.8", "2.34", "2.20", "4.16"}, // 10.40 of 326.5556; ÷ 144 is 0.0722
		{"oil in lots", "17.3", "2.31", "2.23", "4.19"},
		{"boxes", "15.9", "2.30", "2.23", "4.20"},
	}
	if len(swings) != len(want) {
		t.Fatalf("%d costs", len(swings))
	}
	for i, w := range want {
		s := swings[i]
		is(t, "the cost", s.Line.Name, w.name)
		is(t, w.name+" share", s.Share.Rounded(1), w.share)
		is(t, w.name+" dearer", s.Up.Unit.Cents(), w.up)
		is(t, w.name+" cheaper", s.Down.Unit.Cents(), w.down)
		is(t, w.name+" dearer leaves", s.Up.Earn.Contribution.Cents(), w.leaves)
	}
}

// Whatever the bill, every figure is that of the standard library's fractions, which round nowhere.
func TestABillAgainstFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,4}(\.[0-9]{1,3})?`)
		rat := func(s string) *big.Rat { r, _ := new(big.Rat).SetString(s); return r }
		var lines []cost.Line
		sum, variable := new(big.Rat), new(big.Rat)
		for range rapid.IntRange(1, 6).Draw(t, "lines") {
			a := text.Draw(t, "line")
			lines = append(lines, cost.Line{Kind: cost.Materials, Amount: amount(t, a)})
			sum.Add(sum, rat(a))
		}
		wage, over, price, fee := text.Draw(t, "wage"), text.Draw(t, "overhead"), "1"+text.Draw(t, "price"), text.Draw(t, "fee")
		hands, good := rapid.Int64Range(1, 1e6).Draw(t, "seconds"), rapid.IntRange(2, 300).Draw(t, "good")
		testers := rapid.IntRange(0, good-1).Draw(t, "testers")
		h := cost.House{WagePerHour: amount(t, wage), OverheadPerBatch: amount(t, over)}
		e, err := h.Bill(lines, hands, cost.Bars{Good: good, Testers: testers}).Earns(h.Terms(cost.Channel{FeePercent: percent(t, fee)}, amount(t, price)))
		if err != nil {
			t.Fatal(err)
		}
		sum.Add(sum, new(big.Rat).Mul(rat(wage), big.NewRat(hands, 3600)))
		variable.Set(sum)
		sum.Add(sum, rat(over))
		near(t, "a bar", e.Unit, new(big.Rat).Quo(sum, big.NewRat(int64(good), 1)))
		paid := new(big.Rat).Mul(rat(price), rat(fee))
		variable.Quo(variable, big.NewRat(int64(good-testers), 1)).Add(variable, paid.Quo(paid, big.NewRat(100, 1)))
		near(t, "contribution", e.Contribution, new(big.Rat).Sub(rat(price), variable))
	})
}

// near compares to a ten-billionth: parts of an amount are kept to 18 digits.
func near(t *rapid.T, what string, got money.Amount, want *big.Rat) {
	have, ok := new(big.Rat).SetString(got.Exact())
	if off := new(big.Rat).Sub(have, want); !ok || off.Abs(off).Cmp(big.NewRat(1, 1e10)) > 0 {
		t.Fatalf("%s is %s, want %s", what, got.Exact(), want.FloatString(12))
	}
}

// Profit is what is left when everything is counted, and it sums over the bars sold to what all of them brought less what the batch cost.
func TestTheProfitCountsFeeOverheadAndTesters(t *testing.T) {
	b := c1(t, lot.FIFO)
	e, err := b.Earns(terms(t))
	if err != nil {
		t.Fatal(err)
	}
	is(t, "the profit of C1's bar", e.Profit.Over(1, 4).String(), "4.0185")                      // 6.50 - 0.21375 - 326.5556 ÷ 144
	is(t, "overhead between them", e.Contribution.Minus(e.Profit).Over(1, 4).String(), "0.2153") // 31.00 ÷ 144
}
