package relief

import "math"

// What a cut through icing shows beside its rounds, by eye, no source.
const (
	rimLeast   = 1.4   // mm, how far in the rim is darker where that is narrow
	rimMore    = 1.7   // and how much further where it is wide
	rimDark    = 0.26  // how much darker it is at the edge: there it turns away and light goes through to the dark behind
	rimStepMM  = 0.4   // between the heights its distance is taken from
	cloudTone  = 0.028 // how unevenly bright the cut is as a whole, to each side: whipped icing is never of one tone
	cloudMM    = 4.6   // and over so far
	smearShade = 0.9   // how bright the smeared edge is just behind the cut
)

// brink is the edge of a cut about one column of a picture.
type brink struct {
	across, top float64 // of the column, mm
	from, step  float64 // across, of the first height and on to the next
	heights     []float64
}

// brink is the edge about a place whose own smeared height is known.
func (c *column) brink(across, top float64) brink {
	const reach = rimLeast + rimMore
	step := max(rimStepMM, c.px/2)
	first := int(math.Ceil((across - reach) / step))
	last := int(math.Floor((across + reach) / step))
	if c.edge == nil {
		c.edge = map[int]float64{}
	}
	r := brink{across: across, top: top, from: float64(first) * step, step: step, heights: c.heights[:0]}
	for k := first; k <= last; k++ {
		z, ok := c.edge[k]
		if !ok {
			x, y := c.v.place(float64(k)*step, 0)
			s := c.v.f.firm(x, y)
			c.smear(&s, x, y)
			z = s.z
			c.edge[k] = z
		}
		r.heights = append(r.heights, z)
	}
	c.heights = r.heights
	return r
}

// inside is how far inside the edge a height of the column lies, mm, or a reach of the rim where it is further.
func (r *brink) inside(up float64) float64 {
	const reach = rimLeast + rimMore
	least := min(squared(max(0, r.top-up)), reach*reach)
	for k, z := range r.heights {
		off := r.from + float64(k)*r.step - r.across
		down := max(0, z-up)
		least = min(least, off*off+down*down)
	}
	return math.Sqrt(least)
}

// shade is how bright a cut is at a height for the rim it lies in and for its clouds.
func (r *brink) shade(up float64) float64 {
	a, b := r.across/cloudMM, up/cloudMM
	cloud := 0.5*math.Sin(1.3*a+0.8*b+1.5*math.Sin(0.7*b-0.4*a)) + 0.5*math.Sin(2.1*b-1.7*a+1.2*math.Sin(1.1*a))
	bright := 1 + cloudTone*cloud
	in := r.inside(up)
	if in >= rimLeast+rimMore {
		return bright
	}
	wide := rimLeast + rimMore*(0.5+0.5*math.Sin(r.across/5.3+up/3.7+1.1*math.Sin(r.across/3.1)))
	e := max(0, 1-in/wide)
	return bright * (1 - rimDark*e*math.Sqrt(e))
}

// smeared is how bright a skin is so close behind the plane: its edge was smeared by the wire, and goes over into the cut without a line.
func smeared(bright, far float64) float64 {
	if far >= smearMM {
		return bright
	}
	return smearShade + (bright-smearShade)*smooth(far/smearMM)
}
