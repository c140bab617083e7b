package pour

import (
	"math"
	"sort"
)

// Apportion rounds masses to a scale's step by largest remainder, so that they sum exactly to their own sum rounded to that step
// and each is within one step of exact. Ties go to the earlier. It returns multiples of step; step must be > 0.
func Apportion(masses []float64, stepG float64) []float64 {
	sum := 0.0
	for _, g := range masses {
		sum += g
	}
	steps := make([]int64, len(masses))
	rest := make([]float64, len(masses))
	left := int64(math.Round(sum / stepG))
	for i, g := range masses {
		whole := math.Floor(g/stepG + tinyStep)
		steps[i], rest[i] = int64(whole), g/stepG-whole
		left -= steps[i]
	}
	order := make([]int, len(masses))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return rest[order[a]] > rest[order[b]]+tinyStep })
	for _, i := range order {
		if left <= 0 {
			break
		}
		steps[i]++
		left--
	}
	out := make([]float64, len(masses))
	for i, n := range steps {
		out[i] = times(float64(n), stepG)
	}
	return out
}

// tinyStep, in steps, keeps a mass that is a whole number of steps but for the last bits of a float64 from losing one.
const tinyStep = 1e-7

// floorTo rounds down to a step; a mass that is a whole number of steps but for rounding noise stays.
func floorTo(g, stepG float64) float64 { return times(math.Floor(g/stepG+tinyStep), stepG) }

// roundTo rounds to the nearest step.
func roundTo(g, stepG float64) float64 { return times(math.Round(g/stepG), stepG) }

// times is a number of steps as a mass. Where the step is one over a whole number it divides, because 1981/10 is 198.1 and 1981×0.1 is not.
func times(steps, stepG float64) float64 {
	if per := math.Round(1 / stepG); per >= 1 && math.Abs(per*stepG-1) < 1e-12 {
		return steps / per
	}
	return steps * stepG
}
