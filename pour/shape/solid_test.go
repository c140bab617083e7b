package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// simpson is the integral of a function by Simpson's rule.
func simpson(f func(float64) float64, from, to float64) float64 {
	const steps = 20000
	h := (to - from) / steps
	sum := f(from) + f(to)
	for i := 1; i < steps; i++ {
		sum += f(from+float64(i)*h) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// T2: R 18, h 34, a star of 6 points at q 0.75, density 1.005.
func TestTheKissOfTheWorkedExample(t *testing.T) {
	k := shape.Star{Points: 6, Tip: 4, Valley: 3}.Fullness()
	near(t, "its fullness", k, 0.71619724, 1e-8)
	for _, c := range []struct{ profile, volume, grams float64 }{{shape.Cone, 8262, 8.3}, {shape.Paraboloid, 12393, 12.5}, {0.75, 9914.4, 10.0}} {
		v := shape.Mound(k, 18, 34, c.profile)
		near(t, "its volume", v, c.volume, 1e-9)
		if g := shape.Grams(v, 1.005); math.Abs(g-c.grams) > 0.05 {
			t.Errorf("a kiss of profile %g weighs %.3f g, want %.1f", c.profile, g, c.grams)
		}
	}
}

// A mound is the integral of its sections over its height.
func TestAMoundIsTheSumOfItsSections(t *testing.T) {
	for _, p := range []float64{0.5, 0.75, 1, 2} {
		got := shape.Mound(0.7, 11, 25, p)
		near(t, "the mound", got, simpson(func(z float64) float64 { r := 11 * math.Pow(1-z/25, p); return 0.7 * math.Pi * r * r }, 0, 25), 1e-6)
	}
	near(t, "a cylinder", shape.Mound(1, 10, 7, 0), 700*math.Pi, 1e-12)
}

// T10, and a whole ring: 2π²·R·r².
func TestTheSolidsOfTheWorkedExample(t *testing.T) {
	near(t, "the frustum", shape.Frustum(15, 8, 20), 8566.07597, 1e-9)
	near(t, "the cap", shape.Cap(10, 6), 1055.57513, 1e-8)
	near(t, "the bent strand", shape.TorusArc(4, 12, 1.5*math.Pi), 2842.44607, 1e-9)
	near(t, "a whole ring", shape.TorusArc(4, 12, 2*math.Pi), 2*math.Pi*math.Pi*12*16, 1e-12)
	near(t, "a frustum to a point", shape.Frustum(9, 0, 10), 270*math.Pi, 1e-12)
	near(t, "half a ball as a cap", shape.Cap(10, 10), 2000*math.Pi/3, 1e-12)
}

// Whipped by 15 %, 1.005 comes to 0.874; a cup of 118.3 mL that holds 104.5 g says 0.883.
func TestAirMakesIcingLighter(t *testing.T) {
	if got := shape.Whipped(1.005, 0.15); math.Abs(got-0.874) > 0.0005 {
		t.Errorf("whipped icing is %.4f g/mL", got)
	}
	near(t, "a filled cup", shape.Grams(118300, 0.883), 104.5, 1e-3)
}

func TestGramsScaleWithTheCubeAndAParaboloidIsHalfAgainAsMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		by := rapid.Float64Range(0.2, 5).Draw(t, "scale")
		r, h := rapid.Float64Range(1, 40).Draw(t, "radius"), rapid.Float64Range(1, 60).Draw(t, "height")
		k, p := rapid.Float64Range(0.3, 1).Draw(t, "fullness"), rapid.Float64Range(0.1, 2).Draw(t, "profile")
		small, large := shape.Mound(k, r, h, p), shape.Mound(k, r*by, h*by, p)
		same(t, "a mound", large, small*by*by*by)
		same(t, "a paraboloid", shape.Mound(k, r, h, shape.Paraboloid), 1.5*shape.Mound(k, r, h, shape.Cone))
		coil := func(by float64) float64 {
			return shape.Rosette{Strand: 20 * by * by, Width: 6 * by, Overlap: 0.2, Tiers: []float64{r * by, r * by / 2}}.Volume()
		}
		same(t, "a rosette", coil(by), coil(1)*by*by*by)
		shell := func(by float64) float64 { return shape.Shell{r * by, h * by, 5 * by, 7 * by}.Volume(k) }
		same(t, "a shell", shell(by), shell(1)*by*by*by)
		same(t, "a rope", shape.RopeRatio(r*by, h*by), shape.RopeRatio(r, h))
		same(t, "a ruffle", shape.RuffleRatio(r*by, h*by), shape.RuffleRatio(r, h))
		same(t, "spooned icing", shape.Spooned(by*by*r*h, by*3, by*4, shape.Valleys), shape.Spooned(r*h, 3, 4, shape.Valleys)*by*by*by)
	})
}

// same fails a drawn case when two figures differ by more than rounding.
func same(t *rapid.T, what string, got, want float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > 1e-9*math.Max(1e-6, math.Abs(want)) {
		t.Fatalf("%s comes to %.12g, want %.12g", what, got, want)
	}
}
