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
	return topped(ctx, f, palette, top.paint(f.box.W, pxPerMM), pxPerMM, finish)
}

// RenderLoaf draws a cut along the loaf at pxPerMM; an upright one has the topping standing on it as it is seen from the side.
func RenderLoaf(ctx context.Context, l *Long, palette []color.NRGBA, top Topping, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	side, err := top.beside(l)
	if err != nil {
		return nil, err
	}
	return topped(ctx, l, palette, side.paint(l.long, pxPerMM), pxPerMM, finish)
}

// beside is the topping as it stands on a cut along the loaf; none on a level one.
func (t Topping) beside(l *Long) (Topping, error) {
	if t.Icing == nil || l.top {
		return Topping{}, nil
	}
	icing, err := t.Icing.Along(l.s.recipe.Box.L)
	if err != nil {
		return Topping{}, err
	}
	return Topping{icing.Part(l.from, l.from+l.long), t.Palette}, nil
}

// paint draws the topping by itself over nothing, or gives nil when there is none.
func (t Topping) paint(width, pxPerMM float64) *image.NRGBA {
	if t.Icing == nil {
		return nil
	}
	w, h := pixels(width, pxPerMM), pixels(t.Icing.PeakMM(), pxPerMM)
	if w > maxPixels/h {
		return nil // the bar below is refused for its size
	}
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for k, c := range t.Icing.Paint(t.Palette, color.NRGBA{}, w, h, nil) {
		img.SetNRGBA(k%w, k/w, c)
	}
	return img
}

// topped draws a source with its topping, already drawn, standing on it.
func topped(ctx context.Context, src source, palette []color.NRGBA, top *image.NRGBA, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	mmW, mmH := src.size()
	w, h := pixels(mmW, pxPerMM), pixels(mmH, pxPerMM)
	finish.FlatTop = finish.FlatTop || top != nil
	bar, err := render(ctx, src, palette, w, h, finish)
	if err != nil || top == nil {
		return bar, err
	}
	over := top.Bounds().Dy()
	img := image.NewNRGBA(image.Rect(0, 0, w, h+over))
	fillWith(img, finish.Ground)
	draw.Draw(img, image.Rect(0, over, w, h+over), bar, image.Point{}, draw.Over)
	draw.Draw(img, top.Bounds(), top, image.Point{}, draw.Over)
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
	strips, err := s.strips(ctx, palette, c, wide-2*gap)
	if err != nil {
		return nil, err
	}
	for _, strip := range strips {
		high += strip.Bounds().Dy() + gap
	}
	if wide > maxPixels/high {
		return nil, fmt.Errorf("drawing a contact sheet of %d by %d pixels: use fewer pixels per mm or thicker bars", wide, high)
	}
	img := image.NewNRGBA(image.Rect(0, 0, wide, high))
	fillWith(img, c.Finish.Ground)
	topping := c.Top.paint(box.W, c.PxPerMM)
	for k := range bars {
		bar, err := topped(ctx, s.Face(float64(k)*c.BarMM), palette, topping, c.PxPerMM, c.Finish)
		if err != nil {
			return nil, fmt.Errorf("bar %d: %w", k+1, err)
		}
		at := image.Pt(gap+k%c.Columns*(w+gap), gap+k/c.Columns*(h+gap))
		draw.Draw(img, bar.Bounds().Add(at), bar, image.Point{}, draw.Over)
	}
	at := image.Pt(gap, gap+rows*(h+gap))
	for _, strip := range strips {
		draw.Draw(img, strip.Bounds().Add(at), strip, image.Point{}, draw.Over)
		at.Y += strip.Bounds().Dy() + gap
	}
	return img, nil
}

// strips draws the cut down the middle of the loaf under its topping and the planed loaf from above, both wide pixels; none where the sheet
// asks for none.
func (s *Swirl) strips(ctx context.Context, palette []color.NRGBA, c Sheet, wide int) ([]*image.NRGBA, error) {
	if !c.Strip {
		return nil, nil
	}
	box := s.recipe.Box
	var out []*image.NRGBA
	for _, cut := range [2]*Long{s.Lengthwise(box.W / 2), s.Top(box.H - SkimMM)} {
		strip, err := RenderLoaf(ctx, cut, palette, c.Top, float64(wide)/box.L, c.Finish)
		if err != nil {
			return nil, err
		}
		out = append(out, strip)
	}
	return out, nil
}
