package swirl

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
)

// spooned is the heap of a recipe, and the shares of its acts in order.
func spooned(s *Swirl) (h *heap, shares []float64) {
	for _, o := range s.ops {
		if o.slab != nil {
			h = o.slab.fill.(*heap)
		}
	}
	for _, a := range s.recipe.Script.Acts {
		if a.Kind == script.Spoon {
			shares = append(shares, a.Share)
		}
	}
	return h, shares
}

// Plain arithmetic: the area between how high the heap stood before an act and after it, by the trapezium rule, is the act's share of
// the cross-section.
func TestEveryActOfSpoonfulsLaysItsShareInEveryCrossSection(t *testing.T) {
	for seed := range int64(3) {
		r := scripted(script.Spooned, seed, 0.5, 0.02, 0.3, 0.18)
		h, shares := spooned(mustPour(t, r))
		if len(h.high) != len(shares) {
			t.Fatalf("%d acts are heaped, want %d", len(h.high), len(shares))
		}
		for i := range h.nx {
			for k, want := range shares {
				area := 0.0
				for j := range h.ny {
					at, low := i*h.ny+j, float32(0)
					if k > 0 {
						low = h.high[k-1][at]
					}
					if h.high[k][at] < low {
						t.Fatalf("act %d takes the heap down from %g to %g mm", k, low, h.high[k][at])
					}
					width := 80. / 64
					if j == 0 || j == h.ny-1 {
						width /= 2
					}
					area += width * float64(h.high[k][at]-low)
				}
				if got := area / (80 * 62); math.Abs(got-want) > 0.0002 {
					t.Errorf("seed %d: act %d lays %.4f of cross-section %d, want %.4f", seed, k, got, i, want)
				}
			}
		}
	}
}

func TestSpoonfulsShowAsTheyAreLaid(t *testing.T) {
	r := scripted(script.Spooned, 3, 0.4, 0.35, 0.25)
	s := mustPour(t, r)
	want := make([]float64, 3)
	for n, a := range r.Script.Acts {
		if a.Kind == script.Spoon {
			want[a.Jug] += a.Share
		}
		var pic Picture
		got := make([]float64, 3)
		s.Upto(n+1).Face(120).Draft(&pic, 240, 186)
		for i := range pic.Pixels {
			if pic.Pixels[i].Part[0] > 0 {
				got[pic.Pixels[i].Portion[0]] += 1 / float64(len(pic.Pixels))
			}
		}
		if e := worst(got, want); e > 0.005 {
			t.Fatalf("after act %d the face shows %.3f, want %.3f", n+1, got, want)
		}
	}
}

func TestMouldsOfEveryShapeCanBeSpoonedFull(t *testing.T) {
	if testing.Short() {
		t.Skip("draws many faces")
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.SampledFrom([]int{1, 2, 5, 12}).Draw(t, "jugs")
		shares, sum := make([]float64, n), 0.0
		for i := range shares {
			shares[i] = rapid.SampledFrom([]float64{0.002, 0.1, 1, 1, 1}).Draw(t, "share")
			sum += shares[i]
		}
		for i := range shares {
			shares[i] /= sum
		}
		r := scripted(script.Spooned, rapid.Int64().Draw(t, "seed"), shares...)
		r.Thickness = rapid.Float64Range(0, 1).Draw(t, "thickness")
		side := func(name string) float64 { return rapid.SampledFrom([]float64{10, 40, 80, 400, 2000}).Draw(t, name) }
		r.Box = Box{L: side("long"), W: side("wide"), H: side("high")}
		s, err := New(r)
		if err != nil {
			t.Fatal(err)
		}
		h, acts := spooned(s)
		for k := range acts {
			for at, v := range h.high[k] {
				if !(v >= 0 && float64(v) <= r.Box.H+0.001) || k > 0 && v < h.high[k-1][at] || k == len(acts)-1 && float64(v) != r.Box.H {
					t.Fatalf("%v: after act %d of %d the heap stands at %g mm", r.Box, k+1, len(acts), v)
				}
			}
		}
	})
}
