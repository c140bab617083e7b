package swirl

import "math"

// hanger pours layers and draws a wire through them once, along the whole loaf.
func (b *builder) hanger() {
	b.layers(b.Passes)
	b.settle(b.thick(2.8, 1.3))
	var path []vec2
	var radius float64
	var text string
	switch b.Technique {
	case HangerLoops:
		path, radius = b.loops()
		text = "draw the wire through in loops"
	case HangerSpiral:
		path, radius = b.spiral()
		text = "draw the wire through in a spiral"
	default:
		path, radius = b.waves()
		text = "draw the wire through, down and up"
	}
	mid := vec2{b.Box.W / 2, b.Box.H / 2}
	b.draw(Draw, text, &stroke{
		radius: radius, grip: b.thick(0.8, 0.92), pivot: mid,
		shift: b.d.wobble(0, 3), sway: b.d.wobble(1, 0.08), depth: b.d.wobble(1, 0.1),
	}, path)
	b.settle(b.thick(1.6, 0.8))
}

const (
	wireMarginMM = 9 // the wire keeps this far from the walls
	pathKnots    = 400
)

// waves is the wire's way down and up while it crosses the mould.
func (b *builder) waves() ([]vec2, float64) {
	path := make([]vec2, pathKnots+1)
	w, h := b.Box.W-2*wireMarginMM, b.Box.H/2-min(wireMarginMM, b.Box.H/4)
	uneven := b.d.between(-0.15, 0.15)
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
	dir := b.d.sign()
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
	start, dir := b.d.between(0, 2*math.Pi), b.d.sign()
	for i := range path {
		t := math.Sqrt(float64(i) / pathKnots)
		a := start + dir*2*math.Pi*b.Turns*t
		path[i] = vec2{b.Box.W/2 + w*t*math.Cos(a), b.Box.H/2 + h*t*math.Sin(a)}
	}
	return path, clamp(0.75*h/b.Turns, 6, 14)
}

// comb pours stripes side by side and draws a comb across and along them in turn.
func (b *builder) comb() {
	until, portion := cumulate(b.Shares)
	repeats := max(1, int(math.Round(17/float64(len(portion)))))
	s := &stripes{box: b.Box, slant: b.d.between(0.1, 0.2) * b.d.sign(), bow: b.d.wobble(1, 0.4)}
	for k := range repeats {
		for i, p := range portion {
			s.until = append(s.until, (float64(k)+until[i])/float64(repeats))
			s.portion = append(s.portion, p)
		}
	}
	b.raise(1, s, -1, true)
	for k := range min(b.Passes, 4) {
		b.rake(k%2 == 1)
	}
	b.settle(b.thick(2.6, 1.2))
}

// rake draws one comb: every other tine the other way, as there and back.
func (b *builder) rake(alongX bool) {
	wide, long, pull, gap := b.Box.L, b.Box.W, 0.32*b.Box.W, b.Box.L/(2*b.Turns)
	text := "draw the comb across"
	if alongX {
		wide, long, pull, gap = b.Box.W, b.Box.L, 24, b.Box.W/b.Turns
		text = "draw the comb along"
	}
	pull *= b.thick(1.1, 0.8)
	var tines []tine
	sign := b.d.sign()
	for at := gap * 0.5; at < wide; at += gap {
		tines = append(tines, tine{at + b.d.between(-0.06, 0.06)*gap, sign * pull * b.d.between(0.88, 1.1)})
		sign = -sign
	}
	c := newComb(tines, clamp(gap/3, 4, 14), wide, long, b.level, 0.35)
	c.alongX = alongX
	b.ops = append(b.ops, op{name: Step{Verb: Draw, Portion: -1, LevelMM: b.level, Text: text}, comb: c})
}
