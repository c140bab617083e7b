package relief

import (
	"math"
	"slices"

	"pourbench/pour/shape"
)

// Piece is an embed where it is set: upright, of one outline at every height, or a ball, or a round rod that lies along the loaf.
type Piece struct {
	Outline  shape.Outline // seen from above; of a ball its disc, of a round rod what it covers
	Turn     float64       // radians
	X, Y     float64       // of its middle
	High     float64       // of the whole piece
	Out      float64       // of that, above the base
	Ball     bool
	RoundRod bool
	Stuff    uint8
}

func (p Piece) equal(o Piece) bool {
	return p.Turn == o.Turn && p.X == o.X && p.Y == o.Y && p.High == o.High && p.Out == o.Out && p.Ball == o.Ball && p.RoundRod == o.RoundRod && p.Stuff == o.Stuff &&
		p.Outline.Along == o.Outline.Along && p.Outline.Across == o.Outline.Across && slices.Equal(p.Outline.Corners, o.Outline.Corners)
}

// solid is a piece ready to be looked at.
type solid struct {
	Piece
	sin, cos     float64
	top, bottom  float64
	radius       float64 // of a ball or a round rod
	reachX       float64 // to each side of its middle
	reachY       float64
	cornerNormal []shape.Point // outwards, of the edge that begins at each corner; turned
	corners      []shape.Point // turned, about the middle
	plane        float64       // one looks from
}

func (p Piece) solid() (solid, bool) {
	s := solid{Piece: p, top: p.Out, bottom: p.Out - p.High}
	s.sin, s.cos = math.Sincos(p.Turn)
	s.reachX, s.reachY = p.Outline.Extent(p.Turn)/2, p.Outline.ExtentAcross(p.Turn)/2
	switch {
	case p.Ball:
		s.radius = p.High / 2
		s.reachX, s.reachY = s.radius, s.radius
	case p.RoundRod:
		s.radius = p.High / 2
		s.reachY = s.radius
	}
	if area := p.Outline.Area(); !(area > 0) || !(p.High > 0) {
		return s, false
	}
	for _, c := range p.Outline.Corners {
		s.corners = append(s.corners, shape.Point{X: c.X*s.cos - c.Y*s.sin, Y: c.X*s.sin + c.Y*s.cos})
	}
	s.faceOutwards()
	return s, true
}

// faceOutwards works out which way the sides of a piece with corners face.
func (s *solid) faceOutwards() {
	twice := 0.0
	next := func(i int) shape.Point { return s.corners[(i+1)%len(s.corners)] }
	for i, c := range s.corners {
		twice += c.X*next(i).Y - next(i).X*c.Y
	}
	sign := math.Copysign(1, twice)
	for i, c := range s.corners {
		dx, dy := next(i).X-c.X, next(i).Y-c.Y
		long := max(math.Hypot(dx, dy), 1e-12)
		s.cornerNormal = append(s.cornerNormal, shape.Point{X: sign * dy / long, Y: -sign * dx / long})
	}
}

// near says whether a place may lie over the piece.
func (s *solid) near(x, y float64) bool {
	return math.Abs(x-s.X) <= s.reachX && math.Abs(y-s.Y) <= s.reachY
}

// rim is the part of a piece's top, at its edge, that is drawn as if it were broken, so that it reads as solid: by eye.
const rim = 0.16

// over is the height of the piece's top over a place.
func (s *solid) over(x, y float64) (z float64, ok bool) {
	if !s.near(x, y) {
		return 0, false
	}
	x, y = x-s.X, y-s.Y
	switch {
	case s.Ball:
		q := s.radius*s.radius - x*x - y*y
		return s.top - s.radius + math.Sqrt(max(0, q)), q > 0
	case s.RoundRod:
		q := s.radius*s.radius - y*y
		return s.top - s.radius + math.Sqrt(max(0, q)), q > 0
	}
	e := s.edge(x, y)
	if e >= 1 {
		return 0, false
	}
	z = s.top
	if e > 1-rim {
		t := (e - 1 + rim) / rim
		z -= t * t * 0.5 * rim * min(s.reachX, s.reachY, s.High)
	}
	return z, true
}

// has says whether a place lies inside the piece.
func (s *solid) has(x, y, z float64) bool {
	if z >= s.top || z <= s.bottom {
		return false
	}
	x, y = x-s.X, y-s.Y
	up := z - (s.top - s.radius)
	switch {
	case s.Ball:
		return x*x+y*y+up*up < s.radius*s.radius
	case s.RoundRod:
		return y*y+up*up < s.radius*s.radius && math.Abs(x) < s.reachX
	}
	return s.edge(x, y) < 1
}

// section is how bright a piece is where it is cut: darker at its skin, so that it reads as solid.
func (s *solid) section(x, y, z float64) float64 {
	const skin, dark = 0.16, 0.3
	x, y = x-s.X, y-s.Y
	up := z - (s.top - s.radius)
	near := 0.0 // 1 at the skin
	switch {
	case s.Ball:
		near = math.Sqrt(x*x+y*y+up*up) / s.radius
	case s.RoundRod:
		near = math.Hypot(y, up) / s.radius
	default:
		near = max(s.edge(x, y), math.Abs(2*(z-s.bottom)/(s.top-s.bottom)-1))
	}
	if near < 1-skin {
		return cutBright
	}
	t := (min(near, 1) - 1 + skin) / skin
	return cutBright * (1 - dark*t*t)
}

// edge is where a place about the middle lies between it, 0, and the edge of the outline, 1; outside it is 1 or more.
func (s *solid) edge(x, y float64) float64 {
	if len(s.corners) == 0 {
		u, v := x*s.cos+y*s.sin, y*s.cos-x*s.sin
		return math.Hypot(u/s.Outline.Along, v/s.Outline.Across)
	}
	if !s.within(x, y) {
		return 1
	}
	near := math.Inf(1)
	for i, c := range s.corners {
		near = min(near, away(c, s.corners[(i+1)%len(s.corners)], x, y))
	}
	return max(0, 1-near/min(s.reachX, s.reachY))
}

// within says whether a place about the middle lies inside the corners.
func (s *solid) within(x, y float64) bool {
	in := false
	for i, a := range s.corners {
		b := s.corners[(i+1)%len(s.corners)]
		if (a.Y > y) != (b.Y > y) && x < a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// away is how far a place lies from the edge between two corners.
func away(a, b shape.Point, x, y float64) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := ((x-a.X)*dx + (y-a.Y)*dy) / max(dx*dx+dy*dy, 1e-12)
	t = min(max(t, 0), 1)
	return math.Hypot(x-a.X-t*dx, y-a.Y-t*dy)
}

// span is where a line along the loaf, or across it, lies inside the piece: y mm across and z mm up, or x mm along.
func (s *solid) span(at, z float64, across bool) (from, to float64, ok bool) {
	if z >= s.top || z <= s.bottom {
		return 0, 0, false
	}
	middle, reach := s.X, s.reachX
	off := at - s.Y
	if across {
		middle, reach, off = s.Y, s.reachY, at-s.X
	}
	half := 0.0
	switch {
	case s.Ball:
		up := z - (s.top - s.radius)
		half = math.Sqrt(max(0, s.radius*s.radius-up*up-off*off))
	case s.RoundRod && across:
		up := z - (s.top - s.radius)
		half = math.Sqrt(max(0, s.radius*s.radius-up*up))
		if math.Abs(off) > s.reachX {
			return 0, 0, false
		}
	case s.RoundRod:
		up := z - (s.top - s.radius)
		if up*up+off*off < s.radius*s.radius {
			half = reach
		}
	default:
		return s.cut(off, middle, across)
	}
	return middle - half, middle + half, half > 0
}

// cut is where a line at a distance from the middle lies inside the outline; of one with bays, the stretch that ends first past the plane in the way
// one looks.
func (s *solid) cut(off, middle float64, across bool) (from, to float64, ok bool) {
	if len(s.corners) == 0 {
		return s.cutOval(off, middle, across)
	}
	var room [16]float64
	at := room[:0]
	for i, a := range s.corners {
		b := s.corners[(i+1)%len(s.corners)]
		if across {
			a, b = shape.Point{X: a.Y, Y: a.X}, shape.Point{X: b.Y, Y: b.X}
		}
		if (a.Y > off) != (b.Y > off) {
			at = append(at, middle+a.X+(off-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	if len(at) < 2 {
		return 0, 0, false
	}
	slices.Sort(at)
	if across { // one looks towards the wall at the left
		for i := len(at) - 2; i >= 0; i -= 2 {
			if at[i] < s.plane {
				return at[i], at[i+1], true
			}
		}
		return at[0], at[1], true
	}
	for i := 0; i+1 < len(at); i += 2 {
		if at[i+1] > s.plane {
			return at[i], at[i+1], true
		}
	}
	return at[len(at)-2], at[len(at)-1], true
}

// cutOval is [solid.cut] of an ellipse: A t² + 2 B t + C = 0 in its own turned axes.
func (s *solid) cutOval(off, middle float64, across bool) (from, to float64, ok bool) {
	dx, dy, px, py := s.cos, -s.sin, off*s.sin, off*s.cos // the line's way and start in the oval's axes
	if across {
		dx, dy, px, py = s.sin, s.cos, off*s.cos, -off*s.sin
	}
	a, b := s.Outline.Along, s.Outline.Across
	qa := dx*dx/(a*a) + dy*dy/(b*b)
	qb := px*dx/(a*a) + py*dy/(b*b)
	qc := px*px/(a*a) + py*py/(b*b) - 1
	root := qb*qb - qa*qc
	if root <= 0 {
		return 0, 0, false
	}
	root = math.Sqrt(root)
	return middle + (-qb-root)/qa, middle + (-qb+root)/qa, true
}

// rounded is how bright a piece is, seen from the side, so far in from where it ends to the sides and so high up: its upper edge catches light, its
// upright ones turn away and its foot lies in the shade of what it stands in. By eye, no source.
func (s *solid) rounded(in, up float64) float64 {
	const edgeMM, edgeLight, edgeDark, footMM, footDark = 1.5, 0.4, 0.3, 2.6, 0.42
	near := func(away, wide float64) float64 { return squared(max(0, 1-max(0, away)/wide)) }
	bright := 1 - footDark*near(up, footMM)
	if s.radius > 0 { // round as it is, its light goes by the way it faces
		return bright
	}
	return bright + edgeLight*near(s.top-up, edgeMM) - edgeDark*near(in, edgeMM)
}

// normal is which way the piece's skin faces at a place on it.
func (s *solid) normal(x, y, z float64) vector {
	x, y = x-s.X, y-s.Y
	switch {
	case s.Ball:
		return vector{x, y, z - (s.top - s.radius)}.unit()
	case s.RoundRod:
		return vector{0, y, z - (s.top - s.radius)}.unit()
	case len(s.corners) == 0:
		u, v := (x*s.cos+y*s.sin)/(s.Outline.Along*s.Outline.Along), (y*s.cos-x*s.sin)/(s.Outline.Across*s.Outline.Across)
		return vector{u*s.cos - v*s.sin, u*s.sin + v*s.cos, 0.15 * math.Hypot(u, v)}.unit()
	}
	best, most := 0, math.Inf(-1)
	for i, n := range s.cornerNormal {
		c := s.corners[i]
		if d := n.X*(x-c.X) + n.Y*(y-c.Y); d > most {
			best, most = i, d
		}
	}
	return vector{s.cornerNormal[best].X, s.cornerNormal[best].Y, 0.15}.unit()
}

// vector is a direction.
type vector struct{ x, y, z float64 }

func (v vector) unit() vector {
	long := math.Sqrt(v.x*v.x + v.y*v.y + v.z*v.z)
	if long == 0 {
		return vector{0, 0, 1}
	}
	return vector{v.x / long, v.y / long, v.z / long}
}

func (v vector) dot(o vector) float64 { return v.x*o.x + v.y*o.y + v.z*o.z }
