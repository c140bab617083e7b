package money_test

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/money"
)

func TestAPercentageIsReadAndWritten(t *testing.T) {
	for text, want := range map[string]string{"0": "0", "1.75": "1.75", "19": "19", "7.50": "7.5"} {
		if p, err := money.ParsePercent(text); err != nil || p.String() != want {
			t.Errorf("%q is %s, %v", text, p, err)
		}
	}
	for _, text := range []string{"", "-1", "+1", "1,75", "1e9", ".5", "5.", "7 %", "NaN"} {
		if p, err := money.ParsePercent(text); err == nil {
			t.Errorf("%q was read as %s", text, p)
		}
	}
}

// Percentages of amounts are those of the standard library's fractions.
func TestPercentagesAgainstFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		textA, textP := rapid.StringMatching(`[1-9][0-9]{0,5}(\.[0-9]{1,4})?`).Draw(t, "amount"), rapid.StringMatching(`[0-9]{1,2}(\.[0-9]{1,3})?`).Draw(t, "percent")
		a, err := money.Parse(textA)
		p, err2 := money.ParsePercent(textP)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		exact, _ := new(big.Rat).SetString(textA)
		rate, _ := new(big.Rat).SetString(textP)
		rate.Quo(rate, big.NewRat(100, 1))
		one := big.NewRat(1, 1)
		same(t, "of it", a.Percent(p), new(big.Rat).Mul(exact, rate))
		same(t, "before adding", a.BeforeAdding(p), new(big.Rat).Quo(exact, new(big.Rat).Add(one, rate)))
		before, ok := a.BeforeTaking(p)
		if !ok {
			t.Fatalf("%s before %s %% are taken is refused", textA, textP)
		}
		same(t, "before taking", before, new(big.Rat).Quo(exact, new(big.Rat).Sub(one, rate)))
		if back, ok := a.Percent(p).InPercentOf(a); !ok || back.Compare(p) != 0 {
			t.Fatalf("%s is %s", p, back)
		}
	})
}

func same(t *rapid.T, what string, got money.Amount, want *big.Rat) {
	have, ok := new(big.Rat).SetString(got.Exact())
	if off := new(big.Rat).Sub(have, want); !ok || off.Abs(off).Cmp(big.NewRat(1, 1e15)) > 0 {
		t.Fatalf("%s is %s, want %s", what, got.Exact(), want.FloatString(18))
	}
}

func TestNothingIsDividedByNothing(t *testing.T) {
	ten, _ := money.Parse("10")
	for _, p := range []int{100, 101} {
		if _, ok := ten.BeforeTaking(money.WholePercent(p)); ok {
			t.Errorf("%d %% were taken off", p)
		}
	}
	if _, ok := ten.InPercentOf(money.Amount{}); ok {
		t.Error("it is a part of nothing")
	}
	for _, none := range []money.Amount{{}, money.Amount{}.Minus(ten)} {
		if _, ok := none.TimesToReach(ten); ok {
			t.Errorf("%s comes to 10", none)
		}
	}
}

func TestHowManyTimesReachASum(t *testing.T) {
	for _, c := range []struct {
		each, sum string
		want      int
	}{{"4.23", "385", 92}, {"5", "10", 2}, {"5", "10.000000001", 3}, {"5", "9.99", 2}, {"5", "0", 0}, {"0.01", "1", 100}} {
		each, _ := money.Parse(c.each)
		sum, _ := money.Parse(c.sum)
		if n, ok := each.TimesToReach(sum); !ok || n != c.want {
			t.Errorf("%s reaches %s with %d, want %d", c.each, c.sum, n, c.want)
		}
	}
	tiny, _ := money.Parse("0.000000001")
	huge, _ := money.Parse("999999999")
	if _, ok := tiny.TimesToReach(huge); ok {
		t.Error("more than a billion are named")
	}
}

// Half a cent is shown as a cent, and nothing is lost by being shown.
func TestAnAmountIsShownToTheCent(t *testing.T) {
	for text, want := range map[string]string{"2.267747": "2.27", "0.125": "0.13", "0.1249": "0.12", "94": "94.00", "7.1": "7.10"} {
		a, _ := money.Parse(text)
		if a.Cents() != want {
			t.Errorf("%s is shown as %s", text, a.Cents())
		}
	}
	a, _ := money.Parse("3.50")
	if third := a.Part(1, 3); third.Exact() != "1.166666666666666667" || third.Plus(a.Minus(third)).Exact() != "3.50" {
		t.Errorf("a third of 3.50 is %s", third.Exact())
	}
	if grown := money.WholePercent(10).Grown(money.WholePercent(19)); grown.String() != "11.9" {
		t.Errorf("10 %% of what is paid with 19 %% tax are %s", grown)
	}
}
