package swirl

import (
	"math"

	"pourbench/pour/script"
)

// edges is how uneven the borders between portions are: no batter parts from its neighbour along a line drawn with a pen. Where both were thin they
// feather into each other, elsewhere a border stays crisp and wavers.
type edges struct {
	px      float64 // mm
	least   float64 // pixels, half of the bleed where it is crisp
	feather float64 // and how much more where it is not
	waver   float64 // pixels, how far it wavers at most
	tear    float64 // pixels, how far the blade tears one portion over the next at most
	way     vec2    // the way the blade went, a pixel of it
	noise   *lattice
	off     vec2
}

// What borders look like close to, by eye, no source: mm.
const (
	waverLong  = 4.3  // from one waver to the next
	waverShort = 1.7  // and of the finer ones on them
	waverPart  = 0.2  // which are so strong beside the long ones
	moodLong   = 17.0 // from where borders are ragged to where they are smooth
	softLong   = 9.0  // from where they feather to where they are crisp
	tearLong   = 5.0  // a scratch of the blade
	tearWide   = 0.7  // and how wide that is
	tearThin   = 0.3  // the finest of them
	tearPart   = 0.4  // of the tearing, which those are
	tearMood   = 7.0  // from where it tears to where it cuts
)

func newEdges(p *planing) *edges {
	m, px := p.Material, p.px
	d := script.NewDice(int64(math.Round(m.CutMM/40)), 0xed9e)
	return &edges{
		px: px, least: m.BleedMM / 2 / px, feather: max(0, m.FeatherMM-m.BleedMM) / 2 / px, waver: m.WaverMM / px, tear: m.TearMM / px, way: vec2{p.sx, p.sy},
		noise: newLattice(3), off: vec2{d.Between(0, latticeSide), d.Between(0, latticeSide)},
	}
}

// most is how far from a pixel a border may lie and still be seen in it, pixels.
func (e *edges) most() int {
	return int(math.Ceil(e.least + e.feather + (1+waverPart)*e.waver + e.tear))
}

// at is the place a pixel shows and how far round it is looked, all in pixels.
func (e *edges) at(i, j float64) (x, y, reach float64) {
	u, v := i*e.px, j*e.px
	mood := 0.5 + 0.5*float64(e.noise.at(u/moodLong+e.off.y, v/moodLong+e.off.z))
	swing := func(by float64) float64 {
		return float64(e.noise.at(u/waverLong+by, v/waverLong+e.off.z)) + waverPart*float64(e.noise.at(u/waverShort+e.off.z, v/waverShort+by))
	}
	far := e.waver * mood
	soft := 0.5 + 0.5*float64(e.noise.at(u/softLong+e.off.z, v/softLong+e.off.y))
	torn := e.torn(u, v)
	return i + far*swing(e.off.y+31.5) + torn*e.way.y, j + far*swing(e.off.y+97.5) + torn*e.way.z, e.least + e.feather*soft*soft
}

// torn is how far along its way the blade took a border with it, or left it behind, at a place in mm: in scratches, in some places. Crisp, for what it
// takes along stays soap of one colour: smeared, it would look out of focus.
func (e *edges) torn(u, v float64) float64 {
	if e.tear == 0 {
		return 0
	}
	along, across := u*e.way.y+v*e.way.z, v*e.way.y-u*e.way.z
	mood := 0.5 + 0.5*float64(e.noise.at(u/tearMood+e.off.y, v/tearMood+e.off.z))
	wide, thin := e.noise.at(along/tearLong+e.off.z, across/tearWide+e.off.y), e.noise.at(along/tearLong+e.off.y, across/tearThin+e.off.z)
	return e.tear * mood * mood * ((1-tearPart)*float64(wide) + tearPart*float64(thin))
}
