package swirl

import "math"

// bleeding lets each portion run a little into its neighbour: a pixel near a border shows the mean of what lies round it. Averaged as light,
// not as paint: paint mixed pixel by pixel draws dark outlines.
type bleeding struct {
	pic  *Picture
	ink  *inks
	rim  [bleedLooks][2]int // far enough to find a border
	ring [2 * bleedLooks][2]int
	on   bool
}

const bleedLooks = 8

// newBleeding makes ready for pixels of px mm; a bleed finer than a pixel shows nothing.
func newBleeding(pic *Picture, ink *inks, bleedMM, px float64) *bleeding {
	b := &bleeding{pic: pic, ink: ink}
	reach := bleedMM / 2 / px
	if b.on = reach >= 0.6; !b.on {
		return b
	}
	at := func(r, a float64) [2]int {
		return [2]int{int(math.Round(r * math.Cos(a))), int(math.Round(r * math.Sin(a)))}
	}
	for k := range bleedLooks {
		a := 2 * math.Pi * float64(k) / bleedLooks
		b.rim[k] = at(reach, a)
		b.ring[2*k], b.ring[2*k+1] = at(0.85*reach, a), at(0.45*reach, a+math.Pi/bleedLooks)
	}
	return b
}

// at is the colour of a pixel that has a portion.
func (b *bleeding) at(i, j int) light {
	px := &b.pic.Pixels[j*b.pic.W+i]
	if !b.on {
		return b.ink.mix(px)
	}
	border := px.Part[0] != 255
	for _, o := range b.rim {
		q := b.near(i+o[0], j+o[1])
		border = border || q.Portion[0] != px.Portion[0]
	}
	if !border {
		return b.ink.light[px.Portion[0]%MaxPortions]
	}
	sum, n := b.ink.mix(px), float32(1)
	for _, o := range b.ring {
		if q := b.near(i+o[0], j+o[1]); q.Part[0] != 0 {
			v := b.ink.mix(q)
			sum.r, sum.g, sum.b, n = sum.r+v.r, sum.g+v.g, sum.b+v.b, n+1
		}
	}
	return sum.scaled(1 / n)
}

// near is a pixel, or the nearest inside the picture.
func (b *bleeding) near(i, j int) *Pixel {
	return &b.pic.Pixels[max(0, min(j, b.pic.H-1))*b.pic.W+max(0, min(i, b.pic.W-1))]
}
