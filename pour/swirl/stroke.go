package swirl

import "math"

const (
	wallRampMM    = 6    // at least within this of a wall a stroke's flow fades, so that none crosses it
	wallRampShare = 0.6  // and within this share of the stroke's radius
	strokeSpacing = 0.25 // of the radius: the longest step of a stroke; keeps the return error of RK4 under 0.5 mm
)

// mostDrag is how far batter is dragged in one step of RK4 at most, of the radius of what is dragged with it: what a wire stretches most would
// otherwise not come back to within 0.5 mm.
const mostDrag = 0.27

type vec2 struct{ y, z float64 }

// stroke is a round rod, or the head of a falling stream, drawn along a path in every cross-section of the loaf.
// It drags the batter at its centre along and pushes a return flow round itself; nothing moves further off than radius.
type stroke struct {
	path        []vec2 // mm; knots close enough to be single steps
	hands       hands  // how the far end of it is led otherwise, and how it bends
	radius      float64
	grip        float64 // 0 slips through, 1 drags the batter at its centre along
	slip        waver   // takes from the grip, a part here and there, up to all of it
	ebb         wobble  // takes from the grip along the loaf where it is over 0, by its square; elsewhere the grip is whole
	ease        float64 // mm of the path from either end over which its grip comes and goes; 0: it is there at once
	pace        float64 // how long its steps are against the usual: longer where it hardly grips, shorter where a wall is close; 0: as long
	width       float64 // of the mould
	level       float64 // of the batter while the stroke is drawn
	skin        float64 // mm, under the surface, within which its flow fades; 0: as at the other walls
	foot        float64 // mm, over the bottom, within which its flow fades; 0: as at the other walls
	still       bool    // leaves the surface in place: what is poured next joins what lies there without a break
	pivot       vec2    // the stroke is stretched about this point
	shift       wobble  // mm across
	sway, depth wobble  // stretch across and up
	lean        wobble  // mm across for every mm up
	waver       waver   // of every part of the path by itself
	girth       waver   // by what part of radius more or less it drags along, a part here and there
}

// course is how a stroke's path is shifted, stretched and slanted in one cross-section, and what part of its grip it has there.
type course struct{ shift, sway, depth, lean, x, grip float64 }

// at returns the path's knot where the stroke passes a cross-section.
func (s *stroke) at(i int, c course) vec2 {
	p := s.hands.at(i, s.path[i], c.x)
	off := s.waver.at(c.x, float64(i)/float64(max(1, len(s.path)-1)))
	return vec2{
		clamp(s.pivot.y+(p.y-s.pivot.y)*c.sway+(p.z-s.pivot.z)*c.lean+c.shift+off.y, 1, s.width-1),
		max(1, s.pivot.z+(p.z-s.pivot.z)*c.depth+off.z),
	}
}

func (s *stroke) drift(x float64) course {
	off := max(0, s.ebb.at(x))
	return course{s.shift.at(x), s.sway.at(x), s.depth.at(x), s.lean.at(x), x, max(0, 1-off*off)}
}

// move carries a point along with the stroke (dir 1) or undoes it (dir -1).
func (s *stroke) move(x, y, z, dir float64) (float64, float64) {
	c := s.drift(x)
	n := len(s.path) - 1
	for i := range n {
		k := i
		if dir < 0 {
			k = n - 1 - i
		}
		d := s.step(k, s.at(k, c), s.at(k+1, c), c)
		parts := d.parts()
		for j := range parts {
			if dir < 0 {
				e := d.part(parts-1-j, parts)
				y, z = e.undo(y, z)
			} else {
				e := d.part(j, parts)
				y, z = e.apply(y, z)
			}
		}
	}
	return y, z
}

// step is the step from knot i, at one place, to the next, at another.
func (s *stroke) step(i int, from, to vec2, c course) drag {
	part := float64(i) / float64(len(s.path)-1)
	d := newDragOf(from, to, s, s.radius*(1+s.girth.at(c.x, part).y))
	hold := s.hold(i)
	if s.slip.amp != 0 {
		hold *= max(0, 1-math.Abs(s.slip.at(c.x, part).y))
	}
	d.gy, d.gz = hold*c.grip*d.gy, hold*c.grip*d.gz
	return d
}

// stride is the longest step of a stroke, mm.
func (s *stroke) stride() float64 {
	if s.pace == 0 {
		return s.radius * strokeSpacing
	}
	return s.radius * strokeSpacing * s.pace
}

// hold is what part of its grip a stroke has got in the step from knot i: it comes gently where the path begins and is let go gently where it ends.
func (s *stroke) hold(i int) float64 {
	if s.ease == 0 {
		return 1
	}
	n := len(s.path) - 1
	t := clamp((float64(min(i, n-1-i))+0.5)*s.stride()/s.ease, 0, 1) // knots are as far apart, or a little less
	return t * t * (3 - 2*t)
}

// drag is one straight step of a stroke, ready to be evaluated.
type drag struct {
	cy, cz   float64 // centre at the start
	dy, dz   float64 // how far the centre goes
	gy, gz   float64 // how far the batter at the centre is dragged
	inv      float64 // 1/radius²
	far      float64 // mm², a point this far from the middle of the step stays where it is
	w, level float64
	ry       float64 // 1/width of the fade at the side walls; 0 far from them
	rz, rt   float64 // the same at the bottom and at the top
	still    bool    // the fade at the top is flat there
	y0, y1   float64 // mm, between these and z0 and z1 a point meets no fade on its way
	z0, z1   float64
}

func newDrag(from, to vec2, s *stroke) drag { return newDragOf(from, to, s, s.radius) }

// newDragOf is newDrag where the stroke drags what lies within another radius than its own.
func newDragOf(from, to vec2, s *stroke, radius float64) drag {
	d := drag{
		cy: from.y, cz: from.z, dy: to.y - from.y, dz: to.z - from.z,
		inv: 1 / (radius * radius), w: s.width, level: s.level, still: s.still,
	}
	far := radius + 0.5*math.Hypot(d.dy, d.dz)
	d.far = far * far
	d.gy, d.gz = s.grip*d.dy, s.grip*d.dz
	reach := max(wallRampMM, wallRampShare*radius)
	fade := min(reach, s.width/2)
	if min(from.y, to.y)-radius < fade || max(from.y, to.y)+radius > s.width-fade {
		d.ry = 1 / fade
	}
	fade = min(reach, s.level/2)
	if s.foot > 0 {
		fade = min(s.foot, s.level/2)
	}
	if min(from.z, to.z)-radius < fade {
		d.rz = 1 / fade
	}
	fade = min(reach, s.level/2)
	if s.skin > 0 {
		fade = min(s.skin, s.level/2)
	}
	if max(from.z, to.z)+radius > s.level-fade {
		d.rt = 1 / fade
	}
	d.clear(math.Hypot(d.gy, d.gz))
	return d
}

// clear works out where a point meets no fade if it goes no further than most mm.
func (d *drag) clear(most float64) {
	d.y0, d.y1, d.z0, d.z1 = math.Inf(-1), math.Inf(1), math.Inf(-1), math.Inf(1)
	if d.ry != 0 {
		d.y0, d.y1 = 1/d.ry+most, d.w-1/d.ry-most
	}
	if d.rz != 0 {
		d.z0 = 1/d.rz + most
	}
	if d.rt != 0 {
		d.z1 = d.level - 1/d.rt - most
	}
}

// parts is in how many parts a step is gone: in more where it drags batter far for how little lies about it.
func (d *drag) parts() int {
	return max(1, int(math.Ceil(math.Sqrt((d.gy*d.gy+d.gz*d.gz)*d.inv)/mostDrag)))
}

// part is one of so many even parts of a step.
func (d *drag) part(i, of int) drag {
	p := *d
	if of == 1 {
		return p
	}
	by := 1 / float64(of)
	p.dy, p.dz, p.gy, p.gz = by*d.dy, by*d.dz, by*d.gy, by*d.gz
	p.cy, p.cz = d.cy+float64(i)*p.dy, d.cz+float64(i)*p.dz
	far := 1/math.Sqrt(d.inv) + 0.5*math.Hypot(p.dy, p.dz)
	p.far = far * far
	return p
}

// velocity is the rotated gradient of the stream function l·h·B with the centre at (cy, cz):
// l the uniform flow, h = (1-ρ²/R²)⁴ the reach of the rod, B a window that is 0 on the walls.
func (d *drag) velocity(y, z, cy, cz float64) (vy, vz float64) {
	e, f := y-cy, z-cz
	q := 1 - (e*e+f*f)*d.inv
	if q <= 0 {
		return 0, 0
	}
	l := d.gy*f - d.gz*e
	h := q * q * q
	k := 8 * h * d.inv * l
	h *= q
	by, byd, bz, bzd := d.window(y, z)
	b := by * bz
	return (d.gy*h-k*f)*b + l*h*by*bzd, (d.gz*h+k*e)*b - l*h*byd*bz
}

// open is velocity far from every wall, at (e, f) from the centre; it is small so that it is built into its callers.
func (d *drag) open(e, f float64) (vy, vz float64) {
	q := 1 - (e*e+f*f)*d.inv
	if q <= 0 {
		return 0, 0
	}
	h := q * q * q
	k := 8 * h * d.inv * (d.gy*f - d.gz*e)
	h *= q
	return d.gy*h - k*f, d.gz*h + k*e
}

// window is the fade at the walls and its slopes.
func (d *drag) window(y, z float64) (by, byd, bz, bzd float64) {
	by, bz = 1, 1
	if d.ry != 0 {
		by, byd = ramp(y, d.w, d.ry)
	}
	if up := max(z, 0) * d.rz; up < 1 && d.rz != 0 {
		bz, bzd = up*(2-up), 2*(1-up)*d.rz
	}
	if down := max(d.level-z, 0) * d.rt; down < 1 && d.rt != 0 {
		bz, bzd = down*(2-down), -2*(1-down)*d.rt
		if d.still {
			bz, bzd = bz*bz, 2*bz*bzd
		}
	}
	return by, byd, bz, bzd
}

// ramp rises from 0 at both ends of [0, t] to 1 over the distance 1/inv, and gives its slope; outside it stays as on the wall.
func ramp(v, t, inv float64) (b, slope float64) {
	v = clamp(v, 0, t)
	if s := v * inv; s < 1 {
		return s * (2 - s), 2 * (1 - s) * inv
	}
	if s := (t - v) * inv; s < 1 {
		return s * (2 - s), -2 * (1 - s) * inv
	}
	return 1, 0
}

// undoOpen is undo far from every wall; (e, f) is how far the point lies from the middle of the step.
func (d *drag) undoOpen(e, f float64) (dy, dz float64) {
	hy, hz := 0.5*d.dy, 0.5*d.dz
	ay, az := d.open(e-hy, f-hz)
	by, bz := d.open(e-0.5*ay, f-0.5*az)
	cy, cz := d.open(e-0.5*by, f-0.5*bz)
	ey, ez := d.open(e-cy+hy, f-cz+hz)
	return (ay + 2*(by+cy) + ey) / -6, (az + 2*(bz+cz) + ez) / -6
}

// undo follows the flow backwards over the step by one fourth-order Runge-Kutta step; the centre moves along meanwhile.
func (d *drag) undo(y, z float64) (float64, float64) {
	y1, z1 := d.cy+d.dy, d.cz+d.dz
	ym, zm := d.cy+0.5*d.dy, d.cz+0.5*d.dz
	e, f := y-ym, z-zm
	if e*e+f*f >= d.far {
		return y, z
	}
	if y > d.y0 && y < d.y1 && z > d.z0 && z < d.z1 {
		dy, dz := d.undoOpen(e, f)
		return y + dy, z + dz
	}
	ay, az := d.velocity(y, z, y1, z1)
	by, bz := d.velocity(y-0.5*ay, z-0.5*az, ym, zm)
	cy, cz := d.velocity(y-0.5*by, z-0.5*bz, ym, zm)
	ey, ez := d.velocity(y-cy, z-cz, d.cy, d.cz)
	return y - (ay+2*(by+cy)+ey)/6, z - (az+2*(bz+cz)+ez)/6
}

// apply is the same forwards.
func (d *drag) apply(y, z float64) (float64, float64) {
	y1, z1 := d.cy+d.dy, d.cz+d.dz
	ym, zm := d.cy+0.5*d.dy, d.cz+0.5*d.dz
	ay, az := d.velocity(y, z, d.cy, d.cz)
	by, bz := d.velocity(y+0.5*ay, z+0.5*az, ym, zm)
	cy, cz := d.velocity(y+0.5*by, z+0.5*bz, ym, zm)
	ey, ez := d.velocity(y+cy, z+cz, y1, z1)
	return y + (ay+2*(by+cy)+ey)/6, z + (az+2*(bz+cz)+ez)/6
}

// resample walks a dense path and keeps knots that are equally far apart, at most spacing.
func resample(path []vec2, spacing float64) []vec2 { return places(path, even(path, spacing)) }

// even is where along a dense path knots are equally far apart, at most spacing: after how many of its own knots.
func even(path []vec2, spacing float64) []float64 {
	total := 0.0
	for i := 1; i < len(path); i++ {
		total += math.Hypot(path[i].y-path[i-1].y, path[i].z-path[i-1].z)
	}
	n := max(1, int(math.Ceil(total/spacing)))
	out := make([]float64, 1, n+1)
	done, want := 0.0, total/float64(n)
	for i := 1; i < len(path) && len(out) < n; i++ {
		a, b := path[i-1], path[i]
		seg := math.Hypot(b.y-a.y, b.z-a.z)
		for len(out) < n && done+seg >= want*float64(len(out)) && seg > 0 {
			out = append(out, float64(i-1)+(want*float64(len(out))-done)/seg)
		}
		done += seg
	}
	return append(out, float64(len(path)-1))
}

// places is a path at places between its knots.
func places(path []vec2, at []float64) []vec2 {
	out := make([]vec2, len(at))
	for k, u := range at {
		i := max(0, min(int(u), len(path)-2))
		t := u - float64(i)
		a, b := path[i], path[min(i+1, len(path)-1)]
		out[k] = vec2{a.y + t*(b.y-a.y), a.z + t*(b.z-a.z)}
	}
	return out
}
