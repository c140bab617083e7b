package swirl

import (
	"math"
	"testing"
)

// five traces the corners a b over c d of a pixel and its middle.
func (r *refiner) five(x, y int) (list [5]sample) {
	for i, at := range [5][2]float64{{0, 0}, {1, 0}, {0, 1}, {1, 1}, {0.5, 0.5}} {
		list[i] = r.at(float64(x)+at[0], float64(y)+at[1])
	}
	return list
}

// A pixel of which only its five places are looked at: the middle weighs as much as the four corners together.
func TestTheMiddleOfATinyPixelWeighsAsItsCorners(t *testing.T) {
	s := cast(Box{L: 100, W: 80, H: 60}, 2, func(_, _, _ float64) int { return 0 })
	r := newRefiner(s.Face(1), drawn("0"), 1)
	for name, c := range map[string]struct {
		labels [5]uint8
		want   Pixel
	}{
		"the middle alone": {[5]uint8{0, 0, 0, 0, 1}, Pixel{Portion: [3]uint8{0, 1}, Part: [3]uint8{128, 127}}},
		"one corner":       {[5]uint8{0, 0, 1, 0, 0}, Pixel{Portion: [3]uint8{0, 1}, Part: [3]uint8{224, 31}}},
		"all of them":      {[5]uint8{1, 1, 1, 1, 1}, Pixel{Portion: [3]uint8{1}, Part: [3]uint8{255}}},
	} {
		var five [5]sample
		var at [5]*sample
		for i := range five {
			five[i].label = c.labels[i]
			at[i] = &five[i]
		}
		if r.vote(0, 0, &at); r.dst.Pixels[0] != c.want {
			t.Errorf("%s: the pixel is %v, want %v", name, r.dst.Pixels[0], c.want)
		}
	}
}

// Looked at in full, a pixel on the edge of a slanted plane is nearer to what covers it than its five places make it.
func TestAPixelLookedAtInFullIsNearerToWhatCoversIt(t *testing.T) {
	s := cast(Box{L: 80, W: 80, H: 60}, 2, below(func(_, y, z float64) float64 { return y + 0.35*(60-z) - 40 }))
	var pic Picture
	pic.Reset(80, 60)
	r := newRefiner(s.Face(1), &pic, 1)
	off := func(draw func(x, y int, s *[5]*sample)) (mean float64) {
		n := 0.0
		for i := range pic.Pixels {
			x, y := i%80, i/80
			want := covered(x, y, 1, 0.35, 40)
			if want == 0 || want == 1 {
				continue
			}
			five := r.five(x, y)
			draw(x, y, &[5]*sample{&five[0], &five[1], &five[2], &five[3], &five[4]})
			got := 0.0
			for k, part := range pic.Pixels[i].Part {
				if pic.Pixels[i].Portion[k] == 0 {
					got += float64(part) / 255
				}
			}
			mean, n = mean+math.Abs(got-want), n+1
		}
		return mean / n
	}
	full, five := off(r.full), off(r.vote)
	if full > 0.08 || full > 0.8*five {
		t.Errorf("in full a part is off by %.3f on average, by five places %.3f", full, five)
	}
}

// A pixel of 2 by 1.5 mm: the corners of a patch and its middle, in mm across and up.
func TestTheCornersOfAPatchLieWhereItIsDrawn(t *testing.T) {
	s := cast(Box{L: 80, W: 80, H: 60}, 1, func(_, _, _ float64) int { return 0 })
	var pic Picture
	pic.Reset(40, 40)
	r := newRefiner(s.Face(1), &pic, 4)
	p := &patch{r: r, x: 8, y: 12, size: 4}
	for i, want := range []vec2{{16, 42}, {24, 42}, {16, 36}, {24, 36}, {20, 39}} {
		if y, z := r.place(p, i); y != want.y || z != want.z {
			t.Errorf("corner %d of the patch lies at (%g, %g), want %v", i, y, z, want)
		}
	}
}
