package pour

import (
	"math"

	"pourbench/pour/shape"
)

// EmbedSheet is one kind of embed, and where each piece of it stands.
type EmbedSheet struct {
	Name          string
	Material      string // one of the Embed… materials
	Outline       shape.Outline
	TurnRad       float64 // by which the outline is turned
	HeightMM      float64
	OutMM         float64 // of its height, over the base
	Rod           bool    // as long as the loaf
	RoundRod      bool    // a rod whose section is a disc
	Pieces        []EmbedPiece
	ExtentMM      float64 // along the loaf; where it may lie any way round, of the circle around it
	AcrossMM      float64 // across it
	SubmergedMM3  Figure  // of one piece, below the base's surface
	WholeMM3      float64 // of all of one piece
	DisplacesG    Figure  // batter that all pieces take the place of
	PieceG        Figure
	CuredG        Figure // one piece once its bar has cured
	AllG          Figure
	SetMin        float64 // to set all pieces
	MadeDays      float64 // before the pour
	HardDays      float64 // it has to harden
	NeedMM        Figure  // clearance the sides of its worst piece need, worst case
	NeedUsuallyMM Figure  // where the errors are independent of each other
	BuriedPercent Figure  // of its height
	HoldN         Figure  // by which a fresh loaf holds it: an estimate; unknown: a rod
}

// The verdicts on an embed between two cuts.
const (
	VerdictClear   = "clear"
	VerdictTight   = "tight"
	VerdictCut     = "will be cut"
	VerdictThrough = "cut through" // a rod, meant so
	VerdictAstray  = "in no bar"
)

// EmbedPiece is one piece.
type EmbedPiece struct {
	Bar          int     // from 1; 0: in no bar, or in all of them
	CentreMM     float64 // from end A
	AcrossMM     float64 // from the loaf's middle to the right, seen from end A
	MarkMM       float64 // as it is marked on the rim, rounded once
	ClearMM      Figure  // between it and the nearest side of its bar that is cut; unknown: none is
	ClearAMM     Figure  // to the side towards end A; unknown: that side is not cut
	ClearBMM     Figure
	ClearLeftMM  Figure // to the left side, seen from end A; unknown: that side is not cut, as no side of a loaf's bar is
	ClearRightMM Figure
	Budget       shape.Budget // what each side has to leave for errors
	Verdict      string
}

// spoiled reports whether the piece costs its bar.
func (p EmbedPiece) spoiled() bool { return p.Verdict == VerdictCut || p.Verdict == VerdictAstray }

// mostPieces is how many pieces of a kind are set out at most: a slab of 2 m by 2 m cut into bars of 3 cm by 3 cm has a piece in each.
const mostPieces = 4500

// markStepMM is the step to which every mark is rounded once, from end A: 0.5 mm, so that none is further off than 0.25.
const markStepMM = 0.5

// embed sets the pieces out between the cuts.
func (s *Sheet) embed() {
	m := s.Plan.Mould
	for i := range s.Plan.Top.Embeds {
		e := &s.Plan.Top.Embeds[i]
		o := e.outline(m.AlongMM())
		k := EmbedSheet{
			Name: e.Name, Material: e.Material, Outline: o, TurnRad: e.turn(), HeightMM: e.height(), OutMM: e.OutMM,
			Rod: e.Outline == OutlineRod, RoundRod: e.roundRod(), MadeDays: e.made(), HardDays: e.hardDays(),
		}
		if k.Material == "" {
			k.Material = EmbedSoap
		}
		k.ExtentMM, k.AcrossMM = e.takes(o)
		below, whole := e.below(o, m.AlongMM(), m.deepMM())
		k.SubmergedMM3, k.WholeMM3 = Know(below), whole
		part, sides := e.buried(o, m.deepMM())
		k.BuriedPercent = Know(part * 100)
		if !k.Rod {
			k.HoldN = Know(shape.Holding(sides, shape.FreshLoafPa))
		}
		s.set(&k, e)
		k.SetMin = float64(len(k.Pieces)) * e.setMin()
		s.Embeds = append(s.Embeds, k)
	}
}

// strip is a stretch of the mould's width that a row of bars takes, from its middle.
type strip struct{ from, to float64 }

// rows are the rows of bars side by side; a loaf has one.
func (s *Sheet) rows() []strip {
	half := s.Plan.Mould.WidthMM / 2
	if !s.Cut.sides() || len(s.Cut.Bars) == 0 {
		return []strip{{-half, half}}
	}
	out := make([]strip, 0, 8)
	for _, b := range s.Cut.Bars {
		if b.StartMM != s.Cut.Bars[0].StartMM {
			break
		}
		out = append(out, strip{b.LeftMM - half, b.RightMM - half})
	}
	return out
}

// set finds the place of every piece of a kind.
func (s *Sheet) set(k *EmbedSheet, e *Embed) {
	rows := s.rows()
	for _, at := range s.stands(e) {
		for _, row := range rows {
			for i := range e.side() {
				wide := (row.to - row.from) / float64(e.side())
				across := row.from + (float64(i)+0.5)*wide + e.AcrossMM
				if len(k.Pieces) < mostPieces {
					k.Pieces = append(k.Pieces, s.piece(k, at, across))
				}
			}
		}
	}
	for _, p := range k.Pieces {
		k.NeedMM = largest(k.NeedMM, max(p.Budget.Worst(), s.Plan.Cut.ClearMM))
		k.NeedUsuallyMM = largest(k.NeedUsuallyMM, p.Budget.Usual())
	}
}

func largest(f Figure, v float64) Figure {
	if f.Known && f.V >= v {
		return f
	}
	return Know(v)
}

// stands are the centres of a kind along the loaf.
func (s *Sheet) stands(e *Embed) []float64 {
	if e.Outline == OutlineRod {
		return []float64{s.Plan.Mould.AlongMM() / 2}
	}
	if e.In == EmbedOwn {
		return e.AtMM
	}
	var out []float64
	columns := s.Cut.Columns()
	for i := 0; i < len(columns); i += max(e.Every, 1) {
		out = append(out, columns[i].MiddleMM()+e.AlongMM)
	}
	return out
}

// piece is one piece at its place, with what is clear beside it.
func (s *Sheet) piece(k *EmbedSheet, at, across float64) EmbedPiece {
	p := EmbedPiece{CentreMM: at, AcrossMM: across, MarkMM: math.Round(at/markStepMM) * markStepMM, Budget: s.Plan.sightBudget(at, s.offMiddle(across))}
	if k.Rod {
		p.Verdict, p.MarkMM = VerdictThrough, at
		return p
	}
	i, ok := s.barAt(at, across)
	if !ok {
		p.Verdict = VerdictAstray
		return p
	}
	bar := s.Cut.Bars[i]
	p.Bar = i + 1
	p.ClearAMM, p.ClearBMM = s.rooms(s.Cut.CutsMM, bar.StartMM, bar.EndMM, at, k.ExtentMM)
	p.ClearLeftMM, p.ClearRightMM = s.rooms(s.Cut.AcrossMM, bar.LeftMM, bar.RightMM, across+s.Plan.Mould.WidthMM/2, k.AcrossMM)
	for _, side := range [...]Figure{p.ClearAMM, p.ClearBMM, p.ClearLeftMM, p.ClearRightMM} {
		p.ClearMM = smaller(p.ClearMM, side)
	}
	p.Verdict = VerdictClear
	if p.ClearMM.Known {
		p.Verdict = verdictWord(p.Budget.Judge(p.ClearMM.V, s.Plan.Cut.ClearMM))
	}
	return p
}

func verdictWord(v shape.Verdict) string {
	switch v {
	case shape.IsClear:
		return VerdictClear
	case shape.IsTight:
		return VerdictTight
	default:
		return VerdictCut
	}
}

// barAt is the bar that a place lies in, or under the cut beside it: along the loaf from end A, and across it from its middle.
func (s *Sheet) barAt(at, across float64) (int, bool) {
	half := s.Plan.Cut.KerfMM/2 + noise
	across += s.Plan.Mould.WidthMM / 2
	if at < 0 || at > s.Plan.Mould.AlongMM() {
		return 0, false // beside the loaf
	}
	for i, b := range s.Cut.Bars {
		if at >= b.StartMM-half && at <= b.EndMM+half && (across >= b.LeftMM-half && across <= b.RightMM+half || !s.Cut.sides()) {
			return i, true
		}
	}
	return 0, false
}

// rooms are those of a piece to both sides of its bar in one direction, mm; unknown on a side that is no cut.
func (s *Sheet) rooms(cuts []float64, from, to, centre, extent float64) (before, after Figure) {
	a, b := shape.Between(from, to, centre, extent)
	if s.cutNear(cuts, from) {
		before = Know(a)
	}
	if s.cutNear(cuts, to) {
		after = Know(b)
	}
	return before, after
}

// smaller is the smaller of two figures; one that is not known does not count.
func smaller(a, b Figure) Figure {
	if !a.Known || b.Known && b.V < a.V {
		return b
	}
	return a
}

// lengthwise reports whether the room that counts is that beside a cut along a slab, and not beside one across it.
func (p EmbedPiece) lengthwise() bool {
	along, across := smaller(p.ClearAMM, p.ClearBMM), smaller(p.ClearLeftMM, p.ClearRightMM)
	return across.Known && (!along.Known || across.V < along.V)
}

// offMiddle is how far from the mould's middle a mark across it is read, mm: 0 where no cut runs along the mould.
func (s *Sheet) offMiddle(across float64) float64 {
	if len(s.Cut.AcrossMM) == 0 {
		return 0
	}
	return across
}

// cutNear reports whether the face of a bar was cut, and is not the end of the loaf.
func (s *Sheet) cutNear(cuts []float64, face float64) bool {
	half := s.Plan.Cut.KerfMM/2 + noise
	for _, x := range cuts {
		if math.Abs(x-face) <= half {
			return true
		}
	}
	return false
}

// mostDisplaced is the part of the loaf that embeds can take at most: more than that is a mould full of embeds.
const mostDisplaced = 0.9

// displaced is the volume of base that all embeds take the place of, mm³.
func (s *Sheet) displaced() float64 {
	m, sum := s.Plan.Mould, 0.0
	for _, k := range s.Embeds {
		sum += k.SubmergedMM3.V * float64(k.inLoaf(m.AlongMM()))
	}
	return min(sum, mostDisplaced*m.AreaMM2()*m.FillMM)
}

// inLoaf is how many pieces stand in the loaf at all.
func (k *EmbedSheet) inLoaf(lengthMM float64) int {
	n := 0
	for _, p := range k.Pieces {
		if p.CentreMM >= 0 && p.CentreMM <= lengthMM {
			n++
		}
	}
	return n
}
