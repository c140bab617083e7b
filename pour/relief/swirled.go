package relief

import (
	"math"

	"pourbench/pour/script"
)

// A swirl of a top piped full, figures by eye, no source.
const (
	swirlCoils   = 2.3 // of a strand from the middle of a swirl to its foot
	swirlCord    = 0.2 // how much the strand stands out, of the swirl's height
	swirlGroove  = 0.035
	swirlFoot    = 0.5   // how steeply it would go on beyond its foot, of its height to its radius
	swirlLean    = 0.16  // how far its top leans over at the most, of its radius
	swirlOval    = 0.09  // how much longer than round it is at the most
	swirlEnd     = 0.07  // how much further out than its start its last coil ends, of the radius
	swirlLap     = 0.06  // how fat the leanest is, of its height
	swirlFatter  = 0.2   // and the next one
	swirlTip     = 0.22  // how high its tip stands at the most, of its height
	swirlRim     = 0.73  // where the last coil of a lean one ends that lies on a neighbour, of its radius
	swirlFat     = 0.38  // and how much further that of a fat one
	swirlSoft    = 0.3   // how softly it goes over into the rim, of its height
	swirlScallop = 0.013 // how far the ridges of the nozzle stand out at that rim, of its radius
	swirlRound   = 0.16  // over which the rim is rounded, of its radius
	swirlThick   = 0.12  // how thick the rim lies on a neighbour, of its height
	swirlPress   = 0.24  // so far inside it what stands there has been pressed down to the swirl, of its radius
	tipWide      = 0.15  // radius of the tip's foot, of the swirl's
	tipCurl      = 0.7   // how far the tip bends over at the most, of its foot
)

// pipedSwirl is one swirl of a top piped full.
type pipedSwirl struct {
	x, y, radius, high float64
	phase, wind        float64
	lap                float64 // how fat it is at its foot: a fat one lies over its neighbours, which are pushed under it
	lean               vector  // of its top, of the radius; z unused
	oval, sin, cos     float64 // how much longer than round, and which way
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
		radius: reach * d.Between(0.9, 1.12), high: d.Between(0.84, 1.14), phase: d.Float(), wind: d.Between(0.8, 1.25),
		lap:  swirlLap + swirlFatter*float64(fat) + d.Between(-0.06, 0.06),
		oval: 1 + swirlOval*d.Float(),
	}
	s.lean = drawn(d, swirlLean)
	s.sin, s.cos = math.Sincos(d.Between(0, math.Pi))
	s.tip = swirlTop{high: swirlTip * d.Between(0.5, 1), bend: drawn(d, tipCurl), broken: min(1, d.Between(0.35, 1.5))}
	return s
}

// drawn is a way, so far at the most.
func drawn(d *script.Dice, most float64) vector {
	sin, cos := math.Sincos(d.Between(0, 2*math.Pi))
	far := most * math.Sqrt(d.Float())
	return vector{far * cos, far * sin, 0}
}

// off is a place as seen from the middle of the swirl's coils at that height, in radii.
func (s *pipedSwirl) off(x, y float64) (dx, dy float64) {
	dx, dy = (x-s.x)/s.radius, (y-s.y)/s.radius
	if r := math.Hypot(dx, dy); r < 1 {
		dx, dy = dx-s.lean.x*(1-r), dy-s.lean.y*(1-r)
	}
	return dx, dy
}

// lies is how far out on the swirl a place lies, 1 at its foot, and where about it, in turns.
func (s *pipedSwirl) lies(x, y float64) (u, angle float64) {
	dx, dy := s.off(x, y)
	angle = math.Atan2(dy, dx) / (2 * math.Pi)
	u = math.Hypot((dx*s.cos+dy*s.sin)/s.oval, (dy*s.cos-dx*s.sin)*s.oval)
	const tucked = 0.25 // of a turn, over which the strand ends
	t := angle - s.phase - swirlCoils*s.wind
	t -= math.Floor(t)
	round := t / (1 - tucked)
	if t > 1-tucked {
		round = smooth((1 - t) / tucked)
	}
	return u * (1 + swirlEnd*min(1, u*u)*(round-0.5)), angle
}

// turn is where along the coils a place of a swirl lies, in strands from its middle.
func (s *pipedSwirl) turn(angle, u float64) float64 {
	return swirlCoils*s.wind*math.Sqrt(u)*math.Sqrt(0.35+0.65*u) - angle + s.phase
}

// over is the height once the swirl is piped over what stands so high already: the rim of its last coil lies rounded on that.
func (s *pipedSwirl) over(z, x, y, u, angle float64) float64 {
	rim := swirlRim + swirlFat*s.lap + swirlScallop*(math.Sin(2*math.Pi*(6*angle+3*s.phase))+0.6*math.Sin(2*math.Pi*(11*angle+5*s.phase)))
	if u >= rim {
		return z
	}
	t := max(0, 1-(rim-u)/swirlRound)
	round := math.Sqrt(1 - t*t)
	own, lies := s.at(x, y, u, angle)*round, z+swirlThick*s.high*round
	lies -= max(0, lies-own) * smooth((rim-u)/swirlPress)
	return softer(own, lies, max(1e-9, swirlSoft*s.high*round))
}

// softer is the greater of two heights, going over into each other where they differ by less than soft.
func softer(a, b, soft float64) float64 {
	near := max(0, 1-math.Abs(a-b)/soft)
	return max(a, b) + near*near*soft/4
}

// smooth is the height of a swirl without its strand, of its own, so far out on it.
func (s *pipedSwirl) smooth(u float64) float64 {
	if u >= 1 {
		return swirlFoot * (1 - u)
	}
	return (1-s.lap)*(0.8*(1-u*math.Sqrt(u))+0.2*(1-u)*(1-u)) + s.lap*math.Sqrt(1-u*u*u*u)
}

// at is the height of a swirl at a place that lies so on it; beyond its foot it goes on falling.
func (s *pipedSwirl) at(x, y, u, angle float64) float64 {
	z := s.smooth(u)
	if u >= 1 {
		return s.high * z
	}
	q := s.turn(angle, u)
	q -= math.Floor(q)
	cord := 1 - (2*q-1)*(2*q-1)
	fade := smooth(u/0.3) * (1 - 0.4*u) * min(1, 8*(1-u))
	z += fade * (swirlCord*(cord-2./3) + swirlGroove*math.Cos(6*math.Pi*q))
	if u < 2*tipWide {
		dx, dy := s.off(x, y)
		z += s.tip.at(dx/tipWide, dy/tipWide)
	}
	return s.high * z
}

// at is the height of a tip, of its swirl's, at a place by the radius of its foot: it bends over, and where it is broken a slanted face is left.
func (t *swirlTop) at(x, y float64) float64 {
	r := math.Hypot(x, y)
	if r >= 1 {
		return 0
	}
	x, y = x-t.bend.x*(1-r), y-t.bend.y*(1-r)
	if r = math.Hypot(x, y); r >= 1 {
		return 0
	}
	z := 1 - r*math.Sqrt(r)
	if t.broken < 1 {
		z = min(z, max(0, t.broken+0.5*(x*t.bend.y-y*t.bend.x)))
	}
	return t.high * z
}
