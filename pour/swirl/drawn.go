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
			path, radius := b.wire()
			b.draw(&stroke{
				radius: radius, grip: b.thick(0.8, 0.92), pivot: vec2{b.Box.W / 2, b.Box.H / 2},
				shift: b.d.wobble(0, 3), sway: b.d.wobble(1, 0.08), depth: b.d.wobble(1, 0.1),
			}, path)
		case script.Level:
			b.settle(b.thick(1.6, 0.8))
		default:
			pour(a)
		}
	}
}

// wire is the way of the technique's wire and how far it drags to the side, mm.
func (b *builder) wire() ([]vec2, float64) {
	switch b.Technique {
	case script.HangerLoops:
		return b.loops()
	case script.HangerSpiral:
		return b.spiral()
	}
	return b.waves()
}

const (
	wireMarginMM = 9 // the wire keeps this far from the walls
	pathKnots    = 400
)

// waves is the wire's way down and up while it crosses the mould.
func (b *builder) waves() ([]vec2, float64) {
	path := make([]vec2, pathKnots+1)
	w, h := b.Box.W-2*wireMarginMM, b.Box.H/2-min(wireMarginMM, b.Box.H/4)
	uneven := b.d.Between(-0.15, 0.15)
	for i := range path {
		t := float64(i) / pathKnots
		warp := t + uneven*math.Sin(2*math.Pi*t)/(2*math.Pi)
		path[i] = vec2{wireMarginMM + w*t, b.Box.H/2 + h*math.Cos(2*math.Pi*b.Turns*warp)}
	}
	return path, clamp(0.62*w/b.Turns, 6, 15)
}

// loops is a row of rounds. They lie so far apart, and the wire reaches so little to the side, that a place is
// stirred three times at most: more turns to noise.
func (b *builder) loops() ([]vec2, float64) {
	path := make([]vec2, pathKnots+1)
	h := b.Box.H/2 - min(wireMarginMM+1, b.Box.H/4)
	w := b.Box.W - 2*wireMarginMM
	pitch := w / (b.Turns + 0.6)
	round := min(0.62*pitch, h)
	dir := b.d.Sign()
	for i := range path {
		t := float64(i) / pathKnots
		a := 2 * math.Pi * b.Turns * t
		y := wireMarginMM + 0.3*pitch + pitch*b.Turns*t + round*math.Sin(a)
		if dir < 0 {
			y = b.Box.W - y
		}
		path[i] = vec2{y, b.Box.H/2 + h*math.Cos(a)}
	}
	return path, clamp(0.5*pitch, 5, 12)
}

// spiral widens from the middle to the walls.
func (b *builder) spiral() ([]vec2, float64) {
	path := make([]vec2, pathKnots+1)
	w, h := b.Box.W/2-wireMarginMM, b.Box.H/2-min(wireMarginMM, b.Box.H/4)
	start, dir := b.d.Between(0, 2*math.Pi), b.d.Sign()
	for i := range path {
		t := math.Sqrt(float64(i) / pathKnots)
		a := start + dir*2*math.Pi*b.Turns*t
		path[i] = vec2{b.Box.W/2 + w*t*math.Cos(a), b.Box.H/2 + h*t*math.Sin(a)}
	}
	return path, clamp(0.75*h/b.Turns, 6, 14)
}

// combed pours stripes side by side and draws a comb across and along them in turn.
func (b *builder) combed() func(script.Act) {
	s := b.stripes()
	return func(a script.Act) {
		switch a.Kind {
		case script.Pour:
			if b.level == 0 {
				b.level = b.Box.H
				b.add(op{slab: &slab{top: b.level, fill: s}})
			}
		case script.Comb:
			b.rake(a.Along)
		case script.Level:
			b.settle(b.thick(2.6, 1.2))
		}
	}
}

// stripes is every pour of the script side by side.
func (b *builder) stripes() *stripes {
	s := &stripes{box: b.Box, slant: b.d.Between(0.1, 0.2) * b.d.Sign(), bow: b.d.wobble(1, 0.4)}
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
	wide, long, pull, gap := b.Box.L, b.Box.W, 0.32*b.Box.W, b.Box.L/(2*b.Turns)
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
	c := newComb(tines, clamp(gap/3, 4, 14), wide, long, b.level, 0.35)
	c.alongX = alongX
	b.add(op{comb: c})
}
