package swirl

import (
	"fmt"
	"math"
)

// builder pours a recipe step by step.
type builder struct {
	Recipe // with the technique's own dials where it had none
	d      dice
	ops    []op
	level  float64
	off    float64 // of the batter: how far a share is known to be off
}

func newBuilder(r Recipe) *builder {
	own := r.dials()
	r.Passes, r.Turns, r.HeightMM = own.Passes, own.Turns, own.HeightMM
	return &builder{Recipe: r, d: dice{state: mix64(uint64(r.Seed)) ^ 0x5eed}}
}

func (b *builder) pour() {
	switch b.Technique {
	case Layers:
		b.layers(b.Passes)
		b.settle(b.thick(3.6, 1.6))
	case Drop:
		b.drop()
	case Column:
		b.column()
	case Pot, PotStripes, PotSpots, PotEnd:
		b.pot()
	case Hanger, HangerLoops, HangerSpiral:
		b.hanger()
	case Comb:
		b.comb()
	case Spoon:
		b.spoon()
	}
}

// thick gives the value between that of thin and that of thick batter.
func (b *builder) thick(thin, thick float64) float64 { return thin + (thick-thin)*b.Thickness }

// raise pours a share of the mould's height; the last pour ends at the fill height exactly.
func (b *builder) raise(share float64, fill filling, portion int, last bool) {
	s := &slab{bottom: b.level, top: min(b.level+share*b.Box.H, b.Box.H), fill: fill}
	if last {
		s.top = b.Box.H
	}
	b.level = s.top
	name := Step{Verb: Pours, Portion: portion, LevelMM: s.top, Text: fmt.Sprintf("pour up to %.0f mm", s.top)}
	b.ops = append(b.ops, op{name: name, slab: s})
}

// settle lets the batter slump by about amp mm.
func (b *builder) settle(amp float64) {
	amp = min(amp, 0.12*b.level)
	b.ops = append(b.ops, op{
		name: Step{Verb: Settle, Portion: -1, LevelMM: b.level, Text: "it settles"},
		wave: newWave(&b.d, b.Box, b.level, amp),
	})
}

// draw adds a stroke along a dense path.
func (b *builder) draw(verb Verb, text string, s *stroke, path []vec2) {
	s.width, s.level = b.Box.W, b.level
	s.path = resample(path, s.radius*strokeSpacing)
	b.ops = append(b.ops, op{name: Step{Verb: verb, Portion: -1, LevelMM: b.level, Text: text}, stroke: s})
}

// plunge lets a stream fall at y from above the level to depth mm below it, swinging sideways a little.
func (b *builder) plunge(y, depth, radius, grip float64, shift wobble) {
	const knots = 24
	radius = min(radius, 0.7*b.level) // a wider stream would tear a shallow level along its surface
	depth = clamp(depth, 2, b.level-3)
	from, swing, lean := b.level+0.5*radius, b.d.between(0.5, 2.5)*b.d.sign(), b.d.between(-0.12, 0.12)
	path := make([]vec2, knots+1)
	phase := b.d.between(0, math.Pi)
	for i := range path {
		t := float64(i) / knots
		path[i] = vec2{y + t*lean*depth + swing*math.Sin(phase+1.5*math.Pi*t), from + t*(b.level-depth-from)}
	}
	b.draw(Plunge, "the stream carries it down", &stroke{
		radius: radius, grip: grip, pivot: vec2{y, b.level}, shift: shift,
		sway: wobble{mean: 1}, depth: b.d.wobble(1, 0.3),
	}, path)
}

// fall is how deep a stream goes, against one from 150 mm in thin batter: with the root of the height, as its speed.
func (b *builder) fall() float64 {
	return clamp(math.Sqrt(b.HeightMM/150), 0.2, 1.6) * b.thick(1.1, 0.6)
}

// layers pours every portion in order, the whole order repeats times.
func (b *builder) layers(repeats int) {
	until, portion := cumulate(b.Shares)
	for k := range repeats {
		for i, p := range portion {
			last := k == repeats-1 && i == len(until)-1
			b.raise(b.Shares[p]/float64(repeats), plain(p), p, last)
		}
	}
}

// base is the portion with the largest share, the earlier one of equals.
func (b *builder) base() int {
	best := 0
	for i, v := range b.Shares {
		if v > b.Shares[best]+1e-12 {
			best = i
		}
	}
	return best
}
