package swirl

import (
	"math"

	"pourbench/pour/script"
)

// Surface is what the cut surface of one portion shows beside its colour, each from 0 (none) to 1 (as much as there ever is).
type Surface struct {
	Glint   float64 // flakes of mica that catch the light
	Speckle float64 // grains coarse enough to be seen: ground plants, oats, clay
}

// Material is what a cut and planed surface shows beside its colours. Everything in it lies in mm, so that a picture of any resolution
// shows the same bar; what is finer than a pixel fades. The zero value is a bare picture, [Planed] is soap. It is no part of a [Picture]:
// shares are counted without it.
type Material struct {
	Streaks   float64   // how much the streaks of the blade change the brightness, 0 to 1
	Tooth     float64   // how much the fine unevenness of a matt surface changes it, 0 to 1
	Pores     float64   // how dark small air bubbles that were cut open are, 0 to 1
	Veins     float64   // by what part more or less colourant lies in some places than in others of its colour at most, 0 to 1
	BleedMM   float64   // how far from one portion to its neighbour a crisp border fades; 0: it has none, and is as smooth as it was drawn
	FeatherMM float64   // and how far where they ran into each other most
	WaverMM   float64   // how far a border wavers at most
	TearMM    float64   // how far the blade tears one portion over its neighbour at most
	Flakes    float64   // how bright flakes of mica are at most, 0 to 1
	Grains    float64   // how dark grains of plants are, 0 to 1
	Surfaces  []Surface // by portion; those beyond it are plain batter
	Relief    float64   // how much the slopes of a fresh top show, 0 to 1; a cut has none
	CutMM     float64   // where the cut lies, mm: another cut has other streaks, pores and grains
}

// Planed is the material of a bar that was cut by wire and planed: figures by eye, no source.
func Planed() Material {
	return Material{Streaks: 0.035, Tooth: 0.025, Pores: 0.18, Veins: 0.24, BleedMM: 0.4, FeatherMM: 0.8, WaverMM: 0.35, TearMM: 0.12, Flakes: 0.5, Grains: 0.5, Relief: 1}
}

// Fresh is the material of a surface no blade went over.
func (m Material) Fresh() Material {
	m.Streaks, m.TearMM, m.Pores = 0, 0, m.Pores/2
	return m
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
	bladeSlant = -0.33 // radians from level, the way the blade went
	bladeSwing = 0.12  // and how far that differs from cut to cut
	bladeBowMM = 1.5   // no hand goes straight: it bows by so much
	bladeArcMM = 60.0  // over so far
	toothMM    = 0.09  // mesh of the unevenness of the surface
	poreMesh   = 6.0   // one bubble at most in a square of so many mm
	poreLeast  = 0.10  // mm, radii
	poreMost   = 0.28
	poreOften  = 0.45 // of the squares
	frothMesh  = 2.1
	frothLeast = 0.06
	frothMost  = 0.27
	frothOften = 0.5
	flakeMesh  = 0.22
	flakeLeast = 0.02
	flakeMost  = 0.06
	grainMesh  = 0.8
	grainLeast = 0.06
	grainMost  = 0.30
)

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
	noise  *lattice
	off    vec2 // cells by which the noise of this cut lies elsewhere
	sx, sy float64
	streak [3]streak
	tooth  float32
}

// streak is one size of streaks: cells per mm along the blade's way and across it, and how strong they are.
type streak struct {
	along, across float64
	depth         float32
}

func (m Material) planing(px float64) *planing {
	p := &planing{Material: m, px: px, seed: math.Float64bits(math.Round(m.CutMM*8)) | 1}
	d := script.NewDice(int64(math.Round(m.CutMM*8)), 0xb1ade)
	p.off = vec2{d.Between(0, latticeSide), d.Between(0, latticeSide)}
	p.sy, p.sx = math.Sincos(bladeSlant + d.Between(-bladeSwing, bladeSwing))
	for i, size := range [3]struct{ long, wide, part float64 }{{22, 0.16, 0.45}, {40, 0.55, 0.6}, {70, 2.1, 0.5}} { // mm, mm, by eye
		p.streak[i] = streak{1 / size.long, 1 / size.wide, float32(m.Streaks * size.part * clamp(size.wide/px-1, 0, 1))}
	}
	if m.Streaks > 0 {
		p.noise = newLattice(1)
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

// Grain is how bright a place of a cut surface is beside its colour, (x, y) mm from its upper left corner, in a picture whose pixels are px mm wide;
// nil where the material shows nothing. It may be asked from several goroutines at once.
func (m Material) Grain(px float64) func(portion uint8, x, y float64) float64 {
	if m.Streaks == 0 && m.Tooth == 0 && m.Pores == 0 && m.Flakes == 0 && m.Grains == 0 {
		return nil
	}
	const tone = 0.5 // of a middle grey: what catches the light is brighter by so much of the rest
	p := m.planing(px)
	return func(portion uint8, x, y float64) float64 {
		return float64(p.over(light{tone, tone, tone}, portion, x, y).g) / tone
	}
}

// blade is the streaks of the blade, which are seldom as long as the bar. Those as fine as a pixel average out.
func (p *planing) blade(x, y float64) (sum float32) {
	if p.noise == nil {
		return 0
	}
	along, across := x*p.sx+y*p.sy, y*p.sx-x*p.sy
	across += bladeBowMM * float64(p.noise.at(along/bladeArcMM+p.off.z, across/bladeArcMM+p.off.y))
	for i := range p.streak {
		if s := &p.streak[i]; s.depth > 0 {
			sum += s.depth * p.noise.at(along*s.along+p.off.y, across*s.across+p.off.z)
		}
	}
	return sum
}

// froth is how much darker a place of cut icing is for the air that was whipped into it: more bubbles than batter has, and finer.
func (p *planing) froth(x, y float64) float32 {
	if p.Pores == 0 {
		return 0
	}
	return float32(0.8 * p.Pores * p.spot(x, y, frothMesh, frothOften, frothLeast, frothMost, 4))
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
	wide := max(r, 0.6*p.px) // one finer than a pixel is spread over it and so much fainter
	edge := clamp((wide-math.Hypot(e, f))/max(p.px, 0.3*r)+0.5, 0, 1)
	return edge * (r * r) / (wide * wide)
}

// facet is how bright the flake at a place is: few face the light.
func (p *planing) facet(x, y float64) float64 {
	v := unit(hash3(int64(math.Floor(x/flakeMesh)), int64(math.Floor(y/flakeMesh)), p.seed+11))
	return v * v * v * v * v
}

// lit is a colour with a part of white light over it.
func (l light) lit(part float32) light {
	return light{l.r + part*(1-l.r), l.g + part*(1-l.g), l.b + part*(1-l.b)}
}
