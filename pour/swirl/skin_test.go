package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// A fresh top is no plane, but level in the mean, steeper in thicker batter, and never so steep that it would run.
func TestAFreshTopIsRough(t *testing.T) {
	for _, technique := range []script.Technique{script.Layers, script.Drop, script.Hanger, script.Spooned} {
		steep := map[float64]float64{}
		for _, thick := range []float64{0.1, 0.8} {
			r := loaf(technique, 3)
			r.Thickness = thick
			s := mustPour(t, r)
			mean, most, n := 0.0, 0.0, 0.0
			for x := 2.0; x < r.Box.L; x += 3.1 {
				for y := 2.0; y < r.Box.W; y += 2.7 {
					along, across := s.Slope(x, y)
					mean, most, n = mean+along, max(most, math.Hypot(along, across)), n+1
				}
			}
			if mean = math.Abs(mean / n); mean > 0.02 || most < 0.03 || most > 0.9 {
				t.Errorf("%s at %g: it slopes by %.3f in the mean and %.2f at the most", technique, thick, mean, most)
			}
			steep[thick] = most
		}
		if steep[0.8] < 1.3*steep[0.1] {
			t.Errorf("%s: thick batter slopes by %.2f, thin by %.2f", technique, steep[0.8], steep[0.1])
		}
	}
}
