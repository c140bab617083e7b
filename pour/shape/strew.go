package shape

import "math"

// BallLayerMM is the mean thickness, mm, of a single layer of balls of that diameter, mm, over the area they hide: their volume π d³/6 by
// their shadow π d²/4 (derived).
func BallLayerMM(diameterMM float64) float64 { return diameterMM * 2 / 3 }

// StrewnG is the mass, g, of a layer that hides the fraction coverage of an area, mm², and is so thick on average where it lies, mm: of
// balls [BallLayerMM], of what lies flat its own thickness; density in g/mL (derived).
func StrewnG(coverage, layerMM, densityGML, areaMM2 float64) float64 {
	return coverage * layerMM * densityGML * areaMM2 / 1000
}

// BallG is the mass, g, of one ball of that diameter, mm, and density, g/mL: π d³/6 (derived).
func BallG(diameterMM, densityGML float64) float64 {
	return math.Pi / 6 * diameterMM * diameterMM * diameterMM * densityGML / 1000
}

// BallsCut is how many grains one cut across the top meets: their number on a mm², times the width of the top, times the width of the
// strip in which a grain is touched, the kerf and one grain, mm (derived).
func BallsCut(perMM2, widthMM, kerfMM, diameterMM float64) float64 {
	return perMM2 * widthMM * (kerfMM + diameterMM)
}
