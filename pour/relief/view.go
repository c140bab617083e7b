package relief

import (
	"context"
	"image"
)

// View is one way of looking at a field.
type View struct {
	f     *Field
	above bool
	side  bool    // across the loaf, from the wall on the right
	at    float64 // where it is looked from
	end   float64 // how far one sees
	from  float64 // the stretch of the width, or of the length, that is drawn
	wide  float64
	deep  float64 // mm, the picture's height
	peak  float64 // of that, above the base; 0 from above
	level bool    // a level cut at that height
}

// Above is the loaf from above, end A at the left and the wall that is at the left seen from there at the top.
func (f *Field) Above() *View { return &View{f: f, above: true, wide: f.recipe.L, deep: f.recipe.W} }

// Face is what stands on a bar between two places along the loaf, seen from its side towards end A: as wide as the loaf, and as high as the base and
// what stands on it.
func (f *Field) Face(from, to float64) *View {
	return &View{f: f, at: from, end: to, wide: f.recipe.W, deep: f.recipe.H + f.peak, peak: f.peak}
}

// Side is what stands on the loaf beyond a cut along it so far across, seen from that cut; end A is at the left.
func (f *Field) Side(y float64) *View {
	return &View{f: f, side: true, at: y, wide: f.recipe.L, deep: f.recipe.H + f.peak, peak: f.peak}
}

// Part is the stretch of the view between two places, mm from its left edge.
func (v *View) Part(from, to float64) *View {
	part := *v
	part.from = min(max(from, 0), v.wide)
	part.wide = min(max(to, part.from), v.wide) - part.from
	return &part
}

// SizeMM is what the view shows, mm.
func (v *View) SizeMM() (w, h float64) { return v.wide, v.deep }

// PeakMM is how much of that is above the base; 0 from above.
func (v *View) PeakMM() float64 { return v.peak }

// Under is the view with so much room above the base, mm.
func (v *View) Under(peak float64) *View {
	roomy := *v
	if !v.above && !v.level {
		roomy.peak, roomy.deep = peak, v.f.recipe.H+peak
	}
	return &roomy
}

// Level is what a level cut so far below the top of the base shows of the pieces, from above, turned as [Field.Above] is.
func (f *Field) Level(below float64) *View {
	return &View{f: f, level: true, at: -below, wide: f.recipe.L, deep: f.recipe.W}
}

// Draw draws a part of the view, of which the whole is w by h pixels. It stops early with ctx's error.
func (v *View) Draw(ctx context.Context, dst *Picture, w, h int, part image.Rectangle) error {
	dst.Reset(part.Dx(), part.Dy())
	if v.above {
		return v.gaze(ctx, dst, w, h, part)
	}
	if v.level {
		return v.slice(ctx, dst, w, h, part.Min)
	}
	c := v.column(w, h, part)
	for i := range dst.W {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		c.draw(dst, i)
	}
	return nil
}

// gaze draws a part from above.
func (v *View) gaze(ctx context.Context, dst *Picture, w, h int, part image.Rectangle) error {
	g := &gaze{v: v, px: v.wide / float64(w), py: v.deep / float64(h)}
	if dst.W == 0 || dst.H == 0 || v.f.peak == 0 {
		return ctx.Err()
	}
	g.t = v.terrain(g.px, g.py, part)
	for j := range dst.H {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		for i := range dst.W {
			dst.Dots[j*dst.W+i] = g.pixel(v.from+(float64(part.Min.X+i)+0.5)*g.px, (float64(part.Min.Y+j)+0.5)*g.py)
		}
	}
	return nil
}

// slice draws a level cut.
func (v *View) slice(ctx context.Context, dst *Picture, w, h int, at image.Point) error {
	px, py := v.wide/float64(w), v.deep/float64(h)
	for j := range dst.H {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		for i := range dst.W {
			var l looks
			for k := range 4 {
				x := v.from + (float64(at.X+i)+0.25+0.5*float64(k%2))*px
				y := (float64(at.Y+j) + 0.25 + 0.5*float64(k/2)) * py
				if s := v.f.inside(x, y, v.at); s != nil {
					l.cutThrough(s.Stuff, s.section(x, y, v.at))
				} else {
					l.miss(0)
				}
			}
			dst.Dots[j*dst.W+i] = l.dot()
		}
	}
	return nil
}

// inside is the piece at a place in the base; nil where there is none.
func (f *Field) inside(x, y, z float64) *solid {
	for i := range f.pieces {
		if s := &f.pieces[i]; s.near(x, y) && s.has(x, y, z) {
			return s
		}
	}
	return nil
}

// sun is where the light comes from, in the directions of a picture: to the right, up, and towards who looks.
func sun() vector { return vector{-0.42, 0.62, 0.66}.unit() }

// lit is how bright a skin is that faces a way, in the directions of a picture, against one that faces a usual way.
func lit(n, usual vector) float64 {
	const shade = 0.42 // what is not lit still shows so much
	l := sun()
	shine := func(n vector) float64 { return shade + (1-shade)*max(0, n.dot(l)) }
	return min(1.3, shine(n)/shine(usual))
}
