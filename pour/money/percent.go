package money

import (
	"strings"

	"github.com/shopspring/decimal"
)

// Percent is a part of an amount in percent: a rate of tax, a fee, a margin. The zero value is none of it.
type Percent struct{ d decimal.Decimal }

// ParsePercent reads percent as they are written in a file: one to nine digits, and after a point one to nine more, without a sign.
func ParsePercent(text string) (Percent, error) {
	d, err := parse("percentage", text, "1.75")
	return Percent{d}, err
}

// WholePercent is so many percent.
func WholePercent(n int) Percent { return Percent{decimal.NewFromInt(int64(n))} }

// Sign is -1, 0 or 1.
func (p Percent) Sign() int { return p.d.Sign() }

// Compare is below 0 where p is less than q, above 0 where it is more.
func (p Percent) Compare(q Percent) int { return p.d.Cmp(q.d) }

// Minus is the difference in percentage points.
func (p Percent) Minus(q Percent) Percent { return Percent{p.d.Sub(q.d)} }

// Grown is the percentage and so many percent of itself more, exactly: a fee on a price with its tax, as a part of the price without.
func (p Percent) Grown(by Percent) Percent { return Percent{p.d.Add(p.d.Mul(by.d).Shift(-2))} }

// PercentOf is what part of another percentage this one is, rounded to 18 digits after the point. The other is not 0.
func (p Percent) PercentOf(q Percent) Percent { return Percent{p.d.Shift(2).DivRound(q.d, finest)} }

// String writes the percentage exactly and in its shortest form, without its sign.
func (p Percent) String() string { return p.d.String() }

// Rounded writes the percentage with so many digits after the point, half away from 0.
func (p Percent) Rounded(digits int) string { return p.d.StringFixed(int32(digits)) }

// hundred is all of it.
func hundred() decimal.Decimal { return decimal.NewFromInt(100) }

// Percent is so many percent of the amount, exactly.
func (a Amount) Percent(p Percent) Amount { return Amount{a.d.Mul(p.d).Shift(-2)} }

// BeforeAdding is the amount that becomes a when p percent of it are added, rounded to 18 digits after the point: a ÷ (1 + p). Adding the
// percentage gives a again; it is what a price is without a sales tax of p. p is at least 0.
func (a Amount) BeforeAdding(p Percent) Amount {
	return Amount{a.d.Shift(2).DivRound(hundred().Add(p.d), finest)}
}

// BeforeTaking is the amount of which a is left when p percent of it are taken off, rounded to 18 digits after the point: a ÷ (1 - p). It is
// the price that leaves a cost of a at a margin, or after a fee, of p. False: p is 100 or more, and nothing would be left of any amount.
func (a Amount) BeforeTaking(p Percent) (Amount, bool) {
	left := hundred().Sub(p.d)
	if left.Sign() <= 0 {
		return Amount{}, false
	}
	return Amount{a.d.Shift(2).DivRound(left, finest)}, true
}

// InPercentOf is what part of another amount this one is, rounded to 18 digits after the point. False: the other is nothing.
func (a Amount) InPercentOf(whole Amount) (Percent, bool) {
	if whole.d.IsZero() {
		return Percent{}, false
	}
	return Percent{a.d.Shift(2).DivRound(whole.d, finest)}, true
}

// TimesToReach is how many times the amount has to be had to come to at least a sum: the sum ÷ a, rounded up. False: the amount is 0 or less,
// and no number of them does, or there would be more than a billion.
func (a Amount) TimesToReach(sum Amount) (int, bool) {
	if a.d.Sign() <= 0 {
		return 0, false
	}
	if sum.d.Sign() <= 0 {
		return 0, true
	}
	n, rest := sum.d.QuoRem(a.d, 0)
	if rest.Sign() > 0 {
		n = n.Add(decimal.NewFromInt(1))
	}
	return int(n.IntPart()), n.LessThanOrEqual(decimal.NewFromInt(1_000_000_000))
}

// Exact writes the amount with at least two digits after the point and as many more as it needs.
func (a Amount) Exact() string {
	s := a.d.String() // without zeros at its end
	_, after, _ := strings.Cut(s, ".")
	if len(after) >= usualDigits {
		return s
	}
	return a.d.StringFixed(usualDigits)
}

// Cents writes the amount as it is shown: with two digits after the point, half away from 0. Sums are made of what is not rounded.
func (a Amount) Cents() string { return a.d.StringFixed(usualDigits) }
