package cost_test

import (
	"slices"
	"testing"

	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// fataler is a test, or a drawn trial of one.
type fataler interface {
	Helper()
	Fatal(args ...any)
}

func amount(t fataler, text string) money.Amount {
	t.Helper()
	a, err := money.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func percent(t fataler, text string) money.Percent {
	t.Helper()
	p, err := money.ParsePercent(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func is(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %s, want %s", what, got, want)
	}
}

// house is that of worked example C1.
func house(t testing.TB) cost.House {
	t.Helper()
	return cost.House{
		WagePerHour: amount(t, "16.00"), EnergyPerBatch: amount(t, "1.85"), OverheadPerBatch: amount(t, "31.00"), FixedPerMonth: amount(t, "385.00"),
		Channels: []cost.Channel{{Name: "fair", FeePercent: percent(t, "1.75"), FeePerSale: amount(t, "0.10")}},
	}
}

// c1 is worked example C1 of the reference "cost and stock": its oil by one formula, 148 bars cut, 4 of them rejects. Every figure these tests want of
// it is one that is printed there, worked out with Python's decimals. Its lines are printed to the cent only; their prices for a kilogram here are the
// round ones that give those cents and its sums, which are sums of what is not rounded.
func c1(t testing.TB, formula lot.Formula) cost.Bill {
	t.Helper()
	oil, left := oils(t, formula)
	if sum := oil.Plus(left); sum.Exact() != "94.00" {
		t.Errorf("what went out and what is left come to %s, want 94.00", sum.Exact())
	}
	lines := []cost.Line{{Kind: cost.Packaging, Name: "boxes", Amount: amount(t, "0.36").Times(144)}, {Kind: cost.Materials, Name: "oil in lots", Amount: oil}}
	for _, l := range []struct {
		name, kilo, shown string
		g                 int64
	}{
		{"coconut oil", "6.40", "23.81", 3720},
		{"shea butter", "11.20", "27.78", 2480},
		{"sodium hydroxide", "4.20", "7.35", 1750},
		{"fragrance", "58.00", "21.58", 372},
		{"titanium dioxide", "16.50", "0.83", 50},
	} {
		line := cost.Line{Kind: cost.Materials, Name: l.name, Amount: amount(t, l.kilo).Part(l.g, 1000)}
		if lines = append(lines, line); line.Amount.Cents() != l.shown {
			t.Errorf("%s comes to %s, want %s", l.name, line.Amount.Cents(), l.shown)
		}
	}
	return house(t).Bill(lines, 6*3600+1800, cost.Bars{Cut: 148, Good: 144})
}

// oils takes 6200 g of the two lots of C1, of whose 5000 g each 98 % can be used.
func oils(t testing.TB, formula lot.Formula) (out, left money.Amount) {
	t.Helper()
	l := lot.Layers{Formula: formula}
	l.Receive(lot.Layer{Pack: "1", Q: 4900 * lot.One, Cost: amount(t, "38.50").Plus(amount(t, "4.50"))})
	l.Receive(lot.Layer{Pack: "2", Q: 4900 * lot.One, Cost: amount(t, "46.25").Plus(amount(t, "4.75"))})
	out, short := l.Issue(6200 * lot.One)
	q, left := l.Total()
	if short != 0 || q != 3600*lot.One {
		t.Errorf("%s are short and %s left", short, q)
	}
	return out, left
}

func TestTheWorkedExampleToTheCent(t *testing.T) {
	for _, c := range []struct {
		formula                lot.Formula
		oil, left, mats, total string
	}{
		{lot.FIFO, "56.53", "37.47", "137.87", "326.56"},
		{lot.Average, "59.47", "34.53", "140.80", "329.49"},
	} {
		b := c1(t, c.formula)
		oil, left := oils(t, c.formula)
		is(t, "the oil", oil.Cents(), c.oil)
		is(t, "what is left", left.Cents(), c.left)
		mats, _ := b.Sum(cost.Materials)
		is(t, "materials", mats.Cents(), c.mats)
		total, known := b.Total()
		if is(t, "the total", total.Cents(), c.total); !known {
			t.Error("the total is not known")
		}
	}
	unit, _ := c1(t, lot.FIFO).Unit()
	is(t, "a good bar", unit.Over(1, 6).String(), "2.267747")
	is(t, "a good bar as it is shown", unit.Cents(), "2.27")
}

// terms are those of C1: 6.50 without tax.
func terms(t testing.TB) cost.Terms {
	t.Helper()
	h := house(t)
	return h.Terms(h.Selling()[0], amount(t, "6.50"))
}

func TestWhatTheWorkedExampleEarns(t *testing.T) {
	e, err := c1(t, lot.FIFO).Earns(terms(t))
	if err != nil {
		t.Fatal(err)
	}
	is(t, "margin", e.Margin.Rounded(2), "65.11")
	is(t, "markup", e.Markup.Rounded(2), "186.63")
	is(t, "the fee", e.Fee.Exact(), "0.21375")
	is(t, "variable cost", e.Variable.Over(1, 4).String(), "2.2662")
	is(t, "contribution", e.Contribution.Over(1, 4).String(), "4.2338")
	ratio, _ := e.Contribution.InPercentOf(e.Net)
	is(t, "its ratio", ratio.Rounded(2), "65.14")
	if e.BreakEven != 91 || e.Never != "" || !e.Marked || !e.Hours {
		t.Errorf("%d bars break even, %q", e.BreakEven, e.Never)
	}
	// By hand: 144 × (6.50 - 0.21375) - (326.5556 - 104) = 682.6644, over 6.5 hours.
	is(t, "an hour", e.PerHour.Cents(), "105.03")
}

// The changes of C1's table, each worked out anew.
func TestTheWorkedExampleWhenOneThingChanges(t *testing.T) {
	base := c1(t, lot.FIFO)
	with := func(name, amountOf string) cost.Bill {
		b := base
		b.Lines = slices.Clone(base.Lines)
		at := slices.IndexFunc(b.Lines, func(l cost.Line) bool { return l.Name == name })
		b.Lines[at].Amount = amount(t, amountOf)
		return b
	}
	// The oil's price alone, its freight as it was: 38.50 × 1.1 + 4.50, and 1300 of 4900 g of 46.25 × 1.1 + 4.75.
	dear := with("oil in lots", "61.607653061")
	rejects := with("boxes", "50.40") // 140 × 0.36
	rejects.Bars.Good -= 4
	longer := with("labour", "120.00") // 7.5 × 16
	cheap := terms(t)
	cheap.Price = amount(t, "6.175") // 5 % less than 6.50
	for _, c := range []struct {
		what        string
		bill        cost.Bill
		on          cost.Terms
		unit, leave string
		even        int
	}{
		{"base", base, terms(t), "2.27", "4.23", 91},
		{"oil 10 % dearer", dear, terms(t), "2.30", "4.20", 92},
		{"price 5 % less", base, cheap, "2.27", "3.91", 99},
		{"4 more rejects", rejects, terms(t), "2.32", "4.19", 92},
		{"an hour more", longer, terms(t), "2.38", "4.12", 94},
	} {
		e, err := c.bill.Earns(c.on)
		if err != nil {
			t.Fatal(err)
		}
		is(t, c.what+": a bar", e.Unit.Cents(), c.unit)
		is(t, c.what+": it leaves", e.Contribution.Cents(), c.leave)
		if e.BreakEven != c.even {
			t.Errorf("%s: %d bars break even, want %d", c.what, e.BreakEven, c.even)
		}
	}
}
