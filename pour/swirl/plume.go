package swirl

import "math"

// plume is what a falling stream does to the batter it dives into: along its axis everything is drawn down from the surface into a
// narrowing neck, at its foot it parts to both sides and rolls up again as the rim of a head. It is the steady flow of a stream function
// that is 0 on the axis, at the surface, and with its slope at the rim and at the foot: so areas are kept, and nothing outside moves.
type plume struct {
	level float64 // mm, of the surface it was poured through
	width float64 // of the mould
	line  wobble  // mm across, of the axis at the surface
	lean  wobble  // by how much the axis leans to the right, of its depth
	reach wobble  // mm, how far to either side batter moves
	depth wobble  // mm, of the foot below the surface
	roll  wobble  // how far the fastest batter is carried, in depths
}

// sunk is a plume in one cross-section.
type sunk struct {
	at, lean   float64
	level      float64
	inv, deep  float64 // 1/reach and 1/depth, 1/mm
	reach      float64
	down, side float64 // mm, how far it goes down on the axis, and to the sides, at the greatest
	steps      int
}

const (
	plumeSteps  = 6      // Runge-Kutta steps for a batter that is carried one depth, kept within 0.1 mm of the flow
	leastPlume  = 3      // mm, a narrower or shallower plume moves nothing
	plumePeak   = 0.4142 // greatest value of t(1-t⁴)³
	softRoll    = 0.03   // how gently a roll fades to none
	plumeMargin = 0.5    // mm, that a plume keeps from the walls
)

// at makes the plume ready for a cross-section. Near a wall it is narrower.
func (p *plume) at(x float64) sunk {
	s := sunk{level: p.level, lean: p.lean.at(x)}
	depth := clamp(p.depth.at(x), 0, p.level-plumeMargin)
	s.at = clamp(p.line.at(x), 0, p.width)
	foot := s.at + s.lean*depth
	room := min(s.at, foot, p.width-s.at, p.width-foot) - plumeMargin
	reach := min(p.reach.at(x), room)
	if reach < leastPlume || depth < leastPlume {
		return s
	}
	fade := clamp(min(reach, depth)/leastPlume-1, 0, 1)                      // gone where there is no room, and not at once: a cut along the loaf would show it
	roll := fade * 0.5 * (p.roll.at(x) + math.Hypot(p.roll.at(x), softRoll)) // fades out along the loaf without a kink
	s.reach, s.inv, s.deep = reach, 1/reach, 1/depth
	s.down = roll * depth / plumePeak
	s.side = roll * reach / plumePeak
	s.steps = 1 + int(plumeSteps*roll)
	return s
}

// velocity of the batter at a place; ψ = down·reach·u(1-u²)³·t(1-t⁴)³, u across from the axis and t down from the surface, both to 1.
func (s *sunk) velocity(y, z float64) (vy, vz float64) {
	t := (s.level - z) * s.deep
	u := (y - s.at - s.lean*(s.level-z)) * s.inv
	q := 1 - u*u
	if t <= 0 || t >= 1 || q <= 0 {
		return 0, 0
	}
	r := t * t * t * t
	g := 1 - r
	vz = -s.down * q * q * (1 - 7*u*u) * t * g * g * g
	vy = -s.side*u*q*q*q*g*g*(1-13*r) - s.lean*vz
	return vy, vz
}

// move carries a point along (dir 1) or back (dir -1).
func (s *sunk) move(y, z, dir float64) (float64, float64) {
	if s.steps == 0 || z <= s.level-1/s.deep || z >= s.level {
		return y, z
	}
	h := dir / float64(s.steps)
	for range s.steps {
		ay, az := s.velocity(y, z)
		by, bz := s.velocity(y+0.5*h*ay, z+0.5*h*az)
		cy, cz := s.velocity(y+0.5*h*by, z+0.5*h*bz)
		dy, dz := s.velocity(y+h*cy, z+h*cz)
		y += h * (ay + 2*(by+cy) + dy) / 6
		z += h * (az + 2*(bz+cz) + dz) / 6
	}
	return y, min(z, s.level)
}

func (p *plume) move(x, y, z, dir float64) (float64, float64) {
	s := p.at(x)
	return s.move(y, z, dir)
}
