package money_test

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/money"
)

// Parts sum to the whole, none is below 0, and none is off by a whole cent of what fractions say.
func TestSharesAreTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cents := rapid.Int64Range(0, 1e9)
		a := cents.Draw(t, "amount")
		weights := rapid.SliceOfN(cents, 1, 12).Draw(t, "weights")
		list, all := make([]money.Amount, len(weights)), int64(0)
		for i, w := range weights {
			list[i], all = parsed(t, w), all+w
		}
		sum := money.Amount{}
		for i, part := range money.Share(parsed(t, a), list) {
			sum = sum.Plus(part)
			want := big.NewRat(a, int64(len(weights)))
			if all > 0 {
				want = new(big.Rat).Mul(big.NewRat(a, all), big.NewRat(weights[i], 1))
			}
			got, ok := new(big.Rat).SetString(part.String())
			if !ok || got.Sign() < 0 {
				t.Fatalf("part %d is %s", i, part)
			}
			got.Mul(got, big.NewRat(100, 1))
			if got.Sub(got, want).Abs(got).Cmp(big.NewRat(1, 1)) >= 0 {
				t.Fatalf("part %d of %d cents is %s, want %s cents", i, a, part, want.FloatString(3))
			}
		}
		if sum.Compare(parsed(t, a)) != 0 {
			t.Fatalf("the parts of %d cents sum to %s", a, sum)
		}
	})
}

func parsed(t *rapid.T, cents int64) money.Amount {
	a, err := money.Parse(big.NewRat(cents, 100).FloatString(2))
	if err != nil {
		t.Fatal(err)
	}
	return a
}
