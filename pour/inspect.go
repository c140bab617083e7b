package pour

import (
	"fmt"
	"math"
)

// inspect finds every warning that needs no clock.
func (s *Sheet) inspect(shelf Shelf) {
	for _, b := range s.Batches() {
		s.inspectLye(b)
		s.inspectExtras(b, shelf)
		s.inspectScents(b, shelf)
		s.inspectVanillin(b, shelf)
		s.inspectColours(b, shelf)
		s.inspectJugs(b)
	}
	s.inspectLimits()
	if !s.Plan.Trial { // which stays in its jugs
		s.inspectMould()
		s.inspectEmbeds()
		s.inspectCut()
		s.inspectBed()
		s.inspectPiping()
		s.inspectToppings(shelf)
	}
	s.inspectDust(shelf)
	s.sortWarnings()
}

// jugSuperfatGap is how far a jug's own superfat may stand over its batch's before it is worth a word, percentage points.
const jugSuperfatGap = 3

func (s *Sheet) inspectJugs(b *BatchSheet) {
	show, plan := s.Plan.Show, s.Plan.Batch(b.Name)
	for i, j := range b.Jugs {
		where := b.Name.jug(j.Name)
		if limit := plan.Jugs[i].CapacityML; limit > 0 && j.VesselML > limit {
			s.warn(warning("jug-too-small", where, fmt.Sprintf("%s goes into a jug of %s", show.Volume(j.VesselML), show.Volume(limit)), "take a larger jug or a smaller share; leave room to stir"))
		}
		switch {
		case j.Superfat.FirmPercent > b.Superfat.ExactPercent+jugSuperfatGap:
			s.warn(warning("superfat-jug", where, fmt.Sprintf("its carrier oil lifts its superfat to %s", show.Percent(j.Superfat.FirmPercent, 1)), "carry the colour in less oil, in water, or take the oil out of the batch"))
		case j.Superfat.HeldPercent > b.Superfat.ExactPercent+jugSuperfatGap:
			s.warn(warning("superfat-jug", where, fmt.Sprintf("its scent can take up alkali and lift its superfat to as much as %s", show.Percent(j.Superfat.HeldPercent, 1)),
				"spread the scent over more jugs or lower its load; give it no less superfat for that: it is the most the scent can take"))
		}
	}
}

// rimMM is the room below the rim that keeps a filled mould from spilling when it is carried: common practice, no source.
const rimMM = 3

// FullMM is how high the base may stand in the mould so that it can be carried and swirled, mm.
func (m Mould) FullMM() float64 { return m.HeightMM - rimMM }

// lowMM is how far below the planned height a batch may stand before bars come out visibly small: common practice, no source.
const lowMM = 3

func (s *Sheet) inspectMould() {
	m, show := s.Plan.Mould, s.Plan.Show
	height := s.Base.Size.HeightMM
	switch {
	case height > m.HeightMM:
		s.warn(warning("mould-overfull", "mould", fmt.Sprintf("the base stands %s high in a mould of %s", show.Len(height), show.Len(m.HeightMM)), "take less oil, a larger mould or a lower fill"))
	case height > m.FullMM():
		s.warn(warning("mould-high", "mould", fmt.Sprintf("the base stands %s high, hard under the rim at %s", show.Len(height), show.Len(m.HeightMM)), "leave a few millimetres to carry it and to swirl"))
	case height < m.FillMM-lowMM:
		s.warn(warning("mould-underfilled", "mould", fmt.Sprintf("the base stands %s high instead of %s", show.Len(height), show.Len(m.FillMM)), "size the base by its mould, or lower the fill height"))
	}
	s.inspectIcing(height)
	switch m.Shape {
	case ShapeCavity: // each is a bar
	case ShapeTube:
		s.inspectOffcut("height", "upper end", s.Cut.LeftMM, "thickness")
	default:
		s.inspectOffcut("length", "end of the mould", s.Cut.LeftMM, "thickness")
	}
	if m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		s.inspectOffcut("width", "side of the mould", s.Cut.LeftWideMM, "width")
	}
	s.inspectCured()
}

// inspectIcing says where the icing stands well over the rim although the base does not reach it: nothing but its own stiffness holds it there.
func (s *Sheet) inspectIcing(baseMM float64) {
	m, show := s.Plan.Mould, s.Plan.Show
	if over := baseMM + s.Piping.HighMM.V - m.HeightMM; s.Icing != nil && s.Piping.HighMM.Known && baseMM <= m.FullMM() && over > rimMM {
		s.warn(warning("icing-over-rim", "mould", fmt.Sprintf("the icing is piped %s high and comes to stand %s over the rim at %s", show.Len(s.Piping.HighMM.V), show.Len(over), show.Len(m.HeightMM)),
			"pipe it stiff enough to hold itself, keep it off the walls, and cover the loaf with something high that does not touch"))
		return
	}
	if s.Icing != nil && baseMM <= m.FullMM() && s.Bars.OverRimMM > rimMM {
		s.warn(warning("icing-over-rim", "mould", fmt.Sprintf("base and icing stand %s high on average, %s over the rim at %s; peaks stand higher", show.Len(s.Bars.StandsMM), show.Len(s.Bars.OverRimMM), show.Len(m.HeightMM)),
			"pipe it stiff enough to hold itself, keep it off the walls, and cover the loaf with something high that does not touch"))
	}
}

// inspectOffcut says what is left of a side of the mould that is no whole number of bars.
func (s *Sheet) inspectOffcut(side, where string, rest float64, of string) {
	show := s.Plan.Show
	if rest > 1 {
		s.warn(warning("mould-offcut", "mould", fmt.Sprintf("%s of the %s, at the %s, makes no whole bar", show.Len(rest), side, where),
			"trim both sides alike, or change the bar "+of))
	}
}

// inspectCured says where the moisture after cure is more than there is in the batter: a bar does not gain weight on the rack.
func (s *Sheet) inspectCured() {
	for _, b := range s.Batches() {
		moisture := s.Plan.Batch(b.Name).FinalMoisturePercent
		if cured := b.curedG(moisture); cured > b.Size.PouredG*(1+noise) {
			most := math.Floor((1-b.Size.DryG*b.kept()/b.Size.PouredG)*1000) / 10
			s.warn(warning("cured-heavier", string(b.Name), fmt.Sprintf("at %s moisture after cure it would weigh more than as it is cut: its batter holds only %s of water",
				s.Plan.Show.Percent(moisture, 1), s.Plan.Show.Percent(most, 1)), "put a moisture in that your own cured bars have, lower than that"))
		}
	}
}

// inspectBed looks at the top of the loaf. Whether the loaf gels takes the clock: see [Sheet.Time].
func (s *Sheet) inspectBed() {
	plan, b := s.Plan, s.Base
	if plan.Bed.Keep == BedBare || plan.Bed.Keep == BedChill {
		chance := "possible"
		if b.Lye.ConcentrationPercent < 30 {
			chance = "likely"
		}
		s.warn(warning("soda-ash", "bed", "a white bloom of soda ash is "+chance+" on a cool, open top", "cover the top closely, use less water or keep it warm (common practice)"))
	}
}
