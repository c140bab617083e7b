package shape

import "math"

// Between is the room on each side of a piece between the two faces of a bar, mm, towards end A and towards end B; below 0 the piece sticks out of
// the bar there. The smaller of both is (t − extent)/2 − |offset| with t the bar's thickness and the offset from its middle. Derived.
func Between(start, end, centre, extent float64) (a, b float64) {
	return centre - extent/2 - start, end - centre - extent/2
}

// Budget is by how much a piece and a cut may come off where they were meant to be, term by term, mm, each at least 0. The usual figures of the
// first two are common practice, no source; the sight-line error is derived (see [Parallax]).
type Budget struct {
	Placing  float64 // of a piece set by hand; usually 1
	Wander   float64 // of a cut, or the bow of a wire; usually 0.5
	Sight    float64 // of a mark read askew
	HalfKerf float64 // half of what the cut takes, where the bar's face was reckoned at the cut's middle; 0 where not
}

// Worst is the room a side needs when every error goes the same way, mm.
func (b Budget) Worst() float64 { return b.Placing + b.Wander + b.Sight + b.HalfKerf }

// Usual is the room it needs when the errors are independent of each other and each term is twice its standard deviation, mm. Derived.
func (b Budget) Usual() float64 {
	return math.Sqrt(b.Placing*b.Placing + b.Wander*b.Wander + b.Sight*b.Sight + b.HalfKerf*b.HalfKerf)
}

// Verdict says how a piece stands beside a cut.
type Verdict uint8

// The verdicts, from bad to good.
const (
	IsCut   Verdict = iota // not even the independent errors have room
	IsTight                // they have, but not all errors at once, or not the room that is wanted
	IsClear                // all errors at once have room
)

// Judge says how a piece stands whose nearer side is so far from the face of its bar, mm, when at least so much is wanted whatever the errors: clear
// where the worst case fits, tight where only the independent errors do. Derived.
func (b Budget) Judge(room, wanted float64) Verdict {
	switch {
	case room >= math.Max(b.Worst(), wanted)-slack:
		return IsClear
	case room >= b.Usual()-slack && room > 0:
		return IsTight
	}
	return IsCut
}

// slack is what rounding of lengths may take, mm.
const slack = 1e-9
