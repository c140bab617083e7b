package swirl

import "math"

// bowl is how the sheets of a ribbon lie that was poured along one line: one in the other, the first out to the rims, the last in the middle of the
// opening. They lie on their side, open at the right, as more is pushed in over and under what lies there: open above, all their rims ended at the
// surface in rings cut through. None is cut off below.
type bowl struct {
	eye   float64 // where across the ribbon the last lies
	twice bool    // the lip lies there and back from rim to eye
	curls *curls  // of the batter after
}

// nested carries the unit square onto itself: side is the rank of the bowl √up·p(across) a place lies in, when its part of that bowl; p is a parabola to
// either side of the eye, 1 there and 0 at the rims. Both follow from that density (the transform of a joint distribution onto the square after
// Rosenblatt, 1952).
func (b *bowl) nested(x, across, up float64) (side, when float64) {
	if b.curls != nil {
		across, up = b.curls.curled(x, across, up) // on its side: across the bowl is up in the ribbon
	} else {
		across, up = up, across
	}
	wide := b.eye
	if across > b.eye {
		wide = 1 - b.eye
	}
	t := math.Abs(across-b.eye) / wide
	c := clamp(math.Sqrt(up)*(1-t*t), leastBowl, 1-leastBowl)
	w := math.Sqrt(1 - c)
	deep := along(w)
	side = 1 - w + c*c*deep
	if b.twice {
		side = there(side)
	}
	part := wide * min(1, along(t)/deep)
	if across > b.eye {
		return side, b.eye + part
	}
	return side, wide - part
}

// along is the integral of 1/(1-t²)² from the eye to t.
func along(t float64) float64 { return 0.5 * (t/(1-t*t) + math.Atanh(t)) }

// rankOf is what part of a ribbon lies in bowls below c, which come out at the surface at w = √(1-c): all beyond w and c²/(1-t²)² of it before.
func rankOf(c, w float64) float64 { return 1 - w + c*c*along(w) }

// shown is which place of the lip is seen from above a part of the way in from the rim of a bowl to its eye, 0 to 1, about where a lump of a soft rim
// holds it.
func shown(in float64) float64 {
	u := 1 - in
	q := u * u
	t := 15. / 8 * u * (1 - q*(2./3-q/5))
	c := clamp(1-t*t, leastBowl, 1-leastBowl)
	w := math.Sqrt(1 - c)
	return rankOf(c, w)
}
