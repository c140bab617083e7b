package lot

import (
	"math/big"
	"strings"
)

// Dimension is what a unit measures.
type Dimension int

// The dimensions.
const (
	Mass   Dimension = iota // g
	Volume                  // mL
	Pieces
)

// Unit is a unit a quantity is written in.
type Unit struct {
	Of   Dimension
	nano int64 // how many billionths of a g, mL or piece it is, which is exact for all of them
}

// PoundG is the international avoirdupois pound, g, and is exact; the ounce is a sixteenth of it (International Yard and Pound Agreement, 1959;
// from memory).
const PoundG = 453.59237

const (
	nano  = 1_000_000_000
	pound = PoundG * nano
	ounce = pound / 16
)

// UnitOf is the unit a word names. False: none, or one that is not the same everywhere, such as a fluid ounce or a cup.
func UnitOf(word string) (Unit, bool) {
	switch strings.ToLower(strings.TrimSuffix(word, ".")) {
	case "g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes":
		return Unit{Mass, nano}, true
	case "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms":
		return Unit{Mass, 1000 * nano}, true
	case "oz", "ozs", "ounce", "ounces":
		return Unit{Mass, ounce}, true
	case "lb", "lbs", "pound", "pounds":
		return Unit{Mass, pound}, true
	case "ml", "millilitre", "millilitres", "milliliter", "milliliters": //nolint:misspell // makers write it so too
		return Unit{Volume, nano}, true
	case "cl":
		return Unit{Volume, 10 * nano}, true
	case "dl":
		return Unit{Volume, 100 * nano}, true
	case "l", "lt", "ltr", "litre", "litres", "liter", "liters": //nolint:misspell // makers write it so too
		return Unit{Volume, 1000 * nano}, true
	case "pc", "pcs", "piece", "pieces", "pce", "pces", "count", "ct":
		return Unit{Pieces, nano}, true
	}
	return Unit{}, false
}

// Written is a quantity as a decimal number of a unit, exactly: in g, mL or pieces. It is nil where the text is no number of digits and at most
// one point.
func (u Unit) Written(number string) *big.Rat {
	if number == "" || len(number) > 30 || strings.Trim(number, "0123456789.") != "" || strings.Count(number, ".") > 1 {
		return nil
	}
	r, ok := new(big.Rat).SetString(number)
	if !ok {
		return nil
	}
	return r.Mul(r, big.NewRat(u.nano, nano))
}

// Of is a quantity of so many grams or pieces, to the nearest ten-thousandth, half up. False: it is below 0, or beyond a hundred tonnes.
func Of(r *big.Rat) (Quantity, bool) {
	if r.Sign() < 0 || r.Cmp(big.NewRat(most, 1)) > 0 {
		return 0, false
	}
	scaled := new(big.Rat).Mul(r, big.NewRat(2*int64(One), 1)) // twice it, so that adding 1 is adding a half
	num := new(big.Int).Add(scaled.Num(), scaled.Denom())
	return Quantity(num.Quo(num, new(big.Int).Mul(big.NewInt(2), scaled.Denom())).Int64()), true
}

// Small reports whether a unit is so small that nobody writes thousandths of it.
func (u Unit) Small() bool { return u.nano == nano }

// Parse reads a quantity as [Quantity.String] writes it: g or pieces with a point, no unit, nothing below 0.
func Parse(text string) (Quantity, bool) {
	r := Unit{Mass, nano}.Written(text)
	if r == nil {
		return 0, false
	}
	return Of(r)
}
