package swirl

import (
	"image/color"
	"math"
)

// Picture is which portions each pixel shows, rows from the top. It knows no colours, so a new palette costs no new tracing.
type Picture struct {
	W, H   int
	Pixels []Pixel // row by row
	Plain  bool    // no veins are traced: it is shown as it is
	veins  *veins  // how unevenly colourant lies in it; nil: not at all
	cut    source  // what it was refined from: how it is finished depends on it; nil: nobody knows
}

// Pixel is the one to three portions that show most in a pixel, the greatest first, and their parts, which sum to 255.
// A part of 0 ends the list; a pixel with no parts lies above the batter.
type Pixel struct {
	Portion [3]uint8
	Part    [3]uint8
}

// Reset makes p a picture of w by h empty pixels, reusing its memory.
func (p *Picture) Reset(w, h int) {
	p.W, p.H, p.veins, p.cut = max(0, w), max(0, h), nil, nil
	n := p.W * p.H
	if cap(p.Pixels) < n {
		p.Pixels = make([]Pixel, n)
	}
	p.Pixels = p.Pixels[:n]
	clear(p.Pixels)
}

// Label returns the portion that shows most in a pixel, or [Empty]. The pixel must be inside the picture.
func (p *Picture) Label(x, y int) int {
	px := &p.Pixels[y*p.W+x]
	if px.Part[0] == 0 {
		return Empty
	}
	return int(px.Portion[0])
}

// Colour draws the picture with one colour for each portion, averaging in linear light; portions beyond the palette
// and empty pixels become ground. It reuses dst where that is large enough and returns it.
func (p *Picture) Colour(palette []color.NRGBA, ground color.NRGBA, dst []color.NRGBA) []color.NRGBA {
	if cap(dst) < len(p.Pixels) {
		dst = make([]color.NRGBA, len(p.Pixels))
	}
	dst = dst[:len(p.Pixels)]
	ink := newInks(palette, ground)
	for i := range p.Pixels {
		px := &p.Pixels[i]
		switch px.Part[0] {
		case 0:
			dst[i] = ground
		case 255:
			dst[i] = ink.solid[px.Portion[0]%MaxPortions]
		default:
			dst[i] = ink.mix(px).encode()
		}
	}
	return dst
}

// inks is a palette in linear light.
type inks struct {
	solid [MaxPortions]color.NRGBA
	light [MaxPortions]light
	depth [MaxPortions]light // the natural logarithm of the light
}

// cloud is what the batter itself takes of the light, in the same measure: the palest soap is clouded too. By eye, no source.
const cloud = 0.12

// leastLight keeps the depth of what is black finite.
const leastLight = 0.004

// dyed is a colour with a part more, or less, of a portion's colourant: what passes falls off with its amount as by the law of Beer and Lambert,
// light^(1+more), here to the second order.
func (k *inks) dyed(c light, portion uint8, more float32) light {
	d := &k.depth[portion%MaxPortions]
	r, g, b := more*d.r, more*d.g, more*d.b
	return light{c.r * (1 + r + r*r/2), c.g * (1 + g + g*g/2), c.b * (1 + b + b*b/2)}
}

func newInks(palette []color.NRGBA, ground color.NRGBA) *inks {
	k := &inks{}
	for i := range k.solid {
		k.solid[i] = ground
		if i < len(palette) {
			k.solid[i] = palette[i]
		}
		k.light[i] = decode(k.solid[i])
		deep := func(v float32) float32 { return float32(math.Log(float64(max(v, leastLight))) - cloud) }
		k.depth[i] = light{deep(k.light[i].r), deep(k.light[i].g), deep(k.light[i].b)}
	}
	return k
}

func (k *inks) mix(px *Pixel) (sum light) {
	if px.Part[0] == 255 {
		return k.light[px.Portion[0]%MaxPortions]
	}
	for i, part := range px.Part {
		c, f := &k.light[px.Portion[i]%MaxPortions], float32(part)/255
		sum.r += f * c.r
		sum.g += f * c.g
		sum.b += f * c.b
	}
	return sum
}

// tally counts samples of portions in a pixel.
type tally struct {
	portion [8]uint8
	count   [8]uint16
	n       int
}

func (t *tally) add(portion uint8, count uint16) {
	if portion == none {
		return
	}
	for i := range t.n {
		if t.portion[i] == portion {
			t.count[i] += count
			return
		}
	}
	if t.n < len(t.portion) {
		t.portion[t.n], t.count[t.n] = portion, count
		t.n++
	}
}

// pixel keeps the three greatest; equal counts keep the lower portion first, so that no order of sampling shows.
func (t *tally) pixel() (px Pixel) {
	var count [3]int
	total, kept := 0, 0
	for kept < 3 && kept < t.n {
		best := -1
		for i := range t.n {
			if t.count[i] == 0 {
				continue
			}
			if best < 0 || t.count[i] > t.count[best] || t.count[i] == t.count[best] && t.portion[i] < t.portion[best] {
				best = i
			}
		}
		if best < 0 {
			break
		}
		px.Portion[kept], count[kept] = t.portion[best], int(t.count[best])
		total += count[kept]
		t.count[best] = 0
		kept++
	}
	left := 255
	for i := 1; i < kept; i++ {
		px.Part[i] = uint8(255 * count[i] / total)
		left -= int(px.Part[i])
	}
	if kept > 0 {
		px.Part[0] = uint8(left)
	}
	return px
}
