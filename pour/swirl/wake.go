package swirl

import "math"

// wakes is how batter that a comb was drawn through goes on turning behind the tines: here and there a round of it, over its whole height, about an
// upright line. Turning a disk at every height keeps volume, as the flow stays level; the disks lie apart from one another.
type wakes struct {
	height float64 // mm, of the batter
	foot   float64 // mm, up to which nothing turns; from there up it turns ever more
	list   []curl
}

// curl is one round of batter.
type curl struct {
	x, y, half float64 // mm, its middle and how far it reaches
	angle      float64 // radians, in the middle at the surface
}

// Curls as tines leave them: by eye, no source.
const (
	curlLeast = 0.55 // of the most: how far a curl reaches at least
	curlMild  = 0.4  // of the most: by how much it turns at least
	curlEndMM = 30.  // from the ends of the loaf the comb is turned:
	curlEnd   = 1.4  // times further they turn there
)

// curling is how far wakes reach and by how much they turn at most, mm and radians; for how many places to the cm² one is tried, of which those are
// taken that are free; and from what part of the height up they turn.
type curling struct{ half, angle, tries, foot float64 }

// broadly and finely are how the batter sways between the tines, and how it rolls in behind them.
func broadly() curling { return curling{half: 24, angle: 0.7, tries: 1} }
func finely() curling  { return curling{half: 13, angle: 0.75, tries: 0.15} }

// turn carries a point along (dir 1) or back (dir -1), so far up of the height over the foot, as what lies there holds on.
func (c *curl) turn(x, y, up, dir float64) (float64, float64) {
	e, f := (x-c.x)/c.half, (y-c.y)/c.half
	q := 1 - e*e - f*f
	if q <= 0 {
		return x, y
	}
	up = clamp(up, 0, 1)
	sin, cos := math.Sincos(dir * c.angle * q * q * up * (2 - up))
	return c.x + c.half*(e*cos-f*sin), c.y + c.half*(e*sin+f*cos)
}

func (c *wakes) move(x, y, z, dir float64) (float64, float64) {
	for i := range c.list {
		at := &c.list[i]
		if e, f := x-at.x, y-at.y; e*e+f*f < at.half*at.half {
			return at.turn(x, y, (z-c.foot)/(c.height-c.foot), dir)
		}
	}
	return x, y
}

// curl lets the batter turn behind what was drawn through it.
func (b *builder) curl(size curling) {
	c := &wakes{height: b.level, foot: size.foot * b.level}
	most := min(size.half, 0.45*min(b.Box.W, b.Box.L))
	for range int(size.tries * b.Box.L * b.Box.W / 100) {
		half := most * b.d.Between(curlLeast, 1)
		at := curl{x: b.d.Between(half, b.Box.L-half), y: b.d.Between(half, b.Box.W-half), half: half}
		at.angle = b.d.Sign() * b.d.Between(curlMild, 1) * size.angle * b.thick(1.15, 0.75)
		if min(at.x, b.Box.L-at.x) < curlEndMM {
			at.angle *= curlEnd
		}
		if c.free(&at) {
			c.list = append(c.list, at)
		}
	}
	b.add(op{wakes: c})
}

// free says whether a curl lies apart from the others.
func (c *wakes) free(at *curl) bool {
	for i := range c.list {
		if math.Hypot(at.x-c.list[i].x, at.y-c.list[i].y) < at.half+c.list[i].half {
			return false
		}
	}
	return true
}
