package swirl

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"
)

// Topping is an icing and the sRGB colours of its portions.
type Topping struct {
	Icing   *Icing
	Palette []color.NRGBA
}

// RenderBar draws a bar's face at pxPerMM with its topping standing on it; a zero Topping is none.
func RenderBar(ctx context.Context, f *Face, palette []color.NRGBA, top Topping, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	w, h, over := pixels(f.box.W, pxPerMM), pixels(f.box.H, pxPerMM), 0
	if top.Icing != nil {
		over = pixels(top.Icing.PeakMM(), pxPerMM)
	}
	bar, err := Render(ctx, f, palette, w, h, finish)
	if err != nil || over == 0 {
		return bar, err
	}
	img := image.NewNRGBA(image.Rect(0, 0, w, h+over))
	fillWith(img, finish.Ground)
	draw.Draw(img, image.Rect(0, over, w, h+over), bar, image.Point{}, draw.Over)
	sunk := min(pixels(finish.CornerMM, pxPerMM)/2, h)
	for k, c := range top.Icing.Paint(top.Palette, color.NRGBA{}, w, over, nil) {
		if c.A > 0 {
			blendInto(img, k%w, k/w+sunk, c)
		}
	}
	return img, nil
}

// pixels turns mm into whole pixels, at least 1; a size that is no number becomes one too large to draw.
func pixels(mm, pxPerMM float64) int {
	v := math.Round(mm * pxPerMM)
	if !(v < maxPixels) {
		return maxPixels
	}
	return max(1, int(v))
}

func fillWith(img *image.NRGBA, c color.NRGBA) {
	draw.Draw(img, img.Bounds(), image.NewUniform(c), image.Point{}, draw.Src)
}

// blendInto lays c over a pixel in linear light.
func blendInto(img *image.NRGBA, x, y int, c color.NRGBA) {
	under := img.NRGBAAt(x, y)
	if c.A == 255 || under.A == 0 {
		img.SetNRGBA(x, y, c)
		return
	}
	a, b, k := decode(c), decode(under), float32(c.A)/255
	out := light{a.r*k + b.r*(1-k), a.g*k + b.g*(1-k), a.b*k + b.b*(1-k)}.encode()
	out.A = max(c.A, under.A)
	img.SetNRGBA(x, y, out)
}

// Sheet is a picture of a whole batch.
type Sheet struct {
	BarMM   float64 // thickness of a bar along the loaf; every bar shows its first cut side
	Columns int     // bars in a row; 0 chooses
	PxPerMM float64 // resolution, above 0 to 40
	GapMM   float64 // between pictures
	Strip   bool    // adds the lengthwise cut and the view from above below the bars
	Top     Topping // on every bar
	Finish  Finish
}

// Bars returns how many whole bars of that thickness the loaf gives.
func (s *Swirl) Bars(barMM float64) int {
	if !(barMM > 0) {
		return 0
	}
	return max(1, int(s.recipe.Box.L/barMM+1e-6))
}

// Contact draws every bar of the batch as on a contact sheet, the first bar upper left.
func (s *Swirl) Contact(ctx context.Context, palette []color.NRGBA, c Sheet) (*image.NRGBA, error) {
	if !(c.BarMM > 0) || !(c.PxPerMM > 0 && c.PxPerMM <= 40) || !(c.GapMM >= 0) {
		return nil, fmt.Errorf("drawing a contact sheet: bars of %g mm at %g pixels per mm with gaps of %g mm: use positive sizes and at most 40 pixels per mm",
			c.BarMM, c.PxPerMM, c.GapMM)
	}
	bars := s.Bars(c.BarMM)
	if c.Columns < 1 {
		c.Columns = max(1, int(math.Ceil(math.Sqrt(float64(bars)*1.6))))
	}
	c.Columns = min(c.Columns, bars)
	box := s.recipe.Box
	gap := pixels(c.GapMM+0.01, c.PxPerMM)
	w, h := pixels(box.W, c.PxPerMM), pixels(box.H, c.PxPerMM)
	if c.Top.Icing != nil {
		h += pixels(c.Top.Icing.PeakMM(), c.PxPerMM)
	}
	rows := (bars + c.Columns - 1) / c.Columns
	wide, high := gap+c.Columns*(w+gap), gap+rows*(h+gap)
	scale := float64(wide-2*gap) / box.L
	side, top := pixels(box.H, scale), pixels(box.W, scale)
	if c.Strip {
		high += side + top + 2*gap
	}
	if wide > maxPixels/high {
		return nil, fmt.Errorf("drawing a contact sheet of %d by %d pixels: use fewer pixels per mm or thicker bars", wide, high)
	}
	img := image.NewNRGBA(image.Rect(0, 0, wide, high))
	fillWith(img, c.Finish.Ground)
	for k := range bars {
		bar, err := RenderBar(ctx, s.Face(float64(k)*c.BarMM), palette, c.Top, c.PxPerMM, c.Finish)
		if err != nil {
			return nil, fmt.Errorf("bar %d: %w", k+1, err)
		}
		at := image.Pt(gap+k%c.Columns*(w+gap), gap+k/c.Columns*(h+gap))
		draw.Draw(img, bar.Bounds().Add(at), bar, image.Point{}, draw.Over)
	}
	if !c.Strip {
		return img, nil
	}
	y := gap + rows*(h+gap)
	for _, l := range [2]struct {
		cut  *Long
		high int
	}{{s.Lengthwise(box.W / 2), side}, {s.Top(box.H), top}} {
		strip, err := RenderLong(ctx, l.cut, palette, wide-2*gap, l.high, c.Finish)
		if err != nil {
			return nil, err
		}
		draw.Draw(img, strip.Bounds().Add(image.Pt(gap, y)), strip, image.Point{}, draw.Over)
		y += l.high + gap
	}
	return img, nil
}
