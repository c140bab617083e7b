package swirl

import "math"

// scrape is what the spoon does as an act's spoonfuls are pushed off it: each is dragged along where it lies, so that one of its sides runs
// out into a tongue over its neighbour and what lies under that comes back the other way. Ropes of batter that fold over do alike. In a
// cross-section each is a stretched disk turning, which keeps area.
type scrape struct {
	width, high float64 // mm, of the mould
	drags       []scraped
}

// scraped is one spoonful's drag: it is strongest at a place along the loaf and gone so far off it.
type scraped struct {
	x, reach   float64 // mm along the loaf
	at         vec2    // mm, the middle
	drift      vec2    // mm to the mm along the loaf, by which the middle moves: the spoon is led askew
	long, wide float64 // mm, half axes of the disk
	tilt       float64 // radians, of its long axis from level
	angle      float64 // radians, at the middle
}

// scraping is a drag in one cross-section.
type scraping struct {
	turned
	sin, cos float64
	y, z     float64 // mm, how far from the middle it reaches across and up
}

// leastRoom is the room to the walls, of its half axes, with which a drag is still made.
const leastRoom = 0.3

// in makes a drag ready for a cross-section of a mould; false where it does nothing. It is smaller near a wall.
func (d *scraped) in(x, width, high float64) (s scraping, ok bool) {
	e := (x - d.x) / d.reach
	if e <= -1 || e >= 1 {
		return s, false
	}
	fade := (1 - e*e) * (1 - e*e)
	s.cy, s.cz = d.at.y+d.drift.y*(x-d.x), d.at.z+d.drift.z*(x-d.x)
	s.sin, s.cos = math.Sincos(d.tilt)
	s.y, s.z = math.Hypot(d.long*s.cos, d.wide*s.sin), math.Hypot(d.long*s.sin, d.wide*s.cos)
	room := min(1, min(s.cy, width-s.cy)/s.y, min(s.cz, high-s.cz)/s.z)
	if room <= leastRoom {
		return s, false
	}
	s.y, s.z = room*s.y, room*s.z
	s.invY, s.invZ = 1/(room*d.long), 1/(room*d.wide)
	s.angle = d.angle * fade * smooth((room-leastRoom)/leastRoom)
	return s, true
}

// drag carries a point along (dir 1) or back (dir -1).
func (s *scraping) drag(y, z, dir float64) (float64, float64) {
	e, f := y-s.cy, z-s.cz
	e, f = (e*s.cos+f*s.sin)*s.invY, (f*s.cos-e*s.sin)*s.invZ
	q := 1 - e*e - f*f
	if q <= 0 {
		return y, z
	}
	sin, cos := math.Sincos(dir * s.angle * q * q)
	e, f = (e*cos-f*sin)/s.invY, (e*sin+f*cos)/s.invZ
	return s.cy + e*s.cos - f*s.sin, s.cz + e*s.sin + f*s.cos
}

func (s *scrape) move(x, y, z, dir float64) (float64, float64) {
	for k := range s.drags {
		if dir < 0 {
			k = len(s.drags) - 1 - k
		}
		if d, ok := s.drags[k].in(x, s.width, s.high); ok {
			y, z = d.drag(y, z, dir)
		}
	}
	return y, z
}
