package relief

// How a wire leaves the edge of what it cuts, by eye, no source.
const (
	smearMM    = 1.2  // so far behind the edge ridges are smeared
	smearOver  = 0.5  // mm, over which the edge itself is
	smearThorn = 0.1  // mm, that is left of a thorn thinner than that
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
	left, right := at(-smearOver), at(smearOver)
	even := min((2*at(0)+left+right)/4, max(left, right)+smearThorn)
	s.z = s.floor + max(even, smearShuts*min(at(-smearWide), at(smearWide)))
}

// overhung is how bright what lies under an edge that hangs over the base is, against its skin. By eye, no source.
const overhung = 0.72

// section shows the icing that the plane cuts: what lies inside it, down into the base or up to where its edge hangs over.
func (c *column) section(seen []look, s *spot, x, y float64, from int) {
	if s.form == nil {
		return
	}
	across := y
	if c.v.side {
		across = x
	}
	r := c.brink(across, s.z)
	for j := from; j < c.below(min(s.floor, 0)); j++ {
		if up := c.up(j); up < s.floor {
			seen[j].bright *= overhung
		} else {
			stuff, bright := s.inside(c.v.f, x, y, up, c.v.side)
			seen[j] = look{stuff: stuff, ok: true, cut: true, bright: bright * float32(r.shade(up))}
		}
	}
}
