package shopping

import (
	"math"

	"pourbench/pour"
)

// Sizing is what a plan's pour is sized by.
type Sizing struct {
	Label string    // of that field
	Unit  pour.Unit // of its number; none: it is counted
	Now   float64   // as the plan has it
	Step  float64
	least int // steps
	most  int
}

// The steps that sizes are tried in, and the least and the most a plan can say.
const (
	fillStepMM   = 0.1
	leastFillMM  = 5
	mostFillMM   = 1000
	mostOilsG    = 100_000
	mostCavities = 500
)

// sizingOf says what a plan is sized by: single moulds by how many are filled, oils by their grams, any other by the height of its fill.
func sizingOf(p pour.Plan) Sizing {
	switch {
	case p.Base.Size == pour.SizeOils:
		return Sizing{Label: "oils", Unit: pour.UnitGram, Now: p.Base.OilsG, Step: 1, least: 1, most: mostOilsG}
	case p.Mould.Shape == pour.ShapeCavity:
		return Sizing{Label: "cavities", Now: float64(p.Mould.Cavities), Step: 1, least: 1, most: mostCavities}
	}
	return Sizing{Label: "fill height", Unit: pour.UnitMM, Now: p.Mould.FillMM, Step: fillStepMM, least: leastFillMM / fillStepMM, most: mostFillMM / fillStepMM}
}

// of is a number of steps in the unit of the field: the decimal number nearest to it.
func (z Sizing) of(steps int) float64 {
	if z.Step == fillStepMM {
		return float64(steps) / (1 / fillStepMM)
	}
	return float64(steps)
}

// at is a plan at another size. An icing that has a size of its own grows alike: of a loaf and a slab, how much there is on each bar; where bars come and go
// with the size, it stays as it is on each of them. An icing given in grams of oils grows alike always, a piped shape never.
func (z Sizing) at(p pour.Plan, v float64) pour.Plan {
	p = p.Clone()
	by := v / z.Now
	switch z.Label {
	case "oils":
		p.Base.OilsG = v
	case "cavities":
		p.Mould.Cavities = int(v)
	default:
		p.Mould.FillMM = v
	}
	if p.Icing == nil || v == z.Now {
		return p
	}
	barsStay := p.Mould.Shape == pour.ShapeLoaf || p.Mould.Shape == pour.ShapeSlab
	switch {
	case p.Icing.Size == pour.SizeOils:
		p.Icing.OilsG = tenths(p.Icing.OilsG * by)
	case p.Icing.Size == pour.SizeBar && barsStay:
		p.Icing.PerBarG = tenths(p.Icing.PerBarG * by)
	case p.Icing.Size == pour.SizeLayer && barsStay:
		p.Icing.LayerMM = tenths(p.Icing.LayerMM * by)
	}
	return p
}

// tenths rounds down to tenths, one at least.
func tenths(v float64) float64 {
	const tenth, slack = 10, 1e-6
	return max(math.Floor(v*tenth+slack), 1) / tenth
}

// put gives a plan the size of another.
func (z Sizing) put(p, from pour.Plan) pour.Plan {
	p.Base.OilsG, p.Mould.Cavities, p.Mould.FillMM = from.Base.OilsG, from.Mould.Cavities, from.Mould.FillMM
	if p.Icing != nil && from.Icing != nil {
		icing := p.Icing.Clone()
		icing.OilsG, icing.PerBarG, icing.LayerMM = from.Icing.OilsG, from.Icing.PerBarG, from.Icing.LayerMM
		p.Icing = &icing
	}
	return p
}
