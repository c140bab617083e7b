package pour

import (
	"math"

	"pourbench/pour/shape"
)

// outline is what it covers seen from above before it is turned; a rod's is a bar as long as the loaf.
func (e *Embed) outline(loafMM float64) shape.Outline {
	switch e.Outline {
	case OutlineBox:
		return shape.BoxOutline(e.LengthMM, e.width())
	case OutlineEllipse:
		return shape.OvalOutline(e.LengthMM, e.width())
	case OutlineRod:
		return shape.BoxOutline(loafMM, e.width())
	case OutlineOwn:
		return e.corners()
	default:
		return shape.RoundOutline(e.LengthMM)
	}
}

// corners is the outline the maker drew, made as long as it is and, where that is stated, as wide, about the middle of what it takes once it is
// turned: that is where it is marked.
func (e *Embed) corners() shape.Outline {
	drawn := e.drawn()
	along := e.LengthMM / drawn.Extent(0)
	across := along
	if e.WidthMM > 0 {
		across = e.WidthMM / drawn.ExtentAcross(0)
	}
	for i := range drawn.Corners {
		drawn.Corners[i].X *= along
		drawn.Corners[i].Y *= across
	}
	return drawn.Centred(e.turn())
}

// drawn is the outline as the maker drew it.
func (e *Embed) drawn() shape.Outline {
	o := shape.Outline{Corners: make([]shape.Point, 0, len(e.Corners)/2)}
	for i := 0; i+1 < len(e.Corners); i += 2 {
		o.Corners = append(o.Corners, shape.Point{X: e.Corners[i], Y: e.Corners[i+1]})
	}
	return o
}

// turn is by how much it is turned, in radians; a rod lies along the loaf.
func (e *Embed) turn() float64 {
	if e.Outline == OutlineRod {
		return 0
	}
	return e.TurnDeg * math.Pi / 180
}

// takes is how much of the loaf's length and width it takes, mm.
func (e *Embed) takes(o shape.Outline) (along, across float64) {
	if e.AnyTurn && e.Outline != OutlineRod {
		return o.Enclosing(), o.Enclosing()
	}
	return o.Extent(e.turn()), o.ExtentAcross(e.turn())
}

// below is the volume of one piece below the surface of a base so deep, mm³, and whole is all of it. A rod is as long as the loaf. What would reach
// below the mould's floor stands on it.
func (e *Embed) below(o shape.Outline, loafMM, deepMM float64) (below, whole float64) {
	high := e.height()
	out := max(e.OutMM, high-deepMM)
	switch {
	case e.Outline == OutlineBall:
		return shape.BallBelow(high, out), shape.Ball(high)
	case e.roundRod():
		return loafMM * shape.RoundRodBelow(e.LengthMM, out), loafMM * shape.Disc(e.LengthMM/2)
	}
	return shape.PrismBelow(o.Area(), high, out), o.Area() * high
}

// deepMM is how deep a piece can reach: as deep as the base, in a tube through all of its width.
func (m Mould) deepMM() float64 {
	if m.Shape == ShapeTube {
		return m.LengthMM
	}
	return m.FillMM
}

// roundRod says whether it is a rod with a round section: one of which neither width nor height is stated.
func (e *Embed) roundRod() bool { return e.Outline == OutlineRod && e.WidthMM == 0 && e.HeightMM == 0 }

// buried is the part of its height that is below the surface, and sides the area of its sides there, mm².
func (e *Embed) buried(o shape.Outline, deepMM float64) (part, sides float64) {
	high := e.height()
	down := min(max(high-e.OutMM, 0), deepMM)
	if e.Outline == OutlineBall {
		return down / high, shape.BallSide(high, high-down)
	}
	return down / high, o.Perimeter() * down
}

// sightBudget is what each side of a piece at a place along the loaf, and so far across from its middle, has to leave for errors. Where the plan says
// nothing of what a cut takes, half of what it usually takes, 0.6 mm, is left too (common practice); where it does, the bars are already so much thinner.
func (p *Plan) sightBudget(atMM, acrossMM float64) shape.Budget {
	c := &p.Cut
	b := shape.Budget{Placing: c.PlaceMM, Wander: c.WanderMM, Sight: shape.Parallax(p.rimMM(), c.SightDeg*math.Pi/180)}
	if c.EyeMM > 0 {
		b.Sight = shape.ParallaxFrom(p.rimMM(), max(math.Abs(atMM-p.Mould.AlongMM()/2), math.Abs(acrossMM)), c.EyeMM)
	}
	if c.KerfMM == 0 {
		b.HalfKerf = usualKerfMM / 2
	}
	return b
}

// usualKerfMM is what a wire usually takes: common practice, no source.
const usualKerfMM = 0.6

// rimMM is how high the rule or the rim that is read stands over the base.
func (p *Plan) rimMM() float64 {
	if p.Cut.RimMM > 0 {
		return p.Cut.RimMM
	}
	return max(p.Mould.HeightMM-p.Mould.FillMM, 0)
}

// NewEmbed is a disc that stands clear between this plan's cuts and within its bar's width, an inch wide at most, half as deep as the base at
// most and with a quarter of its height out of it; beside the icing that is piped, where there is room for one.
func (p Plan) NewEmbed(name string) Embed {
	const (
		least = 5  // mm: smaller pieces are toppings
		most  = 25 // mm: what suits a bar whose size is not small
	)
	thinnest, wide := p.Mould.BarMM, p.Mould.WidthMM
	s := Sheet{Plan: p}
	s.cutting(func() float64 { return 1 })
	for _, b := range s.Cut.Bars {
		thinnest, wide = min(thinnest, b.ThicknessMM(), b.WideMM()), min(wide, b.WideMM())
	}
	need := max(p.sightBudget(0, s.offMiddle(p.Mould.WidthMM/2)).Worst(), p.Cut.ClearMM)
	long := max(min(math.Floor(thinnest-2*need), most), least)
	high := max(min(long, math.Floor(p.Mould.FillMM/2)), 1)
	e := Embed{Name: name, LengthMM: long, HeightMM: high, OutMM: math.Floor(high) / 4}
	for mm := long; mm >= least; mm-- {
		e.LengthMM = mm
		if across, ok := s.free(e, (wide-mm)/2-p.Cut.PlaceMM); ok {
			e.AcrossMM = across
			return e
		}
	}
	e.LengthMM = long
	return e
}

// features are the pieces whose place the maker chose herself, so that cuts have to be found around them; rods are cut through.
func (p *Plan) features() []shape.Feature {
	var out []shape.Feature
	for i := range p.Top.Embeds {
		e := &p.Top.Embeds[i]
		if e.In != EmbedOwn || e.Outline == OutlineRod {
			continue
		}
		along, _ := e.takes(e.outline(p.Mould.AlongMM()))
		for _, at := range e.AtMM {
			out = append(out, shape.Feature{From: at - along/2, To: at + along/2})
		}
	}
	return out
}
