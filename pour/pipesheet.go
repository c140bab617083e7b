package pour

import (
	"math"

	"pourbench/pour/shape"
)

// PipingSheet is the icing as it is piped. The zero value: no shape is stated, or there is no icing.
type PipingSheet struct {
	Lacks      string    // why the shape cannot be worked out; empty: it is, or none is stated
	Units      int       // on the whole loaf; spooned: one
	UnitML     Figure    // volume of one unit
	UnitG      Figure    // and its mass
	DensityGML Figure    // of the icing as it is piped, with the air in it
	NetG       Figure    // what all units weigh
	NeedG      Figure    // what has to be made for them, with what stays in bags and tips
	MadeG      Figure    // what the plan makes
	RestG      Figure    // of that, what is too much for the shape because the vessel blends no less: for a small mould
	LeftG      Figure    // of that, what stays in bags and tips
	WidthMM    Figure    // of one unit across
	AlongMM    Figure    // of one unit along the row it stands in
	HighMM     Figure    // of one unit, above the base
	MeanMM     Figure    // volume over footprint: what the base has to carry
	GapMM      Figure    // between the units of neighbouring bars; unknown: they stand in rows, or on one bar
	LaneMM     Figure    // to be left free over a cut
	PeakMM     Figure    // the peak, pulled from the base, that has to stand before it carries the icing: an estimate
	Bags       int       // bags, each with its tip
	Fills      int       // how often a bag is filled
	PipeMin    Figure    // to fill all bags and pipe all units
	FillMin    Figure    // of that, to fill bags
	Jugs       []JugPipe // by jug; of a bag with all jugs in it, one for all
	At         []PipedAt // where the units stand
	Window     PipeWindow
}

// JugPipe is what the hands do for one jug of icing.
type JugPipe struct {
	Fills   int     // how often its bag is filled
	PipeMin float64 // to fill it and to pipe the jug's part of the units
}

// PipeWindow is when the icing can be piped, on the run clock: filled in by [Sheet.Time].
type PipeWindow struct {
	From, To  Figure // from the icing is thick and the base carries it, until the icing is stiff: middle estimates
	BaseSetAt Figure // when the base has set under it, so that icing no longer sticks by itself
}

// Stated says whether the plan states a shape of icing.
func (p *PipingSheet) Stated() bool { return p.Units > 0 || p.Lacks != "" }

// ices sizes the icing: by what the plan says, or by the shape it is piped in; and works out how it is piped.
func (s *Sheet) ices(m mixer, b bill) BatchSheet {
	p := s.Plan
	mould, own := p.Mould, &p.Piping
	if !own.Shaped() {
		return m.sized(b, mould, p.Icing.LossPercent, func(unit BatchSheet) float64 { return p.icingUnits(unit, 1, s.barPart()) })
	}
	unit := m.mix(b, unitOilsG, 0)
	density := own.densityGML(unit.Size)
	air := unit.Size.PouredG / unit.Size.PouredML / density
	l := pieces{}
	if s.Piping.Lacks = own.Lacks(); s.Piping.Lacks == "" {
		if l = own.lay(mould, s.Cut); l.units == 0 {
			s.Piping.Lacks = "not one " + own.called() + " fits onto this loaf"
		}
	}
	if s.Piping.Lacks != "" {
		if p.Icing.Size == SizeShape {
			b.unsized = s.Piping.Lacks
		}
		icing := m.sized(b, mould, own.ResiduePercent, func(unit BatchSheet) float64 { return p.icingUnits(unit, air, s.barPart()) })
		icing.Size.HeightMM *= air
		return icing
	}
	net := shape.Grams(l.volume, density) * float64(l.units)
	made, loss := p.icingLoss(unit, net, air, s.barPart())
	icing := m.sized(b, mould, loss, func(unit BatchSheet) float64 {
		if p.Icing.Size == SizeShape {
			return made.Made * (1 - loss/100) / unit.Size.PouredG
		}
		return p.icingUnits(unit, air, s.barPart())
	})
	icing.Size.HeightMM *= air
	s.pipes(l, density, made, AsFigure(icing.Size.PouredG/icing.kept()))
	return icing
}

// icingUnits is how many times a trial size an icing is that no shape sizes; air is how much more room it takes whipped.
func (p *Plan) icingUnits(unit BatchSheet, air, barPart float64) float64 {
	if p.Icing.Size == SizeBar {
		return p.Icing.PerBarG / barPart / unit.Size.PouredG
	}
	return p.Mould.LengthMM * p.Mould.WidthMM * p.Icing.LayerMM / 1000 / (unit.Size.PouredML * air)
}

// densityGML is the density of the icing as it is piped: of a cup that was weighed, else of the batter with the air that is whipped in.
func (p *Piping) densityGML(batter Size) float64 {
	if p.CupML > 0 && p.CupG > 0 {
		return p.CupG / p.CupML
	}
	return shape.Whipped(batter.PouredG/batter.PouredML, p.OverrunPercent/100)
}

// residue is what stays in bags and tips, and on the spoon of what is spooned.
func (p *Piping) residue() shape.Residue {
	if p.Spoons() {
		return shape.Residue{Part: p.ResiduePercent / 100}
	}
	return shape.Residue{Part: p.ResiduePercent / 100, PerBag: p.ResidueBagG}
}

// bagParts are the parts of the icing that are piped from a bag of their own.
func (p *Plan) bagParts() []float64 {
	if p.Icing.Bags == BagOne {
		return []float64{1}
	}
	return p.Icing.parts()
}

// icingLoss is what the plan makes of an icing that is piped, and what percentage of it does not come to stand on the loaf.
func (p *Plan) icingLoss(unit BatchSheet, net, air, barPart float64) (b shape.Bagging, lossPercent float64) {
	own, fill, parts := &p.Piping, p.Piping.fillG(), p.bagParts()
	switch p.Icing.Size {
	case SizeOils:
		b, _ = shape.Emptied(unit.Size.PouredG*p.Icing.OilsG/unitOilsG, fill, parts, own.residue())
	case SizeShape:
		b, _ = shape.Bagged(net, fill, parts, own.residue())
		b.Made = max(b.Made, own.LeastG)
		return b, 100 * (1 - net/b.Made)
	default:
		b, _ = shape.Bagged(unit.Size.PouredG*p.icingUnits(unit, air, barPart), fill, parts, own.residue())
	}
	return b, 100 * b.Left / b.Made
}

// pipes puts how the icing is piped onto the sheet.
func (s *Sheet) pipes(l pieces, density float64, made shape.Bagging, all Figure) {
	p, out := &s.Plan.Piping, &s.Piping
	out.Units, out.At = l.units, l.at
	out.UnitML, out.UnitG, out.DensityGML = AsFigure(l.volume/1000), AsFigure(shape.Grams(l.volume, density)), AsFigure(density)
	out.NetG = AsFigure(out.UnitG.orUnknown() * float64(l.units))
	out.WidthMM, out.AlongMM, out.HighMM, out.MeanMM = AsFigure(l.wide), AsFigure(l.along), AsFigure(l.high), AsFigure(l.volume/l.footprint)
	out.PeakMM = AsFigure(shape.PeakNeeded(l.volume/l.footprint, l.under))
	if gap, ok := p.gapMM(s.Cut, l); ok {
		out.GapMM = AsFigure(gap)
	}
	out.LaneMM = AsFigure(s.laneMM())
	s.bagged(l, made, all)
}

// bagged fills bags with what is made, as far as it is known, and says how long that takes.
func (s *Sheet) bagged(l pieces, made shape.Bagging, all Figure) {
	p, out := &s.Plan.Piping, &s.Piping
	out.MadeG = all
	if need, ok := shape.Bagged(out.NetG.orUnknown(), p.fillG(), s.Plan.bagParts(), p.residue()); ok {
		out.NeedG = AsFigure(need.Made)
	}
	if !all.Known {
		return
	}
	rest := 0.0
	if s.Plan.Icing.Size == SizeShape {
		rest = max(0, made.Made-out.NeedG.V)
	}
	out.RestG, out.LeftG = Know(rest), Know(made.Left)
	parts := s.Plan.bagParts()
	fill := 0.0
	for _, part := range parts {
		j := JugPipe{PipeMin: shape.Piping(l.counts*part, p.UnitS, 0, 0)}
		if !p.Spoons() && part > 0 {
			j.Fills = shape.Fills((made.Made-rest)*part, p.BagG)
			j.PipeMin += float64(j.Fills) * p.FillMin
			out.Bags, out.Fills = out.Bags+1, out.Fills+j.Fills
		}
		fill += float64(j.Fills) * p.FillMin
		out.Jugs = append(out.Jugs, j)
	}
	out.PipeMin, out.FillMin = AsFigure(shape.Piping(l.counts, p.UnitS, out.Fills, p.FillMin)), AsFigure(fill)
}

// fillG is what a bag takes; what is spooned needs none, however much it is.
func (p *Piping) fillG() float64 {
	if p.Spoons() {
		return math.MaxFloat64
	}
	return p.BagG
}

// grainMM is the grain that a lane over a cut is kept clear for, mm: a nonpareil's (common practice, no source).
const grainMM = 2

// laneMM is what is left free of icing and grains over every cut: the kerf, a grain, and a wandering cut on both sides. Derived from what the plan says.
func (s *Sheet) laneMM() float64 {
	c := s.Plan.Cut
	return c.KerfMM + grainMM + 2*c.WanderMM
}

// pipeMin is how long the hands need to pipe a jug, or all of them out of one bag; false where no shape says.
func (p *PipingSheet) pipeMin(jug int) (float64, bool) {
	if jug < 0 {
		return p.PipeMin.V, p.PipeMin.Known
	}
	if jug >= len(p.Jugs) || !p.PipeMin.Known {
		return 0, false
	}
	return p.Jugs[jug].PipeMin, true
}
