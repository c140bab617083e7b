package swirl

import (
	"context"
	"image"
	"image/color"
	"math"
	"testing"
)

// sides is a picture of two portions side by side, px pixels to a mm, 20 by 10 mm, parted at 10 mm.
func sides(px int) *Picture {
	p := &Picture{}
	p.Reset(20*px, 10*px)
	for i := range p.Pixels {
		p.Pixels[i] = Pixel{Portion: [3]uint8{uint8(i % p.W / (10 * px))}, Part: [3]uint8{255}}
	}
	return p
}

// finished draws two sides in black and white, or in the same grey.
func finished(t *testing.T, px int, m Material, palette ...color.NRGBA) *image.NRGBA {
	t.Helper()
	p := sides(px)
	img := image.NewNRGBA(image.Rect(0, 0, p.W, p.H))
	if err := p.Finish(context.Background(), palette, img, Finish{Material: m}, 20, 10); err != nil {
		t.Fatal(err)
	}
	return img
}

func blackWhite() []color.NRGBA { return []color.NRGBA{{0, 0, 0, 255}, {255, 255, 255, 255}} }

// A border fades over the bleed and no further: half the light in its middle, and further off than half the bleed nothing changes.
func TestABorderFadesOverItsBleed(t *testing.T) {
	const px = 40
	img := finished(t, px, Material{BleedMM: 0.4}, blackWhite()...)
	last := -1.0
	for x := 9 * px; x < 11*px; x++ {
		mm := (float64(x)+0.5)/px - 10
		v := float64(linear(img.NRGBAAt(x, 5*px).R))
		switch {
		case mm < -0.23 && v != 0, mm > 0.23 && v != 1:
			t.Errorf("%.3f mm from the border the light is %.3f", mm, v)
		case math.Abs(mm) < 0.02 && !near(v, 0.5, 0.1):
			t.Errorf("at the border the light is %.3f, want about half", v)
		case v < last-1e-6:
			t.Errorf("%.3f mm from the border it darkens from %.3f to %.3f", mm, last, v)
		}
		last = v
	}
	sharp := finished(t, px, Material{}, blackWhite()...)
	if a, b := sharp.NRGBAAt(10*px-1, 9).R, sharp.NRGBAAt(10*px, 9).R; a != 0 || b != 255 {
		t.Errorf("without bleed the border is %d beside %d", a, b)
	}
}

// means is the mean light of every square of side mm.
func means(img *image.NRGBA, px, side int) (out []float64) {
	for y := 0; y < 10; y += side {
		for x := 0; x < 20; x += side {
			sum := 0.0
			for j := range side * px {
				for i := range side * px {
					sum += float64(linear(img.NRGBAAt(x*px+i, y*px+j).R))
				}
			}
			out = append(out, sum/float64(side*side*px*px))
		}
	}
	return out
}

// The same bar at two sizes: every square of 2 mm is as bright in both, and the whole is as bright as without material but for its pores.
func TestAMaterialIsTheSameAtEverySize(t *testing.T) {
	grey := color.NRGBA{188, 188, 188, 255}
	m := Planed()
	m.Pores = 0
	small, large := means(finished(t, 10, m, grey, grey), 10, 2), means(finished(t, 30, m, grey, grey), 30, 2)
	want, sum := float64(linear(188)), 0.0
	for i := range small {
		if !near(small[i], large[i], 0.012) {
			t.Errorf("square %d is %.4f bright in small and %.4f in large", i, small[i], large[i])
		}
		sum += large[i] / float64(len(large))
	}
	if !near(sum, want, 0.01) {
		t.Errorf("the whole is %.4f bright, want %.4f", sum, want)
	}
}

// Flakes lighten and grains darken the portion that has them and no other.
func TestOnlyMicaGlintsAndOnlyPlantsSpeckle(t *testing.T) {
	const px = 20
	grey := color.NRGBA{120, 120, 120, 255}
	plain := float64(linear(120))
	for name, c := range map[string]struct {
		look Surface
		sign float64
	}{"mica": {Surface{Glint: 1}, 1}, "plants": {Surface{Speckle: 1}, -1}} {
		m := Material{Flakes: 0.5, Grains: 0.5, Surfaces: []Surface{{}, c.look}}
		img := finished(t, px, m, grey, grey)
		changed := 0
		for y := range 10 * px {
			for x := range 20 * px {
				v := float64(linear(img.NRGBAAt(x, y).R))
				switch {
				case x < 10*px && !near(v, plain, 0.003):
					t.Fatalf("%s: the other portion is %.3f at (%d, %d), want %.3f", name, v, x, y, plain)
				case x >= 10*px && c.sign*(v-plain) < -0.003:
					t.Fatalf("%s: a place is %.3f, want no other way than %.3f", name, v, plain)
				case c.sign*(v-plain) > 0.02:
					changed++
				}
			}
		}
		if part := float64(changed) / (100 * px * px); part < 0.002 || part > 0.2 {
			t.Errorf("%s: %.3f of it shows, want some and not much", name, part)
		}
	}
}

// Another cut has other streaks; the same has the same.
func TestEveryCutHasItsOwnStreaks(t *testing.T) {
	grey := color.NRGBA{188, 188, 188, 255}
	m := Planed()
	one, again := finished(t, 8, m, grey, grey), finished(t, 8, m, grey, grey)
	m.CutMM = 25
	other := finished(t, 8, m, grey, grey)
	if string(one.Pix) != string(again.Pix) || string(one.Pix) == string(other.Pix) {
		t.Error("a cut is drawn otherwise again, or like the next")
	}
}

// A filament thinner than the rows that are looked at first is followed from column to column once it is found: it begins on such a row and
// climbs off it.
func TestAThinFilamentIsNotDashed(t *testing.T) {
	s := &Swirl{recipe: Recipe{Box: Box{L: 200, W: 80, H: 60}}, level: 60, acts: 1}
	s.ops = []op{{slab: &slab{top: 60, fill: filament{}}}}
	var p Picture
	if err := s.Lengthwise(40).Refine(context.Background(), &p, 400, 600); err != nil {
		t.Fatal(err)
	}
	for x := 20; x < 380; x++ {
		shows := false
		for y := range p.H {
			px := p.Pixels[y*p.W+x]
			for k, part := range px.Part {
				shows = shows || part > 0 && px.Portion[k] == 1
			}
		}
		if !shows {
			t.Errorf("column %d shows none of it", x)
		}
	}
}

// filament is one portion with a thread of another in it, 0.15 mm thin, which lies at 19.75 mm at the marked end and climbs slowly.
type filament struct{}

func (filament) label(x, _, z float64) int {
	if math.Abs(z-19.75-x/40) < 0.075 {
		return 1
	}
	return 0
}

// A flake or a grain finer than a pixel changes its light by as much of it as it covers: the whole is as bright in coarse pixels as in fine.
func TestFlakesAndGrainsWeighTheSameAtEverySize(t *testing.T) {
	grey := color.NRGBA{120, 120, 120, 255}
	whole := func(px int, m Material) (sum float64) {
		for _, v := range means(finished(t, px, m, grey, grey), px, 10) {
			sum += v / 2
		}
		return sum - float64(linear(120))
	}
	for name, m := range map[string]Material{
		"flakes": {Flakes: 0.5, Surfaces: []Surface{{Glint: 1}, {Glint: 1}}},
		"grains": {Grains: 0.5, Surfaces: []Surface{{Speckle: 1}, {Speckle: 1}}},
	} {
		coarse, fine := whole(8, m), whole(60, m)
		if part := coarse / fine; part < 0.6 || part > 1.6 {
			t.Errorf("%s change the light by %.5f in coarse pixels and by %.5f in fine ones", name, coarse, fine)
		}
	}
}
