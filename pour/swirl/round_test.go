package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// A level cut of a tube is a disc: π/4 of the square about it, nothing in its corners, and inside it what the plain trace finds there.
func TestALevelCutOfATubeIsADisc(t *testing.T) {
	r := loaf(script.Drop, 3)
	r.Box, r.Round = Box{L: 75, W: 75, H: 200}, true
	s := mustPour(t, r)
	const n = 150
	for _, z := range []float64{0, 60, 199} {
		var p Picture
		s.Top(z).Draft(&p, n, n)
		filled := 0
		for j := range n {
			for i := range n {
				px := p.Pixels[j*n+i]
				x, y := 75*(float64(i)+0.5)/n, 75*(1-(float64(j)+0.5)/n)
				if away := math.Hypot(x-37.5, y-37.5); (away < 37.49) != (px.Part[0] > 0) && math.Abs(away-37.5) > 0.02 {
					t.Fatalf("at height %g the place %g, %g, %g mm off the axis, is drawn %v", z, x, y, away, px)
				}
				if px.Part[0] > 0 {
					filled++
					if want := s.Label(x, y, z); z < 199 && int(px.Portion[0]) != want {
						t.Fatalf("at height %g the place %g, %g shows %d, not %d", z, x, y, px.Portion[0], want)
					}
				}
			}
		}
		if part := float64(filled) / n / n; math.Abs(part-math.Pi/4) > 0.003 {
			t.Errorf("%g of the square is filled at height %g", part, z)
		}
	}
	if w, h := r.FaceMM(); w != 75 || h != 75 {
		t.Errorf("a round is %g by %g", w, h)
	}
	box := r
	box.Round = false
	if w, h := box.FaceMM(); w != 75 || h != 200 || box.Equal(r) {
		t.Errorf("a box's face is %g by %g, or a tube is the same as a box", w, h)
	}
}
