package swirl

import (
	"math"
	"math/bits"
	"slices"
)

const (
	traceCellMM = 3  // mesh of the lists of steps that can touch a point
	stepMove    = 0  // index step.at is a drag
	stepSlab    = 1  // a slab
	stepWave    = 2  // a wave table
	stepRolls   = 3  // a wave not baked
	stepComb    = 4  // a comb
	stepSpread  = 5  // a spread
	stepWhirl   = 6  // a whirl
	stepPlume   = 7  // a plume
	stepBorder  = 8  // a border
	stepGyre    = 9  // a gyre
	stepScrape  = 10 // the drag of a spoon
	stepCurls   = 11 // wakes behind tines
)

// origin is where a point was poured: the slab and the place in it.
type origin struct {
	p    vec3
	slab int32 // index into the tracer's slabs
}

// tracer is the pour made ready for one cross-section. Every mesh cell has a set of the steps that can touch a point
// in it, one bit per step, so that steps elsewhere cost nothing.
type tracer struct {
	x      float64
	kind   []uint8
	at     []int32
	drags  []drag
	slabs  []*slab
	step   []int32 // of each slab
	group  []int32 // of each slab; slabs poured with no move in between share one
	tables []waveTable
	rolls  []rolls
	combs  []*comb
	wakes  []*wakes
	spread []levelled
	whirls []turned
	gyres  []gyred
	plumes []sunk
	dented []dented
	scrape []scraping
	piled  []slab    // those of slabs that lie here thicker and there thinner, as they lie here
	edges  []float64 // mm, how high each of them reaches
	words  int
	ny, nz int
	sets   []uint64
}

// prepare makes t ready for cross-section x, reusing its memory. Baking costs a few hundred microseconds and pays
// when more than some thousand points are traced.
func (t *tracer) prepare(s *Swirl, x float64, bake bool) {
	t.x = x
	t.kind, t.at, t.drags = t.kind[:0], t.at[:0], t.drags[:0]
	t.group, t.step = t.group[:0], t.step[:0]
	t.slabs, t.tables, t.rolls, t.combs = t.slabs[:0], t.tables[:0], t.rolls[:0], t.combs[:0]
	t.spread, t.whirls, t.plumes, t.dented, t.gyres = t.spread[:0], t.whirls[:0], t.plumes[:0], t.dented[:0], t.gyres[:0]
	t.scrape, t.wakes = t.scrape[:0], t.wakes[:0]
	t.piled, t.edges = slices.Grow(t.piled[:0], len(s.ops)), t.edges[:0]
	for i := range s.ops {
		t.add(&s.ops[i], bake)
	}
	t.words = (len(t.kind) + 63) / 64
	t.ny, t.nz = int(s.recipe.Box.W/traceCellMM)+1, int(s.recipe.Box.H/traceCellMM)+1
	n := t.ny * t.nz * t.words
	if cap(t.sets) < n {
		t.sets = make([]uint64, n)
	}
	t.sets = t.sets[:n]
	clear(t.sets)
	for i := range t.kind {
		t.mark(i)
	}
}

func (t *tracer) add(o *op, bake bool) {
	switch {
	case o.slab != nil:
		g := int32(0)
		if n := len(t.group); n > 0 {
			g = t.group[n-1]
			if t.kind[len(t.kind)-1] != stepSlab {
				g++
			}
		}
		t.group, t.step = append(t.group, g), append(t.step, int32(len(t.kind)))
		t.push(stepSlab, len(t.slabs))
		t.slabs = append(t.slabs, t.here(o.slab))
	case o.comb != nil:
		t.push(stepComb, len(t.combs))
		t.combs = append(t.combs, o.comb)
	case o.wakes != nil:
		t.push(stepCurls, len(t.wakes))
		t.wakes = append(t.wakes, o.wakes)
	case o.whirl != nil:
		t.push(stepWhirl, len(t.whirls))
		t.whirls = append(t.whirls, o.whirl.at(t.x))
	case o.gyre != nil:
		t.push(stepGyre, len(t.gyres))
		t.gyres = append(t.gyres, o.gyre.cut(t.x))
	case o.plume != nil:
		if p := o.plume.at(t.x); p.steps > 0 {
			t.push(stepPlume, len(t.plumes))
			t.plumes = append(t.plumes, p)
		}
	case o.spread != nil:
		if l := t.spreadHere(o.spread); l.n > 0 {
			t.push(stepSpread, len(t.spread))
			t.spread = append(t.spread, l)
		}
	case o.border != nil:
		t.push(stepBorder, len(t.dented))
		if n := len(t.dented); n < cap(t.dented) {
			t.dented = t.dented[:n+1] // with its memory
		} else {
			t.dented = append(t.dented, dented{})
		}
		o.border.cut(t.x, &t.dented[len(t.dented)-1])
	case o.scrape != nil:
		t.addScrape(o.scrape)
	case o.wave != nil && bake:
		t.push(stepWave, len(t.tables))
		r := o.wave.at(t.x)
		t.tables = append(t.tables, waveTable{})
		t.tables[len(t.tables)-1].bake(&r)
	case o.wave != nil:
		t.push(stepRolls, len(t.rolls))
		t.rolls = append(t.rolls, o.wave.at(t.x))
	case o.stroke != nil:
		t.addStroke(o.stroke)
	}
}

func (t *tracer) addStroke(s *stroke) {
	c := s.drift(t.x)
	from := s.at(0, c)
	for i := 1; i < len(s.path); i++ {
		to := s.at(i, c)
		d := s.step(i-1, from, to, c)
		from = to
		if min(d.cz, d.cz+d.dz)-s.radius >= d.level || d.gy == 0 && d.gz == 0 {
			continue
		}
		parts := d.parts()
		for k := range parts {
			t.push(stepMove, len(t.drags))
			t.drags = append(t.drags, d.part(k, parts))
		}
	}
}

func (t *tracer) addScrape(s *scrape) {
	for i := range s.drags {
		if d, ok := s.drags[i].in(t.x, s.width, s.high); ok {
			t.push(stepScrape, len(t.scrape))
			t.scrape = append(t.scrape, d)
		}
	}
}

func (t *tracer) push(kind uint8, at int) {
	t.kind, t.at = append(t.kind, kind), append(t.at, int32(at))
}

// mark puts step i into the sets of the cells it can touch.
func (t *tracer) mark(i int) {
	j0, j1, k0, k1 := 0, t.ny-1, 0, t.nz-1
	var d *drag
	r := 0.0
	switch t.kind[i] {
	case stepMove:
		d = &t.drags[t.at[i]]
		r = 1 / math.Sqrt(d.inv)
		j0, j1 = t.cells(min(d.cy, d.cy+d.dy)-r, max(d.cy, d.cy+d.dy)+r, t.ny)
		k0, k1 = t.cells(min(d.cz, d.cz+d.dz)-r, min(d.level, max(d.cz, d.cz+d.dz)+r), t.nz)
	case stepPlume:
		p := &t.plumes[t.at[i]]
		depth := 1 / p.deep
		foot := p.at + p.lean*depth
		j0, j1 = t.cells(min(p.at, foot)-p.reach, max(p.at, foot)+p.reach, t.ny)
		k0, k1 = t.cells(p.level-depth, p.level, t.nz)
	case stepGyre:
		r := &t.gyres[t.at[i]]
		j0, j1 = t.cells(r.y0, r.y0+r.wide, t.ny)
		k0, k1 = t.cells(r.z0, r.z0+r.high, t.nz)
	case stepWhirl:
		w := &t.whirls[t.at[i]]
		j0, j1 = t.cells(w.cy-1/w.invY, w.cy+1/w.invY, t.ny)
		k0, k1 = t.cells(w.cz-1/w.invZ, w.cz+1/w.invZ, t.nz)
	case stepScrape:
		s := &t.scrape[t.at[i]]
		j0, j1 = t.cells(s.cy-s.y, s.cy+s.y, t.ny)
		k0, k1 = t.cells(s.cz-s.z, s.cz+s.z, t.nz)
	case stepCurls:
		k0, k1 = t.cells(t.wakes[t.at[i]].foot, t.wakes[t.at[i]].height, t.nz)
	case stepBorder:
		at := t.dented[t.at[i]].border
		k0, k1 = t.cells(at.at-at.down, at.at+at.up, t.nz)
	case stepSlab:
		k0, _ = t.cells(t.slabs[t.at[i]].bottom, 0, t.nz)
		if i == 0 {
			k0 = 0
		}
	}
	word, bit := i/64, uint64(1)<<(i%64)
	for k := k0; k <= k1; k++ {
		for j := j0; j <= j1; j++ {
			if d != nil && d.misses(j, k, r) {
				continue
			}
			t.sets[(k*t.ny+j)*t.words+word] |= bit
		}
	}
}

func (t *tracer) cells(from, to float64, n int) (first, last int) {
	return max(0, min(int(from/traceCellMM), n-1)), max(0, min(int(to/traceCellMM), n-1))
}

// misses reports whether a step cannot touch any point of a cell; points beyond the last cell count as in it.
func (d *drag) misses(j, k int, r float64) bool {
	const half = traceCellMM / 2.
	y, z := float64(j)*traceCellMM+half, float64(k)*traceCellMM+half
	u := 0.0
	if s := d.dy*d.dy + d.dz*d.dz; s > 0 {
		u = clamp(((y-d.cy)*d.dy+(z-d.cz)*d.dz)/s, 0, 1)
	}
	e, f, far := y-d.cy-u*d.dy, z-d.cz-u*d.dz, r+half*math.Sqrt2
	return e*e+f*f > far*far
}

// trace follows a point of the cross-section back to where it was poured.
func (t *tracer) trace(y, z float64) origin { return t.traceTo(y, z, 0) }

// traceTo is trace, but goes no further back than step stop, which must be that of a slab; the point may then lie below it.
func (t *tracer) traceTo(y, z float64, stop int) origin {
	x := t.x
	i := len(t.kind)
	for {
		i = t.below(y, z, i)
		if i <= stop {
			return origin{vec3{x, y, z}, t.at[stop]}
		}
		n := t.at[i]
		switch t.kind[i] {
		case stepMove:
			y, z = t.drags[n].undo(y, z)
		case stepSlab:
			if z >= t.slabs[n].bottom {
				return origin{vec3{x, y, z}, n}
			}
		case stepWave:
			y, z = t.tables[n].undo(y, z)
		case stepRolls:
			y, z = t.rolls[n].move(y, z, -1)
		case stepWhirl:
			y, z = t.whirls[n].turn(y, z, -1)
		case stepGyre:
			y, z = t.gyres[n].turn(y, z, -1)
		case stepPlume:
			y, z = t.plumes[n].move(y, z, -1)
		case stepSpread:
			y, z = t.spread[n].undo(y, z)
		case stepScrape:
			y, z = t.scrape[n].drag(y, z, -1)
		case stepBorder:
			y, z = t.dented[n].press(y, z, -1)
		case stepComb:
			x, y = t.combs[n].move(x, y, z, -1)
		case stepCurls:
			x, y = t.wakes[n].move(x, y, z, -1)
		}
	}
}

// below returns the last step before i that can touch the point, or -1.
func (t *tracer) below(y, z float64, i int) int {
	j := max(0, min(int(y*(1./traceCellMM)), t.ny-1))
	k := max(0, min(int(z*(1./traceCellMM)), t.nz-1))
	at := (k*t.ny + j) * t.words
	set := t.sets[at : at+t.words]
	w := (i - 1) >> 6
	if w < 0 || i <= 0 {
		return -1
	}
	word := set[w] & (^uint64(0) >> (63 - uint(i-1)&63))
	for word == 0 {
		if w--; w < 0 {
			return -1
		}
		word = set[w]
	}
	return w<<6 + 63 - bits.LeadingZeros64(word)
}

// none is the label of a place that nothing was poured into yet: what [Empty] is as a byte.
const none = 255

// label returns the portion at an origin, or none.
func (t *tracer) label(o *origin) uint8 {
	return uint8(t.slabs[o.slab].fill.label(o.p.x, o.p.y, o.p.z))
}

// lowest returns the first slab of a slab's group.
func (t *tracer) lowest(slab int32) int32 {
	for slab > 0 && t.group[slab-1] == t.group[slab] {
		slab--
	}
	return slab
}

// labelNear is label for an origin that was not traced but lies between traced ones of the slab's group.
func (t *tracer) labelNear(o *origin) uint8 {
	return uint8(t.slabs[t.near(o)].fill.label(o.p.x, o.p.y, o.p.z))
}

// near is the slab of its group in which an origin lies that was not traced.
func (t *tracer) near(o *origin) int32 {
	n, g := o.slab, t.group[o.slab]
	for n > 0 && t.group[n-1] == g && o.p.z < t.slabs[n].bottom {
		n--
	}
	for int(n) < len(t.slabs)-1 && t.group[n+1] == g && o.p.z >= t.slabs[n].top {
		n++
	}
	return n
}
