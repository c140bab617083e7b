package swirl

import (
	"context"
	"math"
)

// Long is a cut along the loaf: upright at one place across it, or level like the view from above.
// Every column of its pictures is another cross-section.
type Long struct {
	s      *Swirl
	top    bool
	round  bool    // level in a tube: what is outside its wall is empty
	turned bool    // from above, with the wall at the left at the top
	at     float64 // mm across, or up
	deep   float64 // mm, the picture's height
	from   float64 // mm, the stretch of the loaf that is drawn
	long   float64
}

// Part is the stretch of the cut between two places along the loaf, mm from its marked end.
func (l *Long) Part(from, to float64) *Long {
	part := *l
	part.from = clamp(from, 0, l.s.recipe.Box.L)
	part.long = clamp(to, part.from, l.s.recipe.Box.L) - part.from
	return &part
}

// Lengthwise is the upright cut along the whole loaf at y mm across; up in the picture is up in the mould.
func (s *Swirl) Lengthwise(y float64) *Long {
	return &Long{s: s, at: clamp(y, 0, s.recipe.Box.W), deep: s.recipe.Box.H, long: s.recipe.Box.L}
}

// SkimMM is how far under the surface a view from above is best taken, mm, as a loaf is planed: the very top shows little but the last of the pour.
const SkimMM = 3

// skinMM is how far under the surface the surface is looked at: just under what was poured last, not on it.
const skinMM = 0.02

// Top is the level cut at z mm, seen from above: at the level or more it is the surface. The far side is up in the picture.
func (s *Swirl) Top(z float64) *Long {
	return &Long{s: s, top: true, round: s.recipe.Round, at: clamp(z, 0, max(0, s.level-skinMM)), deep: s.recipe.Box.W, long: s.recipe.Box.L}
}

// inTube says whether a place of a level cut is inside the tube's wall: within half its width of its axis.
func (l *Long) inTube(x, y float64) bool {
	return !l.round || math.Hypot(x-l.s.recipe.Box.L/2, y-l.deep/2) <= l.deep/2
}

// Draft draws the cut w by h pixels with one sample in each.
func (l *Long) Draft(dst *Picture, w, h int) {
	dst.Reset(w, h)
	l.columns(func(p *pair, i int) bool {
		t := &p.left
		t.prepare(l.s, l.from+l.long*(float64(i)+0.5)/float64(w), false)
		for j := range dst.H {
			if s := l.sample(t, (float64(j)+0.5)/float64(h)); !s.empty {
				dst.Pixels[j*w+i] = Pixel{Portion: [3]uint8{s.label}, Part: [3]uint8{255}}
			}
		}
		return true
	}, dst.W)
}

// Refine draws the cut w by h pixels with smooth edges. It stops early with ctx's error, leaving dst half drawn.
func (l *Long) Refine(ctx context.Context, dst *Picture, w, h int) error {
	return l.refine(ctx, dst, w, h, func(int) {})
}

// refine is [Long.Refine], telling of pixels as they are drawn.
func (l *Long) refine(ctx context.Context, dst *Picture, w, h int, tell func(n int)) error {
	dst.Reset(w, h)
	if dst.H == 0 {
		return ctx.Err()
	}
	l.columns(func(t *pair, i int) bool {
		if ctx.Err() != nil {
			return false
		}
		if t.a == nil {
			t.a, t.b, t.edge = make([]sample, dst.H), make([]sample, dst.H), make([]bool, dst.H)
		}
		t.mark()
		c := column{l: l, dst: dst, i: i, left: &t.left, right: &t.right, a: t.a, b: t.b, edge: t.edge}
		c.draw()
		t.drawn = true
		tell(h)
		return true
	}, dst.W)
	return ctx.Err()
}

// pair is what a worker keeps from column to column.
type pair struct {
	left, right tracer
	a, b        []sample
	edge        []bool // rows near a border in the column before
	drawn       bool   // there is one
}

// thread is how many rows up and down a thin border is looked for where the column before had one: else it would be found in one column and
// missed in the next, and a filament drawn as dashes.
const thread = 2

// mark marks the rows that are near a border of the column drawn before.
func (p *pair) mark() {
	clear(p.edge)
	if !p.drawn {
		return
	}
	for _, s := range [2][]sample{p.a, p.b} {
		for j := 1; j < len(s); j++ {
			if s[j].label != s[j-1].label {
				for k := max(0, j-1-thread); k <= min(j+thread, len(s)-1); k++ {
					p.edge[k] = true
				}
			}
		}
	}
}

// columns gives every worker tracers and samples of its own and shares n columns between them.
func (l *Long) columns(draw func(t *pair, i int) bool, n int) {
	if len(l.s.ops) == 0 {
		return
	}
	share(workers, func(worker int) bool {
		t := &pair{}
		for i := worker; i < n; i += workers {
			if !draw(t, i) {
				return false
			}
		}
		return true
	})
}

// sample traces the point v of the way down the picture.
func (l *Long) sample(t *tracer, v float64) (s sample) {
	y, z := l.at, l.deep*(1-v)
	if l.top {
		y, z = z, l.at
	}
	if l.turned {
		y = l.deep * v
	}
	if s.empty = z > l.s.level+1e-9 || !l.inTube(t.x, y); s.empty {
		return s
	}
	s.origin = t.trace(clamp(y, 0, l.s.recipe.Box.W), max(0, z))
	s.label = t.label(&s.origin)
	for s.label == none && l.top && z > 0 { // nothing lies here yet: from above one looks down to what does
		z -= downMM
		s.origin = t.trace(clamp(y, 0, l.s.recipe.Box.W), max(0, z))
		s.label = t.label(&s.origin)
	}
	s.empty = s.label == none
	return s
}

// downMM is how fine a view from above looks for what lies deeper while the mould is being filled.
const downMM = 1.5

// column draws one column of pixels with two cross-sections, a quarter of a pixel either side of its middle.
type column struct {
	l           *Long
	dst         *Picture
	i           int
	left, right *tracer
	a, b        []sample // down the two cross-sections, at the middle of each pixel
	edge        []bool   // rows to be traced in any case
}

const (
	nearMM   = 2.5    // neighbouring samples that come from further apart may have more between them
	strideMM = 0.6    // samples this far apart or less are first compared, before those in between are traced
	edgePart = 1. / 3 // of a pixel: an edge pixel is also sampled so far above and below its middle
)

func (c *column) draw() {
	w, h := float64(c.dst.W), c.dst.H
	c.left.prepare(c.l.s, c.l.from+c.l.long*(float64(c.i)+0.25)/w, false)
	c.right.prepare(c.l.s, c.l.from+c.l.long*(float64(c.i)+0.75)/w, false)
	c.down(c.left, c.a)
	c.down(c.right, c.b)
	for j := range h {
		edge := c.a[j].differs(&c.b[j])
		for _, s := range [2][]sample{c.a, c.b} {
			edge = edge || j > 0 && s[j].differs(&s[j-1]) || j+1 < h && s[j].differs(&s[j+1])
		}
		c.pixel(j, edge)
	}
}

// down traces one cross-section, leaving out what lies between samples that agree.
func (c *column) down(t *tracer, s []sample) {
	n := len(s)
	stride := max(1, int(strideMM*float64(n)/c.l.deep))
	last := 0
	s[0] = c.l.sample(t, 0.5/float64(n))
	for last < n-1 {
		next := min(last+stride, n-1)
		for k := last + 1; k < next; k++ {
			if c.edge[k] {
				next = k
			}
		}
		s[next] = c.l.sample(t, (float64(next)+0.5)/float64(n))
		c.between(t, s, last, next)
		last = next
	}
}

func (c *column) between(t *tracer, s []sample, from, to int) {
	if to-from < 2 {
		return
	}
	if !s[from].differs(&s[to]) {
		for k := from + 1; k < to; k++ {
			s[k] = s[from]
		}
		return
	}
	mid := (from + to) / 2
	s[mid] = c.l.sample(t, (float64(mid)+0.5)/float64(len(s)))
	c.between(t, s, from, mid)
	c.between(t, s, mid, to)
}

// pixel averages the middles of a pixel's two cross-sections and, where an edge is near, two more places in each.
func (c *column) pixel(j int, edge bool) {
	var t tally
	for i, s := range [2]*sample{&c.a[j], &c.b[j]} {
		if !s.empty {
			t.add(s.label, 1)
		}
		if !edge {
			break
		}
		tr := [2]*tracer{c.left, c.right}[i]
		for _, off := range [2]float64{0.5 - edgePart, 0.5 + edgePart} {
			if s := c.l.sample(tr, (float64(j)+off)/float64(c.dst.H)); !s.empty {
				t.add(s.label, 1)
			}
		}
	}
	c.dst.Pixels[j*c.dst.W+c.i] = t.pixel()
}

// differs reports whether an edge may lie between two samples.
func (s *sample) differs(o *sample) bool {
	return s.label != o.label || s.empty != o.empty || math.Abs(s.p.y-o.p.y) > nearMM || math.Abs(s.p.z-o.p.z) > nearMM
}
