package money_test

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/money"
)

// Sums and averages are those of the standard library's fractions, which know no rounding.
func TestSumsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sum, exact, bars := money.Amount{}, new(big.Rat), 0
		for range rapid.IntRange(1, 8).Draw(t, "sales") {
			text := rapid.StringMatching(`[0-9]{1,6}(\.[0-9]{1,4})?`).Draw(t, "price")
			n := rapid.IntRange(1, 50).Draw(t, "bars")
			a, err := money.Parse(text)
			if err != nil {
				t.Fatal(err)
			}
			price, _ := new(big.Rat).SetString(text)
			sum, bars = sum.Plus(a.Times(n)), bars+n
			exact.Add(exact, price.Mul(price, big.NewRat(int64(n), 1)))
		}
		got, _ := new(big.Rat).SetString(sum.String())
		if got.Cmp(exact) != 0 {
			t.Fatalf("%s, want %s", sum, exact.FloatString(6))
		}
		mean := exact.Quo(exact, big.NewRat(int64(bars), 1))
		if got, want := sum.Over(bars, 2).String(), mean.FloatString(2); got != want {
			t.Fatalf("on average %s, want %s", got, want)
		}
	})
}

func TestAPriceIsReadAndWritten(t *testing.T) {
	for text, want := range map[string]string{"7": "7.00", "7.5": "7.50", "0.10": "0.10", "7.125": "7.125", "007.50": "7.50"} {
		if a, err := money.Parse(text); err != nil || a.String() != want {
			t.Errorf("%q is %s, %v", text, a, err)
		}
	}
	for _, text := range []string{"", "-1", "7,50", "1e9", "1234567890", ".5", "5.", "7.50 EUR", "٣"} {
		if a, err := money.Parse(text); err == nil {
			t.Errorf("%q was read as %s", text, a)
		}
	}
	a, _ := money.Parse("0.1")
	b, _ := money.Parse("0.2")
	c, _ := money.Parse("0.3")
	if a.Plus(b).Compare(c) != 0 || a.Compare(b) >= 0 {
		t.Error("a tenth and two tenths are not three")
	}
	if half, _ := money.Parse("0.125"); half.Over(1, 2).String() != "0.13" {
		t.Errorf("a half is rounded to %s", half.Over(1, 2))
	}
}

// What a hand types is written as in a file, and what is no price says what to type and nothing of a file.
func TestAPriceIsTyped(t *testing.T) {
	for typed, want := range map[string]string{"": "", " 7 ": "7", "7,50": "7.50", "7.5": "7.5", ".5": "0.5", ",5": "0.5", "8.": "8"} {
		if got, err := money.Typed(typed); err != nil || got != want {
			t.Errorf("%q is %q, %v", typed, got, err)
		}
	}
	for _, typed := range []string{"-8", "+8", "7.50 EUR", "1e9", ".", "7,5,0", "a"} {
		if got, err := money.Typed(typed); err == nil || got != "" || !strings.Contains(err.Error(), "type a number without a sign or a currency, as in 7.70") {
			t.Errorf("%q is %q, %v", typed, got, err)
		}
	}
}
