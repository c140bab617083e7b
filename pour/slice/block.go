package slice

import "math"

// seen is what a look meets.
type seen struct {
	stuff  uint8
	bright float64
	far    float64
}

// block is a block with its skins: the loaf or the bar.
type block struct {
	*pose
	s      *Scene
	t      *top
	face   *skin
	wall   *skin // the loaf's long side on the right; of a tube, all round it
	flip   bool  // it is seen from the other end of the loaf
	from   float64
	lights []vec
}

// real is where a place of the block lies in the loaf, along and across.
func (b *block) real(x, y float64) (along, across float64) {
	if b.flip {
		return b.from - x, b.high.y - y
	}
	return b.from + x, y
}

// look follows a look into the block.
func (b *block) look(o, d vec) (seen, bool) {
	o, d = b.in(o), b.inWay(d)
	if b.s.recipe.Round {
		return b.round(o, d)
	}
	near, far, ok := b.crosses(o, d, b.high.z)
	if !ok {
		return seen{}, false
	}
	p := o.at(d, near)
	base := b.s.recipe.Box.H
	if p.z < base+b.height(p.x, p.y) {
		at, ok := b.trimmed(o, d, near, far)
		if !ok {
			return seen{}, false
		}
		s, ok := b.side(o.at(d, at), at)
		if !ok && p.z > base { // beside what the cut shows: its edge is smeared
			s, ok = b.over(o, d, near, near)
			s.bright = max(s.bright, smearLight*lit(b.way(vec{x: -1}), b.cast(p)))
		}
		return s, ok
	}
	const least, most = 0.2, 3
	was := near
	for t := near; t < far; {
		p := o.at(d, t)
		gap := p.z - base - b.height(p.x, p.y)
		if gap <= 0 {
			return b.over(o, d, was, t)
		}
		was = t
		t += min(max(gap*0.4, least), most)
	}
	return seen{}, false
}

// offWall is how far off a wall its own shadow is looked for, mm: closer it would be that of the stairs it climbs in. By eye, no source.
const offWall = 0.8

// smearLight is how bright the smeared edge of cut icing is, against its cut. By eye, no source.
const smearLight = 0.9

// over is the surface of the block between two distances, of which the nearer lies over it and the farther under it.
func (b *block) over(o, d vec, over, under float64) (seen, bool) {
	base := b.s.recipe.Box.H
	for range 7 {
		mid := (over + under) / 2
		if p := o.at(d, mid); p.z > base+b.height(p.x, p.y) {
			over = mid
		} else {
			under = mid
		}
	}
	p := o.at(d, under)
	x, y := b.real(p.x, p.y)
	stuff := b.t.at(x, y)
	n := b.t.normal(x, y)
	if int(stuff) < b.s.portions && b.height(p.x, p.y) < wallMM {
		along, across := b.s.poured.Slope(x, y)
		n = vec{n.x - along, n.y - across, n.z}.unit()
	}
	if b.flip {
		n.x, n.y = -n.x, -n.y
	}
	if b.height(p.x, p.y) < wallMM {
		n = b.edged(p, n)
	}
	shadow := max(b.under(p.plus(vec{n.x, n.y, 0}.times(offWall))), b.cast(p))
	bright := lit(b.way(n), shadow) * (1 - hollowDark*b.t.hides(x, y))
	if int(stuff) >= b.s.portions {
		bright = icingBright*bright + gloss(b.way(n))*(1-shadow)
	}
	return seen{stuff, bright, under}, stuff != ground
}

// edged is which way the top faces near its edges, where nothing stands.
func (b *block) edged(p, n vec) vec {
	round, _ := b.nearest(p)
	return vec{n.x + round.x/edgeMM, n.y + round.y/edgeMM, n.z}.unit()
}

// under is how much of the sun the surface about it takes from a place on it, 0 to 1: softer the farther off.
func (b *block) under(p vec) float64 {
	if b.s.on == nil {
		return 0
	}
	l, base, least := b.inWay(sun()), b.s.recipe.Box.H, 1.0
	if l.z < 0.05 && l.x > -0.05 { // it lies on its back
		return 0
	}
	for t := 0.6; t < 26; t *= 1.32 {
		q := p.at(l, t)
		if q.x < 0 || q.y < 0 || q.x > b.high.x || q.y > b.high.y || q.z > b.high.z {
			break
		}
		least = min(least, 0.5+3*(q.z-base-b.height(q.x, q.y))/t)
	}
	return 0.8 * (1 - max(0, least))
}

// height is how high the surface of the block stands over the base.
func (b *block) height(x, y float64) float64 {
	if b.s.on == nil {
		return 0
	}
	x, y = b.real(x, y)
	return b.t.height(x, y)
}

// trimmed is where a look that meets a flat side meets it with its edges rounded; ok is false where it goes past.
func (b *block) trimmed(o, d vec, near, far float64) (at float64, ok bool) {
	const steps, close = 24, 0.02
	at = near
	for range steps {
		_, away := b.nearest(o.at(d, at))
		if away < close {
			return at, true
		}
		if at += away; at > far {
			break
		}
	}
	return at, false
}

// nearest is which way the rounded block faces about a place, and how far outside it that is, mm. What stands on it goes on up with its sides.
func (b *block) nearest(p vec) (n vec, away float64) {
	n = vec{past(p.x, b.low.x, b.high.x), past(p.y, b.low.y, b.high.y), past(p.z, b.low.z, math.Inf(1))}
	if b.s.on == nil {
		n.z = past(p.z, b.low.z, b.s.recipe.Box.H)
	}
	return n, math.Sqrt(n.dot(n)) - edgeMM
}

// past is how far a place lies past the inner edge of the rounding of one of two sides, or 0.
func past(v, low, high float64) float64 {
	if v < low+edgeMM {
		return v - low - edgeMM
	}
	return max(0, v-high+edgeMM)
}

// side is a flat side of the block.
func (b *block) side(p vec, far float64) (seen, bool) {
	const edge = edgeMM * (1 - math.Sqrt2/2)
	var stuff uint8
	var ok bool
	var bright float64
	n := vec{x: -1}
	switch {
	case p.x < b.low.x+edge:
		stuff, bright, ok = b.face.at(p.y, p.z)
	case p.y < b.low.y+edge || p.y > b.high.y-edge:
		n = vec{y: math.Copysign(1, p.y-b.high.y/2)}
		stuff, bright, ok = b.long(p)
	case p.z < b.low.z+edge:
		n = vec{z: -1}
		along, _ := b.real(p.x, 0)
		stuff, bright, ok = b.wall.at(along, 0)
		bright *= b.off(along, p.y)
	default:
		n = vec{x: 1}
		stuff, bright, ok = b.face.at(b.high.y-p.y, p.z)
	}
	if !ok {
		return seen{}, false
	}
	if round, _ := b.nearest(p); round != (vec{}) {
		n = round.unit()
	}
	n = b.way(n)
	return seen{stuff, bright * lit(n, b.cast(p)) * b.bevel(p), far}, true
}

// long is a place of a long side: of the base, or of what stands on it and lay against the mould.
func (b *block) long(p vec) (stuff uint8, bright float64, ok bool) {
	along, across := b.real(p.x, p.y)
	if p.z > b.s.recipe.Box.H && b.t != nil {
		if stuff = b.t.at(along, across); int(stuff) >= b.s.portions {
			return stuff, 1, stuff != ground
		}
	}
	if stuff, ok = b.squeezed(along, across, b.s.recipe.Box.H-p.z); ok {
		return stuff, b.off(along, p.z), true
	}
	stuff, bright, ok = b.wall.at(along, min(p.z, b.s.recipe.Box.H-skinDeep))
	return stuff, bright * b.off(along, p.z), ok
}

// off is how bright a side is for how it came off the mould; a draft shows nothing of that.
func (b *block) off(along, up float64) float64 {
	if b.wall.grain == nil {
		return 1
	}
	return moulded(along, up)
}

// cast is how much of the sun the other block takes from a place.
func (b *block) cast(p vec) float64 { return 0.85 * b.s.shaded(b.out(p), b.lights, b.pose, 0) }

// The edges that a knife and a mould leave, by eye, no source.
const (
	edgeMM    = 1.2 // they are rounded so far
	edgeTurns = 0.9 // round a tube, at the edge itself so much towards the other side
	edgeLight = 0.1 // and so much brighter
)

// turned is how far a side of a tube has turned to the next so far from the edge between them.
func turned(away float64) float64 {
	e := max(0, 1-max(0, away)/edgeMM)
	return edgeTurns * e * e
}

// bevel lightens the edges a little, and darkens the foot.
func (b *block) bevel(p vec) float64 {
	const wide = 1
	ends := [3]float64{min(p.x-b.low.x, b.high.x-p.x), min(p.y-b.low.y, b.high.y-p.y), math.Inf(1)}
	if b.s.on == nil {
		ends[2] = math.Abs(b.s.recipe.Box.H - p.z)
	}
	near := math.Inf(1) // the second nearest: the nearest is the side it lies on
	least := math.Inf(1)
	for _, e := range ends {
		if e < least {
			near, least = least, e
		} else {
			near = min(near, e)
		}
	}
	bright := 1 + edgeLight*max(0, 1-near/wide)
	if foot := b.out(p).z; foot < 6 {
		t := 1 - max(0, foot)/6
		bright *= 1 - 0.16*t*t
	}
	return bright
}
