package shape

// Mass is how heavy a stretch is from end A up to a place, in g: the integral of everything that lies along it, rising with the place.
type Mass func(x float64) float64

// Uniform is a stretch that is so heavy on every millimetre, with features that make their own length heavier or lighter, evenly over it.
func Uniform(perMM float64, features []Feature) Mass {
	return func(x float64) float64 {
		g := perMM * x
		for _, f := range features {
			switch {
			case x >= f.To:
				g += f.Mass
			case x > f.From:
				g += f.Mass * (x - f.From) / (f.To - f.From)
			}
		}
		return g
	}
}

// halvings narrows a stretch of a metre down to 1e-9 mm and less.
const halvings = 50

// reach is the place at which a rising mass comes to g, between two places, by halving.
func (m Mass) reach(g, low, high float64) float64 {
	for range halvings {
		if mid := (low + high) / 2; m(mid) < g {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// EqualMass cuts a number of bars that weigh the same, with nothing left over beside the least trims: bars of a mass are laid end to end, each
// beginning behind the cut of the one before, and the mass is halved upon until the last ends where the room does. Derived.
func (s Stretch) EqualMass(bars int, m Mass) Cutting {
	if bars < 1 || s.room() <= float64(bars-1)*s.Kerf {
		return Cutting{}
	}
	from := 0.0
	if s.CutA {
		from += s.TrimA + s.Kerf
	}
	if s.Slice > 0 && !s.SliceAtB {
		from += s.Slice + s.Kerf
	}
	to := from + s.room()
	thickness := make([]float64, bars)
	lay := func(g float64) bool {
		at := from
		for i := range thickness {
			end := m.reach(m(at)+g, at, to)
			if i == bars-1 {
				return m(to)-m(at) < g
			}
			thickness[i] = end - at
			if at = end + s.Kerf; at >= to {
				return true
			}
		}
		return false
	}
	low, high := 0.0, m(to)-m(from)
	for range halvings {
		if mid := (low + high) / 2; lay(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	lay(low)
	rest := s.room() - float64(bars-1)*s.Kerf
	for _, t := range thickness[:bars-1] {
		rest -= t
	}
	thickness[bars-1] = rest
	return s.Lay(thickness)
}

// Weigh is the mass of a piece.
func (m Mass) Weigh(p Part) float64 { return m(p.To) - m(p.From) }
