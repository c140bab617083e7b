package swirl

import (
	"context"
	"testing"

	"pourbench/pour/script"
)

// A stretch of a cut in coarse pixels against 6 by 6 points of each, every one traced by itself through the plain moves: the parts of a
// pixel are about those of its points, on average over the pixels of some pours with more than one portion. Out of a pot comes more than one
// strand to a pixel.
func TestACutAlongTheLoafShowsWhatLiesInItsPixels(t *testing.T) {
	for tech, most := range map[script.Technique]float64{script.Hanger: 0.075, script.Pot: 0.07} {
		sum, mixed := 0.0, 0
		for seed := int64(4); seed < 7; seed++ {
			off, n := wrong(t, loaf(tech, seed))
			sum, mixed = sum+off, mixed+n
		}
		if mean := sum / float64(mixed); mixed < 90 || mean > most {
			t.Errorf("%s: %.3f of a pixel is wrong on average over %d of them, want at most %.3f", tech, mean, mixed, most)
		}
	}
}

// wrong is by what parts of them pixels with more than one portion are wrong in all, and how many there are.
func wrong(t *testing.T, r Recipe) (sum float64, mixed int) {
	t.Helper()
	const w, h, fine = 4, 124, 6
	s := mustPour(t, r)
	box := s.recipe.Box
	var p Picture
	if err := s.Lengthwise(box.W/2).Part(60, 62).Refine(context.Background(), &p, w, h); err != nil {
		t.Fatal(err)
	}
	for k := range p.Pixels {
		var truth, got [MaxPortions]float64
		for n := range fine * fine {
			x := 60 + 2*(float64(k%w)+(float64(n%fine)+0.5)/fine)/w
			z := box.H * (1 - (float64(k/w)+(float64(n/fine)+0.5)/fine)/h)
			if label := s.Label(x, box.W/2, z); label != Empty {
				truth[label] += 1.0 / (fine * fine)
			}
		}
		for i, part := range p.Pixels[k].Part {
			if part > 0 {
				got[p.Pixels[k].Portion[i]] += float64(part) / 255
			}
		}
		off, alone := 0.0, false
		for i := range truth {
			off += max(0, truth[i]-got[i])
			alone = alone || truth[i] > 0.999
		}
		if !alone {
			sum, mixed = sum+off, mixed+1
		}
	}
	return sum, mixed
}
