package relief

import (
	"image"
	"math"
)

// column draws upright views column by column: a look starts at the plane and goes on until the end, and what stands higher than all before it shows.
type column struct {
	v      *View
	w, h   int
	part   image.Rectangle
	px, py float64
	step   float64
	seen   [2][]look // half pixels from the top of the part down, of the two half columns
	down   int       // half pixels
	t      *terrain  // about what stands behind the plane; nil: not looked at yet

	edge    map[int]float64 // of a cut: its height every so many mm, where it was asked for
	heights []float64       // room for those about one column
}

// look is what is seen in half a pixel.
type look struct {
	stuff  uint8
	ok     bool
	cut    bool // the plane cuts it
	bright float32
	far    float32 // from the plane, mm
}

func (v *View) column(w, h int, part image.Rectangle) *column {
	c := &column{v: v, w: w, h: h, part: part, px: v.wide / float64(w), py: v.deep / float64(h), down: 2 * part.Dy()}
	c.step = min(max(c.px/2, leastStepMM), mostStepMM)
	for k := range c.seen {
		c.seen[k] = make([]look, c.down)
	}
	return c
}

const (
	leastStepMM = 0.12
	mostStepMM  = 1.2
)

// place turns a place of the picture and a distance from its plane into one on the loaf.
func (v *View) place(across, far float64) (x, y float64) {
	if v.side {
		return across, v.at - far
	}
	return v.at + far, across
}

// depth is how far a look goes, mm.
func (v *View) depth() float64 {
	if v.side {
		return v.at
	}
	return v.end - v.at
}

// draw draws a column of the part.
func (c *column) draw(dst *Picture, i int) {
	for k := range c.seen {
		clear(c.seen[k])
		across := c.v.from + (float64(c.part.Min.X+i)+0.25+0.5*float64(k))*c.px
		if c.up(0) > 0 {
			c.march(c.seen[k], across)
		}
		c.set(c.seen[k], across)
	}
	for j := range dst.H {
		var l looks
		for k := range c.seen {
			for _, s := range c.seen[k][2*j : 2*j+2] {
				switch {
				case !s.ok:
					l.miss(0)
				case s.cut:
					l.cutThrough(s.stuff, float64(s.bright))
				default:
					l.see(s.stuff, float64(s.bright))
				}
			}
		}
		dst.Dots[j*dst.W+i] = l.dot()
	}
}

// up is the height above the base of the middle of a half pixel.
func (c *column) up(j int) float64 {
	return c.v.peak - (float64(c.part.Min.Y)+(float64(j)+0.5)/2)*c.py
}

// below is the first half pixel that lies lower than a height.
func (c *column) below(z float64) int {
	return min(max(0, int(math.Ceil(2*((c.v.peak-z)/c.py-float64(c.part.Min.Y))-0.5))), c.down)
}

// march looks over the surface, from the plane on; up a wall it takes smaller steps.
func (c *column) march(seen []look, across float64) {
	const closer = 6
	v := c.v
	free := c.below(0) // half pixels above this one are free yet
	before, smear := 0.0, 0.0
	for far, step := 0.0, c.step; far < v.depth() && free > 0; far += step {
		x, y := v.place(across, far)
		s := v.f.at(x, y)
		if far == 0 {
			c.smear(&s, x, y)
			smear = s.z
		} else if far < smearMM {
			s.z = min(s.z, smear+smearRises*far)
		}
		switch rises := s.z-before > wallMM; {
		case rises && step == c.step && far > 0:
			far -= step
			step = c.step / closer
			continue
		case !rises:
			step = c.step
		}
		before = s.z
		free = c.show(seen, s, x, y, far, free)
	}
}

// wallMM is how much the surface rises in one step where it is looked at more closely.
const wallMM = 0.4

// show shows the surface at a place where it stands higher than all before it, and says down to where all is free after that.
func (c *column) show(seen []look, s spot, x, y, far float64, free int) int {
	top, stuff := s.z, s.stuff
	if s.grain != nil {
		top, stuff = s.under, s.below
	}
	piece, covered := c.v.f.covered(x, y) // pieces are looked at as solids, unless icing lies on them
	if from := c.below(top); stuff != Bare && top > 0 && !(covered && piece >= top) && from < free {
		bright := c.slope(x, y, far)
		for j := from; j < free; j++ {
			seen[j] = look{stuff: stuff, ok: true, bright: bright, far: float32(far)}
		}
		if far == 0 {
			c.section(seen, &s, x, y, from)
		}
		free = from
	}
	if s.grain != nil {
		c.grain(seen, s, x, y, far)
	}
	return free
}

// grainLies is how high the middle of a grain lies over what it was strewn on, of its radius: it has sunk in a little. By eye, no source.
const grainLies = 0.35

// grain shows a grain, as round from the side as from above.
func (c *column) grain(seen []look, s spot, x, y, far float64) {
	low, high := s.under, s.z
	shine := func(up float64) float64 { return 0.8 + 0.3*(up-low)/max(1e-9, high-low) }
	if s.grain.look == Grains {
		r := s.grain.size / 2
		off := y - s.gy
		if c.v.side {
			off = x - s.gx
		}
		round := math.Sqrt(max(0, r*r-off*off))
		lies := c.v.f.firm(s.gx, s.gy).z + grainLies*r
		low, high = max(lies-round, 0), lies+round
		shine = func(up float64) float64 {
			n := vector{off / r, (up - lies) / r, math.Sqrt(max(0, r*r-off*off-(up-lies)*(up-lies))) / r}
			return (lit(n, facing()) + gloss(n)) * behind(far)
		}
	}
	for j := c.below(high); j < c.below(low) || j == c.below(high) && j < c.down; j++ {
		if l := &seen[j]; !l.ok || l.far >= float32(far-2*c.step) {
			*l = look{stuff: s.stuff, ok: true, bright: float32(shine(c.up(j))), far: float32(far)}
		}
	}
}

// slope is how bright the surface is at a place, by how it slopes and what stands about it; where the plane cuts it, it is flat.
func (c *column) slope(x, y, far float64) float32 {
	if far == 0 {
		return cutBright
	}
	if c.t == nil {
		c.t = c.terrain()
	}
	dx, dy := c.t.slope(x, y)
	if steep := min(max(math.Hypot(dx, dy)-steepFrom, 0), 1); steep > 0 {
		wx, wy := c.t.slopeOver(x, y, steepMM)
		dx, dy = dx+steep*(wx-dx), dy+steep*(wy-dy)
	}
	soft := min(1, sideSteep/max(1e-9, math.Hypot(dx, dy)))
	z := c.t.at(x, y)
	n := c.v.seen(vector{-dx * soft, -dy * soft, 1}.unit())
	sky := 1 - hollowDark*c.t.groove(x, y, z)
	sunny := 1 - hollowSun*c.t.shadow(x, y, z, c.v.f.peak, c.v.sun())
	return float32(smeared((lit(n, facing())*sky*sunny+gloss(n)*sunny)*behind(far), far))
}

// How what stands behind a plane is lit, by eye, no source.
const (
	sideSteep  = 3.2  // mm to the mm: a steeper side is lit as one so steep
	steepFrom  = 1.4  // mm to the mm: how steep a steeper side is is taken from further apart
	steepMM    = 0.9  // so far to each side
	hollowDark = 0.42 // how much of the sky's light is taken at most between rounds
	hollowSun  = 0.16 // and of the sun's
	hollowMM   = 9    // so far about a place what stands there takes its light
	glossy     = 0.24 // how much brighter icing is where it mirrors the sun: it has a satin
	glossPower = 9    // how far that spreads
)

// terrain is the surface that a part of the picture looks over.
func (c *column) terrain() *terrain {
	v, r := c.v, &c.v.f.recipe
	across := [2]float64{v.from + float64(c.part.Min.X)*c.px, v.from + float64(c.part.Max.X)*c.px}
	if v.side {
		deep := [2]float64{0, v.at}
		return v.f.terrain(c.px, hollowMM, across, deep, [2]float64{0, r.L}, deep)
	}
	deep := [2]float64{v.at, v.end}
	return v.f.terrain(c.px, hollowMM, deep, across, deep, [2]float64{0, r.W})
}

// facing is the way a skin faces that is as bright as its colour where it is looked at from the side: up, and towards who looks. By eye, no source.
func facing() vector { return vector{0, 0.55, 0.83} }

// gloss is how much brighter a skin is that faces a way, in the directions of a picture, for the satin of icing.
func gloss(n vector) float64 {
	l := sun()
	half := vector{l.x, l.y, l.z + 1}.unit() // between the sun and who looks
	return glossy * math.Pow(max(0, n.dot(half)), glossPower)
}

// behind is how bright a skin is so far behind the plane: the cut keeps light from what is close behind it, and what is farther off is dimmer. By
// eye, no source.
func behind(far float64) float64 {
	const close, closeMM, dim, dimMM = 0.2, 2.5, 0.1, 25
	return 1 - close*math.Exp(-far/closeMM) - dim*(1-math.Exp(-far/dimMM))
}

// cutBright is how bright what the plane cuts is: flat, as light as its colour, and so lighter than a skin behind it.
const cutBright = 1

// seen turns a direction on the loaf into the directions of the picture: to the right, up, and towards who looks.
func (v *View) seen(n vector) vector {
	if v.side {
		return vector{n.x, n.z, n.y}
	}
	return vector{n.y, n.z, -n.x}
}

// sun is where the light comes from, in the directions of the loaf.
func (v *View) sun() vector {
	l := sun()
	if v.side {
		return vector{l.x, l.z, l.y}
	}
	return vector{-l.z, l.x, l.y}
}

// covered says whether a piece lies under a place, and how high it stands there.
func (f *Field) covered(x, y float64) (top float64, ok bool) {
	for i := range f.pieces {
		if z, in := f.pieces[i].over(x, y); in && (!ok || z > top) {
			top, ok = z, true
		}
	}
	return top, ok
}

// set looks at the pieces: those the plane cuts show their section, above the base and below it; of the others only what stands out is seen.
func (c *column) set(seen []look, across float64) {
	v := c.v
	deep := v.depth()
	for i := range v.f.pieces {
		s := v.f.pieces[i]
		s.plane = v.at
		middle, reach := s.Y, s.reachY
		if v.side {
			middle, reach = s.X, s.reachX
		}
		if math.Abs(across-middle) > reach {
			continue
		}
		for j := c.below(s.top); j < c.below(s.bottom); j++ {
			near, far, ok := c.through(&s, across, c.up(j))
			if !ok || far <= 0 || near >= deep || near > 0 && c.up(j) < 0 {
				continue
			}
			if seen[j].ok && float64(seen[j].far) < near {
				continue
			}
			x, y := v.place(across, max(near, 0))
			seen[j] = look{stuff: s.Stuff, ok: true, cut: near <= 0, bright: float32(s.section(x, y, c.up(j))), far: float32(max(near, 0))}
			if near > 0 {
				n := v.seen(s.normal(x, y, c.up(j)))
				seen[j].bright = float32((lit(n, facing()) + gloss(n)) * behind(near) * s.rounded(reach-math.Abs(across-middle), c.up(j)))
			}
		}
	}
}

// through is between which distances from the plane a look goes through a piece.
func (c *column) through(s *solid, across, z float64) (near, far float64, ok bool) {
	from, to, ok := s.span(across, z, c.v.side)
	if !ok {
		return 0, 0, false
	}
	if c.v.side {
		return c.v.at - to, c.v.at - from, true
	}
	return from - c.v.at, to - c.v.at, true
}
