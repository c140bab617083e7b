package swirl

import (
	"context"
	"testing"

	"pourbench/pour/script"
)

// A stretch of a cut in coarse pixels against 8 by 8 points of each, every one traced by itself through the plain moves: the parts of a
// pixel are about those of its points, on average over pixels with more than one portion.
func TestACutAlongTheLoafShowsWhatLiesInItsPixels(t *testing.T) {
	const w, h, fine = 4, 124, 8
	for tech, most := range map[script.Technique]float64{script.Hanger: 0.075, script.Pot: 0.067} {
		s, err := New(loaf(tech, 5))
		if err != nil {
			t.Fatal(err)
		}
		box := s.recipe.Box
		var p Picture
		if err := s.Lengthwise(box.W/2).Part(60, 62).Refine(context.Background(), &p, w, h); err != nil {
			t.Fatal(err)
		}
		sum, mixed := 0.0, 0
		for k := range p.Pixels {
			var truth [MaxPortions]float64
			for n := range fine * fine {
				x := 60 + 2*(float64(k%w)+(float64(n%fine)+0.5)/fine)/w
				z := box.H * (1 - (float64(k/w)+(float64(n/fine)+0.5)/fine)/h)
				if label := s.Label(x, box.W/2, z); label != Empty {
					truth[label] += 1.0 / (fine * fine)
				}
			}
			px, off, alone := &p.Pixels[k], 0.0, false
			var got [MaxPortions]float64
			for i, part := range px.Part {
				if part > 0 {
					got[px.Portion[i]] += float64(part) / 255
				}
			}
			for i := range truth {
				off += max(0, truth[i]-got[i])
				alone = alone || truth[i] > 0.999
			}
			if !alone {
				sum, mixed = sum+off, mixed+1
			}
		}
		if mean := sum / float64(mixed); mixed < 30 || mean > most {
			t.Errorf("%s: %.3f of a pixel is wrong on average over %d of them, want at most %.3f", tech, mean, mixed, most)
		}
	}
}
