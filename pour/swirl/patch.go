package swirl

import "math"

const (
	spreadMM = 6   // the corners of an even tile come from places no further apart
	flatMM   = 1.5 // a tile of one label whose corners come from places this near has no hidden detail
	evenPart = 0.5 // of a pixel: between the corners of an even tile a border is drawn about this near its place
)

// patch is an even tile: places in between its corners are taken in proportion, without tracing.
type patch struct {
	r          *refiner
	x, y       int
	size       float64
	plain      bool  // label shows everywhere
	label      uint8 // where plain, or where a place lies below floor
	slab       int32
	floor      float64 // mm; lower places had been poured before the slab's group
	a, b, c, d vec3
}

// patch tries to make a patch of a tile from its corners (a b over c d) and its middle.
func (r *refiner) patch(s *[5]*sample, x, y, size int) (p patch, ok bool) {
	t := &r.f.tracer
	p = patch{r: r, x: x, y: y, size: float64(size), floor: math.Inf(-1)}
	alike, mixed := true, false
	p.slab = s[0].slab
	for _, v := range s {
		if v.empty {
			return p, false
		}
		alike = alike && v.label == s[0].label
		mixed = mixed || t.group[v.slab] != t.group[p.slab]
		p.slab = max(p.slab, v.slab)
	}
	var q [5]vec3
	for i, v := range s {
		q[i] = v.p
	}
	if mixed && !r.meet(&p, s, &q) {
		return p, false
	}
	spread := max(q[0].away(q[3]), q[1].away(q[2]), q[0].away(q[1]), q[2].away(q[3]))
	if spread > spreadMM || !r.even(&q, size) {
		return p, false
	}
	if alike && !mixed && spread < flatMM {
		p.plain, p.label = true, s[0].label
	}
	p.a, p.b, p.c, p.d = q[0], q[1], q[2], q[3]
	return p, true
}

// even reports whether the middle of a tile comes from near enough to the mean of its corners: the difference is
// carried back through the tile's own stretch, because what lies thin shows the least of it.
func (r *refiner) even(q *[5]vec3, size int) bool {
	ex := (q[0].x+q[1].x+q[2].x+q[3].x)/4 - q[4].x
	ey := (q[0].y+q[1].y+q[2].y+q[3].y)/4 - q[4].y
	ez := (q[0].z+q[1].z+q[2].z+q[3].z)/4 - q[4].z
	ay, az := (q[1].y-q[0].y+q[3].y-q[2].y)/2, (q[1].z-q[0].z+q[3].z-q[2].z)/2
	by, bz := (q[2].y-q[0].y+q[3].y-q[1].y)/2, (q[2].z-q[0].z+q[3].z-q[1].z)/2
	det := ay*bz - az*by
	limit := evenPart / float64(size) * math.Abs(det)
	return math.Abs(ex) < 0.1*r.perX*float64(size) && math.Abs(ey*bz-ez*by) < limit && math.Abs(ay*ez-az*ey) < limit
}

// meet prepares a patch across the level between two pours: every sample is taken back to when the later one was
// poured, where those below the level all show one portion; it fails when they do not.
func (r *refiner) meet(p *patch, s *[5]*sample, q *[5]vec3) bool {
	t := &r.f.tracer
	g, low := t.group[p.slab], t.lowest(p.slab)
	p.slab, p.floor = low, t.slabs[low].bottom
	below := -1
	for i, v := range s {
		if t.group[v.slab] == g {
			continue
		}
		if below >= 0 && v.label != s[below].label {
			return false
		}
		below = i
		p.label = v.label
		fx, fy := r.place(p, i)
		q[i] = t.traceTo(fx, fy, int(t.step[low])).p
	}
	return true
}

// place is where in the face corner i of a patch lies, or its middle.
func (r *refiner) place(p *patch, i int) (y, z float64) {
	u := [5]float64{0, 1, 0, 1, 0.5}[i]
	v := [5]float64{0, 0, 1, 1, 0.5}[i]
	return r.inFace(float64(p.x)+u*p.size, float64(p.y)+v*p.size)
}

// at gives the portion at (x, y) pixels.
func (p *patch) at(x, y float64) uint8 {
	u, v := (x-float64(p.x))/p.size, (y-float64(p.y))/p.size
	a, b, c, d := (1-u)*(1-v), u*(1-v), (1-u)*v, u*v
	z := a*p.a.z + b*p.b.z + c*p.c.z + d*p.d.z
	if z < p.floor {
		return p.label
	}
	o := origin{slab: p.slab, p: vec3{a*p.a.x + b*p.b.x + c*p.c.x + d*p.d.x, a*p.a.y + b*p.b.y + c*p.c.y + d*p.d.y, z}}
	return p.r.f.tracer.labelNear(&o)
}

// draw fills the part of the patch of size pixels at (x, y), quartering it until a quarter is plain or one pixel.
func (p *patch) draw(x, y, size int) {
	if x >= p.r.dst.W || y >= p.r.dst.H {
		return
	}
	if p.plain {
		p.r.fill(x, y, size, p.label)
		return
	}
	if size == 1 {
		p.pixel(x, y)
		return
	}
	fx, fy, s := float64(x), float64(y), float64(size)
	m := p.at(fx+s/2, fy+s/2)
	if size <= 4 && p.at(fx, fy) == m && p.at(fx+s, fy) == m && p.at(fx, fy+s) == m && p.at(fx+s, fy+s) == m {
		p.r.fill(x, y, size, m)
		return
	}
	k := size / 2
	p.draw(x, y, k)
	p.draw(x+k, y, k)
	p.draw(x, y+k, k)
	p.draw(x+k, y+k, k)
}

const patchSamples = 16

// pixel takes sixteen points of a pixel, no two in one row or column.
func (p *patch) pixel(x, y int) {
	var t tally
	for k := range patchSamples {
		t.add(p.at(float64(x)+(float64(k)+0.5)/patchSamples, float64(y)+(float64(reverse4(k))+0.5)/patchSamples), 1)
	}
	p.r.dst.Pixels[y*p.r.dst.W+x] = t.pixel()
}

// away is the greatest of the three distances.
func (p vec3) away(q vec3) float64 {
	return max(math.Abs(p.x-q.x), math.Abs(p.y-q.y), math.Abs(p.z-q.z))
}
