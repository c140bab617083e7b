package pour

import (
	"cmp"
	"math"
	"slices"

	"pourbench/chem"
	"pourbench/pour/lot"
	"pourbench/pour/shape"
)

// ToppingLine is one topping as it goes on. Its figures for one bar are of a usual one: as thick as the bars are on average.
type ToppingLine struct {
	Name           string
	Kind           string // one of the Topping… kinds, of its first material
	When           string // one of the Strew… words
	Turn           int    // from 1: its place in the order in which all of them go on
	Colour         string // "#rrggbb" of its largest part
	PerBarG        Figure // put on a bar; unknown: a coverage of something whose grains have no size
	AllG           Figure // for all bars; on the loaf with what falls on trims
	AddsG          Figure // of PerBarG: what it adds to the bar's mass, without what evaporates and what is weighed with its batch
	CoversPercent  Figure // of the bar's top
	Pieces         Figure // round grains on a bar
	CutHits        Figure // round grains one cut meets; unknown: it goes on after the cut, or has none
	HandsMin       float64
	WeepsRH        Figure // relative humidity, percent, from which it draws water until it is wet; unknown: nothing in it does
	MeltsC         Figure // where the first of it softens or melts, °C
	PlasticPercent Figure // synthetic particles, of the cured bar; unknown: there are none, or the bar's mass is unknown
	Parts          []ToppingPartLine
}

// ToppingPartLine is one material of a topping.
type ToppingPartLine struct {
	ID, Name    string
	Percent     float64
	G           Figure  // of AllG
	Colour      string  // "#rrggbb"
	SizeMM      float64 // of a round grain; 0: flat, or it has none
	Kind        string  // one of the Topping… kinds
	Flat        bool
	Ingredients []string // of the material, as the shelf names them
}

// OnLoaf reports whether it goes on before the loaf is cut.
func (l ToppingLine) OnLoaf() bool { return l.When == StrewWet || l.When == StrewSkin }

// blended is a topping of the plan with its materials.
type blended struct {
	Topping
	of  []ToppingMaterial // by part
	sum float64           // of the parts' percentages, near 100
}

func (s Shelf) blend(t Topping) blended {
	b := blended{Topping: t, of: make([]ToppingMaterial, len(t.Parts))}
	for i, part := range t.Parts {
		b.of[i], _ = s.Topping(part.Material) // the plan was checked: it is on the shelf
		b.sum += part.Percent
	}
	return b
}

// fraction is a part's share of the topping's mass.
func (b *blended) fraction(i int) float64 { return b.Parts[i].Percent / b.sum }

// name is what the topping is called.
func (b *blended) name() string {
	if b.Name != "" {
		return b.Name
	}
	return b.of[0].Name
}

// when is when it goes on.
func (b *blended) when() string {
	if b.When != "" {
		return b.When
	}
	return b.of[0].When
}

// overParts adds up a figure of its materials, each by its part.
func (b *blended) overParts(of func(ToppingMaterial) float64) float64 {
	out := 0.0
	for i, m := range b.of {
		out += b.fraction(i) * of(m)
	}
	return out
}

// layerMM is how thick, on average, one layer of it lies where it lies.
func (u ToppingUse) layerMM() float64 {
	if u.Flat {
		return u.SizeMM
	}
	return shape.BallLayerMM(u.SizeMM)
}

// hides is the fraction of one mm² that a gram of it hides, were it spread on it; unknown where a part has no size or density.
func (b *blended) hides() Figure {
	out := 0.0
	for i, m := range b.of {
		if b.Parts[i].Percent == 0 {
			continue
		}
		g := shape.StrewnG(1, m.Use.layerMM(), m.Use.DensityGML, 1)
		if !(g > 0) {
			return Figure{}
		}
		out += b.fraction(i) / g
	}
	return Figure{V: out, Known: out > 0}
}

// balls is how many round grains a gram of it is; unknown: it has none.
func (b *blended) balls() Figure {
	out := b.overParts(func(m ToppingMaterial) float64 {
		if g := shape.BallG(m.Use.SizeMM, m.Use.DensityGML); g > 0 && !m.Use.Flat && !m.Batter {
			return 1 / g
		}
		return 0
	})
	return Figure{V: out, Known: out > 0}
}

// usualBar is a bar as the cutter gives them on average: its thickness and its width, mm, and how many there are.
func (s *Sheet) usualBar() (alongMM, acrossMM float64, count int) {
	m := s.Plan.Mould
	alongMM, acrossMM = s.Cut.UsualMM, m.WidthMM
	switch {
	case len(s.Cut.Bars) == 0 && m.Shape == ShapeSlab && m.BarWidthMM > 0:
		return m.BarMM, m.BarWidthMM, 0
	case len(s.Cut.Bars) == 0:
		return m.BarMM, m.WidthMM, 0
	case s.Cut.sides():
		acrossMM = s.Cut.usualWideMM()
	}
	return alongMM, acrossMM, len(s.Cut.Bars)
}

// strew works out what goes on the top.
func (s *Sheet) strew(shelf Shelf) {
	if s.Plan.Trial || len(s.Plan.Top.Toppings) == 0 {
		return
	}
	s.Toppings = make([]ToppingLine, len(s.Plan.Top.Toppings))
	for i, t := range s.Plan.Top.Toppings {
		b := shelf.blend(t)
		s.Toppings[i] = s.strewn(&b)
	}
	s.toppingTurns()
}

// strewn works one topping out.
func (s *Sheet) strewn(b *blended) ToppingLine {
	along, across, count := s.usualBar()
	l := ToppingLine{
		Name: b.name(), Kind: b.of[0].Kind, When: b.when(), Colour: b.of[b.largest()].Colour, WeepsRH: b.weepsRH(s.Plan.Room.TemperatureC), MeltsC: b.meltsC(),
		PerBarG: b.perBarG(along * across), HandsMin: b.HandsMin, Parts: make([]ToppingPartLine, len(b.Parts)),
	}
	if b.HandsMin == 0 {
		l.HandsMin = b.overParts(func(m ToppingMaterial) float64 { return m.Use.HandsS }) * float64(count) / 60
	}
	bars := float64(count)
	if l.OnLoaf() {
		bars = 1 / s.barPart() // trims get theirs
	}
	l.AllG = l.PerBarG.times(bars)
	l.AddsG = l.PerBarG.times(b.overParts(ToppingMaterial.adds))
	l.CoversPercent = l.PerBarG.by(b.hides()).times(100 / (along * across))
	l.Pieces = l.PerBarG.by(b.balls())
	if l.OnLoaf() {
		l.CutHits = s.cutHits(b, l, along*across)
	}
	for i, part := range b.Parts {
		l.Parts[i] = ToppingPartLine{ID: part.Material, Name: b.of[i].Name, Percent: part.Percent, G: l.AllG.times(b.fraction(i)), Colour: b.of[i].Colour, Kind: b.of[i].Kind, Flat: b.of[i].Use.Flat, Ingredients: b.of[i].Ingredients}
		if !b.of[i].Use.Flat {
			l.Parts[i].SizeMM = b.of[i].Use.SizeMM
		}
	}
	return l
}

// adds is the part of a material's mass that it adds to a bar.
func (m ToppingMaterial) adds() float64 {
	if m.Batter {
		return 0
	}
	return m.Use.StaysPercent / 100
}

// cutHits is how many round grains one cut meets.
func (s *Sheet) cutHits(b *blended, l ToppingLine, areaMM2 float64) Figure {
	if !l.Pieces.Known {
		return Figure{}
	}
	hits := b.overParts(func(m ToppingMaterial) float64 {
		g := shape.BallG(m.Use.SizeMM, m.Use.DensityGML)
		if !(g > 0) || m.Use.Flat {
			return 0
		}
		return shape.BallsCut(l.PerBarG.V/g/areaMM2, s.Plan.Mould.WidthMM, s.Plan.Cut.KerfMM, m.Use.SizeMM)
	})
	return Know(hits)
}

// perBarG is what goes on a bar whose top is so large, mm²: as typed, by coverage, or as is usual.
func (b *blended) perBarG(areaMM2 float64) Figure {
	use, cover := b.of[0].Use, b.CoveragePercent
	switch {
	case b.GPerBar > 0:
		return Know(b.GPerBar)
	case cover > 0:
	case use.CoverHighPercent > 0:
		cover = (use.CoverLowPercent + use.CoverHighPercent) / 2
	case use.DoseHighG > 0:
		return Know((use.DoseLowG + use.DoseHighG) / 2)
	default:
		return Figure{}
	}
	hides := b.hides()
	if !hides.Known {
		return Figure{}
	}
	return Know(cover / 100 * areaMM2 / hides.V)
}

// largest is the part there is most of.
func (b *blended) largest() int {
	at := 0
	for i, part := range b.Parts {
		if part.Percent > b.Parts[at].Percent {
			at = i
		}
	}
	return at
}

// weepsRH is the humidity from which it is wet: its crystals lie mixed, and what has a limit of its own keeps it.
func (b *blended) weepsRH(c float64) Figure {
	all, out := ToppingMaterial{}, Figure{}
	for i, m := range b.of {
		switch {
		case b.Parts[i].Percent == 0:
		case m.Wet.WeepsRH.Known:
			out = lower(out, m.Wet.WeepsRH)
		default:
			for _, k := range m.Wet.Crystals {
				if !slices.Contains(all.Wet.Crystals, k) {
					all.Wet.Crystals = append(all.Wet.Crystals, k)
				}
			}
		}
	}
	return lower(out, all.WeepsRH(c))
}

// meltsC is where the first of it melts.
func (b *blended) meltsC() Figure {
	out := Figure{}
	for i, m := range b.of {
		if b.Parts[i].Percent > 0 {
			out = lower(out, m.Heat.MeltsC)
		}
	}
	return out
}

// lower is the lower of two figures; an unknown one is none.
func lower(a, b Figure) Figure {
	if !a.Known || b.Known && b.V < a.V {
		return b
	}
	return a
}

// times is a figure times a number; by is one times another, known where both are.
func (f Figure) times(k float64) Figure { return Figure{V: f.V * k, Known: f.Known && !math.IsNaN(k)} }
func (f Figure) by(g Figure) Figure     { return Figure{V: f.V * g.V, Known: f.Known && g.Known} }

// toppingTurns says in which order they go on: by when, and otherwise as the plan lists them.
func (s *Sheet) toppingTurns() {
	when := []string{StrewWet, StrewSkin, StrewCut, StrewCure}
	order := make([]int, len(s.Toppings))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(slices.Index(when, s.Toppings[a].When), slices.Index(when, s.Toppings[b].When))
	})
	for turn, i := range order {
		s.Toppings[i].Turn = turn + 1
	}
}

// toppingPlastics says what part of the cured bar is plastic, once the bar's mass is known.
func (s *Sheet) toppingPlastics(shelf Shelf) {
	for i, t := range s.Plan.Top.Toppings {
		if len(s.Toppings) == 0 {
			return
		}
		b := shelf.blend(t)
		plastic := b.overParts(func(m ToppingMaterial) float64 {
			if m.Plastic {
				return m.adds()
			}
			return 0
		})
		if g := s.Toppings[i].PerBarG; plastic > 0 && g.Known {
			s.Toppings[i].PlasticPercent = AsFigure(chem.PercentOfBar(g.V*plastic, s.Bars.CuredG))
		}
	}
}

// toppingWeighings gives what is weighed of the toppings; batter is weighed with its batch.
func (s *Sheet) toppingWeighings(shelf Shelf, give func(w Weighing, of lot.Material, scaleG float64)) {
	for _, l := range s.Toppings {
		for _, part := range l.Parts {
			m, _ := shelf.Topping(part.ID)
			if g := part.G.orUnknown(); !m.Batter && !(g <= 0) {
				give(Weighing{Name: part.Name, Kind: WeighTopping, G: g}, lot.Material{Kind: lot.Topping, ID: part.ID}, g)
			}
		}
	}
}
