package swirl

import (
	"context"
	"math"
	"sync"
	"sync/atomic"

	"pourbench/pour/script"
)

const (
	workers   = 2   // rows of a picture are shared between this many goroutines
	bandTiles = 6   // rows of tiles a worker takes at a time
	tileMM    = 0.6 // a tile this small is looked at as a whole when its origins vary smoothly
	mostTile  = 16  // pixels
)

// Face is the cut side of a bar, ready to be drawn at any size. It never changes, so it may be drawn from several
// goroutines at once.
type Face struct {
	at     float64 // mm along the loaf
	box    Box
	level  float64
	tracer tracer
}

// Face makes ready the cross-section at x mm along the loaf; x is brought into the mould. It costs about a millisecond.
func (s *Swirl) Face(x float64) *Face {
	f := &Face{at: clamp(x, 0, s.recipe.Box.L), box: s.recipe.Box, level: s.level}
	f.tracer.prepare(s, f.at, true)
	return f
}

// Label returns the portion at y mm across and z mm up, or [Empty] above the batter.
func (f *Face) Label(y, z float64) int {
	if len(f.tracer.slabs) == 0 || z > f.level {
		return Empty
	}
	o := f.tracer.trace(clamp(y, 0, f.box.W), max(0, z))
	if label := f.tracer.label(&o); label != none {
		return int(label)
	}
	return Empty
}

// Draft draws the face w by h pixels with one sample in each, for a picture that must follow every key press.
func (f *Face) Draft(dst *Picture, w, h int) {
	dst.Reset(w, h)
	Share(dst.H, func(j int) bool {
		z := f.box.H * (1 - (float64(j)+0.5)/float64(h))
		for i := range w {
			if label := f.Label(f.box.W*(float64(i)+0.5)/float64(w), z); label != Empty {
				dst.Pixels[j*w+i] = Pixel{Portion: [3]uint8{uint8(label)}, Part: [3]uint8{255}}
			}
		}
		return true
	})
}

// Share runs do for 0 to n-1 on the workers until one returns false.
func Share(n int, do func(i int) bool) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range workers {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				if !do(i) {
					return
				}
			}
		})
	}
	wait.Wait()
}

// Refine draws the face w by h pixels with smooth edges. It stops early with ctx's error, leaving dst half drawn.
func (f *Face) Refine(ctx context.Context, dst *Picture, w, h int) error {
	return f.refine(ctx, dst, w, h, func(int) {})
}

// refine is [Face.Refine], telling of pixels as they are drawn.
func (f *Face) refine(ctx context.Context, dst *Picture, w, h int, tell func(n int)) error {
	dst.Reset(w, h)
	if dst.W == 0 || dst.H == 0 || len(f.tracer.slabs) == 0 {
		return ctx.Err()
	}
	size := 1
	for size < mostTile && float64(2*size)*max(f.box.W/float64(w), f.box.H/float64(h)) <= tileMM {
		size *= 2
	}
	rows := (h + size - 1) / size
	Share((rows+bandTiles-1)/bandTiles, func(band int) bool {
		if ctx.Err() != nil {
			return false
		}
		r := newRefiner(f, dst, size)
		from, to := band*bandTiles, min(rows, (band+1)*bandTiles)
		r.band(from, to)
		tell((min(to*size, h) - from*size) * w) // the last tiles may reach beyond the picture
		return true
	})
	if ctx.Err() == nil {
		dst.veins, dst.cut = f.veins(dst), f
	}
	return ctx.Err()
}

// refiner draws bands of tiles. A tile whose four corners and middle come from places that vary evenly is a [patch];
// any other is quartered, down to a pixel, which is then sampled in full. Comparing where points come from, not only which portion they show, is what finds filaments thinner than a tile.
type refiner struct {
	f            *Face
	dst          *Picture
	size         int
	perX, perY   float64 // mm per pixel
	upper, lower []sample
}

// sample is a traced point.
type sample struct {
	origin
	label uint8
	empty bool
}

func newRefiner(f *Face, dst *Picture, size int) *refiner {
	n := (dst.W+size-1)/size + 1
	both := make([]sample, 2*n)
	return &refiner{
		f: f, dst: dst, size: size, perX: f.box.W / float64(dst.W), perY: f.box.H / float64(dst.H),
		upper: both[:n], lower: both[n:],
	}
}

func (r *refiner) band(from, to int) {
	r.corners(from, r.upper)
	for row := from; row < to; row++ {
		r.corners(row+1, r.lower)
		for i := range len(r.upper) - 1 {
			r.tile(i*r.size, row*r.size, r.size, &r.upper[i], &r.upper[i+1], &r.lower[i], &r.lower[i+1])
		}
		r.upper, r.lower = r.lower, r.upper
	}
}

func (r *refiner) corners(row int, dst []sample) {
	for i := range dst {
		dst[i] = r.at(float64(i*r.size), float64(row*r.size))
	}
}

// inFace turns pixels from the upper left corner into mm across and up.
func (r *refiner) inFace(x, y float64) (across, up float64) {
	return min(x*r.perX, r.f.box.W), max(0, r.f.box.H-y*r.perY)
}

// at traces the point at (x, y) pixels from the upper left corner.
func (r *refiner) at(x, y float64) (s sample) {
	across, up := r.inFace(x, y)
	if s.empty = up > r.f.level+1e-9; s.empty {
		return s
	}
	s.origin = r.f.tracer.trace(across, up)
	s.label = r.f.tracer.label(&s.origin)
	s.empty = s.label == none
	return s
}

// tile draws the square of size pixels at (x, y) with the corners a b over c d.
func (r *refiner) tile(x, y, size int, a, b, c, d *sample) {
	if x >= r.dst.W || y >= r.dst.H {
		return
	}
	if size == 1 {
		r.pixel(x, y, a, b, c, d)
		return
	}
	half := float64(size) / 2
	fx, fy := float64(x), float64(y)
	m := r.at(fx+half, fy+half)
	if p, ok := r.patch(&[5]*sample{a, b, c, d, &m}, x, y, size); ok {
		p.draw(x, y, size)
		return
	}
	n := r.at(fx+half, fy)
	w := r.at(fx, fy+half)
	e := r.at(fx+2*half, fy+half)
	s := r.at(fx+half, fy+2*half)
	k := size / 2
	r.tile(x, y, k, a, &n, &w, &m)
	r.tile(x+k, y, k, &n, b, &m, &e)
	r.tile(x, y+k, k, &w, &m, c, &s)
	r.tile(x+k, y+k, k, &m, &e, &s, d)
}

// pixel draws one pixel from its corners; the middle is traced only where they do not settle it.
func (r *refiner) pixel(x, y int, a, b, c, d *sample) {
	spread := math.Inf(1)
	if !a.empty && !b.empty && !c.empty && !d.empty {
		spread = max(a.p.away(d.p), b.p.away(c.p), a.p.away(b.p), c.p.away(d.p))
		if spread < plainMM && a.label == b.label && a.label == c.label && a.label == d.label &&
			a.slab == b.slab && a.slab == c.slab && a.slab == d.slab {
			r.fill(x, y, 1, a.label)
			return
		}
	}
	m := r.at(float64(x)+0.5, float64(y)+0.5)
	corners := [5]*sample{a, b, c, d, &m}
	if spread <= spreadMM {
		if p, ok := r.patch(&corners, x, y, 1); ok {
			p.draw(x, y, 1)
			return
		}
	}
	if r.perX < sharpMM {
		r.vote(x, y, &corners)
		return
	}
	r.full(x, y, &corners)
}

func (r *refiner) fill(x, y, size int, label uint8) {
	px := Pixel{Portion: [3]uint8{label}, Part: [3]uint8{255}}
	if label == none {
		px = Pixel{}
	}
	for j := y; j < min(y+size, r.dst.H); j++ {
		row := r.dst.Pixels[j*r.dst.W : (j+1)*r.dst.W]
		for i := x; i < min(x+size, r.dst.W); i++ {
			row[i] = px
		}
	}
}

const (
	plainMM = 1    // a pixel of one label whose corners come from places this near hides nothing
	sharpMM = 0.09 // pixels smaller than this are averaged over their corners and middle alone
)

// vote averages the corners and the middle of one pixel, which weighs as much as the corners together.
func (r *refiner) vote(x, y int, s *[5]*sample) {
	var t tally
	for i, v := range s {
		if !v.empty {
			t.add(v.label, uint16(1+3*(i/4)))
		}
	}
	r.dst.Pixels[y*r.dst.W+x] = t.pixel()
}

// full traces four more points of one pixel, one in each quarter and no two in one row or column, and twelve more
// where three portions meet. A corner is shared with other pixels and weighs half.
func (r *refiner) full(x, y int, s *[5]*sample) {
	var t tally
	for i, v := range s {
		if !v.empty {
			t.add(v.label, uint16(1+i/4))
		}
	}
	pixel := script.NewDice(int64(x)<<32|int64(y), 0)
	hash := pixel.Next()
	flip := hash&1 != 0
	r.quarters(&t, x, y, 0.36, 0.16, flip)
	if t.n > 2 {
		r.quarters(&t, x, y, 0.40, 0.28, !flip)
		r.quarters(&t, x, y, 0.24, 0.06, !flip)
		r.quarters(&t, x, y, 0.46, 0.10, flip)
	}
	r.dst.Pixels[y*r.dst.W+x] = t.pixel()
}

// quarters traces the points (u, v) off the middle of a pixel, and the same turned by a quarter three times.
func (r *refiner) quarters(t *tally, x, y int, u, v float64, flip bool) {
	if flip {
		u, v = v, u
	}
	for range 4 {
		if s := r.at(float64(x)+0.5+u, float64(y)+0.5+v); !s.empty {
			t.add(s.label, 2)
		}
		u, v = -v, u
	}
}

// reverse4 turns the four low bits of k round.
func reverse4(k int) int { return k&1<<3 | k&2<<1 | k&4>>1 | k&8>>3 }
