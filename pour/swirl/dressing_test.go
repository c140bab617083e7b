package swirl

import (
	"context"
	"image"
	"image/color"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/script"
)

// capped is a red bar of 60 by 30 pixels, 4 to the mm, and white that was cut in the middle of the room above it, sunk a little in.
func capped(t *testing.T, ground color.NRGBA, m Material) *image.NRGBA {
	t.Helper()
	const w, h, crown = 60, 60, 30
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	fillWith(img, ground)
	fillWith(part(img, image.Rect(0, crown, w, h)), color.NRGBA{200, 30, 30, 255})
	var p relief.Picture
	p.Reset(w, h)
	for y := 10; y < 40; y++ {
		for x := 20; x < 40; x++ {
			p.Dots[y*w+x] = relief.Dot{Part: [2]uint8{255}, Bright: relief.Lit, Cut: 255}
		}
	}
	if err := Dress(context.Background(), img, &p, NewStuffs([]color.NRGBA{{250, 250, 250, 255}}), Finish{Material: m}, 0.25, crown); err != nil {
		t.Fatal(err)
	}
	return img
}

// White on white paper has an edge: a line inside it and a breath of shadow outside, a veil where the paper is clear; further off there is nothing.
func TestWhiteIcingShowsOnWhite(t *testing.T) {
	for _, ground := range []color.NRGBA{{}, {255, 255, 255, 255}, {20, 20, 20, 255}} {
		img := capped(t, ground, Material{})
		if in, edge := img.NRGBAAt(30, 20), img.NRGBAAt(39, 20); in != (color.NRGBA{250, 250, 250, 255}) || edge.R > 240 || edge.R < 200 {
			t.Errorf("on %v: inside it is %v, at its edge %v", ground, in, edge)
		}
		out, far := img.NRGBAAt(41, 20), img.NRGBAAt(56, 20)
		if far != ground {
			t.Errorf("far off the ground %v is %v", ground, far)
		}
		if veil := ground.A == 0 && out.R == 0 && out.A > 20 && out.A < 90; !veil && out.R >= ground.R {
			t.Errorf("beside it the ground %v is %v", ground, out)
		}
	}
}

// What was cut shows the material of soap, and runs into the base; a bare picture has flat colours and sharp borders.
func TestCutIcingIsSoapUnlessBare(t *testing.T) {
	tones := func(m Material) int {
		seen := map[color.NRGBA]bool{}
		img := capped(t, color.NRGBA{}, m)
		for y := 16; y < 36; y++ {
			for x := 24; x < 36; x++ {
				seen[img.NRGBAAt(x, y)] = true
			}
		}
		return len(seen)
	}
	if n := tones(Material{}); n != 1 {
		t.Errorf("bare it shows %d tones", n)
	}
	if n := tones(Planed()); n < 6 {
		t.Errorf("planed it shows %d tones", n)
	}
	m := Material{BleedMM: 1}
	if img := capped(t, color.NRGBA{}, m); img.NRGBAAt(30, 39).G > 240 || img.NRGBAAt(30, 40).G < 60 {
		t.Errorf("at the border the icing is %v and the base %v", img.NRGBAAt(30, 39), img.NRGBAAt(30, 40))
	}
}

// Where cut icing is darker, light has gone through it: it is warmer there than shade alone makes it.
func TestDarkCutIcingIsWarm(t *testing.T) {
	d := newDressing(image.NewNRGBA(image.Rect(0, 0, 4, 4)), NewStuffs([]color.NRGBA{{200, 200, 200, 255}}), Finish{}, 0.25, 4)
	shade := relief.Dot{Part: [2]uint8{255}, Bright: relief.Lit * 3 / 4, Cut: 255}
	cut, skin := d.cut(color.NRGBA{}, shade, 1, 1), d.stuffs.Over(color.NRGBA{}, shade)
	if cut.R <= skin.R || cut.B+2 >= skin.B || cut.G != skin.G {
		t.Errorf("cut it is %v, as a skin %v", cut, skin)
	}
}

// An upright line shows what its places show.
func TestAnUprightLineShowsItsPlaces(t *testing.T) {
	s := mustPour(t, loaf(script.Drop, 2))
	box := s.recipe.Box
	labels := make([]int, 40)
	differ := 0
	for k := range 6 {
		x, y := box.L*(0.1+0.15*float64(k)), box.W*(0.95-0.17*float64(k))
		s.Upright(x, y, labels)
		for i, got := range labels {
			if got != s.Label(x, y, box.H*(float64(i)+0.5)/40) {
				differ++
			}
		}
	}
	if differ > 2 {
		t.Errorf("%d of 240 places differ", differ)
	}
}
