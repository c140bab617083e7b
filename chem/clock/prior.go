package clock

import "math"

// ScentPrior is what is believed of a scent before any log of it, by what its maker or supplier says: "none" (no acceleration),
// "slows", "fast" (many florals), "strong" (clove and cinnamon kind), "seizes" and "unknown". It gives ln of the median speed factor
// at [PriorLoadPercent] of oils and the sd of that ln; ok is false for another word. Common practice and assumption, no source.
func ScentPrior(behaviour string) (lnFactor, sd float64, ok bool) {
	switch behaviour {
	case "unknown":
		return math.Log(1.2), 0.50, true
	case "none":
		return 0, 0.20, true
	case "slows":
		return math.Log(0.80), 0.25, true
	case "fast":
		return math.Log(2), 0.35, true
	case "strong":
		return math.Log(2.5*3) / 2, 0.45, true // between 2.5 and 3
	case "seizes":
		return math.Log(8), 0.60, true
	default:
		return 0, 0, false
	}
}

// PriorLoadPercent is the load at which the priors of scents hold, percent of oils.
const PriorLoadPercent = 3
