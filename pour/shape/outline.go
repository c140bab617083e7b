package shape

import (
	"math"
	"slices"
)

// Point is a place seen from above, mm: X along the loaf, away from its end A, and Y across it.
type Point struct{ X, Y float64 }

// Outline is what a piece covers seen from above: an oval by its half axes, or the corners it lies between. The zero value is a point.
type Outline struct {
	Along, Across float64 // half axes of an oval, mm
	Corners       []Point // of a piece with corners, about any origin, going round it either way
}

// RoundOutline is a disc or a ball of a diameter.
func RoundOutline(diameter float64) Outline { return OvalOutline(diameter, diameter) }

// OvalOutline is an ellipse, so long along the loaf and so wide across it before it is turned.
func OvalOutline(length, width float64) Outline { return Outline{Along: length / 2, Across: width / 2} }

// BoxOutline is a rectangle, so long along the loaf and so wide across it before it is turned.
func BoxOutline(length, width float64) Outline {
	x, y := length/2, width/2
	return Outline{Corners: []Point{{-x, -y}, {x, -y}, {x, y}, {-x, y}}}
}

// support is how far the outline reaches from its origin in a direction: √(a²cos² + b²sin²) for an oval, the furthest projected corner for the
// others. Derived.
func (o Outline) support(direction float64) float64 {
	sin, cos := math.Sincos(direction)
	if len(o.Corners) == 0 {
		return math.Hypot(o.Along*cos, o.Across*sin)
	}
	far := math.Inf(-1)
	for _, c := range o.Corners {
		far = math.Max(far, c.X*cos+c.Y*sin)
	}
	return far
}

// Extent is how much of the loaf's length the outline takes once it is turned, mm: the largest less the smallest of its projected points. That is
// a·|cos α| + b·|sin α| for a box and 2·√(a²cos²α + b²sin²α) for half axes a and b. Derived.
func (o Outline) Extent(turn float64) float64 { return o.support(-turn) + o.support(math.Pi-turn) }

// ExtentAcross is how much of the loaf's width it takes then.
func (o Outline) ExtentAcross(turn float64) float64 { return o.Extent(turn - math.Pi/2) }

// Centred is the outline moved so that, turned, its origin is the middle of the length and the width it takes.
func (o Outline) Centred(turn float64) Outline {
	if len(o.Corners) == 0 {
		return o
	}
	along, across := (o.support(-turn)-o.support(math.Pi-turn))/2, (o.support(math.Pi/2-turn)-o.support(-math.Pi/2-turn))/2
	sin, cos := math.Sincos(turn)
	x, y := along*cos+across*sin, across*cos-along*sin
	moved := Outline{Corners: slices.Clone(o.Corners)}
	for i := range moved.Corners {
		moved.Corners[i].X -= x
		moved.Corners[i].Y -= y
	}
	return moved
}

// Area is the area of the outline in mm²: π·a·b, or the sum of the triangles over its corners. Derived.
func (o Outline) Area() float64 {
	if len(o.Corners) == 0 {
		return math.Pi * o.Along * o.Across
	}
	twice := 0.0
	for i, c := range o.Corners {
		next := o.Corners[(i+1)%len(o.Corners)]
		twice += c.X*next.Y - next.X*c.Y
	}
	return math.Abs(twice) / 2
}

// Perimeter is the length of the outline's edge in mm. An ellipse's is its integral over the turn by the trapezium rule, which is exact to the last
// digits for a smooth closed curve that is not much flatter than one in ten. Derived.
func (o Outline) Perimeter() float64 {
	sum := 0.0
	if len(o.Corners) == 0 {
		const steps = 256
		for i := range steps {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
			sum += math.Hypot(o.Along*sin, o.Across*cos) * 2 * math.Pi / steps
		}
		return sum
	}
	for i, c := range o.Corners {
		next := o.Corners[(i+1)%len(o.Corners)]
		sum += math.Hypot(next.X-c.X, next.Y-c.Y)
	}
	return sum
}

// Enclosing is the diameter of the smallest circle around the outline, mm: the length to reckon with when a piece may come to lie any way round.
func (o Outline) Enclosing() float64 {
	if len(o.Corners) == 0 {
		return 2 * math.Max(o.Along, o.Across)
	}
	return 2 * enclosing(o.Corners).radius
}

// Gap is the least room between two outlines whose origins stand so far apart, mm: below 0 they overlap by so much. It is the widest strip that
// lies between them, looked for in steps of four degrees and across every edge, so that it is never larger than the true gap. Pieces with corners that
// go inwards are taken as if a thread were drawn round them. Derived.
func Gap(a Outline, turnA float64, b Outline, turnB float64, apart Point) float64 {
	widest := math.Inf(-1)
	try := func(direction float64) {
		sin, cos := math.Sincos(direction)
		strip := apart.X*cos + apart.Y*sin - a.support(direction-turnA) - b.support(direction+math.Pi-turnB)
		widest = math.Max(widest, strip)
	}
	const steps = 90
	for i := range steps {
		try(float64(i) * 2 * math.Pi / steps)
	}
	try(math.Atan2(apart.Y, apart.X))
	for _, normal := range a.normals(turnA) {
		try(normal)
	}
	for _, normal := range b.normals(turnB) {
		try(normal)
	}
	return widest
}

// normals are the directions across the edges of a turned piece with corners, both ways.
func (o Outline) normals(turn float64) []float64 {
	out := make([]float64, 0, 2*len(o.Corners))
	for i, c := range o.Corners {
		next := o.Corners[(i+1)%len(o.Corners)]
		normal := math.Atan2(next.Y-c.Y, next.X-c.X) + math.Pi/2 + turn
		out = append(out, normal, normal+math.Pi)
	}
	return out
}

// circle is a circle by its middle and radius.
type circle struct {
	middle Point
	radius float64
}

// holds reports whether the point lies in the circle or on it, to rounding.
func (c circle) holds(p Point) bool {
	return math.Hypot(p.X-c.middle.X, p.Y-c.middle.Y) <= c.radius*(1+1e-12)+1e-12
}

// enclosing is the smallest circle around points, grown point by point: one that does not hold the next point has it on its edge. Derived.
func enclosing(points []Point) circle {
	c := circle{middle: points[0]}
	for i, p := range points {
		if c.holds(p) {
			continue
		}
		c = circle{middle: p}
		for j, q := range points[:i] {
			if c.holds(q) {
				continue
			}
			c = between(p, q)
			for _, r := range points[:j] {
				if !c.holds(r) {
					c = through(p, q, r)
				}
			}
		}
	}
	return c
}

// between is the circle over two points as its diameter.
func between(p, q Point) circle {
	return circle{Point{(p.X + q.X) / 2, (p.Y + q.Y) / 2}, math.Hypot(p.X-q.X, p.Y-q.Y) / 2}
}

// through is the circle through three points; over the longest way between them where they lie in one line.
func through(p, q, r Point) circle {
	ax, ay, bx, by := q.X-p.X, q.Y-p.Y, r.X-p.X, r.Y-p.Y
	twice := 2 * (ax*by - ay*bx)
	if math.Abs(twice) <= 1e-12*(math.Hypot(ax, ay)*math.Hypot(bx, by)) {
		return slices.MaxFunc([]circle{between(p, q), between(q, r), between(p, r)}, func(a, b circle) int {
			return int(math.Copysign(1, a.radius-b.radius))
		})
	}
	aa, bb := ax*ax+ay*ay, bx*bx+by*by
	x, y := (by*aa-ay*bb)/twice, (ax*bb-bx*aa)/twice
	return circle{Point{p.X + x, p.Y + y}, math.Hypot(x, y)}
}
