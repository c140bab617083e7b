package picture

import (
	"image/color"

	"pourbench/pour/swirl"
)

// label finds out which portion of the icing shows in each pixel. An icing paints colours, not portions, so it is painted with pure
// channels, three portions at a time.
func (p *Plate) label(t *tile, w int) {
	n := len(p.Shot.Icing.Shares)
	t.labels.Reset(w, t.crown-t.bare)
	best := make([]uint8, len(t.labels.Pixels))
	palette := make([]color.NRGBA, n)
	var seen []color.NRGBA
	for first := 0; first < n; first += 3 {
		for i := range palette {
			palette[i] = pure(i - first)
		}
		seen = t.icing.Paint(palette, color.NRGBA{}, w, t.crown-t.bare, seen)
		for i, c := range seen {
			if c.A < half {
				continue
			}
			for k, v := range [3]uint8{c.R, c.G, c.B} {
				if v > best[i] {
					best[i] = v
					t.labels.Pixels[i] = swirl.Pixel{Portion: [3]uint8{uint8(first + k)}, Part: [3]uint8{255}}
				}
			}
		}
	}
}

// half is the alpha of a pixel that is half covered.
const half = 128

// pure is the colour of one channel: 0 red, 1 green, 2 blue; any other place is black.
func pure(channel int) color.NRGBA {
	c := color.NRGBA{A: 255}
	switch channel {
	case 0:
		c.R = 255
	case 1:
		c.G = 255
	case 2:
		c.B = 255
	}
	return c
}
