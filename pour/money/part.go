package money

import "github.com/shopspring/decimal"

// finest is how many digits after the point a part of an amount is rounded to: so fine that no sum of a lifetime's parts is off by a cent.
const finest = 18

// Minus is the difference of two amounts of one currency.
func (a Amount) Minus(b Amount) Amount { return Amount{a.d.Sub(b.d)} }

// Sign is -1, 0 or 1.
func (a Amount) Sign() int { return a.d.Sign() }

// Part is part ÷ whole of the amount, whole above 0, rounded to 18 digits after the point, half away from 0. What the other parts come to is the
// amount [Amount.Minus] this one, so that parts always sum to the whole.
func (a Amount) Part(part, whole int64) Amount {
	if part == whole {
		return a
	}
	return Amount{a.d.Mul(decimal.NewFromInt(part)).DivRound(decimal.NewFromInt(whole), finest)}
}
