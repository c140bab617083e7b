package pour

import "math"

// The shapes of a mould.
const (
	ShapeLoaf   = "loaf"   // cut into bars across its length
	ShapeSlab   = "slab"   // cut along its length and its width
	ShapeTube   = "tube"   // an upright round tube; what comes out of it is cut into rounds along its height
	ShapeCavity = "cavity" // single moulds, each a bar as it comes out
)

// ShapesMean says what each shape is, for plan and shelf files.
const ShapesMean = "a loaf is cut across its length, a slab along its length and width, a tube into rounds along its height; cavities are single moulds"

// Mould is the vessel. A loaf and a slab are boxes. A tube stands upright: its inside diameter is its length and its width, its lower end is end
// A. Of cavities, all measures are those of one.
type Mould struct {
	Shape       string  // one of the Shape… words
	LengthMM    float64 // inside length, > 0
	WidthMM     float64 // inside width, > 0
	HeightMM    float64 // inside height to the rim, > 0
	FillMM      float64 // planned height of the base batter, > 0
	BarMM       float64 // thickness of a bar along the length, of a round along the height, > 0; of cavities nothing
	BarWidthMM  float64 // slab only: width of a bar across the slab; 0: the whole width
	LossPercent float64 // of what is mixed, stays in pots, jugs and spoons; 0 to 50
	Cavities    int     // cavity only: how many are filled, > 0
	CavityML    float64 // cavity only: what one holds filled to FillMM; 0: as a box of its measures
}

// AreaMM2 is the surface of the batter in the whole mould, mm²: a rectangle, a disc of π·d²/4, or all cavities together, a cavity of a stated
// volume being as wide on average as that volume is over its height of fill. Derived.
func (m Mould) AreaMM2() float64 {
	switch {
	case m.Shape == ShapeTube:
		return math.Pi * m.LengthMM * m.LengthMM / 4
	case m.Shape == ShapeCavity && m.CavityML > 0:
		return m.CavityML * 1000 / m.FillMM * float64(m.Cavities)
	case m.Shape == ShapeCavity:
		return m.LengthMM * m.WidthMM * float64(m.Cavities)
	}
	return m.LengthMM * m.WidthMM
}

// AlongMM is the length that cuts are measured along: the mould's, or of a tube the height it is filled to. Cavities are not cut: they are
// taken to stand end to end.
func (m Mould) AlongMM() float64 {
	switch m.Shape {
	case ShapeTube:
		return m.FillMM
	case ShapeCavity:
		return m.LengthMM * float64(m.Cavities)
	}
	return m.LengthMM
}

// ThicknessMM is how thick one bar is along that length; a cavity's is all of it.
func (m Mould) ThicknessMM() float64 {
	if m.Shape == ShapeCavity {
		return m.LengthMM
	}
	return m.BarMM
}

// IsCut says whether anything is cut: what comes out of a cavity is a bar already.
func (m Mould) IsCut() bool { return m.Shape != ShapeCavity }

// barPart is one bar's part of all that is poured, as a fraction of its length, of a slab's area or of the cavities.
func (m Mould) barPart() float64 {
	part := m.ThicknessMM() / m.AlongMM()
	if m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		part *= m.BarWidthMM / m.WidthMM
	}
	return part
}

// BarCount is how many whole bars the mould gives; what is left at the end is trimming.
func (m Mould) BarCount() int {
	if m.Shape == ShapeCavity {
		return m.Cavities
	}
	const slack = 1e-9 // so that 250 ÷ 25 is 10 whatever the last bit says
	count := int(math.Floor(m.AlongMM()/m.BarMM + slack))
	if m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		count *= int(math.Floor(m.WidthMM/m.BarWidthMM + slack))
	}
	return count
}

// single is the cut plan of cavities: a bar in each, and no cut.
func (m Mould) single() CutSheet {
	c := CutSheet{Bars: make([]BarPiece, m.Cavities), UsualMM: m.LengthMM}
	for i := range c.Bars {
		c.Bars[i] = BarPiece{StartMM: float64(i) * m.LengthMM, EndMM: float64(i+1) * m.LengthMM, RightMM: m.WidthMM}
	}
	return c
}

// cooling is through what surface, mm², and over what half thickness, mm, soap standing so high cools: all sides of a box, a cylinder's ends
// and side, or the sides of every cavity by itself.
func (m Mould) cooling(standsMM float64) (surfaceMM2, halfMM float64) {
	switch m.Shape {
	case ShapeTube:
		return 2*m.AreaMM2() + math.Pi*m.LengthMM*standsMM, min(m.LengthMM, standsMM) / 2
	case ShapeCavity:
		wide := m.AreaMM2() / float64(m.Cavities) / m.LengthMM
		return float64(m.Cavities) * 2 * (m.LengthMM*wide + (m.LengthMM+wide)*standsMM), min(m.LengthMM, wide, standsMM) / 2
	}
	return 2 * (m.LengthMM*m.WidthMM + (m.LengthMM+m.WidthMM)*standsMM), min(m.WidthMM, standsMM) / 2
}

// barAcrossMM is how wide a bar is across the mould: all of it, but where a slab is cut lengthwise too.
func (m Mould) barAcrossMM() float64 {
	if m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		return m.BarWidthMM
	}
	return m.WidthMM
}
