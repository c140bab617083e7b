package swirl

import "math"

// Surface is what the cut surface of one portion shows beside its colour, each from 0 (none) to 1 (as much as there ever is).
type Surface struct {
	Glint   float64 // flakes of mica that catch the light
	Speckle float64 // grains coarse enough to be seen: ground plants, oats, clay
}

// Material is what a cut and planed surface shows beside its colours. Everything in it lies in mm, so that a picture of any resolution
// shows the same bar; what is finer than a pixel fades. The zero value is a bare picture, [Planed] is soap. It is no part of a [Picture]:
// shares are counted without it.
type Material struct {
	Streaks  float64   // how much the streaks of the blade change the brightness, 0 to 1
	Tooth    float64   // how much the fine unevenness of a matt surface changes it, 0 to 1
	Pores    float64   // how dark small air bubbles that were cut open are, 0 to 1
	BleedMM  float64   // how far from one portion to its neighbour the border fades
	Flakes   float64   // how bright flakes of mica are at most, 0 to 1
	Grains   float64   // how dark grains of plants are, 0 to 1
	Surfaces []Surface // by portion; those beyond it are plain batter
	CutMM    float64   // where the cut lies, mm: another cut has other streaks, pores and grains
}

// Planed is the material of a bar that was cut by wire and planed: figures by eye, no source.
func Planed() Material {
	return Material{Streaks: 0.035, Tooth: 0.025, Pores: 0.18, BleedMM: 0.3, Flakes: 0.5, Grains: 0.5}
}

// surface is what a portion shows.
func (m *Material) surface(portion uint8) Surface {
	if int(portion) >= len(m.Surfaces) {
		return Surface{}
	}
	return m.Surfaces[portion]
}

// What a planed surface looks like close to, mm: by eye, no source.
const (
	streakSlant = 0.94 // radians from upright, the way the blade went
	streakMM    = 0.16 // the finest streaks lie so far apart
	toothMM     = 0.09 // mesh of the unevenness of the surface
	poreMesh    = 6.0  // one bubble at most in a square of so many mm
	poreLeast   = 0.10 // mm, radii
	poreMost    = 0.28
	poreOften   = 0.45 // of the squares
	flakeMesh   = 0.45
	flakeLeast  = 0.05
	flakeMost   = 0.14
	grainMesh   = 1.3
	grainLeast  = 0.10
	grainMost   = 0.34
)

// noise is values between -1 and 1 at the knots of a line that repeats itself.
type noise [noiseKnots]float32

const noiseKnots = 1 << 12

func newNoise(seed uint64) *noise {
	var n noise
	for i := range n {
		n[i] = float32(2*unit(hash3(int64(i), 0, seed)) - 1)
	}
	return &n
}

// at is the noise t knots along, smooth in between.
func (n *noise) at(t float64) float32 {
	low := math.Floor(t)
	i, f := int(low), float32(t-low)
	f *= f * (3 - 2*f)
	a, b := n[i&(noiseKnots-1)], n[(i+1)&(noiseKnots-1)]
	return a + f*(b-a)
}

// hash3 mixes two numbers and a seed (the finaliser of SplitMix64: Steele, Lea and Flood 2014).
func hash3(a, b int64, seed uint64) uint64 {
	z := seed + uint64(a)*0x9e3779b97f4a7c15 + uint64(b)*0xc2b2ae3d27d4eb4f
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// unit is a hash as a number from 0 to 1.
func unit(h uint64) float64 { return float64(h>>11) / (1 << 53) }

// planing is a material ready to be laid over a picture whose pixels are px mm wide.
type planing struct {
	Material
	px     float64
	seed   uint64
	lines  *noise
	sx, sy float64
	streak [3]float32 // amplitudes of streaks of 1, 4 and 17 times the finest
	tooth  float32
}

func (m Material) planing(px float64) *planing {
	p := &planing{Material: m, px: px, seed: math.Float64bits(math.Round(m.CutMM*8)) | 1}
	p.lines = newNoise(p.seed)
	p.sx, p.sy = math.Sincos(streakSlant)
	for i, times := range [3]float64{1, 4, 17} {
		p.streak[i] = float32(m.Streaks * fades(times*streakMM, px) / 3)
	}
	p.tooth = float32(m.Tooth * fades(toothMM, px))
	return p
}

// fades is how much of what is so fine is left in pixels of px mm: all of it in pixels as fine, less in larger ones.
func fades(mm, px float64) float64 { return min(1, mm/px) }

// over lays the material over the colour of a portion at (x, y) mm from the upper left corner.
func (p *planing) over(c light, portion uint8, x, y float64) light {
	c = c.scaled(1 + p.blade(x, y) + p.tooth*p.bump(x, y))
	if p.Pores > 0 {
		if cover := p.spot(x, y, poreMesh, poreOften, poreLeast, poreMost, 1); cover > 0 {
			c = c.scaled(float32(1 - p.Pores*cover))
		}
	}
	s := p.surface(portion)
	if s.Speckle > 0 && p.Grains > 0 {
		c = c.scaled(float32(1 - p.Grains*p.spot(x, y, grainMesh, 0.75*s.Speckle, grainLeast, grainMost, 2)))
	}
	if s.Glint > 0 && p.Flakes > 0 {
		if cover := p.spot(x, y, flakeMesh, 0.8*s.Glint, flakeLeast, flakeMost, 3); cover > 0 {
			c = c.lit(float32(p.Flakes * cover * p.facet(x, y)))
		}
	}
	return c
}

// blade is the streaks of the blade, which are seldom as long as the bar.
func (p *planing) blade(x, y float64) float32 {
	across, along := x*p.sx+y*p.sy, y*p.sx-x*p.sy
	t := across / streakMM
	long := 0.6 + 0.4*p.lines.at(along/9+512)
	return long * (p.streak[0]*p.lines.at(t) + p.streak[1]*p.lines.at(t/4+1024) + p.streak[2]*p.lines.at(t/17+2048))
}

// bump is the unevenness of the surface, -1 to 1.
func (p *planing) bump(x, y float64) float32 {
	return float32(2*unit(hash3(int64(math.Floor(x/toothMM)), int64(math.Floor(y/toothMM)), p.seed+7)) - 1)
}

// spot is how far a place lies in a round spot, 0 to 1 with soft edges: each square of a mesh has one at most, which lies inside it.
func (p *planing) spot(x, y, mesh, often, least, most float64, kind uint64) float64 {
	i, j := math.Floor(x/mesh), math.Floor(y/mesh)
	h := hash3(int64(i), int64(j), p.seed+kind<<40)
	if unit(h) >= often {
		return 0
	}
	r := least + (most-least)*unit(h*0x9e3779b97f4a7c15)*unit(h*0xd6e8feb86659fd93)
	room := mesh - 2*r
	e := x - i*mesh - r - room*unit(h*0xa0761d6478bd642f)
	f := y - j*mesh - r - room*unit(h*0xe7037ed1a0b428db)
	soft := max(p.px, 0.4*r)
	edge := clamp((r-math.Hypot(e, f))/soft+0.5, 0, 1)
	return edge * min(1, r/p.px)
}

// facet is how bright the flake at a place is: few face the light.
func (p *planing) facet(x, y float64) float64 {
	v := unit(hash3(int64(math.Floor(x/flakeMesh)), int64(math.Floor(y/flakeMesh)), p.seed+11))
	return v * v * v
}

// lit is a colour with a part of white light over it.
func (l light) lit(part float32) light {
	return light{l.r + part*(1-l.r), l.g + part*(1-l.g), l.b + part*(1-l.b)}
}
