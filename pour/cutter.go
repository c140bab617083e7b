package pour

// cutterNeeds works out what the cutter has to have room for: upright or upside down the loaf stands under the wires as high as it is with what
// stands on it, and as deep as it is wide; on its side the other way round. Heights are those known: of an icing put on by eye its mean.
func (s *Sheet) cutterNeeds() {
	m := s.Plan.Mould
	high := AsFigure(s.tallMM())
	wide := Know(m.WidthMM)
	if m.Shape != ShapeLoaf {
		return
	}
	s.Cut.OpeningNeedMM, s.Cut.BedNeedMM = high, wide
	if s.Plan.Cut.Lay == LaySide {
		s.Cut.OpeningNeedMM, s.Cut.BedNeedMM = wide, high
	}
}

// tallMM is how high the loaf stands with what stands on it.
func (s *Sheet) tallMM() float64 {
	top := 0.0
	if s.Icing != nil {
		top = s.Icing.Size.HeightMM
	}
	for _, e := range s.Embeds {
		top = max(top, e.OutMM)
	}
	return s.Base.Size.HeightMM + top
}

// LayEffect is what a way to lay the loaf under the cutter does to its top.
type LayEffect struct {
	Lay        string // one of the Lay… words
	Passes     string // how the wire passes
	Does       string // what it does to the top
	Confidence string
}

// LayEffects are all ways to lay the loaf, the gentlest first.
func LayEffects() []LayEffect {
	return []LayEffect{
		{LaySide, "topping and base at once", "cleanest: what it drags runs along the top edge, within the topping", "derived, common practice"},
		{LayUpright, "the topping first, then the whole face", "drags grains down the face", "derived"},
		{LayPulledUp, "the topping last, with nothing behind it", "chips the topping and lifts it off", "derived"},
		{LayUpsideDown, "the topping last, pressed onto the board", "crushes what stands on the top", "derived"},
	}
}

// Laid is the way this plan's loaf lies under the cutter.
func (c Cut) Laid() LayEffect {
	for _, e := range LayEffects() {
		if e.Lay == c.Lay {
			return e
		}
	}
	return LayEffects()[1]
}
