package slice

import (
	"math"

	"pourbench/pour/swirl"
)

// sun is the direction the light comes from: from the left, behind who looks.
func sun() vec { return vec{-0.66, -0.06, 0.75}.unit() }

const (
	fill     = 0.5  // of the light comes from everywhere
	wrap     = 0.25 // light reaches so far round an edge
	mostDark = 0.55 // of its light the ground lacks in the deepest shadow
)

// lit is how bright a side is that faces a way, against one that faces up.
func lit(n vec, shadow float64) float64 {
	shine := func(n vec, shadow float64) float64 {
		return fill + (1-fill)*max(0, (n.dot(sun())+wrap)/(1+wrap))*(1-shadow)
	}
	return shine(n, shadow) / shine(vec{z: 1}, 0)
}

// The satin of icing and the shadow between its strands, by eye, no source.
const (
	icingBright = 0.92 // of its colour where it lies level, so that there is room for the satin
	glossy      = 0.26 // how much brighter it is where it mirrors the sun
	glossPower  = 8    // how far that spreads
	hollowDark  = 0.64 // how much of its light a place lacks from which the sky is hidden
)

// gloss is how much brighter icing is that faces a way, for its satin.
func gloss(n vec) float64 {
	v, _, _ := towards()
	return glossy * math.Pow(max(0, n.dot(sun().plus(v).unit())), glossPower)
}

// suns is the sun's disc, as wide as a window: so many places of it, spread evenly by the golden angle.
func suns(n int) []vec {
	const wide = 0.27
	l := sun()
	side := vec{-l.y, l.x, 0}.unit()
	over := vec{side.y*l.z - side.z*l.y, side.z*l.x - side.x*l.z, side.x*l.y - side.y*l.x}
	out := make([]vec, n)
	for k := range out {
		r := wide * math.Sqrt((float64(k)+0.5)/float64(n))
		sin, cos := math.Sincos(float64(k) * math.Pi * (3 - math.Sqrt(5)))
		out[k] = l.plus(side.times(r * cos)).plus(over.times(r * sin)).unit()
	}
	return out
}

// shaded is how much of the sun the blocks take from a place, 0 to 1; what stands on them counts as level. A block may be left out. A
// place under a block, which is in nobody's sight, is taken for one beside it: less than so far in from the sun, mm, it is in the light.
func (s *Scene) shaded(at vec, suns []vec, but *pose, under float64) float64 {
	hit := 0
	for _, l := range suns {
		for _, p := range [2]*pose{&s.loaf, &s.piece} {
			if p == but {
				continue
			}
			if near, far, ok := s.through(p, p.in(at), p.inWay(l)); ok && (near > 0 || far > under+0.02) {
				hit++
				break
			}
		}
	}
	return float64(hit) / float64(len(suns))
}

// through is the stretch of a line, through a place of a block's own, that lies in what is in the block: of a tube, the round.
func (s *Scene) through(p *pose, o, d vec) (near, far float64, ok bool) {
	near, far, ok = p.crosses(o, d, p.flat)
	if !ok || !s.recipe.Round {
		return near, far, ok
	}
	in, out, ok := p.pipe(o, d)
	near, far = max(near, in), min(far, out)
	return near, far, ok && near < far && far > 0
}

// pipe is where a line goes into and out of the round in a tube's block, without its ends.
func (p *pose) pipe(o, d vec) (near, far float64, ok bool) {
	r := p.high.y / 2
	oy, oz := o.y-r, o.z-r
	a, b, c := d.y*d.y+d.z*d.z, oy*d.y+oz*d.z, oy*oy+oz*oz-r*r
	root := b*b - a*c
	if root <= 0 || a < 1e-12 {
		return math.Inf(-1), math.Inf(1), a < 1e-12 && c < 0
	}
	root = math.Sqrt(root)
	return (-b - root) / a, (-b + root) / a, true
}

// contact is how much darker the ground is close to what stands on it.
func (s *Scene) contact(at vec) float64 {
	const reach, dark, close, closeDark = 5, 0.45, 0.9, 0.4 // mm; and a seam of dark where it touches
	most := 0.0
	for _, p := range [2]*pose{&s.loaf, &s.piece} {
		q := p.in(at)
		out := vec{max(p.low.x-q.x, 0, q.x-p.high.x), max(p.low.y-q.y, 0, q.y-p.high.y), max(p.low.z-q.z, 0, q.z-p.flat)}
		away, lies := math.Sqrt(out.dot(out)), max(out.x, out.y, q.z-s.recipe.Box.H, -q.z)
		if r := p.high.y / 2; s.recipe.Round {
			away = math.Hypot(out.x, max(0, math.Hypot(q.y-r, q.z-r)-r))
			lies = away
		}
		most = max(most, dark*math.Exp(-away/reach)+closeDark*math.Exp(-lies/close))
	}
	return most
}

// dark is the shadow on the ground, worked out on a grid once for a picture and read between its points.
type dark struct {
	low        vec
	step       float64
	wide, high int
	part       []float32
}

// darkness works the ground's shadow out, with looks so far apart, mm.
func (s *Scene) darkness(step float64, n int) *dark {
	low, high := vec{}, vec{}
	for _, p := range [2]*pose{&s.loaf, &s.piece} {
		for k := range 8 {
			c := p.out(p.corner(k))
			low, high = vec{min(low.x, c.x), min(low.y, c.y), 0}, vec{max(high.x, c.x), max(high.y, c.y), 0}
		}
	}
	l := sun()
	reach := s.loaf.flat * (math.Abs(l.x)/l.z + 0.9) // of the shadow, with its soft edge
	low, high = vec{low.x - 16, low.y - 0.4*reach, 0}, vec{high.x + reach, high.y + 0.6*reach, 0}
	d := &dark{low: low, step: step, wide: int((high.x-low.x)/step) + 2, high: int((high.y-low.y)/step) + 2}
	d.part = make([]float32, d.wide*d.high)
	lights := suns(n)
	swirl.Share(d.high, func(j int) bool {
		for i := range d.wide {
			at := vec{low.x + float64(i)*step, low.y + float64(j)*step, 0}
			d.part[j*d.wide+i] = float32(s.shaded(at, lights, nil, 2.5*step))
		}
		return true
	})
	return d
}

// at is the shadow at a place of the ground.
func (d *dark) at(x, y float64) float64 {
	return float64(bilinear(d.part, d.wide, d.high, (x-d.low.x)/d.step, (y-d.low.y)/d.step))
}

// bilinear reads a grid between its points.
func bilinear(grid []float32, wide, high int, x, y float64) float32 {
	x, y = min(max(x, 0), float64(wide)-1.001), min(max(y, 0), float64(high)-1.001)
	i, j := int(x), int(y)
	fx, fy := float32(x-float64(i)), float32(y-float64(j))
	row := grid[j*wide+i:]
	below := row[wide:]
	return (row[0]*(1-fx)+row[1]*fx)*(1-fy) + (below[0]*(1-fx)+below[1]*fx)*fy
}
