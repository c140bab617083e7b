package swirl

import "pourbench/pour/script"

const (
	spoonDollops = 500 // spoonfuls that fill a mould: what gives a pleasing picture, no source
	spoonPresses = 2
)

// spoon heaps the mould with dollops, round upon round. Each round is pressed where the next spoonfuls land on it.
func (b *builder) spoon() func(script.Act) {
	fill := newDollops(&b.d, b.Box, b.Shares, spoonDollops)
	return func(a script.Act) {
		switch {
		case a.Kind == script.Spoon && b.ends():
			b.raise(1/float64(b.Passes), fill)
			for i := range spoonPresses {
				b.press((float64(i) + b.d.Between(0.1, 0.9)) / spoonPresses * b.Box.W)
			}
		case a.Kind == script.Level:
			b.settle(b.thick(3, 2))
		}
	}
}

// ends says whether the act under way is the last of its round.
func (b *builder) ends() bool {
	return b.act == len(b.acts)-1 || b.acts[b.act+1].Kind != script.Spoon
}

// press pushes the heap down at y, as the weight of the next spoonful does.
func (b *builder) press(y float64) {
	depth := min(b.d.Between(7, 16), 0.8*b.level)
	radius := min(b.d.Between(11, 16), 0.7*b.level)
	from := b.level + 0.3*radius
	lean := b.d.Between(-0.4, 0.4)
	path := []vec2{{y, from}, {y + lean*(depth+from-b.level), b.level - depth}}
	b.draw(&stroke{
		radius: radius, grip: b.thick(0.8, 0.55), pivot: vec2{y, b.level}, still: true,
		shift: b.d.wobble(0, 14), sway: wobble{mean: 1}, depth: b.d.wobble(0.7, 0.9),
	}, path)
}
