package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestGreysLookTheSameToEveryEye(t *testing.T) {
	for _, sight := range []Sight{EveryEye, Protanopia, Deuteranopia, Tritanopia} {
		for _, v := range []float64{0, 0.2, 1} {
			c := RGB{v, v, v}.SeenBy(sight)
			if math.Abs(c.R-v) > 2e-6 || math.Abs(c.G-v) > 2e-6 || math.Abs(c.B-v) > 2e-6 {
				t.Errorf("%s sees grey %g as %v", sight, v, c)
			}
		}
	}
}

func TestConfusableFindsPairsThatDichromatsMistake(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want Sight
	}{
		{"#a5722e", "#7f8a2e", Deuteranopia}, // brown and olive
		{"#f2c230", "#2f5fb3", ""},           // yellow and blue: told apart by all
		{"#f2c230", "#f1c131", EveryEye},
	} {
		which, d := Confusable(hex(t, c.a), hex(t, c.b))
		if which != c.want || (which != "") != (d < ConfusableBelow) {
			t.Errorf("%s and %s: %q at %.1f, want %q", c.a, c.b, which, d, c.want)
		}
	}
}

func TestConfusableIsSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawColour(t), drawColour(t)
		w1, d1 := Confusable(a, b)
		w2, d2 := Confusable(b, a)
		if w1 != w2 || math.Abs(d1-d2) > 1e-9 {
			t.Fatalf("%s and %s: %q %g one way, %q %g the other", a.Hex(), b.Hex(), w1, d1, w2, d2)
		}
	})
}
