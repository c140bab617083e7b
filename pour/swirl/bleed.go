package swirl

import "math"

// bleeding lets each portion run a little into its neighbour: a pixel near a border shows the mean of what lies round a place near it. Averaged as light,
// not as paint: paint mixed pixel by pixel draws dark outlines.
type bleeding struct {
	pic    *Picture
	ink    *inks
	edges  *edges // nil where pixels are too coarse
	border []bool // pixels a border is near enough to be seen in
	ring   [bleedLooks]vec2
}

const (
	bleedLooks = 20
	bleedRim   = 0.9 // of its reach: the light of half a disk
	leastBleed = 0.6 // pixels; less is not seen
)

// newBleeding makes ready for pixels of px mm; a bleed finer than a pixel shows nothing.
func newBleeding(pic *Picture, ink *inks, planed *planing) *bleeding {
	b := &bleeding{pic: pic, ink: ink}
	if planed.BleedMM/2/planed.px < leastBleed {
		return b
	}
	b.edges = newEdges(planed)
	for k := range b.ring { // as seeds lie in a sunflower's head (Vogel 1979): the disk evenly, no two at one distance, so that no rings show
		s, c := math.Sincos(math.Pi * (3 - math.Sqrt(5)) * float64(k))
		far := bleedRim * math.Sqrt((float64(k)+0.5)/bleedLooks)
		b.ring[k] = vec2{far * c, far * s}
	}
	b.border = pic.borders(b.edges.most())
	return b
}

// at is the colour of a pixel that has a portion.
func (b *bleeding) at(i, j int) light {
	px := &b.pic.Pixels[j*b.pic.W+i]
	if b.edges == nil || !b.border[j*b.pic.W+i] {
		return b.ink.mix(px)
	}
	x, y, reach := b.edges.at(float64(i), float64(j))
	var sum light
	n := float32(0)
	look := func(x, y float64) {
		if q := b.near(int(math.Round(x)), int(math.Round(y))); q.Part[0] != 0 {
			v := b.ink.mix(q)
			sum.r, sum.g, sum.b, n = sum.r+v.r, sum.g+v.g, sum.b+v.b, n+1
		}
	}
	look(x, y)
	for _, o := range b.ring {
		look(x+reach*o.y, y+reach*o.z)
	}
	if n == 0 { // all of it lies above the batter
		return b.ink.mix(px)
	}
	return sum.scaled(1 / n)
}

// near is a pixel, or the nearest inside the picture.
func (b *bleeding) near(i, j int) *Pixel {
	return &b.pic.Pixels[max(0, min(j, b.pic.H-1))*b.pic.W+max(0, min(i, b.pic.W-1))]
}

// borders tells which pixels lie within so many pixels, across or down, of one that shows another portion, or several.
func (p *Picture) borders(reach int) []bool {
	across, all := make([]bool, len(p.Pixels)), make([]bool, len(p.Pixels))
	Share(p.H, func(j int) bool {
		last := -reach - 1 // the last column with a border, or none near enough
		for i := range p.W {
			if p.bordered(i, j) {
				for k := max(0, last+1, i-reach); k < i; k++ {
					across[j*p.W+k] = true
				}
				last = i
			}
			across[j*p.W+i] = i-last <= reach
		}
		return true
	})
	Share(p.H, func(j int) bool {
		for k := max(0, j-reach); k <= min(j+reach, p.H-1); k++ {
			row := across[k*p.W : k*p.W+p.W]
			for i, is := range row {
				all[j*p.W+i] = all[j*p.W+i] || is
			}
		}
		return true
	})
	return all
}

// bordered tells whether a pixel shows several portions or another than the one beside it or below.
func (p *Picture) bordered(i, j int) bool {
	px := &p.Pixels[j*p.W+i]
	if px.Part[0] != 255 {
		return px.Part[0] != 0
	}
	other := func(q *Pixel) bool { return q.Part[0] != 0 && q.Portion[0] != px.Portion[0] }
	return i+1 < p.W && other(&p.Pixels[j*p.W+i+1]) || j+1 < p.H && other(&p.Pixels[j*p.W+p.W+i])
}
