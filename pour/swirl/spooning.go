package swirl

import "math"

// spooning heaps spoonfuls.
type spooning struct {
	*heap
	d     *dice
	usual float64   // mm, half the width of a usual spoonful
	plump float64   // height of a spoonful against its half width
	drag  float64   // radians, by which a spoonful turns at most where it is scraped off
	rim   float64   // mm, higher than which the heap does not stand before it is tapped level
	z     []float64 // mm, how high the heap stands
	skin  []int8    // the jug that lies on top, from 1; 0: none
	was   []float64
	shape []float64
}

// spoonful is one; long rows of them lie behind one another, one passing into the next.
type spoonful struct{ x, y, half, lean, askew float64 }

const domeArea = math.Pi / 2 // between its feet, of one of height and half width 1

// lay heaps spoonfuls of a jug, area mm² in every cross-section, and says how they are scraped off.
func (s *spooning) lay(area float64, jug int) (drags []scraped) {
	n := clamp(math.Round(area/(domeArea*s.plump*s.usual*s.usual)), 1, mostAbreast)
	s.was = append(s.was[:0], s.z...)
	var rows [][]spoonful
	parts := s.parts(int(n))
	toEnd := s.d.Sign() > 0 // which way the spoon is drawn off
	for _, part := range parts {
		half := math.Sqrt(area * part / (domeArea * s.plump))
		row := s.row(half, jug)
		rows = append(rows, row)
		for i := range s.nx {
			x := float64(i) / s.perX
			k := 1
			for k < len(row)-1 && x > row[k].x {
				k++
			}
			f := spoonEnd((x-row[k-1].x)/(row[k].x-row[k-1].x), toEnd)
			s.dome(i, &row[k-1], 1-f, area*part)
			s.dome(i, &row[k], f, area*part)
		}
	}
	s.slump(area, s.plump*math.Sqrt(area/n/(domeArea*s.plump)))
	for k, z := range s.z {
		if z-s.was[k] > skinnedMM {
			s.skin[k] = int8(jug + 1)
		}
	}
	for r, row := range rows {
		for k := range row {
			p := &row[k]
			side := s.d.Sign()
			if s.d.Float() < scrapedPart {
				drags = append(drags, s.scraped(p, side, area*parts[r]))
			}
			if s.d.Float() < skinnedPart {
				drags = append(drags, s.skinned(p, -side, area*parts[r]))
			}
		}
	}
	return drags
}

// parts is what part of an act's batter each of its spoonfuls side by side is: small ones lie between large ones.
func (s *spooning) parts(n int) []float64 {
	parts, sum := make([]float64, n), 0.0
	for i := range parts {
		parts[i] = s.d.Between(smallPart, 1)
		sum += parts[i]
	}
	for i := range parts {
		parts[i] /= sum
	}
	return parts
}

// spoonEnd is what part of the batter belongs to the next spoonful, so far on the way to it from one: it begins with a round head, and the one before
// runs out in a tail; drawn off the other way the next one has the tail.
func spoonEnd(way float64, toEnd bool) float64 {
	u := clamp(0.5+spoonEnds*(way-0.5), 0, 1)
	if toEnd {
		return 1 - (1-u)*(1-u)
	}
	return u * u
}

// scraped is how a spoonful of area mm² is pushed off the spoon, towards one of its sides: its flank runs out over what lies there.
func (s *spooning) scraped(p *spoonful, side, area float64) scraped {
	d := s.flank(p, side, area)
	d.long, d.wide = p.half*s.d.Between(0.5, 0.8), p.half*s.d.Between(0.4, 0.6)
	d.angle = -side * s.drag * s.d.Between(0.4, 1)
	return d
}

// skinned is how the edge of the spoon, drawn off a spoonful, takes a thin skin of it along.
func (s *spooning) skinned(p *spoonful, side, area float64) scraped {
	d := s.flank(p, side, area)
	d.long, d.wide = p.half*s.d.Between(0.7, 1), p.half*s.d.Between(0.42, 0.55)
	d.angle = -side * s.drag * s.d.Between(0.4, 0.8)
	return d
}

// flank is the place at one side of a spoonful, and how it slopes.
func (s *spooning) flank(p *spoonful, side, area float64) scraped {
	y := clamp(p.y+side*p.half*s.d.Between(0.6, 1), 0, s.box.W)
	i, j := int(clamp(p.x*s.perX+0.5, 0, float64(s.nx-1))), int(y*s.perY+0.5)
	thick := area / (2 * p.half)
	return scraped{
		x: p.x, reach: spoonLong * p.half * s.d.Between(0.45, 0.75), at: vec2{y, s.z[i*s.ny+j] - thick*s.d.Between(0, 0.6)},
		drift: vec2{s.d.Between(-0.3, 0.3), s.d.Between(-0.1, 0.1)}, tilt: -side * s.d.Between(-0.1, 0.6),
	}
}

// row finds places for spoonfuls of a jug one behind the other, each in the lowest place of some, and rather not on its own colour.
func (s *spooning) row(half float64, jug int) (row []spoonful) {
	const tries = 3
	for x := -s.d.Float() * spoonLong * half; ; x += spoonLong * half * s.d.Between(0.8, 1.2) {
		p := spoonful{x: x, half: half * s.d.Between(0.85, 1.2), lean: s.d.Between(-0.22, 0.22), askew: s.d.Between(-mostAskew, mostAskew)}
		least := math.Inf(1)
		for range tries {
			y := s.d.Float() * s.box.W
			z := s.mean(x, y, p.half, jug)
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

// mean is how high the heap stands under a spoonful of a jug; where its own colour lies on top it counts as higher.
func (s *spooning) mean(x, y, half float64, jug int) float64 {
	i := int(clamp(x*s.perX+0.5, 0, float64(s.nx-1)))
	sum, n := 0.0, 0.0
	for j := max(0, int((y-half)*s.perY)); j <= min(s.ny-1, int((y+half)*s.perY)); j++ {
		sum, n = sum+s.z[i*s.ny+j], n+1
		if int(s.skin[i*s.ny+j]) == jug+1 {
			sum += ownMM
		}
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
	y := clamp(p.y+p.askew*(float64(i)/s.perX-p.x), 0, s.box.W)
	j0, j1 := max(0, int(math.Ceil((y-half)*s.perY))), min(s.ny-1, int((y+half)*s.perY))
	z := s.z[i*s.ny:]
	s.shape = s.shape[:0]
	for j := j0; j <= j1; j++ {
		e := float64(j)/s.perY - y
		u := e / half * (e / half)
		s.shape = append(s.shape, p.lean*e+high*math.Sqrt(max(0, 1-u)))
	}
	want := f * area * s.perY
	low, top := -high, s.rim+2*high
	for range 20 {
		mid, sum := (low+top)/2, 0.0
		for k, v := range s.shape {
			sum += s.weight(j0+k) * max(0, min(mid+v, s.rim)-z[j0+k])
		}
		if sum < want {
			low = mid
		} else {
			top = mid
		}
	}
	for k, v := range s.shape {
		z[j0+k] = max(z[j0+k], min(low+v, s.rim))
	}
}

// slump rounds what was laid last and brings it to its area in every cross-section.
func (s *spooning) slump(area, high float64) {
	for k := range s.z {
		s.z[k] -= s.was[k]
	}
	blur(s.z, s.ny, s.nx, 1, s.ny) // across
	blur(s.z, s.nx, s.ny, s.ny, 1) // along
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
			sum += s.weight(j) * (max(was[j], min(max(was[j]+scale*v, floor), s.rim)) - was[j])
		}
		return sum
	}
	floor := 0.0
	if fill(scale, 0) < want-1e-9 { // the rim holds it back: it runs to where there is room
		high := s.rim
		for range 40 {
			if mid := (floor + high) / 2; fill(scale, mid) < want {
				floor = mid
			} else {
				high = mid
			}
		}
	}
	for j, v := range laid {
		laid[j] = max(was[j], min(max(was[j]+scale*v, floor), s.rim))
	}
}

// blur spreads m lines of n places a little; step and next lead from place to place and from line to line. What stands on a line, its ends
// counting half, stays on it.
func blur(z []float64, n, m, step, next int) {
	for l := range m {
		at := l * next
		last := z[at+min(1, n-1)*step]
		for k := range n {
			here, right := z[at+k*step], last
			if k < n-1 {
				right = z[at+(k+1)*step]
			}
			z[at+k*step] = (last + 2*here + right) / 4
			last = here
		}
	}
}

// tapped is the surface of the heap with its edges rounded. Every surface is rounded alike: so they stay one on the other, and as each act lays
// the same in every cross-section, it still does.
func (s *spooning) tapped() []float64 {
	s.was = append(s.was[:0], s.z...)
	for range tapRounds {
		blur(s.was, s.ny, s.nx, 1, s.ny)
		blur(s.was, s.nx, s.ny, s.ny, 1)
	}
	return s.was
}
