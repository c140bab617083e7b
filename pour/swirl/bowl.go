package swirl

import "math"

// bowl is how the sheets of a ribbon lie that was poured along one line and went down there as more followed: one in the other, the first lowest and
// out to the rims, the last in the middle on top. None is cut off below, and from above the lip is seen there and back.
type bowl struct {
	eye   wobble // where across the ribbon the last lies
	curls *curls // of the batter after
}

// nested carries the unit square onto itself: side is the rank of the bowl up·p(across) a place lies in, when its part of that bowl; p is a parabola to
// either side of the eye, 1 there and 0 at the rims. Both follow from that density (the transform of a joint distribution onto the square after
// Rosenblatt, 1952): with w = √(1-c) a part 1 - w + c·artanh w lies in bowls below c.
func (b *bowl) nested(x, across, up float64) (side, when float64) {
	if b.curls != nil {
		across, up = b.turned(x, across, up)
	}
	eye := clamp(b.eye.at(x), leastEye, 1-leastEye)
	wide := eye
	if across > eye {
		wide = 1 - eye
	}
	t := math.Abs(across-eye) / wide
	c := clamp(up*(1-t*t), leastBowl, 1-leastBowl)
	w := math.Sqrt(1 - c)
	all := math.Atanh(w)
	part := min(1, math.Atanh(min(t, w))/all)
	if across > eye {
		return 1 - w + c*all, eye + wide*part
	}
	return 1 - w + c*all, wide * (1 - part)
}

// turned is the curls' turning.
func (b *bowl) turned(x, across, up float64) (float64, float64) {
	when, side := b.curls.curled(x, across, up)
	return when, side
}
