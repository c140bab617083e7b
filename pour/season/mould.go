package season

import (
	"math"

	"pourbench/pour"
)

// offMM is how far two measures of one mould may be apart: a ruler held to it by hand, our own choice.
const offMM = 1

// fits reports whether the measures of a mould are those.
func (m Mould) fits(length, width, height float64) bool {
	const last = 1e-9 // of the last bit
	near := func(a, b float64) bool { return math.Abs(a-b) <= offMM+last }
	return near(m.LengthMM, length) && near(m.WidthMM, width) && near(m.HeightMM, height)
}

// cavities is how many bars a mould of single cavities holds.
func (m Mould) cavities() int { return max(m.Cavities, 1) }

// needs is how many moulds of that kind a plan's mould takes; 0: it is another mould.
func (m Mould) needs(plan pour.Mould) int {
	switch {
	case m.Shape != plan.Shape || !m.fits(plan.LengthMM, plan.WidthMM, plan.HeightMM):
		return 0
	case m.Shape == pour.ShapeCavity:
		return max((plan.Cavities+m.cavities()-1)/m.cavities(), 1)
	}
	return 1
}

// mould is the first kind of mould she owns that a plan's mould is, its place in the list and how many of it are needed; false: she owns
// none, or has stated none.
func (h House) mould(plan pour.Mould) (at, need int, ok bool) {
	for i, m := range h.Moulds {
		if n := m.needs(plan); n > 0 {
			return i, n, true
		}
	}
	return 0, 0, false
}
