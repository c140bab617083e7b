package swirl

// pile is one pour of a column where it lies: the place of its slab and of its spread.
type pile struct {
	of   *holds
	pour int // which
	done int // pours in all
}

// between is from where to where it lies at a place along the loaf, mm up.
func (p *pile) between(x float64) (bottom, top float64) {
	var room [64]float64
	e := p.of.edges(x, p.done, room[:0])
	return e[p.pour], e[p.pour+1]
}

// levelPiles levels a column of which not all is poured yet.
func (s *Swirl) levelPiles() {
	done := 0
	for i := range s.ops {
		if o := s.ops[i].slab; o != nil && o.pile != nil {
			done++
		}
	}
	for i := range s.ops {
		o := &s.ops[i]
		switch {
		case o.slab != nil && o.slab.pile != nil:
			part := *o.slab
			part.pile = &pile{part.pile.of, part.pile.pour, done}
			o.slab = &part
		case o.spread != nil && o.spread.pile != nil:
			part := *o.spread
			part.pile = &pile{part.pile.of, part.pile.pour, done}
			o.spread = &part
		}
	}
}

// here is a slab as it lies in the cross-section.
func (t *tracer) here(s *slab) *slab {
	if s.pile == nil {
		return s
	}
	bottom, top := t.between(s.pile)
	t.piled = append(t.piled, slab{bottom: bottom, top: top, fill: s.fill}) // it has room for all: no pointer into it is lost
	return &t.piled[len(t.piled)-1]
}

// spreadHere is a spread in the cross-section.
func (t *tracer) spreadHere(s *spread) levelled {
	if s.pile == nil {
		return s.at(t.x)
	}
	bottom, top := t.between(s.pile)
	return s.between(t.x, bottom, top)
}

// between is from where to where a pour of a column lies in the cross-section, mm up.
func (t *tracer) between(p *pile) (bottom, top float64) {
	if len(t.edges) == 0 {
		t.edges = p.of.edges(t.x, p.done, t.edges)
	}
	return t.edges[p.pour], t.edges[p.pour+1]
}
