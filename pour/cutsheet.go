package pour

import (
	"math"
	"slices"

	"pourbench/pour/shape"
)

// CutSheet is where the loaf is cut and what comes of it. Lengths are from the named end A of the mould, of a slab across from its left side.
type CutSheet struct {
	LengthMM     float64   // of the loaf
	CutsMM       []float64 // middles of the cuts
	MarksMM      []float64 // as they are marked, each rounded once
	AcrossMM     []float64 // of a slab: middles of the cuts along its length
	AcrossMarkMM []float64 // as they are marked
	Bars         []BarPiece
	TrimAMM      float64
	TrimBMM      float64
	SideMM       float64 // of a slab: trimmed at both sides together
	SliceMM      float64 // where it begins is SliceAt
	SliceAt      float64
	TrimAG       Figure
	TrimBG       Figure
	SidesG       Figure
	TrimsG       Figure // all trims together
	SliceG       Figure
	KerfG        Figure // crumbs
	KerfMM       float64
	UsualMM      float64   // thickness of a bar: what all have, or their mean
	LightG       Figure    // the lightest bar as cut
	HeavyG       Figure    // and the heaviest
	LaneMM       float64   // to be left free of grains over every cut
	LeftMM       float64   // left over at an end, beside its least trim, because it makes no whole bar
	LeftWideMM   float64   // the same of a slab's width
	Outside      []float64 // own cuts that would not cut: outside the loaf, or on another one
	Gang         GangSheet
	Best         BestSheet
	// What the cutter must have room for, by how the loaf lies under it.
	OpeningNeedMM Figure // between its bed and its frame
	BedNeedMM     Figure // from the stop behind
}

// CutTrim is a piece that is trimmed off an end.
type CutTrim struct {
	End            string // "a" or "b"
	StartMM, EndMM float64
	G              Figure
}

// Trims are the ends that are trimmed off, from end A.
func (c *CutSheet) Trims() []CutTrim {
	var out []CutTrim
	if c.TrimAMM > 0 {
		out = append(out, CutTrim{LeftEndA, 0, c.TrimAMM, c.TrimAG})
	}
	if c.TrimBMM > 0 {
		out = append(out, CutTrim{LeftEndB, c.LengthMM - c.TrimBMM, c.LengthMM, c.TrimBG})
	}
	return out
}

// GangSheet is how the maker's own wires stand on the loaf. The zero value: it is not cut so.
type GangSheet struct {
	Wires   int
	Placed  bool   // there is room for at least one whole bar
	AtMM    Figure // where the first wire meets the loaf
	PitchMM Figure // mean distance from wire to wire
	WorstMM Figure // furthest that the middle of an embed placed by the maker is off the middle between its wires
	Missed  int    // of the embeds the maker has placed, those that a wire comes too near to or that stand in no whole bar
	Idle    int    // wires that do not cut
	NoSlice bool   // the trim has no room for the sample slice
}

// BestSheet is what is to be said of the best plan. The zero value: it is not cut so.
type BestSheet struct {
	Found   bool
	Tight   [][2]int // of the plan's placed embeds, by their order from end A: neighbours between which no cut has room
	Shared  bool     // some bars hold more than one
	Lost    int      // embeds that have no bar of their own
	OverMM  float64  // left over beside the least trims
	Trimmed bool     // ends are trimmed that the plan wanted kept, because no plan keeps them
}

// BarPiece is one bar as it is cut.
type BarPiece struct {
	StartMM, EndMM float64 // along the loaf
	LeftMM         float64 // across it, seen from end A
	RightMM        float64
	CutG, CuredG   Figure
	BaseG          Figure // of CutG
	IcingG         Figure
	EmbedG         Figure
	ToppingG       Figure
}

// ThicknessMM is how thick the bar is.
func (b BarPiece) ThicknessMM() float64 { return b.EndMM - b.StartMM }

// MiddleMM is the middle of the bar along the loaf.
func (b BarPiece) MiddleMM() float64 { return (b.StartMM + b.EndMM) / 2 }

// WideMM is how wide the bar is across the loaf.
func (b BarPiece) WideMM() float64 { return b.RightMM - b.LeftMM }

// Columns are the pieces between one cut across the loaf and the next, each as wide as the mould: of a loaf its bars, of a slab each row of bars
// that stand side by side. No masses are in them.
func (c *CutSheet) Columns() []BarPiece {
	out := make([]BarPiece, 0, len(c.Bars))
	for _, b := range c.Bars {
		if n := len(out); n > 0 && out[n-1].StartMM == b.StartMM {
			out[n-1].RightMM = b.RightMM
			continue
		}
		out = append(out, BarPiece{StartMM: b.StartMM, EndMM: b.EndMM, LeftMM: b.LeftMM, RightMM: b.RightMM})
	}
	return out
}

// usualVaryMM is how far the best plan lets a bar's thickness be off the mould's: common practice, no source.
const usualVaryMM = 2

// stretch is the length that is cut.
func (c *Cut) stretch(length float64) shape.Stretch {
	return shape.Stretch{
		Length: length, Kerf: c.KerfMM, CutA: c.TrimAMM > 0, CutB: c.TrimBMM > 0, TrimA: c.TrimAMM, TrimB: c.TrimBMM,
		Slice: c.SliceMM, SliceAtB: c.SliceAt == LeftEndB,
	}
}

// rest is where the length goes that is left over.
func (c *Cut) rest() shape.Rest {
	switch c.Left {
	case LeftEndA:
		return shape.RestAtA
	case LeftTrims:
		return shape.RestToTrims
	case LeftBars:
		return shape.RestToBars
	case "":
		if c.By == CutCount {
			return shape.RestToBars
		}
	}
	return shape.RestAtB
}

// gang is the maker's wires.
func (c *Cut) gang() shape.Gang {
	g := shape.Gang{Wires: slices.Clone(c.WiresMM), Kerf: c.KerfMM, Clear: c.ClearMM}
	slices.Sort(g.Wires)
	return g
}

// cutting works out where the loaf is cut. perMM is what a millimetre of the base weighs, g: it is asked only where the mass decides.
func (s *Sheet) cutting(perMM func() float64) {
	p := &s.Plan
	if !p.Mould.IsCut() {
		s.Cut = p.Mould.single()
		return
	}
	c := CutSheet{LengthMM: p.Mould.AlongMM(), KerfMM: p.Cut.KerfMM, LaneMM: p.laneMM()}
	along := c.along(p, perMM)
	across := []shape.Part{{From: 0, To: p.Mould.WidthMM}}
	if m := p.Mould; m.Shape == ShapeSlab && m.BarWidthMM > 0 {
		side := shape.Stretch{Length: m.WidthMM, Kerf: p.Cut.KerfMM}
		rest := p.Cut.rest()
		cut := side.Alike(side.For(rest).Most(m.BarWidthMM), m.BarWidthMM, rest)
		across, c.AcrossMM, c.AcrossMarkMM = cut.Bars, cut.Cuts, marks(cut.Cuts)
		if rest == shape.RestAtA || rest == shape.RestAtB {
			c.LeftWideMM = side.Left(len(cut.Bars), m.BarWidthMM)
		}
		c.SideMM = cut.TrimA.Length() + cut.TrimB.Length()
	}
	c.CutsMM, c.MarksMM = along.Cuts, marks(along.Cuts)
	c.TrimAMM, c.TrimBMM, c.SliceMM, c.SliceAt = along.TrimA.Length(), along.TrimB.Length(), along.Slice.Length(), along.Slice.From
	for _, bar := range along.Bars {
		for _, wide := range across {
			c.Bars = append(c.Bars, BarPiece{StartMM: bar.From, EndMM: bar.To, LeftMM: wide.From, RightMM: wide.To})
		}
	}
	c.UsualMM = mean(len(c.Bars), func(i int) float64 { return c.Bars[i].ThicknessMM() })
	s.Cut = c
}

// along cuts the loaf's length.
func (c *CutSheet) along(p *Plan, perMM func() float64) shape.Cutting {
	m, own := p.Mould, &p.Cut
	s, rest := own.stretch(m.AlongMM()), own.rest()
	switch own.By {
	case CutCount, CutMass:
		n := own.Count
		if n == 0 {
			n = s.For(rest).Most(m.BarMM)
		}
		if own.By == CutMass {
			return s.EqualMass(n, shape.Uniform(perMM(), p.features()))
		}
		if s.For(rest).Left(n, m.BarMM) < 0 {
			rest = shape.RestToBars
		}
		if n == 0 || s.Thickness(n) <= 0 {
			return shape.Cutting{}
		}
		return s.Alike(n, m.BarMM, rest)
	case CutMarks:
		cut, out := s.At(own.MarksMM)
		c.Outside = out
		return cut
	case CutGang:
		return c.gang(p, s)
	case CutBest:
		if cut, ok := c.best(p, s, perMM); ok {
			return cut
		}
	}
	n := s.For(rest).Most(m.BarMM)
	if rest == shape.RestAtA || rest == shape.RestAtB {
		c.LeftMM = s.Left(n, m.BarMM)
	}
	return s.Alike(n, m.BarMM, rest)
}

// gang lays the maker's wires on the loaf: where she says, or where they suit her embeds best.
func (c *CutSheet) gang(p *Plan, s shape.Stretch) shape.Cutting {
	g := p.Cut.gang()
	c.Gang = GangSheet{Wires: len(g.Wires), PitchMM: Figure{V: g.Pitch(), Known: len(g.Wires) > 1}}
	placed := p.features()
	place, ok := g.Best(s, placed)
	if ok && p.Cut.GangAtMM > 0 {
		place = g.Judge(s, placed, p.Cut.GangAtMM)
	}
	if !ok {
		c.Gang.Idle = len(g.Wires)
		return shape.Cutting{}
	}
	c.Gang.Placed, c.Gang.AtMM, c.Gang.Missed = true, Know(place.At), len(place.Missed)
	if len(placed) > 0 {
		c.Gang.WorstMM = Know(place.Worst)
	}
	cut := g.On(s, place.At)
	c.Gang.NoSlice = s.Slice > 0 && cut.Slice.Length() == 0
	c.Gang.Idle = len(g.Wires) - len(cut.Cuts)
	if cut.Slice.Length() > 0 {
		c.Gang.Idle++
	}
	return cut
}

// best is the best cut plan around the embeds that stand where they are told to.
func (c *CutSheet) best(p *Plan, s shape.Stretch, perMM func() float64) (shape.Cutting, bool) {
	vary := p.Cut.VaryMM
	if vary == 0 {
		vary = usualVaryMM
	}
	w := shape.Wanted{
		Stretch: s.For(p.Cut.rest()), Thin: max(p.Mould.BarMM-vary, shape.MarkStep), Thick: p.Mould.BarMM + vary,
		Step: shape.MarkStep, Clear: p.Cut.ClearMM, Features: p.features(),
	}
	if p.Cut.Even != EvenThickness {
		w.Mass = shape.Uniform(perMM(), nil)
	}
	plan, ok := w.Best()
	if !ok && !(w.CutA && w.CutB) { // ends that are kept leave no choice where the first and the last cut stand
		w.CutA, w.CutB = true, true
		plan, ok = w.Best()
		c.Best.Trimmed = ok
	}
	c.Best = BestSheet{Found: ok, Tight: plan.Tight, Shared: plan.Crowded, Lost: plan.Lost, OverMM: plan.Over, Trimmed: c.Best.Trimmed}
	return plan.Cutting, ok
}

// Thick is how thick the bars are: in one length, or from the thinnest to the thickest where they differ by more than a tenth of a millimetre.
func (c *CutSheet) Thick(show Show) string {
	if len(c.Bars) == 0 {
		return show.LenTold(c.UsualMM)
	}
	thin, thick := math.Inf(1), 0.0
	for i := range c.Bars {
		mm := c.Bars[i].ThicknessMM()
		thin, thick = min(thin, mm), max(thick, mm)
	}
	if thick-thin < 0.1 {
		return show.Len(c.UsualMM)
	}
	return show.LenNearApart(thin).Number + " to " + show.LenNear(thick)
}

// marks are cuts as they are marked.
func marks(cuts []float64) []float64 {
	var out []float64
	for _, x := range cuts {
		out = append(out, shape.Mark(x, shape.MarkStep))
	}
	return out
}

// usualGrainMM is the size of a grain that a lane is left free of: sanding sugar and nonpareils, common practice.
const usualGrainMM = 2

// laneMM is the clear lane over a cut: the cut, a grain, and what cut and hand may be off on both sides.
func (p *Plan) laneMM() float64 { return p.Cut.KerfMM + usualGrainMM + 2*p.Cut.WanderMM }

// mean is that of n numbers; of equal ones it is each of them to the last bit.
func mean(n int, of func(i int) float64) float64 {
	if n == 0 {
		return Unknown()
	}
	first, rest := of(0), 0.0
	for i := 1; i < n; i++ {
		rest += of(i) - first
	}
	if math.Abs(rest) <= 1e-12*math.Abs(first)*float64(n) {
		return first
	}
	return first + rest/float64(n)
}
