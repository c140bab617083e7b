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
	CrowdMM    Figure    // what the units side by side lack of room across; below 0: so much is left; unknown: none stand so
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
	p, own := &s.Plan, &s.Plan.Piping
	if own.Shaped() {
		return s.icesShaped(m, b)
	}
	if p.Icing.Size == SizeShape {
		b.unsized = "it is sized by its shape, and piping.shape states none"
	}
	icing := m.sized(b, p.Mould, p.Icing.LossPercent, func(unit BatchSheet) float64 { return s.icingUnits(unit, 1) })
	s.Piping.MadeG = AsFigure(icing.Size.PouredG / icing.kept())
	return icing
}

// icesShaped is ices for a shape that is stated. The trial size tells how much lighter and larger the icing is as it is piped than its batter.
func (s *Sheet) icesShaped(m mixer, b bill) BatchSheet {
	p, own := &s.Plan, &s.Plan.Piping
	unit := m.mix(b, unitOilsG, 0)
	density := own.densityGML(unit.Size)
	air := unit.Size.PouredG / unit.Size.PouredML / density
	l, made, loss := pieces{}, shape.Bagging{}, own.ResiduePercent
	if s.Piping.Lacks = own.Lacks(); s.Piping.Lacks == "" {
		if l = own.lay(p.Mould, s.Cut); l.units == 0 {
			s.Piping.Lacks = "not one " + own.called() + " fits onto this loaf"
		}
	}
	if s.Piping.Lacks == "" {
		if made, loss = s.icingLoss(unit, shape.Grams(l.volume, density)*float64(l.units), air); loss >= 100 {
			s.Piping.Lacks, loss = "all that is made stays in the bags: piping.residue_bag_g is too much for it", own.ResiduePercent
		}
	}
	if s.Piping.Lacks != "" && p.Icing.Size == SizeShape {
		b.unsized = s.Piping.Lacks
	}
	icing := m.sized(b, p.Mould, loss, func(unit BatchSheet) float64 {
		if p.Icing.Size == SizeShape {
			return made.Made * (1 - loss/100) / unit.Size.PouredG
		}
		return s.icingUnits(unit, air)
	})
	icing.Size.HeightMM *= air
	if icing.Refused.Masses != "" && (own.CupML <= 0 || own.CupG <= 0) {
		density = Unknown() // of a batter that cannot be mixed
	}
	s.Piping.DensityGML, s.Piping.MadeG = AsFigure(density), AsFigure(icing.Size.PouredG/icing.kept())
	if s.Piping.Lacks == "" {
		s.pipes(l, density, made)
	}
	return icing
}

// icingUnits is how many times a trial size an icing is that no shape sizes; air is how much more room it takes whipped.
func (s *Sheet) icingUnits(unit BatchSheet, air float64) float64 {
	p := &s.Plan
	if p.Icing.Size == SizeBar {
		return p.Icing.PerBarG / s.icingPart() / unit.Size.PouredG
	}
	return p.Mould.AreaMM2() * p.Icing.LayerMM / 1000 / (unit.Size.PouredML * air)
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
func (s *Sheet) icingLoss(unit BatchSheet, net, air float64) (b shape.Bagging, lossPercent float64) {
	p := &s.Plan
	own, fill, parts := &p.Piping, p.Piping.fillG(), p.bagParts()
	switch p.Icing.Size {
	case SizeOils:
		b, _ = shape.Emptied(unit.Size.PouredG*p.Icing.OilsG/unitOilsG, fill, parts, own.residue())
	case SizeShape:
		b, _ = shape.Bagged(net, fill, parts, own.residue())
		b.Made = max(b.Made, own.LeastG)
		return b, 100 * (1 - net/b.Made)
	default:
		b, _ = shape.Bagged(unit.Size.PouredG*s.icingUnits(unit, air), fill, parts, own.residue())
	}
	return b, 100 * b.Left / b.Made
}

// pipes puts how the icing is piped onto the sheet.
func (s *Sheet) pipes(l pieces, density float64, made shape.Bagging) {
	p, out := &s.Plan.Piping, &s.Piping
	out.Units, out.At = l.units, l.at
	out.UnitML, out.UnitG = AsFigure(l.volume/1000), AsFigure(shape.Grams(l.volume, density))
	out.NetG = AsFigure(out.UnitG.orUnknown() * float64(l.units))
	out.WidthMM, out.AlongMM, out.HighMM, out.MeanMM = AsFigure(l.wide), AsFigure(l.along), AsFigure(l.high), AsFigure(l.volume/l.footprint)
	out.PeakMM = AsFigure(shape.PeakNeeded(l.volume/l.footprint, l.under))
	if gap, ok := p.gapMM(s.Plan.Mould, s.Cut, l); ok {
		out.GapMM = AsFigure(gap)
	}
	if takes, has, ok := p.acrossMM(s.Plan.Mould, s.Cut, l); ok {
		out.CrowdMM = AsFigure(takes - has)
	}
	if s.Plan.Mould.IsCut() {
		out.LaneMM = AsFigure(s.Cut.LaneMM)
	}
	s.bagged(l, made)
}

// bagged fills bags with what is made, as far as it is known, and says how long that takes; to spoon a jug on takes what the run says.
func (s *Sheet) bagged(l pieces, made shape.Bagging) {
	p, out := &s.Plan.Piping, &s.Piping
	if need, ok := shape.Bagged(out.NetG.orUnknown(), p.fillG(), s.Plan.bagParts(), p.residue()); ok {
		out.NeedG = AsFigure(need.Made)
	}
	if !out.MadeG.Known {
		return
	}
	rest := 0.0
	if s.Plan.Icing.Size == SizeShape {
		rest = max(0, made.Made-out.NeedG.V)
	}
	out.RestG, out.LeftG = Know(rest), Know(made.Left)
	parts := s.Plan.bagParts()
	fill, all := 0.0, 0.0
	for _, part := range parts {
		j := JugPipe{PipeMin: shape.Piping(l.counts*part, p.UnitS, 0, 0)}
		if !p.Spoons() && part > 0 {
			j.Fills = shape.Fills((made.Made-rest)*part, p.BagG)
			j.PipeMin += float64(j.Fills) * p.FillMin
			out.Bags, out.Fills = out.Bags+1, out.Fills+j.Fills
		}
		if p.Spoons() && part > 0 {
			j.PipeMin = s.Plan.Run.PipeMin * float64(shape.Bags(s.Plan.Icing.parts())) / float64(shape.Bags(parts))
		}
		fill += float64(j.Fills) * p.FillMin
		all += j.PipeMin
		out.Jugs = append(out.Jugs, j)
	}
	out.PipeMin, out.FillMin = AsFigure(all), AsFigure(fill)
}

// fillG is what a bag takes; what is spooned needs none, however much it is.
func (p *Piping) fillG() float64 {
	if p.Spoons() {
		return math.MaxFloat64
	}
	return p.BagG
}

// pipeMin is how long the hands need to pipe a jug, or all of them out of one bag; false where no shape says.
func (p *PipingSheet) pipeMin(jug int) (float64, bool) {
	if jug < 0 || len(p.Jugs) == 1 {
		return p.PipeMin.V, p.PipeMin.Known
	}
	if jug >= len(p.Jugs) || !p.PipeMin.Known {
		return 0, false
	}
	return p.Jugs[jug].PipeMin, true
}
