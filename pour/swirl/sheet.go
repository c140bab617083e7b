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
	return topped(ctx, f, palette, top, pxPerMM, finish)
}

// RenderLoaf draws a cut along the loaf at pxPerMM; an upright one has the topping standing on it as it is seen from the side.
func RenderLoaf(ctx context.Context, l *Long, palette []color.NRGBA, top Topping, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	side, err := top.beside(l)
	if err != nil {
		return nil, err
	}
	return topped(ctx, l, palette, side, pxPerMM, finish)
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

// high is how many pixels the topping stands over the bar; none: 0.
func (t Topping) high(pxPerMM float64) int {
	if t.Icing == nil {
		return 0
	}
	return pixels(t.Icing.PeakMM(), pxPerMM)
}

// paint draws the topping over the whole of img.
func (t Topping) paint(ctx context.Context, img *image.NRGBA, finish Finish) error {
	if t.Icing == nil {
		return nil
	}
	b := img.Bounds()
	err := t.Icing.paint(ctx, t.Palette, finish.Ground, b.Dx(), b.Dy(), func(j int, row []color.NRGBA) {
		at := img.PixOffset(b.Min.X, b.Min.Y+j)
		for i, c := range row {
			copy(img.Pix[at+4*i:at+4*i+4], []uint8{c.R, c.G, c.B, c.A})
		}
		finish.tell(len(row))
	})
	if err != nil {
		return fmt.Errorf("drawing an icing of %d by %d pixels: %w", b.Dx(), b.Dy(), err)
	}
	return nil
}

// topped draws a source with its topping standing on it.
func topped(ctx context.Context, src source, palette []color.NRGBA, top Topping, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	mmW, mmH := src.size()
	w, h, over := pixels(mmW, pxPerMM), pixels(mmH, pxPerMM), top.high(pxPerMM)
	img, err := canvas(w, h+over)
	if err != nil {
		return nil, err
	}
	finish.FlatTop = finish.FlatTop || over > 0
	if err := top.paint(ctx, part(img, image.Rect(0, 0, w, over)), finish); err != nil {
		return nil, err
	}
	return img, paint(ctx, src, palette, part(img, image.Rect(0, over, w, h+over)), finish, &Picture{})
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
	PxPerMM float64 // resolution, above 0 to 1000
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
	if !(c.BarMM > 0) || !(c.PxPerMM > 0 && c.PxPerMM <= maxPxPerMM) || !(c.GapMM >= 0) {
		return nil, fmt.Errorf("drawing a contact sheet: bars of %g mm at %g pixels per mm with gaps of %g mm: use positive sizes and at most %d pixels per mm",
			c.BarMM, c.PxPerMM, c.GapMM, maxPxPerMM)
	}
	bars := s.Bars(c.BarMM)
	if c.Columns < 1 {
		c.Columns = max(1, int(math.Ceil(math.Sqrt(float64(bars)*1.6))))
	}
	c.Columns = min(c.Columns, bars)
	gap, over := pixels(c.GapMM+0.01, c.PxPerMM), c.Top.high(c.PxPerMM)
	w, h := pixels(s.recipe.Box.W, c.PxPerMM), pixels(s.recipe.Box.H, c.PxPerMM)+over
	rows := (bars + c.Columns - 1) / c.Columns
	wide, high := gap+c.Columns*(w+gap), gap+rows*(h+gap)
	strips, err := s.strips(ctx, palette, c, wide-2*gap)
	if err != nil {
		return nil, err
	}
	for _, strip := range strips {
		high += strip.Bounds().Dy() + gap
	}
	img, err := canvas(wide, high)
	if err != nil {
		return nil, fmt.Errorf("drawing a contact sheet: use fewer pixels per mm or thicker bars: %w", err)
	}
	fillWith(img, c.Finish.Ground)
	if err := s.bars(ctx, img, palette, c, bars, image.Pt(w, h), gap); err != nil {
		return nil, err
	}
	at := image.Pt(gap, gap+rows*(h+gap))
	for _, strip := range strips {
		draw.Draw(img, strip.Bounds().Add(at), strip, image.Point{}, draw.Over)
		at.Y += strip.Bounds().Dy() + gap
	}
	return img, nil
}

// maxPxPerMM bounds the resolution of a contact sheet; the size of the whole picture is bounded as well.
const maxPxPerMM = 1000

// bars draws every bar in its place. The icing is drawn once and stands on all of them.
func (s *Swirl) bars(ctx context.Context, img *image.NRGBA, palette []color.NRGBA, c Sheet, n int, size image.Point, gap int) error {
	over := c.Top.high(c.PxPerMM)
	place := func(k int) image.Rectangle {
		at := image.Pt(gap+k%c.Columns*(size.X+gap), gap+k/c.Columns*(size.Y+gap))
		return image.Rectangle{at, at.Add(size)}
	}
	icing := func(k int) *image.NRGBA {
		r := place(k)
		return part(img, image.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y+over))
	}
	if err := c.Top.paint(ctx, icing(0), c.Finish); err != nil {
		return err
	}
	finish, pic := c.Finish, Picture{}
	finish.FlatTop = finish.FlatTop || over > 0
	for k := range n {
		r := place(k)
		r.Min.Y += over
		if err := paint(ctx, s.Face(float64(k)*c.BarMM), palette, part(img, r), finish, &pic); err != nil {
			return fmt.Errorf("bar %d: %w", k+1, err)
		}
		if first := icing(0); k > 0 && over > 0 {
			draw.Draw(img, icing(k).Rect, first, first.Rect.Min, draw.Src)
			finish.tell(size.X * over)
		}
	}
	return nil
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
