package swirl

import "pourbench/pour/script"

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
