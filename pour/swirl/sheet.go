package swirl

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"

	"pourbench/pour/relief"
)

// Topping is what is on a loaf and the sRGB colours of it, the icing's portions first. The zero Topping is nothing.
type Topping struct {
	Stands  *relief.Field // icing, embeds and what is strewn; nil: nothing
	Above   *relief.Field // all of it, to be seen from above; nil: bare
	Palette []color.NRGBA
}

// RenderBar draws the face of a bar that reaches from there to a place along the loaf, mm, at pxPerMM with its topping standing on it; a zero
// Topping is none.
func RenderBar(ctx context.Context, f *Face, to float64, palette []color.NRGBA, top Topping, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	return topped(ctx, f, palette, top, top.face(f, to), pxPerMM, finish)
}

// face is how what stands on a bar is seen from its face; nil where nothing does.
func (t Topping) face(f *Face, to float64) *relief.View {
	if t.Stands == nil {
		return nil
	}
	return t.Stands.Face(f.at, to)
}

// cut is how what stands on a loaf is seen from a cut along it; nil where nothing does.
func (t Topping) cut(l *Long) *relief.View {
	switch {
	case t.Stands == nil:
		return nil
	case l.top:
		return t.Stands.Level(l.s.recipe.Box.H-l.at).Part(l.from, l.from+l.long)
	}
	return t.Stands.Side(l.at).Part(l.from, l.from+l.long)
}

// RenderLoaf draws a cut along the loaf at pxPerMM; an upright one has the topping standing on it as it is seen from the side.
func RenderLoaf(ctx context.Context, l *Long, palette []color.NRGBA, top Topping, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	if l.top {
		return topped(ctx, l, palette, Topping{Palette: top.Palette}, top.cut(l), pxPerMM, finish)
	}
	return topped(ctx, l, palette, top, top.cut(l), pxPerMM, finish)
}

// high is how many pixels the topping stands over the bar; none: 0.
func (t Topping) high(pxPerMM float64) int {
	if peak := t.PeakMM(); peak > 0 {
		return pixels(peak, pxPerMM)
	}
	return 0
}

// PeakMM is how high it all stands above the bar, mm.
func (t Topping) PeakMM() float64 {
	if t.Stands == nil {
		return 0
	}
	return t.Stands.PeakMM()
}

// clear makes the room above a bar ground, on which the topping is laid. It stops early with ctx's error.
func (f Finish) clear(ctx context.Context, img *image.NRGBA) error {
	fillWith(img, f.Ground)
	for range img.Rect.Dy() {
		if err := ctx.Err(); err != nil {
			return fmt.Errorf("drawing what stands on the loaf: %w", err)
		}
		f.tell(img.Rect.Dx())
	}
	return nil
}

// topped draws a source with its topping standing on it.
func topped(ctx context.Context, src source, palette []color.NRGBA, top Topping, v *relief.View, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	mmW, mmH := src.size()
	w, h, over := pixels(mmW, pxPerMM), pixels(mmH, pxPerMM), top.high(pxPerMM)
	img, err := canvas(w, h+over)
	if err != nil {
		return nil, err
	}
	finish.FlatTop = finish.FlatTop || over > 0
	if err := finish.clear(ctx, part(img, image.Rect(0, 0, w, over))); err != nil {
		return nil, err
	}
	if err := paint(ctx, src, palette, part(img, image.Rect(0, over, w, h+over)), finish, &Picture{}); err != nil || v == nil {
		return img, err
	}
	finish.Material.CutMM = src.place()
	return img, top.lay(ctx, under(v, over, h, mmH), img, finish, mmW/float64(w), over)
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
	Bars    []Bar     // every bar shows its first cut side
	Columns int       // bars in a row; 0 chooses
	PxPerMM float64   // resolution, above 0 to 1000
	GapMM   float64   // between pictures
	Strip   bool      // adds the lengthwise cut and the view from above below the bars
	Stands  bool      // adds the loaf from above as it stands before the cut
	Cuts    []float64 // marked on that, mm from the marked end
	Top     Topping   // on every bar
	Finish  Finish
}

// Even is a loaf cut into whole bars of a thickness, mm; none where that is nothing, and one where the loaf is shorter.
func Even(lengthMM, barMM float64) []Bar {
	if !(barMM > 0) {
		return nil
	}
	out := make([]Bar, max(1, int(lengthMM/barMM+1e-6)))
	for k := range out {
		out[k] = Bar{float64(k) * barMM, float64(k+1) * barMM}
	}
	return out
}

// Contact draws every bar of the batch as on a contact sheet, the first bar upper left.
func (s *Swirl) Contact(ctx context.Context, palette []color.NRGBA, c Sheet) (*image.NRGBA, error) {
	bars := len(c.Bars)
	if bars == 0 || !(c.PxPerMM > 0 && c.PxPerMM <= maxPxPerMM) || !(c.GapMM >= 0) {
		return nil, fmt.Errorf("drawing a contact sheet: %d bars at %g pixels per mm with gaps of %g mm: use one bar or more, positive sizes and at most %d pixels per mm",
			bars, c.PxPerMM, c.GapMM, maxPxPerMM)
	}
	if c.Columns < 1 {
		c.Columns = max(1, int(math.Ceil(math.Sqrt(float64(bars)*1.6))))
	}
	c.Columns = min(c.Columns, bars)
	gap, over := pixels(c.GapMM+0.01, c.PxPerMM), c.Top.high(c.PxPerMM)
	wide1, high1 := s.recipe.FaceMM()
	w, h := pixels(wide1, c.PxPerMM), pixels(high1, c.PxPerMM)+over
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
	if err := s.bars(ctx, img, palette, c, image.Pt(w, h), gap); err != nil {
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

// bars draws every bar in its place.
func (s *Swirl) bars(ctx context.Context, img *image.NRGBA, palette []color.NRGBA, c Sheet, size image.Point, gap int) error {
	wide1, _ := s.recipe.FaceMM()
	over := c.Top.high(c.PxPerMM)
	place := func(k int) image.Rectangle {
		at := image.Pt(gap+k%c.Columns*(size.X+gap), gap+k/c.Columns*(size.Y+gap))
		return image.Rectangle{at, at.Add(size)}
	}
	finish, pic := c.Finish, Picture{}
	finish.FlatTop = finish.FlatTop || over > 0
	for k, bar := range c.Bars {
		all := place(k)
		r := all
		r.Min.Y += over
		if err := finish.clear(ctx, part(img, image.Rect(all.Min.X, all.Min.Y, all.Max.X, r.Min.Y))); err != nil {
			return fmt.Errorf("bar %d: %w", k+1, err)
		}
		face := s.Face(bar.From)
		var side source = face
		if s.recipe.Round {
			side = s.Top(bar.From)
		}
		if err := paint(ctx, side, palette, part(img, r), finish, &pic); err != nil {
			return fmt.Errorf("bar %d: %w", k+1, err)
		}
		if v := c.Top.face(face, bar.To); v != nil {
			finish.Material.CutMM = side.place()
			if err := c.Top.lay(ctx, under(v, over, r.Dy(), s.recipe.Box.H), part(img, all), finish, wide1/float64(size.X), over); err != nil {
				return fmt.Errorf("bar %d: %w", k+1, err)
			}
		}
	}
	return nil
}

// strips draws the cut down the middle of the loaf under its topping and the planed loaf from above, both wide pixels; none where the sheet
// asks for none.
func (s *Swirl) strips(ctx context.Context, palette []color.NRGBA, c Sheet, wide int) ([]*image.NRGBA, error) {
	box := s.recipe.Box
	var out []*image.NRGBA
	if c.Stands {
		strip, err := RenderAbove(ctx, s, palette, c.Top, c.Cuts, float64(wide)/box.L, c.Finish)
		if err != nil {
			return nil, err
		}
		out = append(out, strip)
	}
	if !c.Strip {
		return out, nil
	}
	for _, cut := range [2]*Long{s.Lengthwise(box.W / 2), s.Skim()} {
		strip, err := RenderLoaf(ctx, cut, palette, c.Top, float64(wide)/box.L, c.Finish)
		if err != nil {
			return nil, err
		}
		out = append(out, strip)
	}
	return out, nil
}
