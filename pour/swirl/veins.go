package swirl

import (
	"math"
	"slices"
)

// veins is how unevenly colourant lies within each colour of a picture: no jug is stirred through, and what is poured is drawn out into faint streaks
// that go the way the batter went. They lie on a mesh of their own; what they change is seen on a picture whose pixels are fine enough.
type veins struct {
	w, h   int
	knots  []int8  // row by row, -127 to 127: how much more colourant than usual
	shows  []uint8 // the portion of each
	pixels float64 // from knot to knot
	from   float64 // pixels, where the first column of knots lies
}

const (
	veinMM   = 0.3 // mesh of the veins; finer than the streaks that show
	veinless = 0.4 // mm: pixels larger than this show none
)

// What an unstirred jug looks like, by eye, no source.
const (
	pourTone  = 0.15 // by how much one pour of a jug differs from the next, of the strongest vein
	veinDrift = 0.35 // how far a vein goes on along the loaf, against across it: as the jug goes
	ribbonMM  = 36   // how long the lip is, in the veins of what was poured over it
	calm      = 0.8  // cells from knot to knot: a vein drawn out finer is gone
	veinSides = 0.35 // of the strongest noise: that gives half a vein
	stirLong  = 35   // along the veins, mm, from where a jug was stirred through to where it was not
	stirWide  = 11   // and across them
	stirMean  = 0.55 // how strong veins are in between; they are so much less where it was, at most, as they are more where it was not
)

// vein is one size of veins in what was just poured: how long and how thick they are, mm, and how strong.
type vein struct{ long, thick, part float64 }

func veinSizes() [3]vein { return [3]vein{{26, 0.7, 0.45}, {40, 1.8, 0.4}, {60, 7, 0.3}} }

// grained is a filling whose veins do not lie level.
type grained interface {
	// grain is where a place lies along its veins and across them, mm.
	grain(x, y, z float64) (along, across float64)
}

// knot is a place of the mesh: where it lies along its veins and across them, and the pour it is of; -1: nothing lies there.
type knot struct {
	along, across float32
	slab          int32
	label         uint8
}

// knot follows a sample to where it was poured.
func (t *tracer) knot(s *sample) knot {
	if s.empty {
		return knot{slab: -1, label: none}
	}
	p := s.p
	along, across := p.y+veinDrift*p.x, p.z+rolling(p.x, p.y, float64(s.slab))
	if g, ok := t.slabs[s.slab].fill.(grained); ok {
		along, across = g.grain(p.x, p.y, p.z)
	}
	return knot{float32(along), float32(across), s.slab, s.label}
}

// rolling is how far veins of what was poured level rise and fall over the mould, mm: what falls in is not levelled as water is, and lies in long low
// rolls the way the jug went.
func rolling(x, y, pour float64) float64 {
	return 1.5*math.Sin(y/7.1+x/67+0.7*math.Sin(x/41+pour)+1.7*pour) + 0.8*math.Sin(y/3.3-x/49+0.5*math.Sin(x/23-pour)+2.9*pour) + 0.9*math.Sin(y/14-x/90+pour)
}

// veinMesh is how many knots a picture has across and down, and pixels from knot to knot; none where its pixels, mm wide, are too coarse.
func veinMesh(dst *Picture, px float64) (w, h int, pixels float64) {
	if dst.Plain || px > veinless || dst.W == 0 || dst.H == 0 {
		return 0, 0, 0
	}
	pixels = max(1, veinMM/px)
	return int(math.Ceil(float64(dst.W)/pixels)) + 1, int(math.Ceil(float64(dst.H)/pixels)) + 1, pixels
}

// newVeins works the veins out from the knots of a mesh.
func newVeins(w, h int, pixels float64, from []knot) *veins {
	v := &veins{w: w, h: h, pixels: pixels, knots: make([]int8, w*h), shows: make([]uint8, w*h)}
	noise, sizes := newLattice(2), veinSizes()
	Share(h, func(j int) bool {
		for i := range w {
			k := from[j*w+i]
			v.shows[j*w+i] = k.label
			if k.slab < 0 {
				continue
			}
			pour := hash3(int64(k.slab), 0, 0x7e14)
			sum := pourTone * (2*unit(pour) - 1)
			da, dc := stretched(from, w, h, i, j)
			shown := unstirred(noise, k, pour)
			for n, s := range sizes {
				if left := 1 - math.Hypot(da/s.long, dc/s.thick)/calm; left > 0 {
					at := float64(pour>>(20*n)&0xff) + 0.5
					sum += shown * min(1, 2*left) * s.part * crisp(float64(noise.at(float64(k.along)/s.long+at, float64(k.across)/s.thick+at)))
				}
			}
			v.knots[j*w+i] = int8(math.Round(127 * clamp(sum, -1, 1)))
		}
		return true
	})
	return v
}

// crisp gives noise, -1 to 1, sides: a vein is a streak, no cloud.
func crisp(v float64) float64 { return v / (veinSides + math.Abs(v)) }

// unstirred is how much of the veins is left at a place: here a jug was stirred through, there not.
func unstirred(noise *lattice, k knot, pour uint64) float64 {
	at := float64(pour >> 60)
	return stirMean + (1-stirMean)*crisp(float64(noise.at(float64(k.along)/stirLong+at, float64(k.across)/stirWide+at)))
}

// stretched is how far apart, along their veins and across them, neighbouring knots of one pour were at most; far where none is of that pour.
func stretched(from []knot, w, h, i, j int) (along, across float64) {
	k := from[j*w+i]
	any := false
	look := func(i, j int) {
		if i < 0 || j < 0 || i >= w || j >= h || from[j*w+i].slab != k.slab {
			return
		}
		o := from[j*w+i]
		along, across = max(along, math.Abs(float64(o.along-k.along))), max(across, math.Abs(float64(o.across-k.across)))
		any = true
	}
	look(i-1, j)
	look(i+1, j)
	look(i, j-1)
	look(i, j+1)
	if !any {
		return math.Inf(1), math.Inf(1)
	}
	return along, across
}

// at is how much more of a portion's colourant than usual a pixel shows, -1 to 1: in proportion between the knots round it that show the portion
// themselves, lest veins run on over a border.
func (v *veins) at(i, j int, portion uint8) float32 {
	if v == nil {
		return 0
	}
	x, y := (float64(i)+0.5-v.from)/v.pixels, (float64(j)+0.5)/v.pixels
	a, b := max(0, min(int(x), v.w-2)), min(int(y), v.h-2)
	e, f := float32(x-float64(a)), float32(y-float64(b))
	k := b*v.w + a
	var sum, weight float32
	for n, w := range [4]float32{(1 - e) * (1 - f), e * (1 - f), (1 - e) * f, e * f} {
		if at := k + n&1 + n>>1*v.w; v.shows[at] == portion {
			sum, weight = sum+w*float32(v.knots[at]), weight+w
		}
	}
	if weight < leastWeight {
		return 0
	}
	return sum / weight / 127
}

// Clouded is how bright a pixel is beside its colour for the veins in it, under a material; of a colour neither light nor dark, for who draws does
// not know the palette.
func (p *Picture) Clouded(i, j int, m Material) float64 {
	const depth = -0.3 // the logarithm of three quarters of the light
	return 1 + depth*m.Veins*float64(p.veins.at(i, j, p.Pixels[j*p.W+i].Portion[0]))
}

// Mirror turns every row round: the cut as it is seen from the other end.
func (p *Picture) Mirror() {
	turn(p.Pixels, p.W)
	if v := p.veins; v != nil {
		m := *v
		m.from = float64(p.W) - v.from - float64(v.w-1)*v.pixels
		m.knots, m.shows = slices.Clone(v.knots), slices.Clone(v.shows)
		turn(m.knots, v.w)
		turn(m.shows, v.w)
		p.veins = &m
	}
}

func turn[T any](all []T, w int) {
	for at := 0; w > 0 && at < len(all); at += w {
		slices.Reverse(all[at : at+w])
	}
}

// leastWeight is the weight of knots too far off to say anything.
const leastWeight = 1e-3

// veins traces those of a face.
func (f *Face) veins(dst *Picture) *veins {
	w, h, pixels := veinMesh(dst, f.box.W/float64(max(dst.W, 1)))
	if w == 0 {
		return nil
	}
	from := make([]knot, w*h)
	r := newRefiner(f, dst, mostTile)
	Share(h, func(j int) bool {
		for i := range w {
			s := r.at(float64(i)*pixels, min(float64(j)*pixels, float64(dst.H)))
			from[j*w+i] = f.tracer.knot(&s)
		}
		return true
	})
	return newVeins(w, h, pixels, from)
}

// veins traces those of a cut along the loaf, column by column.
func (l *Long) veins(dst *Picture) *veins {
	w, h, pixels := veinMesh(dst, l.long/float64(max(dst.W, 1)))
	if w == 0 || dst.H == 0 {
		return nil
	}
	from := make([]knot, w*h)
	l.columns(func(t *tracer, i int) bool {
		t.prepare(l.s, l.from+l.long*min(float64(i)*pixels/float64(dst.W), 1), false)
		for j := range h {
			s := l.sample(t, min(float64(j)*pixels/float64(dst.H), 1))
			from[j*w+i] = t.knot(&s)
		}
		return true
	}, w)
	return newVeins(w, h, pixels, from)
}
