package swirl

import (
	"fmt"
	"math"
)

const (
	spoonRows    = 6 // the heap grows in so many steps, each pressed down a little
	spoonPresses = 2
)

// spoon heaps the mould with dollops, row upon row. Each row is pressed where the next spoonfuls land on it, and a
// skewer goes through at the end.
func (b *builder) spoon() {
	fill := newDollops(&b.d, b.Box, b.Shares, b.Passes)
	b.off = fill.off
	for row := range spoonRows {
		b.raise(1./spoonRows, fill, -1, row == spoonRows-1)
		name := &b.ops[len(b.ops)-1].name
		name.Verb, name.Text = Heap, fmt.Sprintf("heap it up by the spoonful to %.0f mm", b.level)
		for i := range spoonPresses {
			b.press((float64(i) + b.d.between(0.1, 0.9)) / spoonPresses * b.Box.W)
		}
	}
	b.settle(b.thick(5, 3))
	for range 3 {
		b.skewer(b.d.float() < 0.5)
	}
	b.settle(b.thick(3, 2))
}

// press pushes the heap down at y, as the weight of the next spoonful does.
func (b *builder) press(y float64) {
	depth := min(b.d.between(7, 16), 0.8*b.level)
	radius := min(b.d.between(11, 16), 0.7*b.level)
	from := b.level + 0.3*radius
	lean := b.d.between(-0.4, 0.4)
	path := []vec2{{y, from}, {y + lean*(depth+from-b.level), b.level - depth}}
	b.draw(Draw, "the next spoonfuls press it down", &stroke{
		radius: radius, grip: b.thick(0.8, 0.55), pivot: vec2{y, b.level}, still: true,
		shift: b.d.wobble(0, 14), sway: wobble{mean: 1}, depth: b.d.wobble(0.7, 0.9),
	}, path)
}

// skewer draws a thin stick across or upright, a little bent.
func (b *builder) skewer(upright bool) {
	const knots = 24
	bend, from, far := b.d.between(-0.12, 0.12), b.d.between(0.08, 0.4), b.d.between(0.35, 0.5)
	side := b.d.between(0.2, 0.8)
	if b.d.sign() < 0 {
		from, far = 1-from, -far
	}
	path := make([]vec2, knots+1)
	for i := range path {
		t := float64(i) / knots
		along, off := from+far*t, side+bend*math.Sin(math.Pi*t)
		path[i] = vec2{along * b.Box.W, off * b.Box.H}
		if upright {
			path[i] = vec2{off * b.Box.W, along * b.Box.H}
		}
	}
	b.draw(Draw, "draw a skewer through", &stroke{
		radius: b.d.between(8, 12), grip: b.thick(0.65, 0.45), pivot: path[knots/2],
		shift: b.d.wobble(0, 9), sway: b.d.wobble(0.9, 0.3), depth: b.d.wobble(0.9, 0.3),
	}, path)
}
