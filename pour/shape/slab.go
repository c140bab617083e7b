package shape

import "math"

// Slab is a slab to be cut along both its sides.
type Slab struct {
	X, Y       float64 // inside length and width, mm
	TrimX      float64 // trimmed at either end of the length
	TrimY      float64 // trimmed at either side of the width
	Kerf       float64
	CutX, CutY bool // the ends, the sides are trimmed; false: they are kept, and the trim does not count
}

// Grid is a slab cut into columns along its length and rows along its width.
type Grid struct {
	Columns, Rows int
	BarX, BarY    float64 // one bar along the length and across it, mm
	Turned        bool    // the bar's own length lies along the slab's width
}

// along is one side as a stretch.
func (s Slab) along() Stretch {
	return Stretch{Length: s.X, Kerf: s.Kerf, CutA: s.CutX, CutB: s.CutX, TrimA: s.TrimX, TrimB: s.TrimX}
}

func (s Slab) across() Stretch {
	return Stretch{Length: s.Y, Kerf: s.Kerf, CutA: s.CutY, CutB: s.CutY, TrimA: s.TrimY, TrimB: s.TrimY}
}

// Bars is the slab cut into a number of columns and rows with nothing left over: trimmed all round, a bar is (X − 2e − (c + 1)k)/c by
// (Y − 2e − (r + 1)k)/r. Derived.
func (s Slab) Bars(columns, rows int) Grid {
	return Grid{Columns: columns, Rows: rows, BarX: s.along().Thickness(columns), BarY: s.across().Thickness(rows)}
}

// Best tries a bar of a length and a width both ways round, with the columns and rows about what would fit, none of them further from what is
// wanted than most allows, mm either way: most bars first, then the least deviation of both sides together, then not turned. ok is false when
// none is near enough.
func (s Slab) Best(length, width, most float64) (best Grid, ok bool) {
	better := math.Inf(1)
	for _, turned := range []bool{false, true} {
		x, y := length, width
		if turned {
			x, y = width, length
		}
		for _, c := range about(s.along(), x, most) {
			for _, r := range about(s.across(), y, most) {
				g := s.Bars(c, r)
				g.Turned = turned
				off := math.Max(math.Abs(g.BarX-x), math.Abs(g.BarY-y))
				sum := math.Abs(g.BarX-x) + math.Abs(g.BarY-y)
				if off > most+grain || ok && (c*r < best.Columns*best.Rows || c*r == best.Columns*best.Rows && sum >= better-grain) {
					continue
				}
				best, better, ok = g, sum, true
			}
		}
	}
	return best, ok
}

// about are the numbers of bars whose thickness can be within most of what is wanted.
func about(s Stretch, thickness, most float64) []int {
	var out []int
	for i := max(1, s.Most(thickness+most)); i <= s.Most(max(thickness-most, thickness/2))+1; i++ {
		out = append(out, i)
	}
	return out
}
