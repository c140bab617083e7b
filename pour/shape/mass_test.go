package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// E6: base 80 × 62 × 1.005e-3 = 4.9848 g/mm, icing 0.60 + 0.0016·x g/mm.
func e6(x float64) float64 { return (4.9848+0.60)*x + 0.0008*x*x }

func TestBarsOfOneMassToThePrintedDigits(t *testing.T) {
	s := shape.Stretch{Length: 250}
	near(t, "the whole loaf", e6(250), 1446.2, 1e-12)
	c := s.EqualMass(10, e6)
	alike(t, "cuts", c.Cuts, []float64{25.7999, 51.4119, 76.8401, 102.0882, 127.1602, 152.0596, 176.7899, 201.3546, 225.7569})
	for i, b := range c.Bars {
		if g := shape.Mass(e6).Weigh(b); math.Abs(g-144.62) > 1e-4 {
			t.Errorf("bar %d weighs %.6f, want 144.62", i, g)
		}
	}
	near(t, "first", c.Bars[0].Length(), 25.7999, 2e-6)
	near(t, "last", c.Bars[9].Length(), 24.2431, 2e-6)
	even := s.Alike(10, 25, shape.RestAtB)
	near(t, "the first of equal thickness", shape.Mass(e6).Weigh(even.Bars[0]), 140.12, 1e-9)
	near(t, "the last of equal thickness", shape.Mass(e6).Weigh(even.Bars[9]), 149.12, 1e-9)
}

func TestBarsOfOneMassWithCutsToThePrintedDigits(t *testing.T) {
	c := shape.Stretch{Length: 250, Kerf: 0.6}.EqualMass(10, e6)
	alike(t, "cuts", c.Cuts, []float64{25.5444, 51.2046, 76.6845, 101.9880, 127.1186, 152.0800, 176.8756, 201.5087, 225.9824})
	sum, kerfs := 0.0, 0.0
	for i, b := range c.Bars {
		g := shape.Mass(e6).Weigh(b)
		sum += g
		if math.Abs(g-141.494865) > 1e-4 {
			t.Errorf("bar %d weighs %.6f, want 141.494865", i, g)
		}
	}
	for _, x := range c.Cuts {
		kerfs += shape.Mass(e6).Weigh(shape.Part{From: x - 0.3, To: x + 0.3})
	}
	if math.Abs(kerfs-31.251347) > 1e-4 || math.Abs(sum+kerfs-1446.2) > 1e-4 {
		t.Errorf("cuts %.6f and bars %.6f, want 31.251347 and together 1446.2", kerfs, sum)
	}
}

// What lies evenly is cut evenly; a heavier piece makes its bar thinner; no mass is lost.
func TestBarsOfOneMassAreAlikeWhereTheLoafIs(t *testing.T) {
	s := shape.Stretch{Length: 240, Kerf: 0.6, CutA: true, CutB: true, TrimA: 4, TrimB: 7, Slice: 5}
	even, same := s.EqualMass(8, shape.Uniform(5, nil)), s.Alike(8, 0, shape.RestToBars)
	alike(t, "cuts", even.Cuts, same.Cuts)
	m := shape.Uniform(5, []shape.Feature{{From: 20, To: 30, Mass: 6}})
	near(t, "half way into the piece", m(25), 25*5+3, 1e-12)
	c := s.EqualMass(8, m)
	near(t, "the bar with the piece is thinner by its 6 g at 5 g/mm", c.Bars[5].Length()-c.Bars[0].Length(), 1.2, 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		s := drawStretch(t)
		n := rapid.IntRange(1, 12).Draw(t, "bars")
		slope := rapid.Float64Range(0, 0.01).Draw(t, "slope")
		c := s.EqualMass(n, func(x float64) float64 { return 5*x + slope*x*x })
		if s.Thickness(n) <= 0.5 {
			return
		}
		checkCutting(t, c, s.Length, s.Kerf)
		g := shape.Mass(func(x float64) float64 { return 5*x + slope*x*x })
		for _, b := range c.Bars {
			if math.Abs(g.Weigh(b)-g.Weigh(c.Bars[0])) > 1e-4 {
				t.Fatalf("bars of %g and %g g", g.Weigh(c.Bars[0]), g.Weigh(b))
			}
		}
	})
}
