package chem

import "sort"

// Where the density tables of lye end.
const (
	lyeMaxFraction = 0.50
	lyeMinC        = 10
	lyeMaxC        = 70
)

// naohDensities is the density of aqueous NaOH, g/mL, at 20 and 40 °C against mass percent: Perry's table, data of the
// International Critical Tables (memory). The 20 °C column gives every CRC Handbook value (read) to 0.0001.
func naohDensities() (percent, at20, at40 [16]float64) {
	percent = [16]float64{0, 1, 2, 4, 8, 12, 16, 20, 24, 28, 32, 36, 40, 44, 48, 50}
	at20 = [16]float64{
		0.9982, 1.0095, 1.0207, 1.0428, 1.0869, 1.1309, 1.1751, 1.2191,
		1.2629, 1.3064, 1.3490, 1.3900, 1.4300, 1.4685, 1.5065, 1.5253,
	}
	at40 = [16]float64{
		0.9922, 1.0033, 1.0139, 1.0352, 1.0780, 1.1210, 1.1645, 1.2079,
		1.2512, 1.2942, 1.3362, 1.3768, 1.4164, 1.4545, 1.4922, 1.5109,
	}
	return percent, at20, at40
}

// naohCurves is how the density bends with temperature, g/mL per K², against mass percent: half the mean second
// difference of densities measured at 10, 25, 40 and 55 °C up to 6 mol/kg (read; the bend derived; water from memory).
// Beyond 19.4 % the last value is kept.
func naohCurves() (percent, bend [8]float64) {
	percent = [8]float64{0, 1.961, 3.846, 7.407, 10.714, 13.792, 16.666, 19.354}
	bend = [8]float64{-4.31e-6, -3.567e-6, -3.156e-6, -2.700e-6, -2.444e-6, -2.167e-6, -1.711e-6, -9.00e-7}
	return percent, bend
}

// NaOHDensity returns the density of a solution of pure NaOH, g/mL, at c °C. At 20 °C it is good to 0.0005 g/mL, from 10
// to 55 °C to 0.001 up to 20 % NaOH; warmer or stronger it is extrapolated along the last bend. ok is false outside a
// mass fraction of 0 to 0.50 or 10 to 70 °C.
func NaOHDensity(massFraction, c float64) (gml float64, ok bool) {
	if !(massFraction >= 0 && massFraction <= lyeMaxFraction && c >= lyeMinC && c <= lyeMaxC) {
		return 0, false
	}
	return naohDensity(massFraction, c), true
}

// naohDensity is NaOHDensity held to the nearest edge of its range.
func naohDensity(massFraction, c float64) float64 {
	x := 100 * min(max(massFraction, 0), lyeMaxFraction)
	c = min(max(c, lyeMinC), lyeMaxC)
	percent, at20, at40 := naohDensities()
	cold, warm := interpolate(percent[:], at20[:], x), interpolate(percent[:], at40[:], x)
	curve, bend := naohCurves()
	return cold + (warm-cold)*(c-20)/20 + interpolate(curve[:], bend[:], x)*(c-20)*(c-40)
}

// kohDensities is the density of aqueous KOH, g/mL, at 18 °C against mass percent (read to 40 %; water from memory, 50 %
// extrapolated in a straight line).
func kohDensities() (percent, at18 [10]float64) {
	percent = [10]float64{0, 5, 10, 15, 20, 25, 30, 35, 40, 50}
	at18 = [10]float64{0.9986, 1.045, 1.091, 1.139, 1.188, 1.238, 1.290, 1.344, 1.400, 1.512}
	return percent, at18
}

// kohDensity is the density of aqueous KOH; it is assumed to expand as NaOH of the same mass fraction does.
func kohDensity(massFraction, c float64) float64 {
	percent, at18 := kohDensities()
	gml := interpolate(percent[:], at18[:], 100*massFraction)
	return gml * naohDensity(massFraction, c) / naohDensity(massFraction, 18)
}

// LyeML returns the volume, mL, at tC °C of the whole lye solution with all its water. A mixed lye counts as two
// solutions of one strength side by side, and impurity as water. Beyond the tables (50 %, 10 to 70 °C) the nearest edge
// is used, which is 0.05 % out for every K beyond. A lye without alkali and water has volume 0.
func LyeML(l Lye, tC float64) float64 {
	pure, g := l.NaOHPureG+l.KOHPureG, l.SolutionG()
	if pure <= 0 {
		return max(g, 0) / naohDensity(0, tC)
	}
	strength := pure / g
	naohG, kohG := g*l.NaOHPureG/pure, g*l.KOHPureG/pure
	return naohG/naohDensity(strength, tC) + kohG/kohDensity(strength, tC)
}

// interpolate draws straight lines through the points (xs[i], ys[i]), xs rising, and keeps the end values beyond them.
func interpolate(xs, ys []float64, x float64) float64 {
	last := len(xs) - 1
	i := sort.SearchFloat64s(xs, x)
	switch {
	case i == 0:
		return ys[0]
	case i > last:
		return ys[last]
	}
	t := (x - xs[i-1]) / (xs[i] - xs[i-1])
	return ys[i-1] + t*(ys[i]-ys[i-1])
}
