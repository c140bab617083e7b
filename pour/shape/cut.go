package shape

import (
	"math"
	"slices"
)

// Stretch is a length of soap that is cut across: a loaf, or one side of a slab. All lengths are in mm from its named end A; a cut is where the
// middle of a wire or blade passes.
type Stretch struct {
	Length     float64 // inside length of the mould
	Kerf       float64 // what one cut takes: 0.4 to 0.8 for a wire, 0.5 to 1.5 for a blade (common practice, no source)
	CutA, CutB bool    // that end is trimmed; false: it is kept, no cut is made there
	TrimA      float64 // least that is trimmed at end A, where it is
	TrimB      float64 // and at end B
	Slice      float64 // a sample slice beside the first or the last bar; 0: none
	SliceAtB   bool    // it is the last bar's neighbour
}

// Part is a piece of a stretch, from one edge to the other; one without length is not there.
type Part struct{ From, To float64 }

// Length of the piece in mm.
func (p Part) Length() float64 { return p.To - p.From }

// Middle of the piece.
func (p Part) Middle() float64 { return (p.From + p.To) / 2 }

// Cutting is a stretch that has been cut: its cuts in their order from end A, and every piece that they leave.
type Cutting struct {
	Cuts         []float64
	Bars         []Part
	TrimA, TrimB Part
	Slice        Part
}

// Rest says where the length goes that whole bars leave over.
type Rest int

// Where the rest goes.
const (
	RestAtB     Rest = iota // all of it to end B
	RestAtA                 // all of it to end A
	RestToTrims             // half of it to either end, which are both trimmed
	RestToBars              // to the bars, all alike
)

// grain keeps a length that is a whole number of bars from losing one to the last bit.
const grain = 1e-9

// ends is the length that the least trims, the slice and their own cuts take.
func (s Stretch) ends() float64 {
	sum := 0.0
	if s.CutA {
		sum += s.TrimA + s.Kerf
	}
	if s.CutB {
		sum += s.TrimB + s.Kerf
	}
	if s.Slice > 0 {
		sum += s.Slice + s.Kerf
	}
	return sum
}

// For is the stretch as it is cut when the rest goes there: both its ends are trimmed when both get a part of it.
func (s Stretch) For(rest Rest) Stretch {
	if rest == RestToTrims {
		s.CutA, s.CutB = true, true
	}
	return s
}

// room is the length for bars and the cuts between them.
func (s Stretch) room() float64 { return s.Length - s.ends() }

// Most is how many bars of a thickness there is room for: N·t + (N − 1)·k ≤ what trims, slice and their own cuts leave. Derived.
func (s Stretch) Most(thickness float64) int {
	if !(thickness+s.Kerf > 0) {
		return 0
	}
	return max(0, int(math.Floor((s.room()+s.Kerf)/(thickness+s.Kerf)+grain)))
}

// Thickness is that of a number of bars when nothing is left over: the length identity solved for it. Derived.
func (s Stretch) Thickness(bars int) float64 {
	n := float64(bars)
	return (s.room() - (n-1)*s.Kerf) / n
}

// Left is what a number of bars of a thickness leave over, beside the least trims. Derived.
func (s Stretch) Left(bars int, thickness float64) float64 {
	n := float64(bars)
	return s.room() - n*thickness - max(0, n-1)*s.Kerf
}

// Alike cuts bars of one thickness; the rest goes where it is said to. Where the rest is no longer than the cut that would part it, it stays
// with the outermost bar. No bars: nothing is cut.
func (s Stretch) Alike(bars int, thickness float64, rest Rest) Cutting {
	if bars < 1 {
		return Cutting{}
	}
	s = s.For(rest)
	if rest == RestToBars {
		thickness = s.Thickness(bars)
	}
	t := make([]float64, bars)
	for i := range t {
		t[i] = thickness
	}
	left := s.Left(bars, thickness)
	switch rest {
	case RestToTrims:
		s.TrimA, s.TrimB = s.TrimA+left/2, s.TrimB+left/2
	case RestAtA:
		s.over(&s.CutA, &s.TrimA, &t[0], left)
	case RestAtB:
		s.over(&s.CutB, &s.TrimB, &t[bars-1], left)
	}
	return s.Lay(t)
}

// over adds what is left over to the trim of an end, which takes a cut where there was none, or to the bar beside it.
func (s Stretch) over(cut *bool, trim, bar *float64, left float64) {
	switch {
	case *cut:
		*trim += left
	case left > s.Kerf+grain:
		*cut, *trim = true, left-s.Kerf
	case left > grain:
		*bar += left
	}
}

// Lay cuts bars of the thicknesses given, end to end from the trim and the slice of end A; what stands beyond the last is end B's.
func (s Stretch) Lay(thickness []float64) Cutting {
	var c Cutting
	at, begun := 0.0, false
	piece := func(length float64) Part {
		if begun {
			c.Cuts = append(c.Cuts, at+s.Kerf/2)
			at += s.Kerf
		}
		p := Part{at, at + length}
		at, begun = p.To, true
		return p
	}
	if s.CutA {
		c.TrimA = piece(s.TrimA)
	}
	if s.Slice > 0 && !s.SliceAtB {
		c.Slice = piece(s.Slice)
	}
	for _, t := range thickness {
		c.Bars = append(c.Bars, piece(t))
	}
	if s.Slice > 0 && s.SliceAtB {
		c.Slice = piece(s.Slice)
	}
	if s.CutB {
		c.TrimB = piece(s.Length - at - s.Kerf)
	}
	return c
}

// At cuts where it is told to. Cuts that would not lie wholly inside, or that would meet the one before, are left out and handed back. The
// outermost pieces are trims where an end is trimmed, the next one is the slice, all others are bars.
func (s Stretch) At(cuts []float64) (c Cutting, out []float64) {
	sorted := slices.Clone(cuts)
	slices.Sort(sorted)
	at := 0.0
	var pieces []Part
	for _, x := range sorted {
		if x-s.Kerf/2 <= at+grain || x+s.Kerf/2 >= s.Length-grain {
			out = append(out, x)
			continue
		}
		c.Cuts = append(c.Cuts, x)
		pieces = append(pieces, Part{at, x - s.Kerf/2})
		at = x + s.Kerf/2
	}
	pieces = append(pieces, Part{at, s.Length})
	first := func(take bool, into *Part) {
		if take && len(pieces) > 1 {
			*into, pieces = pieces[0], pieces[1:]
		}
	}
	last := func(take bool, into *Part) {
		if take && len(pieces) > 1 {
			*into, pieces = pieces[len(pieces)-1], pieces[:len(pieces)-1]
		}
	}
	first(s.CutA, &c.TrimA)
	last(s.CutB, &c.TrimB)
	first(s.Slice > 0 && !s.SliceAtB, &c.Slice)
	last(s.Slice > 0 && s.SliceAtB, &c.Slice)
	c.Bars = pieces
	return c, out
}

// Mirror is the same stretch seen from its other end.
func (s Stretch) Mirror() Stretch {
	s.CutA, s.CutB, s.TrimA, s.TrimB, s.SliceAtB = s.CutB, s.CutA, s.TrimB, s.TrimA, !s.SliceAtB
	return s
}

// Mirror is the same cutting seen from the other end of a length.
func (c Cutting) Mirror(length float64) Cutting {
	part := func(p Part) Part {
		if p.Length() == 0 {
			return Part{}
		}
		return Part{length - p.To, length - p.From}
	}
	m := Cutting{TrimA: part(c.TrimB), TrimB: part(c.TrimA), Slice: part(c.Slice)}
	for _, x := range slices.Backward(c.Cuts) {
		m.Cuts = append(m.Cuts, length-x)
	}
	for _, b := range slices.Backward(c.Bars) {
		m.Bars = append(m.Bars, part(b))
	}
	return m
}

// Lengths are what becomes of the length: bars, trims, slice and cuts sum to it. Derived.
func (c Cutting) Lengths(kerf float64) (bars, trims, slice, cuts float64) {
	for _, b := range c.Bars {
		bars += b.Length()
	}
	return bars, c.TrimA.Length() + c.TrimB.Length(), c.Slice.Length(), kerf * float64(len(c.Cuts))
}

// MarkStep is what a mark on a rule is read to, mm: common practice, no source.
const MarkStep = 0.5

// Mark rounds a distance from end A once, to a step. Rounded pitches are never added up: their error would grow with every bar.
func Mark(x, step float64) float64 { return math.Round(x/step) * step }
