package swirl

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"math"
)

// Finish is how a picture of a bar is made to look like soap; the zero value is a bare picture.
type Finish struct {
	Ground   color.NRGBA // around the bar; the zero value is clear
	CornerMM float64     // radius of the rounded corners
	EdgeMM   float64     // the rim within which the face darkens, and is rounded
	Darken   float64     // how much it darkens at the edge, 0 to 0.5: by as much again on the fine line where it ends
	Bevel    float64     // how much of the lamp's light a rim turned fully to it has more, or turned away less, 0 to 1
	Falloff  float64     // by how much the lamp's light falls off from one corner of the face to the other, 0 to 1
	FlatTop  bool        // the upper corners stay square and the upper edge is none, as under an icing
	Material Material    // what the surface shows beside its colours
	Told     func(n int) // is told that n more pixels are drawn, from several goroutines at once; nil: nobody is
}

// tell tells that n more pixels are drawn.
func (f Finish) tell(n int) {
	if f.Told != nil {
		f.Told(n)
	}
}

// Soap is the finish of a cut and planed bar: figures by eye.
func Soap() Finish {
	return Finish{CornerMM: 4, EdgeMM: 1.5, Darken: 0.05, Bevel: 0.3, Falloff: 0.12, Material: Planed()}
}

// Bare is the finish of a picture in flat colours: without what the surface of soap shows, nor the lamp.
func (f Finish) Bare() Finish {
	f.Bevel, f.Falloff, f.Material = 0, 0, Material{}
	return f
}

// Fresh is the finish of a surface no blade went over, which stands in its mould: it has no rounded rim, but lies in the shade of the wall.
func (f Finish) Fresh() Finish {
	f.Bevel, f.Material = 0, f.Material.Fresh()
	return f
}

const maxPixels = 128 << 20 // an image larger than this is refused before memory is asked for

// source is a face or a cut along the loaf.
type source interface {
	refine(ctx context.Context, dst *Picture, w, h int, tell func(n int)) error
	size() (w, h float64)
	place() float64 // mm, which cut it is
}

func (f *Face) size() (w, h float64) { return f.box.W, f.box.H }
func (l *Long) size() (w, h float64) { return l.long, l.deep }

func (f *Face) place() float64 { return f.at }
func (l *Long) place() float64 { return l.at + l.from }

// Render draws a bar's face w by h pixels in full quality. The palette holds the sRGB colour of each portion. It
// refuses sizes below 1 or above 128 million pixels and stops early with ctx's error.
func Render(ctx context.Context, f *Face, palette []color.NRGBA, w, h int, finish Finish) (*image.NRGBA, error) {
	return render(ctx, f, palette, w, h, finish)
}

// RenderLong is [Render] for a cut along the loaf.
func RenderLong(ctx context.Context, l *Long, palette []color.NRGBA, w, h int, finish Finish) (*image.NRGBA, error) {
	return render(ctx, l, palette, w, h, finish)
}

func render(ctx context.Context, s source, palette []color.NRGBA, w, h int, finish Finish) (*image.NRGBA, error) {
	img, err := canvas(w, h)
	if err != nil {
		return nil, err
	}
	if err := paint(ctx, s, palette, img, finish, &Picture{}); err != nil {
		return nil, err
	}
	return img, nil
}

// canvas is an empty image.
func canvas(w, h int) (*image.NRGBA, error) {
	if w < 1 || h < 1 || w > maxPixels/h {
		return nil, fmt.Errorf("drawing a picture of %d by %d pixels: use at least 1 by 1 and at most %d pixels in all", w, h, maxPixels)
	}
	return image.NewNRGBA(image.Rect(0, 0, w, h)), nil
}

// part is a rectangle of an image, sharing its pixels.
func part(img *image.NRGBA, r image.Rectangle) *image.NRGBA {
	r = r.Intersect(img.Rect)
	if r.Empty() {
		return &image.NRGBA{}
	}
	return &image.NRGBA{Pix: img.Pix[img.PixOffset(r.Min.X, r.Min.Y):], Stride: img.Stride, Rect: r}
}

// paint draws a source over the whole of img, by way of pic, whose memory it uses.
func paint(ctx context.Context, s source, palette []color.NRGBA, img *image.NRGBA, finish Finish, pic *Picture) error {
	b := img.Bounds()
	if err := s.refine(ctx, pic, b.Dx(), b.Dy(), finish.tell); err != nil {
		return fmt.Errorf("drawing a picture of %d by %d pixels: %w", b.Dx(), b.Dy(), err)
	}
	mmW, mmH := s.size()
	return pic.Finish(ctx, palette, img, finish, mmW, mmH)
}

// Finish draws a picture that was traced before over img, from its upper left corner, as what it shows looks in soap: mmW by mmH of it. A cut is planed, a
// top that is no cut is lit by its slopes.
// Both must be of one size. It stops early with ctx's error.
func (p *Picture) Finish(ctx context.Context, palette []color.NRGBA, img *image.NRGBA, finish Finish, mmW, mmH float64) error {
	top, ok := p.cut.(*Long)
	fresh := ok && top.fresh
	if fresh {
		finish = finish.Fresh()
	}
	if p.cut != nil {
		finish.Material.CutMM = p.cut.place()
	}
	p.brush(ctx, newPainter(p, palette, finish, mmW, mmH), img)
	if fresh && ctx.Err() == nil {
		top.emboss(img, p, finish.Material)
	}
	return ctx.Err()
}

// brush paints every pixel.
func (p *Picture) brush(ctx context.Context, brush *painter, img *image.NRGBA) {
	b := img.Bounds()
	Share(p.H, func(j int) bool {
		row := img.Pix[img.PixOffset(b.Min.X, b.Min.Y+j):]
		for i := range p.W {
			c := brush.pixel(i, j)
			row[4*i], row[4*i+1], row[4*i+2], row[4*i+3] = c.R, c.G, c.B, c.A
		}
		return ctx.Err() == nil
	})
}

type painter struct {
	Finish
	bleed    *bleeding
	planed   *planing
	pic      *Picture
	curve    []uint8
	mmW, mmH float64
}

func newPainter(p *Picture, palette []color.NRGBA, finish Finish, mmW, mmH float64) *painter {
	planed := finish.Material.planing(mmW / float64(max(p.W, 1)))
	return &painter{
		Finish: finish, pic: p, curve: curve(), mmW: mmW, mmH: mmH,
		planed: planed, bleed: newBleeding(p, newInks(palette, finish.Ground), planed),
	}
}

// pixel colours one pixel: bleed, edge darkening and material in linear light, corners over the ground.
func (p *painter) pixel(i, j int) color.NRGBA {
	px := &p.pic.Pixels[j*p.pic.W+i]
	if px.Part[0] == 0 {
		return p.Ground
	}
	scale := p.mmW / float64(p.pic.W)
	x, y := (float64(i)+0.5)*scale, (float64(j)+0.5)*p.mmH/float64(p.pic.H)
	inside := p.inside(x, y)
	cover := clamp(inside/scale+0.5, 0, 1)
	if cover == 0 {
		return p.Ground
	}
	c := p.bleed.at(i, j)
	if p.EdgeMM > 0 && inside < p.EdgeMM {
		e := 1 - max(0, inside)/p.EdgeMM
		c = c.scaled(float32(1 - p.Darken*(e*e+e*e*e*e*e*e*e*e))) // soft, and a fine line where it ends, so that white soap has an edge on white
	}
	c = c.scaled(p.lamp(x, y))
	if p.Material.Veins > 0 {
		c = p.bleed.ink.dyed(c, px.Portion[0], float32(p.Material.Veins)*p.pic.veins.at(i, j, px.Portion[0]))
	}
	return p.over(p.planed.over(c, px.Portion[0], x, y), cover)
}

// over lays a colour over the ground.
func (p *painter) over(c light, cover float64) color.NRGBA {
	out := color.NRGBA{p.curved(c.r), p.curved(c.g), p.curved(c.b), 255}
	if cover >= 1 {
		return out
	}
	if p.Ground.A == 0 {
		out.A = uint8(255*cover + 0.5)
		return out
	}
	g, k := decode(p.Ground), float32(cover)
	mix := light{c.r*k + g.r*(1-k), c.g*k + g.g*(1-k), c.b*k + g.b*(1-k)}
	return mix.encode()
}

// inside is how far a point lies inside the rounded outline, mm; negative outside.
func (p *painter) inside(x, y float64) float64 {
	r := min(p.CornerMM, p.mmW/2, p.mmH/2)
	e, f := min(x, p.mmW-x), min(y, p.mmH-y)
	if e < r && f < r && (!p.FlatTop || y > p.mmH/2) {
		return r - math.Hypot(r-e, r-f)
	}
	return min(e, f)
}

const curveKnots = 4096

// curve is the sRGB curve as a table over linear light.
func curve() []uint8 {
	table := make([]uint8, curveKnots+1)
	for i := range table {
		table[i] = encode(float32(i) / curveKnots)
	}
	return table
}

func (p *painter) curved(v float32) uint8 {
	if v < 0.02 { // steep here: the table would show
		return encode(v)
	}
	return p.curve[min(int(v*curveKnots+0.5), curveKnots)]
}
