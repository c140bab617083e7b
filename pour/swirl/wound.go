package swirl

import "math"

// Loops and spirals, which wind the batter up: by eye, no source.
const (
	loopTurn  = 1.6 * math.Pi // how far the batter inside a loop turns with the wire, radians
	loopPart  = 1.05          // how large that is against the loop
	whirlPart = 0.72          // what part of the wire's turns the batter in the middle of a spiral makes: the rest slips by
)

// loops leads the wire in a row of rounds, over or under, each of which takes what is inside it along.
func (b *builder) loops() {
	middle, far := b.way()
	turns := max(1, math.Round(b.Turns))
	pitch := (b.Box.W - 2*wireMarginMM) / turns
	round := min(0.66*pitch, far)
	over, from := b.d.Sign(), b.d.Sign()
	path := make([]vec2, 0, pathKnots+8)
	each := max(8, pathKnots/int(turns))
	y := wireMarginMM + b.d.Between(0.3, 0.5)*pitch
	for range int(turns) {
		next, high, wide := y+pitch*b.d.Between(0.85, 1.1), far*b.d.Between(0.62, 0.9), round*b.d.Between(0.85, 1.1)
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
	b.wire(path, clamp(0.35*pitch, 5, 9))
}

// windUp turns what is inside a loop of a half width and height about its middle.
func (b *builder) windUp(at, loop vec2, dir, from float64) {
	if from < 0 {
		at.y, dir = b.Box.W-at.y, -dir
	}
	half := vec2{
		min(loopPart*loop.y, at.y-1, b.Box.W-at.y-1),
		min(loopPart*loop.z, at.z-1, b.Box.H-at.z-1),
	}
	if min(half.y, half.z) < 1 {
		return
	}
	room := vec2{min(at.y, b.Box.W-at.y) - half.y, min(at.z, b.Box.H-at.z) - half.z}
	b.add(op{whirl: &whirl{
		centre: at, half: half, room: room, angle: dir * loopTurn * b.d.Between(0.75, 1.15) * b.thick(1.1, 0.85), gain: b.d.wobble(1, 0.15),
		shift: b.d.wobble(0, 0.06*b.Box.W), sink: b.d.wobble(0, 3),
	}})
}

// spiral leads the wire round and round from the middle out, which winds the batter up, then back across what is wound and up out of the mould.
func (b *builder) spiral() {
	size := b.d.Between(0.84, 0.96)
	half := vec2{size * b.Box.W / 2, size * b.Box.H / 2}
	room := vec2{b.Box.W/2 - half.y, b.Box.H/2 - half.z}
	dir := b.d.Sign()
	b.add(op{whirl: &whirl{
		centre: vec2{b.Box.W / 2, b.Box.H / 2}, half: half, room: room,
		angle: dir * 2 * math.Pi * b.Turns * whirlPart * b.thick(1, 0.8), gain: b.d.wobble(1, 0.06),
		shift: b.d.wobble(b.d.Between(-0.6, 0.6)*room.y, 3), sink: b.d.wobble(b.d.Between(-0.6, 0.6)*room.z, 2),
	}})
	b.wire(b.wayBack(half), min(5, b.Box.H/9))
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
