package swirl

import (
	"math"

	"pourbench/pour/script"
)

// Spoonfuls as they lie in the mould: what gives a pleasing picture, no source.
const (
	spoonWide   = 0.14 // half the width of a usual spoonful, of the mould's width
	spoonLong   = 1.9  // a spoonful is so much longer than half wide
	mostAbreast = 8    // spoonfuls of one act side by side
	filmMM      = 0.3  // a spoonful has no edges thinner than this
	spoonEnds   = 1.7  // how blunt the ends of a spoonful are: 1 is a lens, more is blunter
)

// spoon heaps every act's spoonfuls on what lies there and taps the mould after each round.
func (b *builder) spoon() func(script.Act) {
	h := b.heaped()
	return func(a script.Act) {
		switch a.Kind {
		case script.Spoon:
			b.grow(h)
		case script.Level:
			amp := b.thick(3.5, 2)
			if a.Round > 0 {
				amp *= 0.5
				b.press(b.Box.H * float64(a.Round) / float64(a.Rounds))
			}
			b.settle(amp)
		}
	}
}

// heaped is the spoonfuls of every act, one act on the other. The last fills what is left.
func (b *builder) heaped() *heap {
	h := newHeap(b.Box)
	s := spooning{heap: h, d: &b.d, plump: b.thick(0.8, 1.1), z: make([]float64, h.nx*h.ny)}
	for i, a := range b.acts {
		if a.Kind != script.Spoon {
			continue
		}
		if i == b.last {
			for k := range s.z {
				s.z[k] = b.Box.H
			}
		} else {
			s.lay(a.Share * b.Box.W * b.Box.H)
		}
		h.add(s.z, a.Jug, i)
	}
	return h
}

// press pushes the batter down here and there to depth mm above the bottom, as the weight of spoonfuls does that fall on it.
func (b *builder) press(z float64) {
	y := b.d.Between(0.15, 0.85) * b.Box.W
	radius := b.d.Between(0.16, 0.22) * b.Box.W
	from := min(z+0.5*radius, b.Box.H+0.3*radius)
	path := []vec2{{y, from}, {y + b.d.Between(-0.4, 0.4)*radius, from - b.d.Between(0.6, 1)*radius}}
	b.draw(&stroke{
		radius: radius, grip: b.thick(0.55, 0.45), pivot: vec2{y, from}, still: true,
		shift: b.d.wobble(0, 0.2*b.Box.W), sway: wobble{mean: 1}, depth: b.d.wobble(0.7, 0.6),
	}, path)
}

// spooning heaps spoonfuls.
type spooning struct {
	*heap
	d     *dice
	plump float64   // height of a spoonful against its half width
	z     []float64 // mm, how high the heap stands
	was   []float64
	shape []float64
}

// spoonful is one; long rows of them lie behind one another, one passing into the next.
type spoonful struct{ x, y, half, lean float64 }

const domeArea = 1.6 // of 1-u⁴ between its feet

// lay heaps spoonfuls of area mm² in every cross-section.
func (s *spooning) lay(area float64) {
	usual := spoonWide * s.box.W
	n := clamp(math.Round(area/(domeArea*s.plump*usual*usual)), 1, mostAbreast)
	half := math.Sqrt(area / n / (domeArea * s.plump))
	s.was = append(s.was[:0], s.z...)
	for range int(n) {
		row := s.row(half)
		for i := range s.nx {
			x := float64(i) / s.perX
			k := 1
			for k < len(row)-1 && x > row[k].x {
				k++
			}
			f := smooth(0.5 + spoonEnds*((x-row[k-1].x)/(row[k].x-row[k-1].x)-0.5))
			s.dome(i, &row[k-1], 1-f, area/n)
			s.dome(i, &row[k], f, area/n)
		}
	}
	s.slump(area, s.plump*half)
}

// row finds places for spoonfuls of a half width one behind the other, each in the lowest place of some.
func (s *spooning) row(half float64) (row []spoonful) {
	const tries = 8
	for x := -s.d.Float() * spoonLong * half; ; x += spoonLong * half * s.d.Between(0.8, 1.2) {
		p := spoonful{x: x, half: half * s.d.Between(0.85, 1.2), lean: s.d.Between(-0.3, 0.3)}
		least := math.Inf(1)
		for range tries {
			if y := s.d.Float() * s.box.W; s.mean(x, y, p.half) < least {
				p.y, least = y, s.mean(x, y, p.half)
			}
		}
		if row = append(row, p); x > s.box.L {
			return row
		}
	}
}

// mean is how high the heap stands under a spoonful.
func (s *spooning) mean(x, y, half float64) float64 {
	i := int(clamp(x*s.perX+0.5, 0, float64(s.nx-1)))
	sum, n := 0.0, 0.0
	for j := max(0, int((y-half)*s.perY)); j <= min(s.ny-1, int((y+half)*s.perY)); j++ {
		sum, n = sum+s.z[i*s.ny+j], n+1
	}
	return sum / n
}

// dome heaps a part f of a spoonful on cross-section i: a flat dome that leans, as high as its area makes it.
func (s *spooning) dome(i int, p *spoonful, f, area float64) {
	if f <= 0 {
		return
	}
	half := p.half * math.Sqrt(f)
	high := s.plump * half
	j0, j1 := max(0, int((p.y-1.6*half)*s.perY)), min(s.ny-1, int((p.y+1.6*half)*s.perY)+1)
	z := s.z[i*s.ny:]
	s.shape = s.shape[:0]
	for j := j0; j <= j1; j++ {
		e := float64(j)/s.perY - p.y
		u := e / half * (e / half)
		s.shape = append(s.shape, p.lean*e-high*u*u)
	}
	want := f * area * s.perY
	low, top := 0.0, s.box.H+12*high
	for range 20 {
		mid, sum := (low+top)/2, 0.0
		for k, v := range s.shape {
			sum += s.weight(j0+k) * max(0, min(mid+v, s.box.H)-z[j0+k])
		}
		if sum < want {
			low = mid
		} else {
			top = mid
		}
	}
	for k, v := range s.shape {
		z[j0+k] = max(z[j0+k], min(low+v, s.box.H))
	}
}

// weight is how much of a mesh a place stands for.
func (s *spooning) weight(j int) float64 {
	if j == 0 || j == s.ny-1 {
		return 0.5
	}
	return 1
}

// slump rounds what was laid last and brings it to its area in every cross-section.
func (s *spooning) slump(area, high float64) {
	for k := range s.z {
		s.z[k] -= s.was[k]
	}
	for range 2 {
		blur(s.z, s.ny, s.nx, 1, s.ny) // across
		blur(s.z, s.nx, s.ny, s.ny, 1) // along
	}
	film := min(filmMM, 0.3*high)
	for i := range s.nx {
		z := s.z[i*s.ny : (i+1)*s.ny]
		for j := range z {
			z[j] = max(0, z[j]-film)
		}
		s.measured(z, s.was[i*s.ny:], area)
	}
}

// measured turns what was laid on a cross-section into how high the heap stands, with exactly the area that was laid, and below the rim.
func (s *spooning) measured(laid, was []float64, area float64) {
	want, sum := area*s.perY, 0.0
	for j, v := range laid {
		sum += s.weight(j) * v
	}
	scale := want / max(sum, 1e-9)
	fill := func(scale, floor float64) (sum float64) {
		for j, v := range laid {
			sum += s.weight(j) * (max(was[j], min(max(was[j]+scale*v, floor), s.box.H)) - was[j])
		}
		return sum
	}
	floor := 0.0
	if fill(scale, 0) < want-1e-9 { // the rim holds it back: it runs to where there is room
		high := s.box.H
		for range 40 {
			if mid := (floor + high) / 2; fill(scale, mid) < want {
				floor = mid
			} else {
				high = mid
			}
		}
	}
	for j, v := range laid {
		laid[j] = max(was[j], min(max(was[j]+scale*v, floor), s.box.H))
	}
}

// blur spreads m lines of n places a little; step and next lead from place to place and from line to line. What stands on a line stays on it.
func blur(z []float64, n, m, step, next int) {
	for l := range m {
		at := l * next
		last := z[at]
		for k := range n {
			here, right := z[at+k*step], z[at+min(k+1, n-1)*step]
			z[at+k*step] = (last + 2*here + right) / 4
			last = here
		}
	}
}
