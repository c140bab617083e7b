package relief

import (
	"math"

	"pourbench/pour/shape"
)

// coil is a rosette: a strand laid in a spiral, tier on tier, on the body that a small one has beside its strand. Where turns overlap they heap up a
// little; overlap takes no volume away, so the heights are brought to the rosette's volume.
type coil struct {
	tip          opening
	pitch, lies  float64
	inner, outer float64
	tiers        []float64
	mounds       []dollop // tiers that do not go round once, and bodies under coils
	crown        float64  // height of the strand's middle over its foot
	groove       float64  // how deep its grooves are, as a part of the height
	most         float64
}

func newCoil(c *Icing, tip opening) form {
	k := &coil{tip: tip, pitch: shape.CoilPitch(c.Lies, min(c.Overlap, mostOverlap)), lies: c.Lies, inner: c.Inner, crown: parabola * c.Strand / c.Lies}
	r := shape.Rosette{Strand: c.Strand, Width: c.Lies, Overlap: min(c.Overlap, mostOverlap), Inner: c.Inner, Tiers: c.Tiers}
	for i, t := range c.Tiers {
		k.outer = max(k.outer, t)
		strand, body := r.Tier(i)
		short := shape.CoilTurns(k.pitch, c.Inner, t) < 1
		if i > 0 && short {
			k.mounds = append(k.mounds, moundOf(c, tip, t, (strand+body)/k.crown))
			continue
		}
		if body > 0 {
			k.mounds = append(k.mounds, moundOf(c, tip, t, body/k.crown))
		}
		if short {
			k.pitch = max(t-c.Inner, 0.1*c.Lies)
		}
		k.tiers = append(k.tiers, t)
	}
	k.groove = grooves(tip)
	if drawn := drawnVolume(k, k.lies/12); drawn > 0 && c.Volume > 0 {
		k.crown *= c.Volume / drawn
	}
	k.most = highest(k)
	return k
}

const (
	parabola    = 1.5 // height of a parabola against the mean over its width
	mostOverlap = 0.9
)

// grooves is how deep the grooves of a strand out of a tip are, as a part of its height.
func grooves(tip opening) float64 {
	if !tip.ridged() {
		return 0
	}
	return 0.3 * (1 - tip.fullness())
}

// strandAt is the height of a strand of height 1 at a place across it, -1 to 1: a parabola, grooved where its tip is a star.
func strandAt(u, groove float64, points int) float64 {
	if u <= -1 || u >= 1 {
		return 0
	}
	z := 1 - u*u
	if groove > 0 {
		z *= 1 - groove*(1-math.Cos(math.Pi*u*max(2, math.Round(float64(points)/2))))
	}
	return z
}

func (k *coil) at(x, y float64) (z, across float64) {
	r := math.Hypot(x, y)
	half := k.lies / 2
	if r >= k.outer+half {
		return 0, 0
	}
	turn := math.Atan2(y, x)/(2*math.Pi) + 0.5
	first := max(0, math.Floor((r-half-k.inner)/k.pitch-turn))
	for _, outer := range k.tiers {
		best, heap := 0.0, 0.0
		for n := first; ; n++ {
			line := k.inner + k.pitch*(turn+n)
			if line-k.pitch-half > r || line > outer {
				break
			}
			end := k.ending(outer - line)
			if end == 0 {
				continue
			}
			u := (r - line + 0.7*(1-end)*half) / (half * end) // it ends thin, tucked in
			h := end * strandAt(u, k.groove, k.tip.points)
			heap += h * h
			if h > best {
				best, across = h, 0.5+0.5*u
			}
		}
		z += math.Sqrt(heap)
	}
	for i := range k.mounds {
		h, a := k.mounds[i].at(x, y)
		z += h
		if h > 0 {
			across = a
		}
	}
	return z * k.crown, across
}

// moundOf is a kiss as wide as a tier, of so much icing: an upper tier that does not go round once, on the one below, or the body under a coil.
func moundOf(c *Icing, tip opening, outer, volume float64) dollop {
	tip.valley = 0.5 + 0.5*tip.valley
	d := dollop{tip: tip, radius: outer + c.Lies/2, power: shape.Paraboloid}
	d.top = volume / shape.Mound(tip.fullness(), d.radius, 1, d.power)
	return d
}

// ending is 1 along the strand and falls to 0 where it ends, so far before which a place lies, mm across the turns.
func (k *coil) ending(before float64) float64 {
	soft := 0.14 * k.pitch
	switch t := before / soft; {
	case t >= 1:
		return 1
	case t <= 0:
		return 0
	default:
		return math.Sqrt(t * (2 - t))
	}
}

func (k *coil) reach() (x, y float64) { r := k.outer + k.lies/2; return r, r }
func (k *coil) high() float64         { return k.most }

// highest looks for the greatest height of a form.
func highest(f form) float64 {
	const looks = 64
	reachX, reachY := f.reach()
	most := 0.0
	for i := range looks + 1 {
		for j := range looks + 1 {
			z, _ := f.at(reachX*(2*float64(i)/looks-1), reachY*(2*float64(j)/looks-1))
			most = max(most, z)
		}
	}
	return most
}

// shell is a head, a quarter of an ellipsoid, and a tail, half an elliptic cone, with ridges that fan out of the tail.
type shell struct {
	head, tail, half, top float64
	fullness              float64
	ridges                float64 // over half the width
	scale                 float64
}

func newShell(c *Icing, tip opening) form {
	s := &shell{head: c.Head, tail: c.Tail, half: c.Wide / 2, top: c.High, fullness: tip.fullness(), ridges: max(1, math.Round(0.25*float64(tip.points))), scale: 1}
	if drawn := drawnVolume(s, (c.Head+c.Tail)/80); drawn > 0 && c.Volume > 0 {
		s.scale = c.Volume / drawn
	}
	return s
}

func (s *shell) at(x, y float64) (z, across float64) {
	x += (s.head + s.tail) / 2 // from the front of the head
	part := 1 - (x-s.head)/s.tail
	if x < s.head {
		part = math.Sqrt(max(0, 1-(1-x/s.head)*(1-x/s.head)))
	}
	if part <= 0 || x < 0 {
		return 0, 0
	}
	v := y / (s.half * part)
	if v <= -1 || v >= 1 {
		return 0, 0
	}
	z = s.scale * s.top * part * math.Sqrt(1-v*v)
	fan := math.Asin(v) / (math.Pi / 2)
	if s.fullness < 1 {
		z *= max(0, 1-(1-s.fullness)*(1-math.Cos(2*math.Pi*s.ridges*fan)))
	}
	return z, 0.5 + 0.5*fan
}

func (s *shell) reach() (x, y float64) { return (s.head + s.tail) / 2, s.half }
func (s *shell) high() float64         { return s.top * max(1, s.scale) }
