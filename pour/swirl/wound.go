package swirl

import "math"

// Loops and spirals, which wind the batter up: by eye, no source.
const (
	loopTurn  = 1.1 * math.Pi // how far the batter inside a loop turns with the wire, radians
	loopPart  = 1.6           // how large that is against the loop
	whirlPart = 0.46          // what part of the wire's turns the batter in the middle of a spiral makes: the rest slips by
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
		next, high, wide := y+pitch*b.d.Between(0.8, 1.15), far*b.d.Between(0.55, 1), min(pitch*b.d.Between(0.5, 0.85), far)
		mid := middle + b.d.Between(-1, 1)*(far-high)
		b.windUp(vec2{y + 0.5*(next-y), mid}, vec2{wide, high}, -over, from)
		for k := range each {
			t := float64(k) / float64(each)
			sin, cos := math.Sincos(2 * math.Pi * t)
			path = append(path, vec2{y + t*(next-y) + over*wide*sin, mid + high*cos})
		}
		y = next
	}
	top := b.Box.H + wireOutMM
	path = append([]vec2{{path[0].y, top}}, append(path, vec2{y, top})...)
	if from < 0 {
		mirror(path, b.Box.W)
	}
	b.wire(path, clamp(0.3*pitch, 4, 8), 1.8)
}

// windUp turns what is inside a loop of a half width and height about its middle, and less and less what lies further out.
func (b *builder) windUp(at, loop vec2, dir, from float64) {
	if from < 0 {
		at.y, dir = b.Box.W-at.y, -dir
	}
	b.add(op{gyre: &gyre{
		at: at, half: vec2{loopPart * loop.y, loopPart * loop.z}, width: b.Box.W, height: b.Box.H,
		angle: dir * loopTurn * b.d.Between(0.6, 1.2) * b.thick(1.1, 0.85), gain: b.d.wobble(0.9, 0.35),
		shift: b.d.wobble(0, 0.07*b.Box.W), sink: b.d.wobble(0, 0.06*b.Box.H), swell: b.d.wobble(1, 0.2),
	}})
}

// spiral leads the wire round and round from the middle out, which winds the batter up, then back across what is wound and up out of the mould.
// Every round takes along what lies within it and drags at what lies outside, so that the middle goes round with all of them.
func (b *builder) spiral() {
	rounds := max(1, int(math.Round(b.Turns)))
	dir := b.d.Sign()
	each := dir * 2 * math.Pi * b.Turns / float64(rounds) * whirlPart * b.thick(1, 0.8)
	middle, far := b.way()
	eye := vec2{b.Box.W * b.d.Between(0.4, 0.6), b.Box.H * b.d.Between(0.4, 0.55)}
	start := b.d.Between(0, 2*math.Pi)
	shift, sink, waver := b.d.wobble(0, 0.07*b.Box.W), b.d.wobble(0, 0.05*b.Box.H), b.d.waver(3, 1)
	for i := range rounds {
		t := float64(i+1) / float64(rounds)
		reach := 0.6 + 0.6*t
		mid := vec2{eye.y + t*(b.Box.W/2-eye.y), eye.z + t*(middle-eye.z)}
		b.add(op{gyre: &gyre{
			at: mid, half: vec2{reach * b.Box.W / 2, reach * b.Box.H / 2}, width: b.Box.W, height: b.Box.H,
			angle: each * b.d.Between(0.8, 1.2), gain: b.d.wobble(1, 0.22),
			shift: shift, sink: sink, swell: b.d.wobble(1, 0.1),
		}})
		b.linger(mid, vec2{0.5 * t * b.Box.W, 0.5 * t * b.Box.H}, dir)
		s := b.round(mid, vec2{b.Box.W/2 - wireMarginMM, far}, t, float64(rounds), start, dir)
		s.shift, s.waver = shift, waver
	}
	b.wire(b.wayBack(vec2{0.45 * b.Box.W, 0.45 * b.Box.H}), min(7, b.Box.H/9), 1)
}

// linger lets the batter go round somewhere between the middle of a round and its outside, where the hand slowed down: no arm is evenly wide.
func (b *builder) linger(mid, half vec2, dir float64) {
	sin, cos := math.Sincos(b.d.Between(0, 2*math.Pi))
	size := b.d.Between(0.45, 0.8)
	b.add(op{gyre: &gyre{
		at: vec2{mid.y + 0.6*half.y*cos, mid.z + 0.6*half.z*sin}, half: vec2{size * half.y, size * half.z}, width: b.Box.W, height: b.Box.H,
		angle: dir * b.d.Between(0.6, 1.6), gain: b.d.wobble(0.6, 0.8),
		shift: b.d.wobble(0, 0.12*b.Box.W), sink: b.d.wobble(0, 0.1*b.Box.H), swell: b.d.wobble(1, 0.25),
	}})
}

// round leads the wire round once, ever further from the middle.
func (b *builder) round(mid, most vec2, size, rounds, start, dir float64) *stroke {
	path := make([]vec2, 0, pathKnots+1)
	wob := b.d.Between(0, 2*math.Pi)
	for k := range pathKnots + 1 {
		t := float64(k) / pathKnots
		sin, cos := math.Sincos(start + dir*2*math.Pi*t)
		r := (size - (1-t)/rounds) * (1 + 0.08*math.Sin(2*math.Pi*2*t+wob))
		path = append(path, vec2{mid.y + r*most.y*cos, mid.z + r*most.z*sin})
	}
	s := &stroke{
		radius: clamp(0.12*b.Box.H, 4, 10), grip: b.thick(0.6, 0.75), skin: wireSkinMM, pivot: mid,
		sway: b.d.wobble(1, 0.08), depth: b.d.wobble(1, 0.08), lean: b.d.wobble(0, 0.1),
	}
	b.draw(s, path)
	return s
}

// wayBack is the wire's way from the rim of a spiral past its middle and out through the surface.
func (b *builder) wayBack(half vec2) []vec2 {
	side := b.d.Sign()
	sin, cos := math.Sincos(b.d.Between(0.1, 0.9))
	from := vec2{b.Box.W/2 + side*0.75*half.y*cos, b.Box.H/2 - 0.75*half.z*sin}
	past := vec2{b.Box.W/2 + side*b.d.Between(0.2, 0.45)*half.y, b.Box.H/2 + b.d.Between(-0.1, 0.2)*half.z}
	out := vec2{b.Box.W/2 - side*b.d.Between(-0.1, 0.3)*half.y, b.Box.H + wireOutMM}
	path := make([]vec2, 0, pathKnots+1)
	for i := range pathKnots + 1 { // a quadratic bend through three places
		t := float64(i) / pathKnots
		p, q, r := (1-t)*(1-t), 2*t*(1-t), t*t
		path = append(path, vec2{p*from.y + q*past.y + r*out.y, p*from.z + q*past.z + r*out.z})
	}
	return path
}
