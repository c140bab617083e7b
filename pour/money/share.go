package money

import "github.com/shopspring/decimal"

// Share parts an amount of 0 or more in proportion to weights of 0 or more, equally where all are 0: each part to the cent, or to the amount's own
// last digit where that is finer, and their sum is the amount. No part is off by a whole cent.
func Share(a Amount, weights []Amount) []Amount {
	all := decimal.Zero
	for _, w := range weights {
		all = all.Add(w.d)
	}
	weigh := func(w Amount) decimal.Decimal { return w.d }
	if all.IsZero() {
		all, weigh = decimal.NewFromInt(int64(len(weights))), func(Amount) decimal.Decimal { return decimal.NewFromInt(1) }
	}
	digits := max(usualDigits, -a.d.Exponent())
	out := make([]Amount, len(weights))
	sum, given := decimal.Zero, decimal.Zero
	for i, w := range weights {
		sum = sum.Add(weigh(w))
		upto := a.d.Mul(sum).DivRound(all, digits) // the last is the whole amount
		out[i], given = Amount{upto.Sub(given)}, upto
	}
	return out
}
