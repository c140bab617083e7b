package swirl

import "math"

// hands is how a wire as long as the loaf is led by its two ends, each by a hand of its own, and how it bends in between: the path of the one is
// that of its stroke. The zero value is a wire both of whose ends go the same way.
type hands struct {
	far  []vec2  // mm, where the other end is at each knot
	bend []vec2  // mm, how far the middle of the loaf is from halfway between: it comes after
	long float64 // mm, from hand to hand
}

// How the ends of a wire differ: by eye, no source.
const (
	handAside = 0.22 // of the way across from turn to turn: so much further or less far one end turns than the other
	handShort = 0.65 // and what part of how far it goes up and down is its own
	wireLagMM = 4    // of its way that the middle of a wire comes after its ends, in thin batter
	wireLagIn = 8    // and in thick
)

// at is where a wire is at a place along the loaf when the hand at its marked end is at the place p of knot i.
func (h *hands) at(i int, p vec2, x float64) vec2 {
	if h.long == 0 {
		return p
	}
	t := clamp(x/h.long, 0, 1)
	q, b, sag := h.far[i], h.bend[i], 4*t*(1-t)
	return vec2{p.y + t*(q.y-p.y) + sag*b.y, p.z + t*(q.z-p.z) + sag*b.z}
}

// lead leads a stroke's two ends along two paths that have as many knots: it resamples both where halfway between them the knots are equally far
// apart, and lets the middle of the wire come after by lag mm of its way.
func (s *stroke) lead(near, far []vec2, long, lag float64) {
	mean := make([]vec2, len(near))
	for i := range near {
		mean[i] = vec2{0.5 * (near[i].y + far[i].y), 0.5 * (near[i].z + far[i].z)}
	}
	at := even(mean, s.stride())
	s.path, s.hands = places(near, at), hands{far: places(far, at), bend: places(mean, at), long: long}
	behind := s.hands.bend[0]
	last := behind
	for i, p := range s.hands.bend {
		part := math.Exp(-math.Hypot(p.y-last.y, p.z-last.z) / lag)
		last = p
		behind = vec2{p.y + part*(behind.y-p.y), p.z + part*(behind.z-p.z)}
		s.hands.bend[i] = vec2{behind.y - p.y, behind.z - p.z}
	}
}

// drawBetween adds the stroke of a wire whose ends go along two dense paths with as many knots.
func (b *builder) drawBetween(s *stroke, near, far []vec2) {
	s.width, s.level = b.Box.W, b.level
	s.lead(near, far, b.Box.L, b.thick(wireLagMM, wireLagIn))
	b.add(op{stroke: s})
}

// otherHand is where the hand at the other end of a wire turns on its way down and up: as often, and each time a little aside and more or less far.
func (b *builder) otherHand(ends []vec2) []vec2 {
	middle, far := b.way()
	aside := handAside * math.Abs(ends[len(ends)-1].y-ends[0].y) / float64(len(ends)-1)
	other := make([]vec2, len(ends))
	for i, e := range ends {
		own := middle + math.Copysign(far*(1-turnsShort*b.d.Float()*b.d.Float()), e.z-middle)
		y := clamp(e.y+b.d.Between(-aside, aside), wireMarginMM, b.Box.W-wireMarginMM)
		other[i] = vec2{y, e.z + handShort*(own-e.z)}
	}
	return other
}
