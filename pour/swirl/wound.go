package swirl

import "math"

// Loops and spirals, which wind the batter up: by eye, no source.
const (
	loopTurn   = 1.1 * math.Pi // how far the batter in the middle of a loop turns with the wire, radians
	loopPart   = 1.4           // how large what turns is against the loop
	loopSlips = 0.9
	spiralPart = 0.42          // what part of the wire's turns the batter in the middle of a spiral makes: the rest slips by
	leastRound = 0.6           // of half the mould: how far about it the first round of a spiral takes batter along
	roundGrows = 0.6           // and so much further the last
	roundSlips = 1.2           // of its grip that the wire loses here and there in a round and on its way out: where it is over 1 it slips through
)

// loops leads the wire in a row of rounds, over or under, each of which takes what is inside it along and drags at what lies about it.
func (b *builder) loops() {
	middle, far := b.way()
	turns := max(1, math.Round(b.Turns))
	pitch := (b.Box.W - 2*wireMarginMM) / turns
	over, from := b.d.Sign(), b.d.Sign()
	path := make([]vec2, 0, pathKnots+8)
	each := max(8, pathKnots/int(turns))
	y := wireMarginMM + b.d.Between(0.1, 0.3)*pitch
	for range int(turns) {
		next, high, wide := y+pitch*b.d.Between(0.8, 1.15), far*b.d.Between(0.55, 0.85), min(pitch*b.d.Between(0.35, 0.6), far)
		at := vec2{y + 0.5*(next-y), middle + b.d.Between(-1, 1)*(far-high)}
		for k := range each {
			t := float64(k) / float64(each)
			sin, cos := math.Sincos(2 * math.Pi * t)
			path = append(path, vec2{clamp(y+t*(next-y)+over*wide*sin, wireMarginMM, b.Box.W-wireMarginMM), at.z + high*cos})
		}
		y = next
		if from < 0 {
			at.y = b.Box.W - at.y
		}
		angle := -from * over * loopTurn * b.d.Between(0.6, 1.2) * b.thick(1.1, 0.85)
		b.takeAlong(at, vec2{loopPart * wide, loopPart * high}, angle, b.d.wobble(1, 0.2))
	}
	y = min(y, b.Box.W-wireMarginMM)
	top := b.Box.H + wireOutMM
	path = append([]vec2{{path[0].y, top}}, append(path, vec2{y, top})...)
	if from < 0 {
		mirror(path, b.Box.W)
	}
	b.wire(path, clamp(0.42*pitch, 5, 13), loopSlips)
}

// spiral leads the wire round and round from the middle out, which winds the batter up, then back across what is wound and up out of the
// mould. Every round takes along what lies within it and drags at what lies outside, so that the middle goes round with all of them.
func (b *builder) spiral() {
	rounds := max(1, math.Round(b.Turns))
	dir := b.d.Sign()
	angle := dir * 2 * math.Pi * b.Turns / rounds * spiralPart * b.thick(1, 0.8)
	middle, _ := b.way()
	eye := vec2{b.Box.W * b.d.Between(0.4, 0.6), b.Box.H * b.d.Between(0.4, 0.55)}
	start := b.d.Between(0, 2*math.Pi)
	shift, sink, waver := b.d.wobble(0, 0.09*b.Box.W), b.d.wobble(0, 0.09*b.Box.H), b.d.waver(wireWavers*b.Box.H, 1)
	for i := range int(rounds) {
		t := float64(i+1) / rounds
		mid := vec2{eye.y + t*(b.Box.W/2-eye.y), eye.z + t*(middle-eye.z)}
		reach := 0.5 * (leastRound + roundGrows*t)
		g := b.takeAlong(mid, vec2{reach * b.Box.W, reach * b.Box.H}, angle*(0.7+0.6*t)*b.d.Between(0.8, 1.2), b.d.wobble(1, 0.14))
		g.shift, g.sink = shift, sink
		b.linger(mid, vec2{0.5 * t * b.Box.W, 0.5 * t * b.Box.H}, dir)
		if (int(rounds)-1-i)%2 == 0 { // each costs time in every picture
			s := b.led(clamp(0.1*b.Box.H, 4, 10), b.thick(0.65, 0.78))
			s.pivot, s.shift, s.waver, s.lean = mid, shift, waver, b.d.wobble(0, 0.1)
			s.slip = b.d.waver(roundSlips, slipsATurn)
			b.draw(&s, b.oneRound(mid, t, 1/rounds, start, dir))
		}
	}
	b.wire(b.wayBack(), min(6, b.Box.H/9), roundSlips)
}

// linger lets the batter go round somewhere between the middle of a round and its outside, where the hand slowed down: no arm is evenly wide.
func (b *builder) linger(mid, half vec2, dir float64) {
	sin, cos := math.Sincos(b.d.Between(0, 2*math.Pi))
	size := b.d.Between(0.45, 0.8)
	b.takeAlong(vec2{mid.y + 0.6*half.y*cos, mid.z + 0.6*half.z*sin}, vec2{size * half.y, size * half.z}, dir*b.d.Between(0.6, 1.6), b.d.wobble(0.7, 0.5))
}

// oneRound is the wire's way once about a place, ever further out by a part, up to a size where 1 is as far as the mould lets it.
func (b *builder) oneRound(mid vec2, size, part, start, dir float64) []vec2 {
	_, far := b.way()
	wide := b.Box.W/2 - wireMarginMM
	bulge := b.d.Between(0, 2*math.Pi)
	path := make([]vec2, 0, pathKnots+1)
	for k := range pathKnots + 1 {
		t := float64(k) / pathKnots
		sin, cos := math.Sincos(start + dir*2*math.Pi*t)
		r := (size - (1-t)*part) * (1 + 0.08*math.Sin(4*math.Pi*t+bulge)) // the hand draws no true round
		path = append(path, vec2{mid.y + r*wide*cos, mid.z + r*far*sin})
	}
	return path
}

// wayBack is the wire's way from the outside of a spiral past its middle and out through the surface.
func (b *builder) wayBack() []vec2 {
	half := vec2{0.45 * b.Box.W, 0.45 * b.Box.H}
	side := b.d.Sign()
	sin, cos := math.Sincos(b.d.Between(0.1, 0.9))
	from := vec2{b.Box.W/2 + side*0.75*half.y*cos, b.Box.H/2 - 0.75*half.z*sin}
	past := vec2{b.Box.W/2 + side*b.d.Between(0.2, 0.45)*half.y, b.Box.H/2 + b.d.Between(-0.1, 0.2)*half.z}
	out := vec2{b.Box.W/2 - side*b.d.Between(-0.5, 0.7)*half.y, b.Box.H + wireOutMM}
	path := make([]vec2, 0, pathKnots+1)
	for i := range pathKnots + 1 { // a quadratic bend through three places
		t := float64(i) / pathKnots
		p, q, r := (1-t)*(1-t), 2*t*(1-t), t*t
		path = append(path, vec2{p*from.y + q*past.y + r*out.y, p*from.z + q*past.z + r*out.z})
	}
	return path
}
