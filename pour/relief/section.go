package relief

import "math"

// How a wire leaves the edge of what it cuts, by eye, no source.
const (
	smearMM    = 1.2  // so far behind the edge ridges are smeared
	smearOver  = 0.5  // mm, over which the edge itself is
	smearWide  = 1.9  // mm, half of how wide a crease is that is drawn shut
	smearShuts = 0.94 // to so much of its sides' height
	smearRises = 1    // how steeply what is behind rises over the edge, mm to the mm
)

// smear evens the edge of icing that the plane cuts: a wire draws the ridges of the nozzle flat.
func (c *column) smear(s *spot, x, y float64) {
	if s.form == nil || s.grain != nil {
		return
	}
	if piece, ok := c.v.f.covered(x, y); ok && piece >= s.z {
		return
	}
	thick := s.z - s.floor
	at := func(off float64) float64 {
		if c.v.side {
			return s.form.evened(thick, x+off, y)
		}
		return s.form.evened(thick, x, y+off)
	}
	even := (2*at(0) + at(-smearOver) + at(smearOver)) / 4
	s.z = s.floor + max(even, smearShuts*min(at(-smearWide), at(smearWide)))
}

// overhung is how bright what lies under an edge that hangs over the base is, against its skin. By eye, no source.
const overhung = 0.72

// section shows the icing that the plane cuts: what lies inside it, down into the base or up to where its edge hangs over.
func (c *column) section(seen []look, s *spot, x, y float64, from int) {
	if s.form == nil {
		return
	}
	steep := c.steep(x, y)
	for j := from; j < c.below(min(s.floor, 0)); j++ {
		if up := c.up(j); up < s.floor {
			seen[j].bright *= overhung
		} else {
			stuff, bright := s.inside(c.v.f, x, y, up)
			seen[j] = look{stuff: stuff, ok: true, cut: true, bright: bright * turnsAway((s.z-up)/steep)}
		}
	}
}

// mostSteep is how steep an edge is taken for at the most: a wire draws narrow creases shut. By eye, no source.
const mostSteep = 2

// steep is how much longer the surface is than level where the plane cuts it.
func (c *column) steep(x, y float64) float64 {
	const d = 0.4
	dx, dy := 0., d
	if c.v.side {
		dx, dy = d, 0
	}
	return min(mostSteep, math.Hypot(1, (c.v.f.firm(x+dx, y+dy).z-c.v.f.firm(x-dx, y-dy).z)/(2*d)))
}

// turnsAway is how bright a cut is so far inside its edge, where a wire rounds it: by eye, no source.
func turnsAway(inside float64) float32 {
	const rim, dark = 1.8, 0.2 // mm
	if inside >= rim {
		return 1
	}
	e := 1 - max(0, inside)/rim
	return float32(1 - dark*e*e)
}
