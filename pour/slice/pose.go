package slice

import "math"

// vec is a place or a direction.
type vec struct{ x, y, z float64 }

func (v vec) dot(o vec) float64       { return v.x*o.x + v.y*o.y + v.z*o.z }
func (v vec) plus(o vec) vec          { return vec{v.x + o.x, v.y + o.y, v.z + o.z} }
func (v vec) times(f float64) vec     { return vec{v.x * f, v.y * f, v.z * f} }
func (v vec) at(d vec, t float64) vec { return v.plus(d.times(t)) }

func (v vec) unit() vec { return v.times(1 / math.Sqrt(v.dot(v))) }

// pose is a block somewhere in the world. Its own x runs from its cut face inwards, y to the right seen on that face, and z up from its foot: a face
// is looked at along x. A tube lies in its block on its side.
type pose struct {
	origin     vec // of its own in the world
	ax, ay, az vec // its own directions in the world
	low, high  vec // of the block, with what stands on it
	flat       float64
}

// out turns a place of its own into one of the world; in the other way round.
func (p *pose) out(v vec) vec { return p.origin.plus(p.way(v)) }

func (p *pose) way(v vec) vec { return p.ax.times(v.x).plus(p.ay.times(v.y)).plus(p.az.times(v.z)) }

func (p *pose) in(v vec) vec { return p.inWay(v.plus(p.origin.times(-1))) }

func (p *pose) inWay(v vec) vec { return vec{p.ax.dot(v), p.ay.dot(v), p.az.dot(v)} }

// corner is one of the eight corners of the block.
func (p *pose) corner(k int) vec {
	c := p.low
	if k&1 != 0 {
		c.x = p.high.x
	}
	if k&2 != 0 {
		c.y = p.high.y
	}
	if k&4 != 0 {
		c.z = p.high.z
	}
	return c
}

// crosses is the stretch of a line through a place of its own that lies in the block below a height.
func (p *pose) crosses(o, d vec, top float64) (near, far float64, ok bool) {
	near, far = math.Inf(-1), math.Inf(1)
	for _, s := range [3][4]float64{{o.x, d.x, p.low.x, p.high.x}, {o.y, d.y, p.low.y, p.high.y}, {o.z, d.z, p.low.z, top}} {
		if math.Abs(s[1]) < 1e-9 {
			if s[0] < s[2] || s[0] > s[3] {
				return 0, 0, false
			}
			continue
		}
		a, b := (s[2]-s[0])/s[1], (s[3]-s[0])/s[1]
		near, far = max(near, min(a, b)), min(far, max(a, b))
	}
	return near, far, near < far && far > 0
}

// lay sets the loaf down where it stood and lays the bar in front of its long side.
func (s *Scene) lay() {
	wide, high := s.recipe.FaceMM()
	thick := s.bar.To - s.bar.From
	rest := s.length() - s.bar.To
	if s.turned {
		rest = s.bar.From
	}
	size := vec{rest, wide, high + s.peakMM}
	s.loaf = pose{ax: vec{x: 1}, ay: vec{y: 1}, az: vec{z: 1}, high: size, flat: high + 0.6*s.peakMM}
	sin, cos := math.Sincos((turnDeg + barTurn) * math.Pi / 180)
	s.piece = pose{
		ax: vec{z: -1}, ay: vec{sin, cos, 0}, az: vec{cos, -sin, 0}, high: vec{thick, wide, size.z}, flat: high + 0.6*s.peakMM,
	}
	back, up := s.piece.az.times(size.z), thick
	if thick > high { // it is drawn apart as it stood, for its face is its narrow side
		s.piece.ax, s.piece.az = s.piece.az, vec{z: 1}
		back, up = s.piece.ax.times(thick), 0
	}
	// The corner of the bar that comes nearest to the loaf keeps the gap.
	y := wide + gapMM - min(0, back.y, back.y+s.piece.ay.y*wide)
	x := besideBar*min(rest, 2*wide) - min(0, back.x)
	s.piece.origin = vec{x, y, up}
}
