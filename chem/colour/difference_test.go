package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Sharma, Wu and Dalal 2005, Table 1 (testdata/colour/ciede2000.csv): all 34 pairs, both ways round.
func TestDifferenceReproducesSharmasPairs(t *testing.T) {
	names, rows := readTable(t, "ciede2000.csv", 1)
	if len(rows) != 34 {
		t.Fatalf("%d pairs, want 34", len(rows))
	}
	worst := 0.0
	for i, r := range rows {
		p, q := Lab{r[0], r[1], r[2]}, Lab{r[3], r[4], r[5]}
		for _, got := range []float64{p.Difference(q), q.Difference(p)} {
			worst = max(worst, math.Abs(got-r[6]))
			if math.Abs(got-r[6]) > 1e-4 {
				t.Errorf("pair %s: %.4f, want %.4f", names[i], got, r[6])
			}
		}
	}
	t.Logf("worst error %.2g", worst)
}

func TestDifferenceOfGreysIsTheirLightnessDifference(t *testing.T) {
	// With no chroma the formula leaves dL / sL, and sL is 1 where the mean lightness is 50.
	if got := (Lab{L: 49}).Difference(Lab{L: 51}); math.Abs(got-2) > 1e-3 {
		t.Errorf("greys at 49 and 51 differ by %g, want 2", got)
	}
}

func TestDifferenceIsSymmetricAndZeroOnlyForEquals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawColour(t), drawColour(t)
		there, back := a.Difference(b), b.Difference(a)
		if math.Abs(there-back) > 1e-9 || !(there >= 0) {
			t.Fatalf("%s to %s is %g, back %g", a.Hex(), b.Hex(), there, back)
		}
		if self := a.Difference(a); self != 0 {
			t.Fatalf("%s differs from itself by %g", a.Hex(), self)
		}
		if a != b && there == 0 {
			t.Fatalf("%v and %v differ by nothing", a, b)
		}
	})
}

// drawColour draws one of the 16.7 million sRGB colours.
func drawColour(t *rapid.T) RGB {
	channel := rapid.Uint8()
	return FromBytes(channel.Draw(t, "red"), channel.Draw(t, "green"), channel.Draw(t, "blue"))
}

func drawPaint(t *rapid.T) Paint {
	c := drawColour(t)
	p, err := NewPaint(c, rapid.Float64Range(0, 2).Draw(t, "titanium"))
	if err != nil {
		t.Fatalf("%s: %v", c.Hex(), err)
	}
	return p
}
