package lot_test

import (
	"math/big"
	"testing"

	"pourbench/pour/lot"
)

// Pound and ounce by the agreement of 1959 (from memory): 453.59237 g and its sixteenth, 28.349523125 g, exactly; quantities to the nearest
// ten-thousandth of a gram.
func TestUnitsAreExact(t *testing.T) {
	for _, c := range []struct {
		number, unit, exact string
		want                lot.Quantity
	}{
		{"1", "lb", "453.59237", 4535924},
		{"1", "oz", "28.349523125", 283495},
		{"16", "oz", "453.59237", 4535924},
		{"2.5", "kg", "2500", 25000000},
		{"0.00005", "g", "0.00005", 1},
		{"0.000049", "g", "0.000049", 0},
		{"5", "l", "5000", 50000000},
		{"7", "pieces", "7", 70000},
	} {
		u, ok := lot.UnitOf(c.unit)
		r := u.Written(c.number)
		exact, _ := new(big.Rat).SetString(c.exact)
		if !ok || r == nil || r.Cmp(exact) != 0 {
			t.Errorf("%s %s is %v, want %s", c.number, c.unit, r, c.exact)
			continue
		}
		if q, ok := lot.Of(r); !ok || q != c.want {
			t.Errorf("%s %s is kept as %d, want %d", c.number, c.unit, q, c.want)
		}
	}
	for _, word := range []string{"fl", "cup", "tsp", "gallon", "", "mg"} {
		if _, ok := lot.UnitOf(word); ok {
			t.Errorf("%q is a unit", word)
		}
	}
	g, _ := lot.UnitOf("g")
	for _, number := range []string{"", "1e3", "-1", "1,5", "1.2.3", "x", ".", "NaN"} {
		if r := g.Written(number); r != nil {
			t.Errorf("%q is read as %s", number, r)
		}
	}
	if _, ok := lot.Of(g.Written("100000000.1")); ok {
		t.Error("more than a hundred tonnes is kept")
	}
}
