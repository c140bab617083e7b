package swirl

import (
	"math"

	"pourbench/pour/script"
)

// hanger pours layers and draws a wire through them once, along the whole loaf.
func (b *builder) hanger() func(script.Act) {
	pour := b.layers()
	return func(a script.Act) {
		switch a.Kind {
		case script.Wire:
			b.settle(b.thick(2.8, 1.3))
			switch b.Technique {
			case script.HangerLoops:
				b.wire(b.loops())
			case script.HangerSpiral:
				b.spiral()
			default:
				b.wire(b.waves())
			}
		case script.Level:
			b.settle(b.thick(2, 1))
		default:
			pour(a)
		}
	}
}

// wire draws the wire along a path; it drags what lies within radius mm.
func (b *builder) wire(path []vec2, radius float64) {
	b.draw(&stroke{
		radius: radius, grip: b.thick(0.8, 0.92), skin: wireSkinMM, pivot: vec2{b.Box.W / 2, b.Box.H / 2},
		shift: b.d.wobble(0, 3), sway: b.d.wobble(1, 0.08), depth: b.d.wobble(1, 0.1),
	}, path)
}

const (
	wireMarginMM = 9 // the wire keeps this far from the walls
	wireTopMM    = 3 // and this from the surface, up to which it drags what lies below
	wireSkinMM   = 4 // under the surface it drags less and less
	pathKnots    = 400
)

// way is the middle of the wire's way up and down, and how far it goes from there, mm.
func (b *builder) way() (middle, far float64) {
	floor := min(wireMarginMM, b.Box.H/4)
	far = (b.Box.H - floor - wireTopMM) / 2
	return floor + far, far
}

// waves is the wire's way down and up while it crosses the mould: in at the top, and out of it at the end.
func (b *builder) waves() ([]vec2, float64) {
	path := make([]vec2, pathKnots+1)
	w := b.Box.W - 2*wireMarginMM
	middle, far := b.way()
	uneven := b.d.Between(-0.15, 0.15)
	for i := range path {
		t := float64(i) / pathKnots
		warp := t + uneven*math.Sin(2*math.Pi*t)/(2*math.Pi)
		path[i] = vec2{wireMarginMM + w*t, middle + far*math.Cos(2*math.Pi*b.Turns*warp)}
	}
	return path, clamp(0.62*w/b.Turns, 6, 15)
}

// loops is a row of rounds. They lie so far apart, and the wire reaches so little to the side, that a place is
// stirred three times at most: more turns to noise.
func (b *builder) loops() ([]vec2, float64) {
	path := make([]vec2, pathKnots+1)
	middle, far := b.way()
	w := b.Box.W - 2*wireMarginMM
	pitch := w / (b.Turns + 0.6)
	round := min(0.62*pitch, far)
	dir := b.d.Sign()
	for i := range path {
		t := float64(i) / pathKnots
		a := 2 * math.Pi * b.Turns * t
		y := wireMarginMM + 0.3*pitch + pitch*b.Turns*t + round*math.Sin(a)
		if dir < 0 {
			y = b.Box.W - y
		}
		path[i] = vec2{y, middle + far*math.Cos(a)}
	}
	return path, clamp(0.5*pitch, 5, 12)
}

// whirlPart is what part of the wire's turns the batter in its middle makes: the rest slips by (by eye, no source).
const whirlPart = 0.72

// spiral leads the wire round and round from the middle out, which takes the batter along, and up out of the mould at the end.
func (b *builder) spiral() {
	rim := min(3, b.Box.W/20, b.Box.H/20)
	dir := b.d.Sign()
	b.add(op{whirl: &whirl{
		centre: vec2{b.Box.W / 2, b.Box.H / 2}, half: vec2{b.Box.W/2 - rim, b.Box.H/2 - rim}, room: vec2{rim, rim},
		angle: dir * 2 * math.Pi * b.Turns * whirlPart * b.thick(1, 0.8), gain: b.d.wobble(1, 0.1),
		shift: b.d.wobble(0, 4), sink: b.d.wobble(0, 3),
	}})
	at := b.Box.W/2 - dir*b.Box.W*b.d.Between(0.16, 0.24)
	b.wire([]vec2{{at + dir*0.12*b.Box.W, 0.84 * b.Box.H}, {at + dir*0.04*b.Box.W, 0.92 * b.Box.H}, {at, b.Box.H + 2}}, min(7, b.Box.H/8))
}

// combed pours stripes side by side and draws a comb across and along them in turn.
func (b *builder) combed() func(script.Act) {
	s := b.stripes()
	return func(a script.Act) {
		switch a.Kind {
		case script.Pour:
			b.grow(s)
		case script.Comb:
			if a.Round <= 1 {
				b.settle(b.thick(3, 1.5)) // the stripes have run together before the comb comes
			}
			b.rake(a.Along)
		case script.Level:
			b.settle(b.thick(2.6, 1.2))
		}
	}
}

// stripes is every pour of the script side by side.
func (b *builder) stripes() *stripes {
	s := &stripes{box: b.Box, slant: b.d.Between(0.18, 0.34) * b.d.Sign(), bow: b.d.wobble(1, 0.4)}
	sum := 0.0
	for i, a := range b.acts {
		if a.Kind == script.Pour {
			sum += a.Share
			s.until, s.portion, s.act = append(s.until, sum), append(s.portion, a.Jug), append(s.act, i)
		}
	}
	return s
}

// rake draws one comb: every other tine the other way, as there and back.
func (b *builder) rake(alongX bool) {
	wide, long, pull, gap := b.Box.L, b.Box.W, 0.32*b.Box.W, b.Box.L/(2.35*b.Turns)
	if alongX {
		wide, long, pull, gap = b.Box.W, b.Box.L, 24, b.Box.W/b.Turns
	}
	pull *= b.thick(1.1, 0.8)
	var tines []tine
	sign := b.d.Sign()
	for at := gap * 0.5; at < wide; at += gap {
		tines = append(tines, tine{at + b.d.Between(-0.06, 0.06)*gap, sign * pull * b.d.Between(0.88, 1.1)})
		sign = -sign
	}
	c := newComb(tines, clamp(gap/3, 4, 14), wide, long, b.level, b.thick(0.2, 0.35))
	c.alongX = alongX
	b.add(op{comb: c})
}
