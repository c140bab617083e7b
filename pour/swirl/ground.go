package swirl

import "math"

// ground is how uneven batter lies: slow waves, a furrow where the stream fell, and dents or lumps, each rounded and passing into the next in a
// rounded crest. Heights are about a mean that does not matter.
type ground struct {
	swells []swell
	furrow furrow
	lobes  []lobe
}

// swell is a wave over the whole mould: amp·sin(k·x + m·y + offset), mm and 1/mm.
type swell struct{ amp, k, m, offset float64 }

// furrow is a trough along the loaf that the stream leaves where it falls.
type furrow struct {
	line wobble // mm across
	half float64
	deep wobble // mm; 0: none
}

// lobe is a round dent, or a lump where it is negative: deep·(1-q)² with q the square of how far off it is, in half widths.
type lobe struct {
	x, y       float64
	invX, invY float64 // 1/mm, of half its length and half its width
	deep       float64 // mm
}

// heights works out a cross-section at equal steps across, in mm upwards.
func (g *ground) heights(x float64, dst []float64, step float64) {
	clear(dst)
	g.press(x, dst, step)
	for i := range g.swells {
		s := &g.swells[i]
		// sin(a+m) and cos(a+m) from sin a and cos a
		sin, cos := math.Sincos(s.k*x + s.offset)
		sm, cm := math.Sincos(s.m * step)
		for j := range dst {
			dst[j] += s.amp * sin
			sin, cos = sin*cm+cos*sm, cos*cm-sin*sm
		}
	}
	deep, line := g.furrow.deep.at(x), g.furrow.line.at(x)
	if deep == 0 {
		return
	}
	for j := range dst {
		u := (float64(j)*step - line) / g.furrow.half
		if q := 1 - u*u; q > 0 {
			dst[j] -= deep * q * q
		}
	}
}

// press lays the dents over each other, so that they pass into each other in rounded crests (the root of the sum of their squares), and heaps the
// lumps on it; the lumps come last.
func (g *ground) press(x float64, dst []float64, step float64) {
	dents := 0
	for dents < len(g.lobes) && g.lobes[dents].deep > 0 {
		g.lobes[dents].each(x, dst, step, func(j int, h float64) { dst[j] += h * h })
		dents++
	}
	for j, v := range dst {
		dst[j] = -math.Sqrt(v)
	}
	for i := range g.lobes[dents:] {
		g.lobes[dents+i].each(x, dst, step, func(j int, h float64) { dst[j] -= h })
	}
}

// each gives how deep a lobe is at every place of a cross-section that it reaches.
func (l *lobe) each(x float64, dst []float64, step float64, do func(j int, deep float64)) {
	e := (x - l.x) * l.invX
	e *= e
	if e >= 1 {
		return
	}
	half := math.Sqrt(1-e) / l.invY
	from, to := max(0, int(math.Ceil((l.y-half)/step))), min(len(dst)-1, int((l.y+half)/step))
	for j := from; j <= to; j++ {
		f := (float64(j)*step - l.y) * l.invY
		q := 1 - e - f*f
		do(j, l.deep*q*q)
	}
}

// uneven says how rough ground is: mm.
type uneven struct {
	swell      float64 // of the waves together
	bow        float64 // of one wave as wide as the mould or wider, up in the middle or down
	furrow     float64 // the deepest
	dent, lump float64 // the deepest and the highest
	half       float64 // of a usual dent, half its width
	cover      float64 // about how much of the ground the dents cover
	drip       float64 // the deepest drip
	drips      int     // how many
	long       float64 // how much longer dents and the shortest waves are along the loaf; 0: as long as they come
}

const (
	swells      = 4
	mostLobes   = 400 // of one border: more are as wide apart as that leaves them
	leastDripMM = 6   // half of what a thread of batter that falls in one place pushes in, across
	mostDripMM  = 10
	endMM       = 30 // the ground goes on so far beyond the ends, so that they are dented as the middle is
)

// newGround draws uneven ground for a mould.
func newGround(d *dice, box Box, u uneven) ground {
	g := ground{furrow: furrow{
		line: d.wobble(d.Between(0.2, 0.8)*box.W, 0.14*box.W), half: d.Between(0.1, 0.2) * box.W, deep: d.wobble(u.furrow*d.Between(0.4, 1), 0.5*u.furrow),
	}}
	long := max(1, u.long)
	for range swells { // longer along the loaf, as the jug goes
		across, way := d.Between(24, 90), d.Between(60*long, 260)
		g.swells = append(g.swells, swell{
			amp: u.swell * d.Between(0.3, 0.7), k: 2 * math.Pi / way * d.Sign(), m: 2 * math.Pi / across, offset: d.Between(0, 2*math.Pi),
		})
	}
	if u.bow != 0 {
		across, way := box.W*d.Between(1, 2.2), d.Between(180, 420)
		g.swells = append(g.swells, swell{amp: u.bow, k: 2 * math.Pi / way * d.Sign(), m: 2 * math.Pi / across, offset: d.Between(0, 2*math.Pi)})
	}
	for range u.drips {
		half := d.Between(leastDripMM, mostDripMM)
		g.lobes = append(g.lobes, lobe{
			x: d.Between(0, box.L), y: d.Between(0.04, 0.96) * box.W, invX: 1 / (half * d.Between(1.5, 4)), invY: 1 / half, deep: u.drip * d.Between(0.4, 1),
		})
	}
	if u.dent == 0 && u.lump == 0 {
		return g
	}
	n := min(mostLobes, int(u.cover*(box.L+2*endMM)*box.W/(math.Pi*u.half*u.half*long)))
	lumps := int(float64(n) * u.lump / (2 * (u.lump + u.dent)))
	n -= lumps         // a lump stands where else two dents would be
	for i := range n { // the lumps come last: they lie on what is dented
		half := u.half * d.Between(0.55, 1.5)
		l := lobe{x: d.Between(-endMM, box.L+endMM), y: d.Between(0, box.W), invX: 1 / (half * long * d.Between(1, 2.4)), invY: 1 / half}
		if l.deep = u.dent * d.Between(0.25, 1); i >= n-lumps {
			l.deep = -u.lump * d.Between(0.25, 1)
		}
		g.lobes = append(g.lobes, l)
	}
	return g
}
