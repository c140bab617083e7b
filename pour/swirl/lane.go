package swirl

import "math"

// lane draws columns of a cut along the loaf one beside the other. It traces the borders between columns, each a cross-section of its own; a pixel
// whose corners come from places that lie near each other is a plane between them, and sampled without tracing.
type lane struct {
	l                *Long
	dst              *Picture
	left, mid, right *tracer
	a, b             []sample // at the corners of the pixels, down the left and the right
	p, q             []strand // where those left the lip of a pot
	midway           bool     // mid is ready for this column
}

const (
	laneColumns = 32  // columns drawn one beside the other
	strideMM    = 0.6 // samples this far apart or less are first compared, before those in between are traced
	nearMM      = 2.5 // samples that come from further apart have more between them
	bowPart     = 0.1 // of a pixel: between samples of an even stretch a border is drawn about this near its place
	bowMM       = 0.02
)

func newLane(l *Long, dst *Picture) *lane {
	return &lane{l: l, dst: dst, left: &tracer{}, mid: &tracer{}, right: &tracer{}, a: make([]sample, dst.H+1), b: make([]sample, dst.H+1), p: make([]strand, dst.H+1), q: make([]strand, dst.H+1)}
}

// ready makes a tracer ready for the cross-section at a place in pixels.
func (n *lane) ready(t *tracer, x float64) {
	t.prepare(n.l.s, n.l.from+n.l.long*x/float64(n.dst.W), false)
}

// column draws column i; its left side is the right side of the column before, but for the first.
func (n *lane) column(i int, first bool) {
	n.left, n.right = n.right, n.left
	n.a, n.b, n.p, n.q = n.b, n.a, n.q, n.p
	if first {
		n.ready(n.left, float64(i))
		n.down(n.left, n.a, n.p)
	}
	n.ready(n.right, float64(i+1))
	n.down(n.right, n.b, n.q)
	n.midway = false
	for j := range n.dst.H {
		n.pixel(i, j)
	}
}

func (n *lane) sample(t *tracer, row float64) sample { return n.l.sample(t, row/float64(n.dst.H)) }

// down traces one cross-section, leaving out what lies between samples that vary evenly.
func (n *lane) down(t *tracer, s []sample, of []strand) {
	stride := max(2, int(strideMM*float64(n.dst.H)/n.l.deep))
	s[0] = n.sample(t, 0)
	for last := 0; last < n.dst.H; {
		next := min(last+stride, n.dst.H)
		s[next] = n.sample(t, float64(next))
		n.between(t, s, last, next)
		last = next
	}
	for j := range s {
		of[j] = t.strand(&s[j])
	}
}

func (n *lane) between(t *tracer, s []sample, from, to int) {
	if to-from < 2 {
		return
	}
	mid := (from + to) / 2
	s[mid] = n.sample(t, float64(mid))
	if t.straight(s, from, mid, to) {
		t.fillIn(s, from, mid)
		t.fillIn(s, mid, to)
		return
	}
	n.between(t, s, from, mid)
	n.between(t, s, mid, to)
}

// together says whether two samples come from pours of one group, and from places near each other.
func (t *tracer) together(a, b *sample) bool {
	return !a.empty && !b.empty && t.group[a.slab] == t.group[b.slab] && a.p.away(b.p) <= nearMM
}

// straight says whether a sample comes from about where it would lie between two others.
func (t *tracer) straight(s []sample, from, mid, to int) bool {
	a, m, b := &s[from], &s[mid], &s[to]
	if a.empty && m.empty && b.empty {
		return true
	}
	if !t.together(a, m) || !t.together(m, b) {
		return false
	}
	f := float64(mid-from) / float64(to-from)
	bow := math.Hypot(a.p.y+f*(b.p.y-a.p.y)-m.p.y, a.p.z+f*(b.p.z-a.p.z)-m.p.z)
	return bow <= bowMM+bowPart*math.Hypot(b.p.y-a.p.y, b.p.z-a.p.z)/float64(to-from)
}

// fillIn works out the samples between two.
func (t *tracer) fillIn(s []sample, from, to int) {
	a, b := s[from], s[to]
	for k := from + 1; k < to; k++ {
		s[k] = a
		if !a.empty {
			s[k].p = a.p.towards(b.p, float64(k-from)/float64(to-from))
			s[k].label = t.labelNear(&s[k].origin)
			s[k].empty = s[k].label == none
		}
	}
}

// towards is a part of the way to another place.
func (p vec3) towards(q vec3, part float64) vec3 {
	return vec3{p.x + part*(q.x-p.x), p.y + part*(q.y-p.y), p.z + part*(q.z-p.z)}
}

// pixel draws the pixel of row j from its corners.
func (n *lane) pixel(i, j int) {
	a, b, c, d := &n.a[j], &n.b[j], &n.a[j+1], &n.b[j+1]
	t := n.right
	if turns(n.a, j) || turns(n.b, j) {
		n.torn(i, j, finest)
		return
	}
	if !t.together(a, b) || !t.together(a, c) || !t.together(a, d) || b.p.away(c.p) > nearMM {
		n.torn(i, j, 0)
		return
	}
	px := &n.dst.Pixels[j*n.dst.W+i]
	spread := max(a.p.away(d.p), b.p.away(c.p), a.p.away(b.p), c.p.away(d.p))
	if spread < plainMM && a.label == b.label && a.label == c.label && a.label == d.label && !n.hides(j) {
		*px = Pixel{Portion: [3]uint8{a.label}, Part: [3]uint8{255}}
		return
	}
	var sum tally
	for k := range patchSamples {
		sum.add(n.within(j, k), 1)
	}
	*px = sum.pixel()
}

// within is the portion at sample k of a pixel of row j whose corners come from near each other.
func (n *lane) within(j, k int) uint8 {
	u, v := (float64(k)+0.5)/patchSamples, (float64(reverse4(k))+0.5)/patchSamples
	o := origin{slab: n.a[j].slab, p: n.a[j].p.towards(n.b[j].p, u).towards(n.a[j+1].p.towards(n.b[j+1].p, u), v)}
	return n.right.labelNear(&o)
}

// hides says whether more lies in a pixel of row j than its four corners show, which come from near each other and are of one portion: every third of its
// samples is looked at where what comes from one ribbon left the lip far apart.
func (n *lane) hides(j int) bool {
	if !n.p[j].apart(n.p[j+1]) && !n.q[j].apart(n.q[j+1]) && !n.p[j].apart(n.q[j]) {
		return false
	}
	for k := 0; k < patchSamples; k += 3 {
		if n.within(j, k) != n.a[j].label {
			return true
		}
	}
	return false
}

// turnMM is how far apart the samples before and behind a filament come from at least, mm.
const turnMM = 1.2

// turns says whether the places samples come from turn round between one and the next: what is folded in between lies so thin that neither shows it.
func turns(s []sample, j int) bool {
	if j < 1 || j+2 >= len(s) || s[j-1].empty || s[j].empty || s[j+1].empty || s[j+2].empty {
		return false
	}
	before, behind := s[j].p.minus(s[j-1].p), s[j+2].p.minus(s[j+1].p)
	return before.dot(behind) < -turnMM*turnMM
}

// strand is where a sample left the lip of a pot, if it did.
type strand struct {
	slab int32   // -1: it came from a jug
	side float32 // 0 to 1 along the lip
}

func (t *tracer) strand(s *sample) strand {
	if s.empty {
		return strand{slab: -1}
	}
	n := t.near(&s.origin)
	r, ok := t.slabs[n].fill.(*ribbon)
	if !ok {
		return strand{slab: -1}
	}
	side, _ := r.leaves(s.p.x, s.p.y, s.p.z)
	return strand{n, float32(side)}
}

// apart says whether more than so many mm of what comes over the lip lie between samples of a ribbon: places of it that lie near each other can have
// left far apart.
func (a strand) apart(b strand) bool {
	return a.slab >= 0 && a.slab == b.slab && math.Abs(float64(a.side-b.side)) > plainMM/ribbonMM
}

// torn draws a pixel whose corners come from far apart: down its middle, and its sides where they differ, it is looked at ever
// finer where the samples do not vary evenly, so that a filament much thinner than the pixel is counted for what it is and not hit in one pixel and missed in the next. It is halved
// so often whatever the samples say.
func (n *lane) torn(i, j, halved int) {
	a, b, c, d := &n.a[j], &n.b[j], &n.a[j+1], &n.b[j+1]
	px := &n.dst.Pixels[j*n.dst.W+i]
	if a.empty && b.empty && c.empty && d.empty {
		*px = Pixel{}
		return
	}
	if !n.midway {
		n.ready(n.mid, float64(i)+0.5)
		n.midway = true
	}
	up, down := n.sample(n.mid, float64(j)), n.sample(n.mid, float64(j+1))
	var sum tally
	n.look(&sum, n.mid, float64(j), 1, &up, &down, 8<<finest, halved)
	if a.label != b.label || c.label != d.label { // a border runs down through it
		n.look(&sum, n.left, float64(j), 1, a, c, 4<<finest, halved)
		n.look(&sum, n.right, float64(j), 1, b, d, 4<<finest, halved)
	}
	*px = sum.pixel()
}

// finest is how often a pixel is halved at most.
const finest = 3

// look counts what lies between two samples of a cross-section, size pixels below each other.
func (n *lane) look(sum *tally, t *tracer, row, size float64, a, b *sample, weight uint16, halved int) {
	if size < 1.5/(1<<finest) {
		n.count(sum, a, weight)
		return
	}
	m := n.sample(t, row+size/2)
	if halved <= 0 && t.straight([]sample{*a, m, *b}, 0, 1, 2) {
		for k := range 4 {
			f := (float64(k) + 0.5) / 4
			s := *a
			if !a.empty {
				s.p = a.p.towards(b.p, f)
				s.label = t.labelNear(&s.origin)
			}
			n.count(sum, &s, weight/4)
		}
		return
	}
	n.look(sum, t, row, size/2, a, &m, weight/2, halved-1)
	n.look(sum, t, row+size/2, size/2, &m, b, weight/2, halved-1)
}

func (n *lane) count(sum *tally, s *sample, weight uint16) {
	if !s.empty {
		sum.add(s.label, weight)
	}
}

func (p vec3) minus(q vec3) vec3 { return vec3{p.x - q.x, p.y - q.y, p.z - q.z} }

func (p vec3) dot(q vec3) float64 { return p.x*q.x + p.y*q.y + p.z*q.z }
