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
	fresh  bool    // it is the top as it stands, not cut
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

// SkimMM is how far under the surface a view from above is best taken, mm, as ash is planed off a loaf: deeper, what is poured last, often
// little thicker, lies in patches where it covers; higher, what was drawn up through it hardly shows. By eye, no source.
const SkimMM = 1.5

// skinMM is how far under the surface the surface is looked at: just under what was poured last, not on it.
const skinMM = 0.02

// Top is the level cut at z mm, its wall at the right, seen from end A, up in the picture: so a disc of a tube shows from the tube's lower end. What is
// looked at from above is turned the other way ([Swirl.Skim], [Swirl.Above]). At the level or more it is the surface.
func (s *Swirl) Top(z float64) *Long {
	return &Long{s: s, top: true, round: s.recipe.Round, at: clamp(z, 0, max(0, s.level-skinMM)), deep: s.recipe.Box.W, long: s.recipe.Box.L}
}

// Skim is the view of the fresh top, [SkimMM] under it: shown as the surface it stands for, not as a cut. End A is at the left, and so the wall at the
// left, seen from there along the loaf, at the top, as it lies before who looks down on it.
func (s *Swirl) Skim() *Long {
	l := s.Top(s.recipe.Box.H - SkimMM)
	l.turned, l.fresh = true, true
	return l
}

// inTube says whether a place of a level cut is inside the tube's wall: within half its width of its axis.
func (l *Long) inTube(x, y float64) bool {
	return !l.round || math.Hypot(x-l.s.recipe.Box.L/2, y-l.deep/2) <= l.deep/2
}

// Draft draws the cut w by h pixels with one sample in each.
func (l *Long) Draft(dst *Picture, w, h int) {
	dst.Reset(w, h)
	l.columns(func(t *tracer, i int) bool {
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
	if len(l.s.ops) == 0 {
		return ctx.Err()
	}
	Share((dst.W+laneColumns-1)/laneColumns, func(block int) bool {
		n := newLane(l, dst)
		from, to := block*laneColumns, min(dst.W, (block+1)*laneColumns)
		for i := from; i < to; i++ {
			if ctx.Err() != nil {
				return false
			}
			n.column(i, i == from)
			tell(dst.H)
		}
		return true
	})
	if ctx.Err() == nil {
		dst.veins, dst.cut = l.veins(dst), l
	}
	return ctx.Err()
}

// columns gives every worker a tracer of its own and shares n columns between them.
func (l *Long) columns(draw func(t *tracer, i int) bool, n int) {
	if len(l.s.ops) == 0 {
		return
	}
	Share(workers, func(worker int) bool {
		t := &tracer{}
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

// Upright is what shows along an upright line at (x, y), in the middles of so many even parts of the mould's height from its foot up: portions, or
// [Empty]. It costs much less than asking for every place.
func (s *Swirl) Upright(x, y float64, dst []int) {
	box := s.recipe.Box
	if len(s.ops) == 0 {
		for i := range dst {
			dst[i] = Empty
		}
		return
	}
	t := &tracer{}
	t.prepare(s, clamp(x, 0, box.L), false)
	y = clamp(y, 0, box.W)
	for i := range dst {
		z := box.H * (float64(i) + 0.5) / float64(len(dst))
		dst[i] = Empty
		if z > s.level {
			continue
		}
		o := t.trace(y, z)
		if l := t.label(&o); l != none {
			dst[i] = int(l)
		}
	}
}

// downMM is how fine a view from above looks for what lies deeper while the mould is being filled.
const downMM = 1.5

// differs reports whether an edge may lie between two samples.
func (s *sample) differs(o *sample) bool {
	return s.label != o.label || s.empty != o.empty || math.Abs(s.p.y-o.p.y) > nearMM || math.Abs(s.p.z-o.p.z) > nearMM
}
