package cure

import (
	"math"
	"slices"
)

// When a division is taken for that of the scale.
const (
	seldomRead    = 0.02   // how seldom readings of a finer scale look as if they were of it
	fewestRead    = 2      // different readings that lie on it
	mostlyRead    = 2. / 3 // the part of all that lies on it at least: bars that differ by whole grams are no proof of a scale
	readSlackG    = 0.006  // how far a mass may lie off it: masses are kept in g, and what was typed in ounces is rounded there
	mostDivisionG = 6      // what no scale for bars is coarser than
)

// DivisionG is the division of the scale that masses were read on, g, as they show it themselves: 1 where a kitchen scale gave whole grams. unitG is
// the unit that is divided, g: 1, or what an ounce weighs. 0: nothing shows one coarser than the 0.1 g that [WeighingSDG] is for.
//
// A division is held against the finer one that was taken before it, tens of one another first, as scales have them, then two and five times the
// last: it is taken where as many of the different readings lie on it as seldom would by chance (binomial; derived), and most of them. A reading
// of another scale among many does not hide it.
func DivisionG(massesG []float64, unitG float64) float64 {
	read := slices.Clone(massesG)
	slices.Sort(read)
	read = slices.Compact(read)
	step, found := usualStepG, 0.0
	take := func(division float64) {
		if division <= step+readSlackG || division > mostDivisionG {
			return
		}
		on := 0
		for _, g := range read {
			if math.Abs(g-division*math.Round(g/division)) <= readSlackG {
				on++
			}
		}
		if on >= fewestRead && float64(on) >= mostlyRead*float64(len(read)) && chance(on, len(read), step/division) <= seldomRead {
			step, found = division, division
		}
	}
	for _, ten := range []float64{0.01, 0.1, 1} {
		take(ten * unitG)
	}
	last := found
	if found == 0 {
		last = 0.1 * unitG
	}
	take(2 * last)
	take(5 * last)
	return found
}

// chance is how likely at least that many of n are, each with a chance of p above 0 and below 1: the binomial tail, in logarithms, since the chance of
// none of very many is too small for a number.
func chance(least, n int, p float64) float64 {
	ways := func(n int) float64 { v, _ := math.Lgamma(float64(n) + 1); return v }
	sum := 0.0
	for k := least; k <= n; k++ {
		sum += math.Exp(ways(n) - ways(k) - ways(n-k) + float64(k)*math.Log(p) + float64(n-k)*math.Log1p(-p))
	}
	return sum
}
