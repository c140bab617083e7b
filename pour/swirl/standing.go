package swirl

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"math"

	"pourbench/pour/relief"
)

// Bar is one bar of the loaf: the stretch between its two cut sides, mm from the loaf's marked end. Its face is the side at From.
type Bar struct{ From, To float64 }

// Stuffs is the colours of what stands on a loaf, ready to be laid over a picture.
type Stuffs struct {
	light []light
	seen  [256]float32 // linear light of an sRGB byte
}

// NewStuffs takes one sRGB colour for each stuff; dots of others are left out.
func NewStuffs(palette []color.NRGBA) *Stuffs {
	s := &Stuffs{light: make([]light, len(palette))}
	for i, c := range palette {
		s.light[i] = decode(c)
	}
	for i := range s.seen {
		s.seen[i] = linear(uint8(i))
	}
	return s
}

// Over lays a dot over the colour of what lies behind it, averaging in linear light.
func (s *Stuffs) Over(behind color.NRGBA, d relief.Dot) color.NRGBA {
	if d.Part[0] == 0 && d.Shade == 0 {
		return behind
	}
	l, alpha := s.over(behind, d)
	if alpha == 0 {
		return behind
	}
	c := l.encode()
	c.A = alpha
	return c
}

// over is [Stuffs.Over] in linear light, and how much of the pixel it covers.
func (s *Stuffs) over(behind color.NRGBA, d relief.Dot) (light, uint8) {
	var sum light
	covered := float32(0)
	for k, part := range d.Part {
		if part == 0 || int(d.Stuff[k]) >= len(s.light) {
			continue
		}
		v := lit(s.light[d.Stuff[k]], float32(d.Bright)/relief.Lit).scaled(float32(part) / 255)
		sum.r, sum.g, sum.b = sum.r+v.r, sum.g+v.g, sum.b+v.b
		covered += float32(part) / 255
	}
	rest := (1 - covered) * float32(behind.A) / 255
	v := light{s.seen[behind.R], s.seen[behind.G], s.seen[behind.B]}.scaled(rest * (1 - float32(d.Shade)/255))
	alpha := covered + rest
	if alpha <= 0 {
		return light{}, 0
	}
	return light{(sum.r + v.r) / alpha, (sum.g + v.g) / alpha, (sum.b + v.b) / alpha}, uint8(255*min(1, alpha) + 0.5)
}

// How soap takes light, by eye, no source.
const (
	warmth = 0.1  // how much less red light a shadow lacks, and how much more blue: light that goes through soap comes out warmer
	satin  = 0.75 // the part of what is more than all of its light that is a mirrored window, and so white
)

// lit is a colour so bright.
func lit(c light, bright float32) light {
	if over := bright - 1; over >= 0 {
		white := satin * over * 0.6
		own := 1 + (1-satin)*over
		return light{c.r*own + white, c.g*own + white, c.b*own + white}
	}
	dark := warmth * (1 - bright) * bright
	return light{c.r * (bright + dark), c.g * (bright + 0.3*dark), c.b * (bright - dark)}
}

// stripPixels is how many columns or rows of a view are drawn at once.
const stripPixels = 64

// lay draws a view over the whole of img, whose pixels are px mm wide and which has so many rows above the base.
func (t Topping) lay(ctx context.Context, v *relief.View, img *image.NRGBA, f Finish, px float64, crown int) error {
	b := img.Bounds()
	d := newDressing(img, NewStuffs(t.Palette), f, px, crown)
	strips := (b.Dx() + stripPixels - 1) / stripPixels
	Share(strips, func(k int) bool {
		var p relief.Picture
		at := image.Rect(k*stripPixels, 0, min((k+1)*stripPixels, b.Dx()), b.Dy())
		if v.Draw(ctx, &p, b.Dx(), b.Dy(), at) != nil {
			return false
		}
		d.lay(&p, at.Min)
		return true
	})
	if err := d.edge(ctx); err != nil {
		return fmt.Errorf("drawing what stands on the loaf, %d by %d pixels: %w", b.Dx(), b.Dy(), err)
	}
	return nil
}

// under gives a view the room above the base that it has in a picture of so many pixels, over of them above the base, whose base is so high.
func under(v *relief.View, over, h int, baseMM float64) *relief.View {
	return v.Under(float64(over) * baseMM / float64(max(h, 1)))
}

// Above is the surface from above as the loaf stands, end A at the left and the wall at the left seen from there at the top.
func (s *Swirl) Above() *Long {
	l := s.Top(s.recipe.Box.H)
	l.turned, l.fresh = true, true
	return l
}

// cutLine is how a cut is drawn on the loaf from above.
const (
	cutLineMM   = 0.5
	cutDashMM   = 3.2
	cutLineDark = 0.55
)

// RenderAbove draws the loaf from above as it stands before the cut, at pxPerMM: what stands on it on the surface of the batter, and a line for every
// cut, mm from the marked end.
func RenderAbove(ctx context.Context, s *Swirl, palette []color.NRGBA, top Topping, cuts []float64, pxPerMM float64, finish Finish) (*image.NRGBA, error) {
	box := s.recipe.Box
	img, err := canvas(pixels(box.L, pxPerMM), pixels(box.W, pxPerMM))
	if err != nil {
		return nil, err
	}
	if err := paint(ctx, s.Above(), palette, img, finish, &Picture{}); err != nil {
		return nil, err
	}
	if top.Above != nil {
		if err := top.lay(ctx, top.Above.Above(), img, finish, 1/pxPerMM, 0); err != nil {
			return nil, err
		}
	}
	MarkCuts(img, cuts, pxPerMM)
	return img, nil
}

// MarkCuts draws a broken line across a picture of the loaf from above for every cut, mm from its marked end.
func MarkCuts(img *image.NRGBA, cuts []float64, pxPerMM float64) {
	for _, at := range cuts {
		cutLine(img, at*pxPerMM, pxPerMM)
	}
}

// cutLine darkens a broken line across a picture.
func cutLine(img *image.NRGBA, at, pxPerMM float64) {
	b := img.Bounds()
	wide := max(1, int(math.Round(cutLineMM*pxPerMM)))
	from := int(math.Round(at - float64(wide)/2))
	for j := range b.Dy() {
		dash := int(float64(j)/pxPerMM/cutDashMM)%3 < 2
		for i := max(from, 0); i < min(from+wide, b.Dx()); i++ {
			c := img.NRGBAAt(b.Min.X+i, b.Min.Y+j)
			if dash {
				c = notched(c)
			}
			img.SetNRGBA(b.Min.X+i, b.Min.Y+j, c)
		}
	}
}

// notched is a colour where a cut is marked on it: darker, or lighter where it is dark itself.
func notched(c color.NRGBA) color.NRGBA {
	const dark = 70
	if max(c.R, c.G, c.B) < dark {
		lift := func(v uint8) uint8 { return uint8(float64(v) + cutLineDark*(255-float64(v))) }
		return color.NRGBA{lift(c.R), lift(c.G), lift(c.B), c.A}
	}
	drop := func(v uint8) uint8 { return uint8(float64(v) * (1 - cutLineDark)) }
	return color.NRGBA{drop(c.R), drop(c.G), drop(c.B), c.A}
}
