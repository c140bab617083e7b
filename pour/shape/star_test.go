package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// near fails when a figure is further from what another hand worked out than a fraction of it.
func near(t *testing.T, what string, got, want, part float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > part*math.Max(1, math.Abs(want)) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// The table of fullnesses is worked out from the definition, half a turn at a time, to its printed digits. Derived.
func TestAStarFillsItsCircleByTheTable(t *testing.T) {
	qs := []float64{0.5, 0.6, 0.7, 0.8, 0.9}
	for n, row := range map[int][]float64{
		4:  {0.4502, 0.5402, 0.6302, 0.7203, 0.8103},
		5:  {0.4677, 0.5613, 0.6548, 0.7484, 0.8419},
		6:  {0.4775, 0.5730, 0.6685, 0.7639, 0.8594},
		8:  {0.4872, 0.5847, 0.6821, 0.7796, 0.8770},
		10: {0.4918, 0.5902, 0.6885, 0.7869, 0.8853},
		12: {0.4943, 0.5932, 0.6920, 0.7909, 0.8898},
	} {
		for i, q := range qs {
			got := shape.Star{Points: n, Tip: 7, Valley: 7 * q}.Fullness()
			if math.Abs(got-row[i]) > 0.00005+1e-12 {
				t.Errorf("%d points at q %g fill %.6f of their circle, the table says %.4f", n, q, got, row[i])
			}
		}
	}
	near(t, "very many points without valleys", shape.Star{Points: 100000, Tip: 1, Valley: 1}.Fullness(), 1, 1e-8)
}

// T1: n 8, R 6, r 4. The last two are the circle of the same area and the strand after a swell of 1.03 on the diameter.
func TestTheEightPointedStarOfTheWorkedExample(t *testing.T) {
	s := shape.Star{Points: 8, Tip: 6, Valley: 4}
	near(t, "its area", s.Area(), 73.47521901, 1e-9)
	near(t, "its fullness", s.Fullness(), 0.64966357, 1e-8)
	near(t, "its perimeter", s.Perimeter(), 44.26475239, 1e-9)
	near(t, "the circle as large", shape.EqualCircle(s.Area()), 9.67220525, 1e-9)
	near(t, "the swollen strand", shape.Strand(s.Area(), 1.03, 1), 77.94985985, 1e-9)
	near(t, "the strand of a hand twice as fast", shape.Strand(s.Area(), 1, 2), 36.737609505, 1e-9)
}

// A hexagon of radius 10 has an area of 150√3 and a perimeter of 60, a square 200 and 40√2: elementary geometry.
func TestARegularPolygonIsAStar(t *testing.T) {
	near(t, "the hexagon", shape.Polygon(6, 10).Area(), 150*math.Sqrt(3), 1e-12)
	near(t, "the way round it", shape.Polygon(6, 10).Perimeter(), 60, 1e-12)
	near(t, "the square", shape.Polygon(4, 10).Area(), 200, 1e-12)
	near(t, "the way round that", shape.Polygon(4, 10).Perimeter(), 40*math.Sqrt2, 1e-12)
}

// A rounded star's area is the integral of r²/2 over the turn, summed here by the trapezium rule, which is exact for so few waves.
func TestARoundedStarIsTheIntegralOverItsTurn(t *testing.T) {
	for _, waves := range []float64{1, 3, 8} {
		sum, steps := 0.0, 4096
		for i := range steps {
			r := 5 * (1 + 0.2*math.Cos(waves*2*math.Pi*float64(i)/float64(steps)))
			sum += r * r / 2 * 2 * math.Pi / float64(steps)
		}
		near(t, "the rounded star", shape.RoundedStar(5, 0.2), sum, 1e-12)
	}
	near(t, "a slot 16 long, 2 to 4 wide", shape.Slot(16, 2, 4), 48, 0)
}

func TestFullnessRisesWithPointsAndIsLinearInTheValley(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 40).Draw(t, "points")
		q := rapid.Float64Range(0.05, 1).Draw(t, "q")
		k := func(n int, q float64) float64 { return shape.Star{Points: n, Tip: 9, Valley: 9 * q}.Fullness() }
		if k(n+1, q) <= k(n, q) {
			t.Fatalf("%d points fill no more than %d", n+1, n)
		}
		if math.Abs(k(n, q)-q*k(n, 1)) > 1e-12 {
			t.Fatalf("fullness at q %g is not that part of the one at 1", q)
		}
		if k(n, q) < 0 || k(n, q) > 1 {
			t.Fatalf("a star fills %g of its circle", k(n, q))
		}
	})
}
