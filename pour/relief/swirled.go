package relief

import (
	"math"

	"pourbench/pour/script"
)

// A swirl of a top piped full, figures by eye, no source.
const (
	swirlLean   = 0.16  // how far its top leans over at the most, of its radius
	swirlOval   = 0.1   // how much longer than round it is at the most
	swirlLap    = 0.06  // how fat the leanest is, of its height
	swirlFatter = 0.22  // and the next one
	swirlLeast  = 0.93  // how far the leanest reaches
	swirlWider  = 0.08  // and how much further the next one
	swirlRides  = 0.4   // how much its outer round is lifted by what it lies on, of how high that stands
	swirlHides  = 0.03  // so much higher a neighbour must stand than the mean of a later swirl to show, of its height
	swirlFat    = 0.15  // and how much more where that is fat
	swirlRound  = 0.13  // over which a swirl rounds to the crease where it meets the other
	swirlFolds  = 0.25  // how near in height two swirls are where the folds of both tell which shows, of its height
	swirlJags   = 0.22  // and how far they do
	swirlCrease = 0.085 // how deep that is
	creaseMost  = 0.3   // and at the most, of what is there
	swirlSmears = 0.8   // and how far rounds and ridges are smeared there
	swirlLow    = 0.15  // so high something must lie there, to be felt in full
	swirlDented = 0.1   // over which the neighbour is pushed in there
	swirlSoft   = 0.035 // how softly strands go over into each other, of its height
	wallMostMM  = 0.7   // so far a nozzle goes past where the wall lets its strand lie
	wallLeast   = 0.55  // and no nearer than that is a swirl pressed together there, of its radius
	wallMost    = 1.22  // and farther off than that it is not drawn out to it
	wallFills   = 0.09  // how much further it is pressed out into the corners there
)

// pipedSwirl is one swirl of a top piped full: a strand laid down in a ring at its foot, that then climbs inwards on itself to a tip.
type pipedSwirl struct {
	x, y, radius, high float64
	phase, turns       float64
	lap                float64    // how fat its strand is: a fat one lies over its neighbours, which are pushed under it
	uneven             [2]float64 // how the hand and the pressure waver along the strand
	way                float64    // 1 or -1: which way round it is piped
	roll               float64    // how far the star goes about the strand in a turn, of once
	star               float64    // how far the ridges of the nozzle stand out, of half a strand's height
	lean               vector     // of its top, of the radius; z unused
	far                float64    // how far it reaches at the most, of the radius
	oval, sin, cos     float64    // how much longer than round, and which way
	room               [4]float64 // how far it reaches back and on along the loaf and to both sides, mm: a wall presses it together
	tip                swirlTop
	mean               [meanRings + 2]float64 // how high it stands so far out, all round: without rounds and ridges
	portion            uint8
}

// meanRings is at how many distances from its middle, to its radius, the mean height of a swirl is known.
const meanRings = 24

// newSwirl pipes a swirl that reaches about so far, of one of three fatnesses, 0 to 2: a hand presses longer here, turns faster there, and draws off
// this way and that.
func newSwirl(d *script.Dice, reach float64, fat int) pipedSwirl {
	s := pipedSwirl{
		radius: reach * d.Between(0.92, 1.1) * (swirlLeast + swirlWider*float64(fat)), high: d.Between(0.82, 1.14), phase: d.Float(), turns: d.Between(turnsLeast, turnsMost),
		way: 1, roll: d.Between(rollLeast, rollMost),
		lap:  swirlLap + swirlFatter*float64(fat) + d.Between(-0.06, 0.06),
		star: ridgeHigh, oval: 1 + swirlOval*d.Float(),
	}
	s.lean = drawn(d, swirlLean)
	s.sin, s.cos = math.Sincos(d.Between(0, math.Pi))
	s.tip = newSwirlTop(d)
	s.uneven = [2]float64{d.Between(0, 2*math.Pi), d.Between(0, 2*math.Pi)}
	s.level()
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
	return u, s.way * math.Atan2(dy, dx) / (2 * math.Pi)
}

// level works out how high the swirl stands in the mean, running out softly at its foot.
func (s *pipedSwirl) level() {
	const ways = 12
	for k := range s.mean {
		u := float64(k) / meanRings
		for i := range ways {
			s.mean[k] += s.high * s.rounds(u, (float64(i)+0.5)/ways-0.5) / ways * smooth((1.05-u)/0.35)
		}
	}
}

// stands is how high the swirl stands in the mean so far out.
func (s *pipedSwirl) stands(u float64) float64 {
	k := min(u*meanRings, meanRings+0.999)
	i := int(k)
	return s.mean[i] + (k-float64(i))*(s.mean[i+1]-s.mean[i])
}

// heap is what has been piped at a place so far: how high it stands, with its rounds and ridges and without.
type heap struct{ z, mean float64 }

// over is the heap once the swirl is piped over it, and whether the swirl shows there. Its outer round rides up on what lies there and hides it, rounds
// and ridges and all; beyond a crease the one before shows, pushed in a little.
func (s *pipedSwirl) over(h heap, x, y, u, angle float64) (heap, bool) {
	mean := s.stands(u)
	lies := smooth(h.mean / (swirlLow * s.high)) // it is not felt where hardly anything lies under it
	ride := (swirlRides*h.mean + s.high*(swirlHides+swirlFat*s.lap*s.lap)*lies) * smooth((u-0.3)/0.4)
	apart := mean + ride - h.mean
	own := -1.0
	if h.mean > 0 && math.Abs(apart) < swirlFolds*s.high {
		if own = s.at(x, y, u, angle); own > 0 {
			apart += swirlJags * (own - mean - h.z + h.mean)
		}
	}
	if apart < 0 && h.z > 0 {
		t := lies * squared(1-min(1, -apart/(swirlDented*s.high)))
		if t == 0 || own <= 0 {
			return h, false
		}
		h.z += t * (swirlSmears*(h.mean-h.z) - min(swirlCrease*s.high, creaseMost*h.z))
		return h, false
	}
	if own < 0 {
		own = s.at(x, y, u, angle)
	}
	if own <= 0 {
		return heap{h.z, max(h.mean, mean)}, false
	}
	if h.mean <= 0 {
		return heap{own, mean}, true
	}
	t := lies * squared(1-min(1, max(0, apart)/(swirlRound*s.high)))
	z := max(own, mean/2) + ride
	return heap{z + t*(swirlSmears*(mean+ride-z)-min(swirlCrease*s.high, creaseMost*z)), mean + ride}, true
}

func squared(v float64) float64 { return v * v }

// softer is the greater of two heights, going over into each other where they differ by less than soft.
func softer(a, b, soft float64) float64 {
	near := max(0, 1-math.Abs(a-b)/soft)
	return max(a, b) + near*near*soft/4
}

// at is the height of a swirl at a place that lies so on it.
func (s *pipedSwirl) at(x, y, u, angle float64) float64 {
	z := s.rounds(u, angle)
	if u < s.tip.reach() {
		dx, dy := s.off(x, y)
		z = softer(z, s.tip.at(dx, s.way*dy), tipSoft)
	}
	return s.high * z
}
