package money_test

import (
	"testing"

	"pourbench/pour/money"
)

func TestAnAmountInWholeUnits(t *testing.T) {
	for text, want := range map[string]int64{"0": 0, "7.5": 7_500_000_000, "0.000000001": 1, "999999999.999999999": 999_999_999_999_999_999} {
		a, err := money.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if n, ok := a.Units(); !ok || n != want {
			t.Errorf("%s is %d units, %t; want %d", text, n, ok, want)
		}
	}
	one, _ := money.Parse("1")
	if n, ok := one.Part(1, 3).Units(); ok {
		t.Errorf("a third is %d whole units", n)
	}
	if n, ok := one.Times(1 << 62).Units(); ok {
		t.Errorf("an amount beyond all prices is %d units", n)
	}
}
