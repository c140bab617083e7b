package swirl

// op is one move of the pour: exactly one of its pointers is set.
type op struct {
	act    int // the act of the script it belongs to
	slab   *slab
	stroke *stroke
	wave   *wave
	comb   *comb
	spread *spread
	whirl  *whirl
	gyre   *gyre
	plume  *plume
	border *border
	scrape *scrape
	wakes  *wakes
}

type vec3 struct{ x, y, z float64 }

// slab is batter levelled from one height to the next; what it is made of is its filling.
type slab struct {
	bottom, top float64
	fill        filling
	pile        *pile // it lies here thicker and there thinner along the loaf; nil: all along between bottom and top
}

// floor is how high the slab's bottom is at a place along the loaf, mm.
func (s *slab) floor(x float64) float64 {
	if s.pile == nil {
		return s.bottom
	}
	bottom, _ := s.pile.between(x)
	return bottom
}

// filling splits a slab between portions exactly by their shares. A label of [Empty] is a place nothing was poured into yet.
type filling interface {
	label(x, y, z float64) int
}

// growing is a filling that several acts pour, one beside the other.
type growing interface {
	filling
	// upto returns the filling as it is after the first n acts of the script.
	upto(n int) filling
}

// upto is the slab after the first n acts of the script.
func (s *slab) upto(n int) *slab {
	g, ok := s.fill.(growing)
	if !ok {
		return s
	}
	return &slab{bottom: s.bottom, top: s.top, fill: g.upto(n)}
}

// backwards undoes a move at one point; a slab leaves the point where it is.
func (o op) backwards(p vec3) vec3 { return o.move(p, -1) }

// forwards repeats a move at one point.
func (o op) forwards(p vec3) vec3 { return o.move(p, 1) }

func (o op) move(p vec3, dir float64) vec3 {
	switch {
	case o.stroke != nil:
		p.y, p.z = o.stroke.move(p.x, p.y, p.z, dir)
	case o.wave != nil:
		p.y, p.z = o.wave.move(p.x, p.y, p.z, dir)
	case o.comb != nil:
		p.x, p.y = o.comb.move(p.x, p.y, p.z, dir)
	case o.whirl != nil:
		p.y, p.z = o.whirl.move(p.x, p.y, p.z, dir)
	case o.gyre != nil:
		p.y, p.z = o.gyre.move(p.x, p.y, p.z, dir)
	case o.plume != nil:
		p.y, p.z = o.plume.move(p.x, p.y, p.z, dir)
	case o.border != nil:
		p.y, p.z = o.border.move(p.x, p.y, p.z, dir)
	case o.wakes != nil:
		p.x, p.y = o.wakes.move(p.x, p.y, p.z, dir)
	case o.scrape != nil:
		p.y, p.z = o.scrape.move(p.x, p.y, p.z, dir)
	case o.spread != nil:
		p.y, p.z = o.spread.move(p.x, p.y, p.z, dir)
	}
	return p
}
