package money

// UnitDigits is how many digits after the point a unit of [Amount.Units] has: as many as a price can be read with.
const UnitDigits = mostDigits

// Units is the amount in whole units of 10^-9. False: it is finer than that, or beyond nine thousand million.
func (a Amount) Units() (int64, bool) {
	scaled := a.d.Shift(UnitDigits)
	if !scaled.IsInteger() || !scaled.BigInt().IsInt64() {
		return 0, false
	}
	return scaled.IntPart(), true
}
