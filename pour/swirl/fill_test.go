package swirl

import (
	"math"
	"testing"
)

// strips is the integral from 0 to 1 by 4000 strips.
func strips(f func(b float64) float64) (sum float64) {
	const n = 4000
	for i := range n {
		sum += f((float64(i) + 0.5) / n)
	}
	return sum / n
}

// The rank of a slanted plane and of a bent foot is the area below it, summed strip by strip.
func TestRanksAreTheAreasTheySayTheyAre(t *testing.T) {
	for _, k := range []float64{0, 1e-12, 0.05, 0.34, 0.8, 1} {
		for v := -0.2; v < 1.3+k; v += 0.07 {
			if want := strips(func(b float64) float64 { return max(0, min(1, v-k*b*b)) }); !near(feet(v, k), want, 1e-5) {
				t.Errorf("feet(%.2f, %g) is %.5f, the area %.5f", v, k, feet(v, k), want)
			}
			if want := strips(func(b float64) float64 { return max(0, min(1, v-k*b)) }); v >= 0 && v <= 1+k && !near(rank(v, k), want, 1e-5) {
				t.Errorf("rank(%.2f, %g) is %.5f, the area %.5f", v, k, rank(v, k), want)
			}
		}
	}
}

func TestTheShareOfASquareWithinACircleOfItsMiddle(t *testing.T) {
	for r := 0.0; r < 0.8; r += 0.031 {
		want := strips(func(b float64) float64 { return min(1, 2*math.Sqrt(max(0, r*r-(b-0.5)*(b-0.5)))) })
		if !near(withinSquare(r), want, 2e-4) {
			t.Errorf("within %.3f of the middle lies %.5f of the square, want %.5f", r, withinSquare(r), want)
		}
	}
}

func TestAStackShowsEveryLayerUpToItsTop(t *testing.T) {
	s := &stack{top: []float64{10, 25, 60}, portion: []int{4, 1, 7}}
	for z, want := range map[float64]int{0: 4, 9.99: 4, 10: 1, 24.99: 1, 25: 7, 59: 7, 80: 7} {
		if got := s.label(3, 5, z); got != want {
			t.Errorf("at %g mm lies %d, want %d", z, got, want)
		}
	}
	if got := plain(5).label(1, 2, 1999); got != 5 {
		t.Errorf("a plain slab of 5 shows %d", got)
	}
}

func TestPickingByStretches(t *testing.T) {
	until, portion := cumulate([]float64{0.25, 0, 0.5, 0.25})
	if len(until) != 3 || until[2] != 1 || portion[0] != 0 || portion[1] != 2 || portion[2] != 3 {
		t.Fatalf("the stretches end at %v for %v", until, portion)
	}
	for v, want := range map[float64]int{-1: 0, 0: 0, 0.249: 0, 0.25: 2, 0.74: 2, 0.75: 3, 1: 3, 1.5: 3} {
		if got := pick(until, portion, v); got != want {
			t.Errorf("%g picks %d, want %d", v, got, want)
		}
	}
}

// banded is three stripes of shares 0.5, 0.2 and 0.3 that lean by a slant, in a mould of 100 by 80 by 60 mm.
func banded(slant float64) *stripes {
	return &stripes{
		until: []float64{0.5, 0.7, 1}, portion: []int{2, 0, 1}, act: []int{3, 4, 6},
		box: Box{L: 100, W: 80, H: 60}, slant: slant, bow: wobble{mean: 1},
	}
}

func TestStripesHaveTheirSharesHoweverTheyLean(t *testing.T) {
	for _, slant := range []float64{0, 0.2, -0.2, 0.9, -0.9, 1.4, -1.4} {
		s := banded(slant)
		var got [3]float64
		const n = 240
		for i := range n * n {
			got[s.label(10, 80*(float64(i%n)+0.5)/n, 60*(float64(i/n)+0.5)/n)] += 1. / (n * n)
		}
		for portion, want := range map[int]float64{2: 0.5, 0: 0.2, 1: 0.3} {
			if !near(got[portion], want, 0.004) {
				t.Errorf("slant %g: portion %d has %.4f of the mould, want %g", slant, portion, got[portion], want)
			}
		}
	}
}

// From wall to wall the stripes lie in the order they were poured in, and at the bottom a border lies as much further left as the feet lean
// to the left of the next one: never the other way.
func TestStripesLieInTheOrderOfThePourAndLean(t *testing.T) {
	border := func(s *stripes, z float64) (at [2]float64) {
		k, order := 0, []int{2, 0, 1}
		for y := 0.05; y < 80; y += 0.1 {
			switch got := s.label(10, y, z); {
			case k < 2 && got == order[k+1]:
				at[k] = y
				k++
			case got != order[k]:
				t.Fatalf("slant %g: at %.1f mm across lies %d after %d", s.slant, y, got, order[k])
			}
		}
		return at
	}
	for _, z := range []float64{0, 30, 60} {
		if at := border(banded(0), z); !near(at[0], 40, 0.15) || !near(at[1], 56, 0.15) {
			t.Errorf("upright stripes meet at %.1f mm, want 40 and 56", at)
		}
	}
	// By hand: at the top a foot of slant k leaves a border k/3 of the width beyond its share, at the bottom k less than that.
	for _, k := range []float64{0.2, -0.2} {
		s := banded(k)
		top, bottom := border(s, 60), border(s, 0)
		for i, share := range []float64{0.5, 0.7} {
			if want := 80 * (share + k/3); !near(top[i], want, 0.15) {
				t.Errorf("slant %g: at the top border %d lies at %.1f mm, want %.1f", k, i, top[i], want)
			}
			if want := 80 * (share + k/3 - k); !near(bottom[i], want, 0.15) {
				t.Errorf("slant %g: at the bottom border %d lies at %.1f mm, want %.1f", k, i, bottom[i], want)
			}
		}
	}
}

func TestStripesAppearActByAct(t *testing.T) {
	s := banded(0)
	for n, want := range map[int][3]int{0: {Empty, Empty, Empty}, 3: {Empty, Empty, Empty}, 4: {2, Empty, Empty}, 5: {2, 0, Empty}, 6: {2, 0, Empty}, 7: {2, 0, 1}} {
		part := s.upto(n)
		for i, y := range []float64{10, 48, 70} {
			if got := part.label(10, y, 30); got != want[i] {
				t.Errorf("after %d acts %d lies at %g mm, want %d", n, got, y, want[i])
			}
		}
	}
	if s.label(10, 70, 30) != 1 {
		t.Error("the whole is changed by its parts")
	}
}
