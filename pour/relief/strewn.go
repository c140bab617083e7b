package relief

import (
	"math"
)

// The looks of what is strewn.
const (
	Grains  = "grains"  // round, on the surface
	Flakes  = "flakes"  // flat and longer than wide: petals, shavings
	Dust    = "dust"    // fine specks in drifts
	Drizzle = "drizzle" // lines to and fro
	Sheen   = "sheen"   // a mist: specks all over
)

// Strewn is one material that lies on the top.
type Strewn struct {
	Look     string  // one of the looks
	SizeMM   float64 // of a grain; 0: usual for its look
	Coverage float64 // of the top that it hides, 0 to 1
	Stuff    uint8
}

// scatter is a strewn material ready to be looked at. Grains lie one to a square, somewhere in it, in so many of the squares that they hide the
// coverage: those that overlap are allowed for as if they fell by chance, 1 − exp(−number × area).
type scatter struct {
	look     string
	stuff    uint8
	size     float64
	slim     float64 // width of a flake by its length
	high     float64
	square   float64
	part     float64 // of squares that hold a grain
	seed     uint64
	coverage float64
}

const (
	mostCoverage = 0.9
	flakeMM      = 7 // long, where a size is not said or is a thickness
	speckMM      = 0.55
	drizzleMM    = 2.2 // wide
	fullSquares  = 0.8
)

func (w Strewn) scatter(seed int64, turn int) (scatter, bool) {
	c := scatter{look: w.Look, stuff: w.Stuff, size: w.SizeMM, slim: 1, seed: mix(uint64(seed)*31+uint64(turn)+1) | 1, coverage: min(w.Coverage, mostCoverage)}
	if !(c.coverage > 0) {
		return c, false
	}
	switch w.Look {
	case Flakes:
		c.slim = 0.5
		if c.size < 3 {
			c.size = flakeMM
		}
		c.high = 0.8
	case Dust, Sheen:
		c.size, c.high = speckMM, 0.05
	case Drizzle:
		c.size, c.high = drizzleMM, 0.9
		return c, true
	default:
		if !(c.size > 0.2) {
			c.size = 1
		}
		c.high = 0.8 * c.size
	}
	number := -math.Log(1-c.coverage) / (math.Pi / 4 * c.size * c.size * c.slim) // on a mm²
	c.square = math.Sqrt(fullSquares / number)
	if c.square < c.size/2 { // a grain reaches into the squares about its own only
		c.square = c.size / 2
	}
	c.part = number * c.square * c.square
	return c, true
}

// mix is SplitMix64's finisher, so that a place and a seed mean the same grain in every release.
func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// grain is what of a material lies over a place: how high it stands there over what lies below, and where its middle is.
type grain struct{ bump, x, y float64 }

// at finds the grain over a place.
func (c *scatter) at(x, y float64) (grain, bool) {
	if c.look == Drizzle {
		return c.line(x, y)
	}
	r := c.size / 2
	square := func(v float64) int { return int(math.Floor(v / c.square)) }
	for j := square(y - r); j <= square(y+r); j++ {
		for i := square(x - r); i <= square(x+r); i++ {
			if g, ok := c.of(i, j, x, y); ok {
				return g, true
			}
		}
	}
	return grain{}, false
}

// of is the grain of one square, seen at a place.
func (c *scatter) of(i, j int, x, y float64) (grain, bool) {
	h := mix(c.seed + uint64(uint32(i))<<32 + uint64(uint32(j)))
	unit := func(shift uint) float64 { return float64(h>>shift&0xffff) / 0x10000 }
	part := c.part
	if c.look == Dust { // in drifts
		part *= 1 + 0.8*math.Sin(float64(i)*c.square/9+phase(c.seed))*math.Cos(float64(j)*c.square/7)
	}
	if unit(0) >= part {
		return grain{}, false
	}
	g := grain{x: (float64(i) + unit(16)) * c.square, y: (float64(j) + unit(32)) * c.square}
	dx, dy := x-g.x, y-g.y
	if c.slim < 1 {
		sin, cos := math.Sincos(2 * math.Pi * unit(48))
		dx, dy = dx*cos+dy*sin, (dy*cos-dx*sin)/c.slim
	}
	r := 4 * (dx*dx + dy*dy) / (c.size * c.size)
	switch {
	case r >= 1:
		return g, false
	case c.look == Flakes:
		g.bump = c.high * (0.6 + 0.4*r) // petals curl up at their edges
	default:
		g.bump = c.high * (0.25 + 0.75*math.Sqrt(1-r))
	}
	return g, true
}

// phase is an angle by a seed.
func phase(seed uint64) float64 { return float64(seed&0xffff) / 0x2000 }

// line is a thread drizzled to and fro across the top while the hand moves along it.
func (c *scatter) line(x, y float64) (grain, bool) {
	// Threads slant one way and the other, so far apart that both together hide the coverage; each bows a little.
	gap := 2 * c.size / c.coverage
	for k, slant := range [2]float64{0.5, -0.35} {
		bow := 2.5 * math.Sin(0.09*y+float64(k)*2+phase(c.seed))
		t := (x + slant*y + bow) / gap
		t -= math.Floor(t)
		d := math.Abs(t-0.5) * gap * 0.9
		if half := c.size / 2; d < half {
			return grain{c.high * math.Sqrt(1-d*d/(half*half)), x, y}, true
		}
	}
	return grain{}, false
}
