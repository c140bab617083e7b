package colour

// whiteHides is the scattering with which one percent of a white hides the colour of the oils, where the batter has 1. Fitted by eye to two
// colours, no source: a cream batter comes out as #f6f3ea with 0.5 % of titanium white and about #f8f5ee with 1 %. It is far more than what
// titanium white adds to a mixture of colours (see Scatter), whose measured minimum is shallow: the colour of the oils lies in the clear soap
// around every grain, that of a colourant in grains of its own.
const whiteHides = 10.0

// NewWhite returns the stain of a white pigment from the colour of a cream batter (see PlainBatter) that holds midPercent of it, over 0 to
// 30 %. The cream comes out in exactly that colour at that dose, little by little up to it and whiter beyond. It takes tens of microseconds;
// keep the result.
func NewWhite(atMid RGB, midPercent float64) (Stain, error) {
	mid, err := atMiddle(atMid, midPercent)
	if err != nil {
		return Stain{}, err
	}
	cream, err := ParseHex(PlainBatter)
	if err != nil {
		return Stain{}, err
	}
	plain, err := NewPaint(cream, 0)
	if err != nil {
		return Stain{}, err
	}
	s := Stain{Hides: whiteHides}
	for i, q := range mid.Ratio {
		s.Hides = max(s.Hides, (plain.Ratio[i]/q-1)/midPercent) // a whiter white hides more, or its own colour would be out of its reach
	}
	for i, q := range mid.Ratio {
		s.Absorbs[i] = max(0, q*(s.Hides+1/midPercent)-plain.Ratio[i]/midPercent)
	}
	return s, nil
}

// whitened is the plain batter with the whites among the stains: each is a paint of its own that is mixed in by its scattering.
func whitened(plain Paint, stains []Stain, percents []float64) Paint {
	hides := 1.0
	for k := range stains {
		if s := &stains[k]; s.Hides > 0 {
			hides += s.Hides * percents[k]
			for i, q := range s.Absorbs {
				plain.Ratio[i] += q * percents[k]
			}
		}
	}
	for i := range plain.Ratio {
		plain.Ratio[i] /= hides
	}
	return plain
}
