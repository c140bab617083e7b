package swirl

import (
	"context"
	"image"
	"image/color"
	"testing"
)

// lamplit draws a grey face 80 by 60 mm, ten pixels to the mm, and gives what light a place at x, y mm throws back, of that of the palette.
func lamplit(t *testing.T, finish Finish) func(x, y float64) float64 {
	t.Helper()
	p := &Picture{}
	p.Reset(800, 600)
	for i := range p.Pixels {
		p.Pixels[i].Part[0] = 255
	}
	img := image.NewNRGBA(image.Rect(0, 0, 800, 600))
	if err := p.Finish(context.Background(), []color.NRGBA{{150, 150, 150, 255}}, img, finish, 80, 60); err != nil {
		t.Fatal(err)
	}
	return func(x, y float64) float64 { return float64(linear(img.NRGBAAt(int(x*10), int(y*10)).R) / linear(150)) }
}

// The rim that faces the lamp is lit, the one opposite shaded as much, each by what the lamp stands to that side, all of it at the very edge and half of
// it half way in: worked out by hand. In a rounded corner it faces both ways at once. An icing leaves no upper rim.
func TestTheRimIsLitFromTheUpperLeft(t *testing.T) {
	for _, flat := range []bool{false, true} {
		at := lamplit(t, Finish{CornerMM: 6, EdgeMM: 2, Bevel: 0.4, FlatTop: flat})
		top, corner := 0.4*0.83*0.975, 0.4*(0.56+0.83)*0.7071*0.5 // 0.05 mm in; half way in, at 45 degrees
		if flat {
			top = 0
		}
		for name, c := range map[string]struct{ x, y, want float64 }{
			"left": {0.05, 30, 0.4 * 0.56 * 0.975}, "right": {79.95, 30, -0.4 * 0.56 * 0.975}, "foot": {40, 59.95, -0.4 * 0.83 * 0.975}, "top": {40, 0.05, top},
			"half way": {1.05, 30, 0.4 * 0.56 * 0.475}, "middle": {40, 30, 0}, "within": {2.25, 30, 0}, "lower right": {80 - 2.464, 60 - 2.464, -corner},
			"lower left": {2.464, 60 - 2.464, 0.4 * (0.56 - 0.83) * 0.7071 * 0.5}, // 6 mm less 5 at 45 degrees
		} {
			if got := at(c.x, c.y) - 1; !near(got, c.want, 0.02) {
				t.Errorf("flat at the top %v: %s is lit by %.3f more, want %.3f", flat, name, got, c.want)
			}
		}
	}
}

// Falloff is what the corner nearest to the lamp has more than the one furthest off; the middle keeps its colour, and all four corners together.
func TestTheLightFallsOffFromCornerToCorner(t *testing.T) {
	at := lamplit(t, Finish{Falloff: 0.2})
	a, b, c, d := at(0, 0), at(79.9, 0), at(0, 59.9), at(79.9, 59.9)
	if !near(a-d, 0.2, 0.01) || !near(a+b+c+d, 4, 0.02) || !near(at(40, 30), 1, 0.005) || a < b || b < c || c < d {
		t.Errorf("the corners are %.3f %.3f over %.3f %.3f, the middle is %.3f", a, b, c, d, at(40, 30))
	}
}
