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
	drag    float64 // pixels, how far the blade drags one portion over the next
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
)

func newEdges(p *planing) *edges {
	m, px := p.Material, p.px
	d := script.NewDice(int64(math.Round(m.CutMM/40)), 0xed9e)
	return &edges{
		px: px, least: m.BleedMM / 2 / px, feather: max(0, m.FeatherMM-m.BleedMM) / 2 / px, waver: m.WaverMM / px, drag: m.DragMM / px, way: vec2{p.sx, p.sy},
		noise: newLattice(3), off: vec2{d.Between(0, latticeSide), d.Between(0, latticeSide)},
	}
}

// most is how far from a pixel a border may lie and still be seen in it, pixels.
func (e *edges) most() int {
	return int(math.Ceil(e.least + e.feather + (1+waverPart)*e.waver + e.drag))
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
	return i + far*swing(e.off.y+31.5), j + far*swing(e.off.y+97.5), e.least + e.feather*soft*soft
}
