package swirl

import (
	"testing"

	"pourbench/pour/script"
)

// Each colour has its share of what a maker sees when the loaf is cut: all ten faces together, counted pixel by pixel, whatever the
// technique, the seed, how thick the batter is and however small the share.
func TestEveryColourHasItsShareOfAllFaces(t *testing.T) {
	if testing.Short() {
		t.Skip("draws many faces")
	}
	for _, technique := range script.Techniques() {
		t.Run(string(technique), func(t *testing.T) {
			t.Parallel()
			worstEver := 0.0
			for _, shares := range [][]float64{{0.38, 0.16, 0.16, 0.15, 0.15}, {0.55, 0.05, 0.2, 0.12, 0.08}, {0.3, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.05, 0.05}} {
				for seed := range int64(3) {
					r := scripted(technique, seed, shares...)
					r.Thickness = 0.1 + 0.35*float64(seed)
					e := worst(seen(mustPour(t, r), 10), shares)
					if worstEver = max(worstEver, e); e > 0.015 {
						t.Errorf("shares %v, seed %d: a colour is off by %.2f points", shares, seed, 100*e)
					}
				}
			}
			t.Logf("worst %.2f points", 100*worstEver)
		})
	}
}

// seen is the part of every portion in the faces through the middles of the bars.
func seen(s *Swirl, bars int) []float64 {
	box := s.recipe.Box
	got := make([]float64, len(s.recipe.Script.Brief.Shares))
	var pic Picture
	for k := range bars {
		s.Face(box.L*(float64(k)+0.5)/float64(bars)).Draft(&pic, 120, 93)
		for i, v := range pic.Measure(box.W, box.H, len(got)).Shares {
			got[i] += v / float64(bars)
		}
	}
	return got
}
