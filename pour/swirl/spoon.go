package swirl

import (
	"math"

	"pourbench/pour/script"
)

// Spoonfuls as they lie in the mould, about three times as wide as thick: what gives a pleasing picture, no source.
const (
	spoonMM     = 18  // half the width of a usual spoonful
	spoonPart   = 0.3 // and no more than this of the mould's width
	spoonLong   = 2.4 // a spoonful is so much longer than half wide
	mostAbreast = 8   // spoonfuls of one act side by side
	filmMM      = 0.3 // a spoonful has no edges thinner than this
	spoonEnds   = 1.7 // how blunt the ends of a spoonful are: 1 is a lens, more is blunter
	tapsMoving  = 3   // of all taps about so many move what lies there much: more would stir it
	spoonAside  = 1.5 // a spoonful goes about so many half widths to the side of the one before
)

// spoon heaps every act's spoonfuls on what lies there and taps the mould after each round.
func (b *builder) spoon() func(script.Act) {
	h := b.heaped()
	return func(a script.Act) {
		switch a.Kind {
		case script.Spoon:
			b.grow(h)
		case script.Level:
			if a.Round > 0 {
				if each := (a.Rounds + tapsMoving - 1) / tapsMoving; a.Round%each != 0 {
					return
				}
				z := b.Box.H * float64(a.Round) / float64(a.Rounds)
				b.sag(z)
				b.roll(z)
				return
			}
			b.sag(b.Box.H * b.d.Between(0.2, 0.8))
			b.settle(b.thick(2.4, 1.4))
		}
	}
}

// sag lets spoonfuls about a height sink into those below them as the mould is tapped: each rounds off what it lies on.
func (b *builder) sag(z float64) {
	half := b.spoonful()
	z = clamp(z+b.d.Between(-0.4, 0.4)*half, 0.1*b.Box.H, 0.92*b.Box.H)
	reach := min(half, z, b.Box.H-z)
	deep := min(b.thick(0.42, 0.16)*half, 0.7*reach)
	b.add(op{border: &border{width: b.Box.W, at: z, down: min(1.2*half, z), up: min(1.2*half, b.Box.H-z), ground: newGround(&b.d, b.Box, uneven{
		swell: 0.2 * deep, lump: deep, half: half * b.d.Between(0.7, 1), cover: 2,
	})}})
}

// roll turns over what came off the spoon with some swing, somewhere across the mould and about a height.
func (b *builder) roll(z float64) {
	half := vec2{b.spoonful() * b.d.Between(0.7, 1.1), b.spoonful() * b.d.Between(0.5, 0.8)}
	half.z = min(half.z, 0.4*b.Box.H)
	at := vec2{b.d.Between(half.y, b.Box.W-half.y), clamp(z, half.z, b.Box.H-half.z)}
	b.add(op{whirl: &whirl{
		centre: at, half: half, room: vec2{min(at.y, b.Box.W-at.y) - half.y, min(at.z, b.Box.H-at.z) - half.z},
		angle: b.d.Sign() * b.thick(1.2, 0.2), gain: b.d.wobble(0, 1), shift: b.d.wobble(0, 0.3*b.Box.W), sink: b.d.wobble(0, half.z),
	}})
}

// spoonful is half the width of a usual spoonful, mm.
func (b *builder) spoonful() float64 { return min(spoonMM, spoonPart*b.Box.W) }

// heaped is the spoonfuls of every act, one act on the other. The last fills what is left.
func (b *builder) heaped() *heap {
	h := newHeap(b.Box)
	s := spooning{
		heap: h, d: &b.d, usual: b.spoonful(), plump: b.thick(0.45, 0.62), soft: int(math.Round(b.thick(5, 4))), z: make([]float64, h.nx*h.ny),
	}
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

// spooning heaps spoonfuls.
type spooning struct {
	*heap
	d     *dice
	usual float64   // mm, half the width of a usual spoonful
	plump float64   // height of a spoonful against its half width
	soft  int       // how often its feet run out a little
	z     []float64 // mm, how high the heap stands
	was   []float64
	shape []float64
}

// spoonful is one; long rows of them lie behind one another, one passing into the next.
type spoonful struct{ x, y, half, lean float64 }

const domeArea = math.Pi / 2 // between its feet, of one of height and half width 1

// lay heaps spoonfuls of area mm² in every cross-section.
func (s *spooning) lay(area float64) {
	n := clamp(math.Round(area/(domeArea*s.plump*s.usual*s.usual)), 1, mostAbreast)
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
		p := spoonful{x: x, half: half * s.d.Between(0.85, 1.2), lean: s.d.Between(-0.22, 0.22)}
		least := math.Inf(1)
		for range tries {
			y := s.d.Float() * s.box.W
			z := s.mean(x, y, p.half)
			if n := len(row); n > 0 { // not in a line with the one before
				z += s.plump * max(0, spoonAside*half-math.Abs(y-row[n-1].y))
			}
			if z < least {
				p.y, least = y, z
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

// dome heaps a part f of a spoonful on cross-section i: half an ellipse that leans, as high as its area makes it.
func (s *spooning) dome(i int, p *spoonful, f, area float64) {
	if f <= 0 {
		return
	}
	half := p.half * math.Sqrt(f)
	high := s.plump * half
	j0, j1 := max(0, int(math.Ceil((p.y-half)*s.perY))), min(s.ny-1, int((p.y+half)*s.perY))
	z := s.z[i*s.ny:]
	s.shape = s.shape[:0]
	for j := j0; j <= j1; j++ {
		e := float64(j)/s.perY - p.y
		u := e / half * (e / half)
		s.shape = append(s.shape, p.lean*e+high*math.Sqrt(max(0, 1-u)))
	}
	want := f * area * s.perY
	low, top := -high, s.box.H+2*high
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
	for range s.soft {
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
