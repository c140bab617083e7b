package swirl

import "math"

// gyre is the batter going round after a tool that is led in a round: in every cross-section it goes round along the level lines of
// sin(πu)·sin(πv) over a cell, u and v from wall to wall of the cell. They are rounds at the eye and ever more the cell's own outline towards
// its walls, where the turning dies away: there is no rim. What goes round goes furthest at the eye.
type gyre struct {
	at, half      vec2    // mm, the middle of the cell, and how far it reaches
	shift, sink   wobble  // mm, of the middle across and up
	swell         wobble  // of how far it reaches
	angle         float64 // radians, at the eye
	gain          wobble  // of the angle
	width, height float64 // mm: the cell ends at the walls at the latest
}

// gyred is a gyre in one cross-section.
type gyred struct {
	y0, z0     float64 // mm, the lower left corner of the cell
	wide, high float64 // mm
	py, pz     float64 // π to the mm
	angle      float64
}

// leastCellMM is how wide and high a cell is at least: a smaller one moves nothing.
const leastCellMM = 4

func (g *gyre) cut(x float64) gyred {
	by := g.swell.at(x)
	cy, cz, hy, hz := g.at.y+g.shift.at(x), g.at.z+g.sink.at(x), g.half.y*by, g.half.z*by
	r := gyred{y0: max(0, cy-hy), z0: max(0, cz-hz), angle: g.angle * g.gain.at(x)}
	r.wide, r.high = min(g.width, cy+hy)-r.y0, min(g.height, cz+hz)-r.z0
	if min(r.wide, r.high) < leastCellMM {
		return gyred{}
	}
	r.py, r.pz = math.Pi/r.wide, math.Pi/r.high
	return r
}

// turn carries a point along (dir 1) or back (dir -1).
//
// With Y = πu and Z = πv the flow Y' = sin Y cos Z, Z' = -cos Y sin Z keeps c = sin Y sin Z, and p = cos Y follows p'² = (1-p²)(κ²-p²) with
// κ² = 1-c²: it is κ·sn of the time, a function of Jacobi. The addition theorem of sn (NIST DLMF 22.8.1) then gives the place after any time
// from sn, cn and dn of that time alone, and as the time is the same along each level line, area is kept whatever the time on each.
func (r *gyred) turn(y, z, dir float64) (float64, float64) {
	e, f := y-r.y0, z-r.z0
	if e <= 0 || f <= 0 || e >= r.wide || f >= r.high {
		return y, z
	}
	sy, p := sincos(e * r.py)
	sz, q := sincos(f * r.pz)
	c := sy * sz
	sn, cn := math.Sincos(dir * r.angle * falling(c))
	ss := sn * sn
	cd := cn * math.Sqrt(max(0, 1-(1-c*c)*ss))
	p1 := (p*cd - sn*sy*sy*q) / (1 - p*p*ss)
	q1 := (q*cd + sn*sz*sz*p) / (1 - q*q*ss)
	return r.y0 + acos(p1)/r.py, r.z0 + acos(q1)/r.pz
}

// falling is what part of the angle at the eye a level line turns: evenly less from eye to wall, but for both ends, where it changes gently.
func falling(c float64) float64 { return c * math.Sqrt(c) * (1.6 - 0.6*c) }

// acos is the angle of a cosine, to 2e-8: Abramowitz and Stegun, Handbook of Mathematical Functions, 4.4.46. It is quicker than [math.Acos].
func acos(c float64) float64 {
	x := min(math.Abs(c), 1)
	a := math.Sqrt(1-x) * (1.5707963050 + x*(-0.2145988016+x*(0.0889789874+x*(-0.0501743046+x*(0.0308918810+x*(-0.0170881256+x*(0.0066700901-x*0.0012624911)))))))
	if c < 0 {
		return math.Pi - a
	}
	return a
}

func (g *gyre) move(x, y, z, dir float64) (float64, float64) {
	r := g.cut(x)
	return r.turn(y, z, dir)
}
