package paper

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"

	"pourbench/pour"
	"pourbench/pour/relief"
	"pourbench/pour/slice"
	"pourbench/pour/swirl"
)

// slice sets the picture of the loaf with a bar sliced off up.
func (e *easel) slice(d pour.Drawing, poured *swirl.Swirl, palette []color.NRGBA, top swirl.Topping, bar swirl.Bar, m swirl.Material) {
	scene := slice.New(poured, d.Recipe, top.Stands, bar).Planed(m)
	mmW, mmH := scene.SizeMM()
	e.high, e.atOnce = mmH/mmW, mmH/mmW
	w := e.o.Width
	h := max(1, int(math.Round(float64(w)*e.high)))
	told := e.told()
	e.draw = func(ctx context.Context) (image.Image, error) {
		var p relief.Picture
		tell := func(n int) {
			if told != nil {
				told(n)
			}
		}
		if err := scene.Refine(ctx, &p, w, h, tell); err != nil {
			return nil, fmt.Errorf("drawing a picture of %d by %d pixels: %w", w, h, err)
		}
		stuffs := swirl.NewStuffs(slices.Concat(palette, top.Palette))
		img := image.NewNRGBA(image.Rect(0, 0, w, h))
		for y := range h {
			ground := table(float64(y) / float64(h))
			for x := range w {
				img.SetNRGBA(x, y, stuffs.Over(ground, p.Dots[y*w+x]))
			}
		}
		return img, nil
	}
}

// table is the ground a loaf is shown on: a neutral, light grey that is a little darker towards the back. By eye.
func table(down float64) color.NRGBA {
	tone := func(back, front float64) uint8 { return uint8(back + (front-back)*down + 0.5) }
	return color.NRGBA{tone(214, 236), tone(211, 233), tone(207, 228), 255}
}
