package relief

import (
	"math"

	"pourbench/pour/script"
)

// A swirl of a top piped full, figures by eye, no source.
const (
	swirlLean   = 0.13 // how far its top leans over at the most, of its radius
	swirlOval   = 0.09 // how much longer than round it is at the most
	swirlLap    = 0.06 // how fat the leanest is, of its height
	swirlFatter = 0.22 // and the next one
	swirlLeast  = 0.93 // how far the leanest reaches
	swirlWider  = 0.08 // and how much further the next one
	swirlTip    = 0.13 // how high its tip stands at the most, of its height
	swirlRim    = 0.82 // so far out a lean one presses a neighbour down that stands there already, of its radius
	swirlFat    = 1.3  // and how much further a fat one
	swirlPress  = 0.3  // over which it presses the more
	swirlRides  = 0.3  // how much its outer round is lifted by what it lies on, of how high that stands
	swirlSoft   = 0.05 // how softly strands go over into each other, of its height
	wallMostMM  = 0.7  // so far a nozzle goes past where the wall lets its strand lie
	wallLeast   = 0.55 // and no nearer than that is a swirl pressed together there, of its radius
	wallMost    = 1.22 // and farther off than that it is not drawn out to it
	wallFills   = 0.09 // how much further it is pressed out into the corners there
	tipWide     = 0.3  // radius of the tip's foot, of the swirl's
	tipCurl     = 0.35 // how far the tip bends over at the most, of its foot
)

// pipedSwirl is one swirl of a top piped full: a strand laid down in a ring at its foot, that then climbs inwards on itself to a tip.
type pipedSwirl struct {
	x, y, radius, high float64
	phase, turns       float64
	lap                float64    // how fat its strand is: a fat one lies over its neighbours, which are pushed under it
	uneven             [2]float64 // how the hand and the pressure waver along the strand
	lean               vector     // of its top, of the radius; z unused
	far                float64    // how far it reaches at the most, of the radius
	oval, sin, cos     float64    // how much longer than round, and which way
	room               [4]float64 // how far it reaches back and on along the loaf and to both sides, mm: a wall presses it together
	tip                swirlTop
	portion            uint8
}

// swirlTop is where the bag was drawn off.
type swirlTop struct {
	high   float64 // of the swirl's height
	bend   vector  // of its foot
	broken float64 // the part of it that is left
}

// newSwirl pipes a swirl that reaches about so far, of one of three fatnesses, 0 to 2: a hand presses longer here, turns faster there, and draws off
// this way and that.
func newSwirl(d *script.Dice, reach float64, fat int) pipedSwirl {
	s := pipedSwirl{
		radius: reach * d.Between(0.92, 1.1) * (swirlLeast + swirlWider*float64(fat)), high: d.Between(0.84, 1.14), phase: d.Float(), turns: d.Between(3, 3.6),
		lap:  swirlLap + swirlFatter*float64(fat) + d.Between(-0.06, 0.06),
		oval: 1 + swirlOval*d.Float(),
	}
	s.lean = drawn(d, swirlLean)
	s.sin, s.cos = math.Sincos(d.Between(0, math.Pi))
	s.tip = swirlTop{high: swirlTip * d.Between(0.6, 1), bend: drawn(d, tipCurl), broken: min(1, d.Between(0.7, 1.7))}
	s.uneven = [2]float64{d.Between(0, 2*math.Pi), d.Between(0, 2*math.Pi)}
	return s
}

// drawn is a way, so far at the most.
func drawn(d *script.Dice, most float64) vector {
	sin, cos := math.Sincos(d.Between(0, 2*math.Pi))
	far := most * math.Sqrt(d.Float())
	return vector{far * cos, far * sin, 0}
}

// within presses the swirl together where the walls of a loaf are nearer than it reaches, and draws it out to one that it all but reaches.
func (s *pipedSwirl) within(long, wide float64) {
	for k, to := range [4]float64{s.x, long - s.x, s.y, wide - s.y} {
		s.room[k] = s.radius
		if to+wallMostMM < wallMost*s.radius {
			s.room[k] = max(wallLeast*s.radius, to+wallMostMM)
		}
		s.far = max(s.far, (s.room[k]/s.radius*(1+wallFills)+strandStrays)*s.oval)
	}
}

// off is a place as seen from the middle of the swirl's rounds at that height, in radii.
func (s *pipedSwirl) off(x, y float64) (dx, dy float64) {
	reachX, reachY := s.room[1], s.room[3]
	if x < s.x {
		reachX = s.room[0]
	}
	if y < s.y {
		reachY = s.room[2]
	}
	dx, dy = (x-s.x)/reachX, (y-s.y)/reachY
	if r := math.Sqrt(dx*dx + dy*dy); r < 1 {
		dx, dy = dx-s.lean.x*(1-r), dy-s.lean.y*(1-r)
	}
	return dx, dy
}

// lies is how far out on the swirl a place lies, 1 at its foot, and where about it, in turns.
func (s *pipedSwirl) lies(x, y float64) (u, angle float64) {
	dx, dy := s.off(x, y)
	a, b := (dx*s.cos+dy*s.sin)/s.oval, (dy*s.cos-dx*s.sin)*s.oval
	u = math.Sqrt(a*a + b*b)
	if dy < 0 && s.room[2] != s.radius || dy > 0 && s.room[3] != s.radius {
		xx, yy := dx*dx, dy*dy
		u *= 1 - wallFills*min(1, u)*4*xx*yy/max(1e-9, (xx+yy)*(xx+yy))
	}
	return u, math.Atan2(dy, dx) / (2 * math.Pi)
}

// over is the height once the swirl is piped over what stands so high already: it presses that down to itself, and its outer round rides up on it.
func (s *pipedSwirl) over(z, x, y, u, angle float64) float64 {
	own := s.at(x, y, u, angle)
	if own <= 0 {
		return z
	}
	if z <= 0 {
		return own
	}
	own += swirlRides * min(z, own) * smooth((u-0.45)/0.3) * smooth((1.1-u)/0.1)
	z -= max(0, z-own) * smooth((min(1, swirlRim+swirlFat*s.lap*s.lap)-u)/swirlPress)
	return softer(own, z, swirlSoft*s.high)
}

// softer is the greater of two heights, going over into each other where they differ by less than soft.
func softer(a, b, soft float64) float64 {
	near := max(0, 1-math.Abs(a-b)/soft)
	return max(a, b) + near*near*soft/4
}

// at is the height of a swirl at a place that lies so on it.
func (s *pipedSwirl) at(x, y, u, angle float64) float64 {
	z := s.rounds(u, angle)
	if u < 2*tipWide {
		dx, dy := s.off(x, y)
		z += s.tip.at(dx/tipWide, dy/tipWide)
	}
	return s.high * z
}

// at is the height of a tip, of its swirl's, at a place by the radius of its foot: drawn out thin, it bends over, and where it is broken a slanted
// face is left.
func (t *swirlTop) at(x, y float64) float64 {
	r := math.Hypot(x, y)
	if r >= 1 {
		return 0
	}
	x, y = x-t.bend.x*(1-r), y-t.bend.y*(1-r)
	if r = math.Hypot(x, y); r >= 1 {
		return 0
	}
	z := (1 - r) * (1 - r) * (1 + 0.9*r)
	if t.broken < 1 {
		z = min(z, max(0, t.broken+0.2*(x*t.bend.y-y*t.bend.x)))
	}
	return t.high * z
}
