package swirl

import (
	"context"
	"image"
	"image/color"
	"math"

	"pourbench/pour/relief"
)

// dressing lays what stands on a loaf over a finished picture of it, and finishes that as well: what was cut shows the material of soap and runs a
// little into its neighbour, and an edge before nothing has a line and a breath of shadow, so that white icing shows on white paper.
type dressing struct {
	finish Finish
	stuffs *Stuffs
	planed *planing
	img    *image.NRGBA
	px     float64 // mm
	crown  int     // rows of pixels above the base
	kind   []uint8 // what shows in a pixel: base, skin, nothing, or the stuff that was cut and one
}

// What shows in a pixel; the lesser numbers are stuffs that were cut, and one.
const (
	showsBase    = 0
	showsSkin    = 254
	showsNothing = 255
)

// The edge of what stands before nothing, by eye, no source.
const (
	lineMM     = 0.9  // wide, inside the edge
	lineDark   = 0.26 // how much darker at the edge itself
	breathMM   = 1.3  // of shadow outside it
	breathDark = 0.38
	breathOff  = 0.35 // of its width it lies to the right and down, away from the light
)

func newDressing(img *image.NRGBA, stuffs *Stuffs, f Finish, px float64, crown int) *dressing {
	return &dressing{
		finish: f, stuffs: stuffs, planed: f.Material.planing(px), img: img, px: px, crown: crown, kind: make([]uint8, img.Rect.Dx()*img.Rect.Dy()),
	}
}

// Dress lays a whole picture of what stands on a loaf over img, which shows the loaf in pixels of px mm below so many rows above it. It stops early
// with ctx's error.
func Dress(ctx context.Context, img *image.NRGBA, p *relief.Picture, stuffs *Stuffs, f Finish, px float64, crown int) error {
	d := newDressing(img, stuffs, f, px, crown)
	d.lay(p, image.Point{})
	return d.edge(ctx)
}

// lay lays a part of a picture at a place over the image.
func (d *dressing) lay(p *relief.Picture, at image.Point) {
	b := d.img.Rect
	for j := range p.H {
		y := at.Y + j
		row := d.img.Pix[d.img.PixOffset(b.Min.X+at.X, b.Min.Y+y):]
		for i := range p.W {
			dot := p.Dots[j*p.W+i]
			d.kind[y*b.Dx()+at.X+i] = d.shows(dot, y)
			if dot.Part[0] == 0 && dot.Shade == 0 {
				continue
			}
			px := row[4*i : 4*i+4]
			c := color.NRGBA{px[0], px[1], px[2], px[3]}
			if dot.Cut < half {
				c = d.stuffs.Over(c, dot)
			} else {
				c = d.cut(c, dot, at.X+i, y)
			}
			px[0], px[1], px[2], px[3] = c.R, c.G, c.B, c.A
		}
	}
}

// half is half of what a part may be.
const half = 128

// shows is what shows in a pixel.
func (d *dressing) shows(dot relief.Dot, y int) uint8 {
	switch covered := int(dot.Part[0]) + int(dot.Part[1]); {
	case covered < half && y < d.crown:
		return showsNothing
	case covered < half:
		return showsBase
	case dot.Cut < half:
		return showsSkin
	}
	return min(dot.Stuff[0], relief.MostStuffs) + 1
}

// cut is a dot where it was cut, over what lies behind it: of the same material as the base, and with the air a bag presses out with it.
func (d *dressing) cut(behind color.NRGBA, dot relief.Dot, i, j int) color.NRGBA {
	l, alpha := d.stuffs.over(behind, dot)
	x, y := (float64(i)+0.5)*d.px, (float64(j-d.crown)+0.5)*d.px
	if dark := 1 - float32(dot.Bright)/relief.Lit; dark > 0 {
		l.r, l.b = l.r*(1+glowRed*dark), l.b*(1-glowBlue*dark)
	}
	c := d.planed.over(l, showsSkin, x, y).scaled(1 - d.planed.froth(x, y)).encode()
	c.A = alpha
	return c
}

// Light goes into cut icing and comes out warmer where it is darker: how much more red that has and how much less blue. By eye, no source.
const (
	glowRed  = 0.06
	glowBlue = 0.12
)

// touch is a pixel that changes.
type touch struct {
	at int // byte
	c  color.NRGBA
}

// edge runs what was cut into its neighbour and draws the edge before nothing. Every pixel is worked out from the picture as it was before.
func (d *dressing) edge(ctx context.Context) error {
	h := d.img.Rect.Dy()
	s := d.spots()
	touched := make([][]touch, h)
	Share(h, func(j int) bool {
		touched[j] = s.row(j)
		return ctx.Err() == nil
	})
	for _, row := range touched {
		for _, t := range row {
			p := d.img.Pix[t.at : t.at+4]
			p[0], p[1], p[2], p[3] = t.c.R, t.c.G, t.c.B, t.c.A
		}
	}
	return ctx.Err()
}

// spots is where about a pixel is looked, in pixels.
type spots struct {
	*dressing
	bleed, line, breath []image.Point // empty: finer than a pixel
	rim                 []image.Point // as far as any of them
}

func (d *dressing) spots() *spots {
	s := &spots{dressing: d}
	s.bleed = disc(d.finish.Material.BleedMM/2/d.px, 0, 20)
	if d.crown > 0 {
		s.line = disc(lineMM/d.px, 0, 40)
		s.breath = disc(breathMM/d.px, -breathOff*breathMM/d.px, 80)
	}
	for _, r := range [3][]image.Point{s.breath, s.line, s.bleed} {
		s.rim = append(s.rim, r[max(0, len(r)-10):]...)
	}
	return s
}

// disc is n places spread evenly over a disc by the golden angle, its rim last, and moved along both ways; none for one finer than a pixel.
func disc(reach, off float64, n int) (out []image.Point) {
	if reach < 0.6 {
		return nil
	}
	for k := range n {
		r := reach * math.Sqrt((float64(k)+0.5)/float64(n))
		sin, cos := math.Sincos(float64(k) * math.Pi * (3 - math.Sqrt(5)))
		out = append(out, image.Pt(int(math.Round(off+r*cos)), int(math.Round(off+r*sin))))
	}
	return out
}

// of is what shows in a pixel, or in the nearest inside the picture.
func (d *dressing) of(i, j int) uint8 {
	w := d.img.Rect.Dx()
	return d.kind[max(0, min(j, d.img.Rect.Dy()-1))*w+max(0, min(i, w-1))]
}

// row is what changes in a row.
func (s *spots) row(j int) (out []touch) {
	for i := range s.img.Rect.Dx() {
		own := s.of(i, j)
		same := true
		for _, o := range s.rim {
			if same = s.of(i+o.X, j+o.Y) == own; !same {
				break
			}
		}
		if same {
			continue
		}
		at := s.img.PixOffset(s.img.Rect.Min.X+i, s.img.Rect.Min.Y+j)
		p := s.img.Pix[at : at+4]
		was := color.NRGBA{p[0], p[1], p[2], p[3]}
		if c := s.pixel(i, j, own, was); c != was {
			out = append(out, touch{at, c})
		}
	}
	return out
}

// pixel is one whose neighbours are not all as it is.
func (s *spots) pixel(i, j int, own uint8, c color.NRGBA) color.NRGBA {
	if own == showsNothing {
		return shadowed(c, breathDark*s.part(s.breath, i, j, false))
	}
	if own != showsSkin {
		c = s.run(i, j, own, c)
	}
	if f := s.part(s.line, i, j, true); f > 0 {
		l := decode(c).scaled(float32(1 - lineDark*f)).encode()
		l.A = c.A
		return l
	}
	return c
}

// part is how much of what is looked at about a pixel is nothing, or is not.
func (s *spots) part(looks []image.Point, i, j int, nothing bool) float64 {
	n := 0
	for _, o := range looks {
		if (s.of(i+o.X, j+o.Y) == showsNothing) == nothing {
			n++
		}
	}
	return float64(n) / float64(max(1, len(looks)))
}

// run is the mean of what was cut about a pixel that was cut, where not all of it is of one stuff.
func (s *spots) run(i, j int, own uint8, c color.NRGBA) color.NRGBA {
	sum, n, border := decode(c), float32(1), false
	for _, o := range s.bleed {
		k := s.of(i+o.X, j+o.Y)
		if k >= showsSkin {
			continue
		}
		border = border || k != own
		v := decode(s.img.NRGBAAt(s.img.Rect.Min.X+max(0, min(i+o.X, s.img.Rect.Dx()-1)), s.img.Rect.Min.Y+max(0, min(j+o.Y, s.img.Rect.Dy()-1))))
		sum.r, sum.g, sum.b, n = sum.r+v.r, sum.g+v.g, sum.b+v.b, n+1
	}
	if !border {
		return c
	}
	out := sum.scaled(1 / n).encode()
	out.A = c.A
	return out
}

// shadowed is a place of the ground in so much shadow; a clear one gets it as a veil.
func shadowed(c color.NRGBA, dark float64) color.NRGBA {
	a := float64(c.A) / 255
	alpha := a + (1-a)*dark
	if alpha <= 0 {
		return c
	}
	keep := a * (1 - dark) / alpha // of an edge that covers half of a pixel the half behind it is in shadow
	if a < 1 {
		keep = a / alpha
	}
	dim := func(v uint8) uint8 { return uint8(float64(v)*keep + 0.5) }
	return color.NRGBA{dim(c.R), dim(c.G), dim(c.B), uint8(255*alpha + 0.5)}
}
