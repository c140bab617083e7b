package shape

import "math"

// What part of a relief's height it has on average. Derived; waves and ridges have the same along and across.
const (
	Ridges  = 1.0 / 2      // sine waves and triangular ridges
	Valleys = 1.0 / 3      // parabolic valleys between sharp crests, and pyramids
	Peaks   = math.Pi / 12 // cones that touch on a square grid
)

// Spooned is the volume in mm³ of icing spread over an area: a flat layer and on it a relief of a height, of which it has a part on average.
func Spooned(area, flat, relief, part float64) float64 { return area * (flat + part*relief) }
