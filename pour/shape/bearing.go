package shape

import "math"

// Gravity is standard gravity in m/s², exact by definition.
const Gravity = 9.80665

// How many times its yield stress a soft bed carries before it flows from under a load. Prandtl 1920 for the strip (that it exists was read, the
// factor is from memory), a smooth round footing from memory. Estimates: nobody has measured batter.
const (
	UnderStrip = 2 + math.Pi
	UnderRound = 5.69
)

// Sureness is by how much a bed has to be stronger than what it carries. Estimate.
const Sureness = 2.0

// Pressure is what a mass in g on a footprint in mm² presses with, in Pa.
func Pressure(grams, footprint float64) float64 { return grams * 1e-3 * Gravity / (footprint * 1e-6) }

// LayerPressure is what a layer of a mean height in mm and a density in g/mL presses with, in Pa. A cone has a third of its height on average.
func LayerPressure(height, density float64) float64 { return density * 1000 * Gravity * height * 1e-3 }

// BedNeeds is the yield stress in Pa that a bed needs below a pressure, under a strip or a round spot. Derived, estimate.
func BedNeeds(pressure, under float64) float64 { return pressure * Sureness / under }

// LayerCarried is the mean height in mm of icing of a density in g/mL that a bed of a yield stress in Pa carries. Derived, estimate.
func LayerCarried(yield, density, under float64) float64 {
	return under * yield / (Sureness * density * Gravity)
}

// ColumnStands and ConeStands are how high in mm something of a yield stress in Pa stands by itself before its foot gives way: the mean stress on
// its foot comes to twice the yield stress (Tresca). Derived, estimate.
func ColumnStands(yield, density float64) float64 { return 2 * yield / (density * Gravity) }

// ConeStands is the height in mm at which a cone's foot gives way: three times a column's, because it weighs a third. Derived, estimate.
func ConeStands(yield, density float64) float64 { return 3 * ColumnStands(yield, density) }

// PeakCarries is the mean height in mm (volume over footprint) of icing that a bed carries which holds a pulled peak of a height upright: the peak is
// a cone that tells the bed's strength without an instrument, ρ·g·h/6. 0.428 of the peak under a strip, 0.474 under a round spot. Derived, estimate.
func PeakCarries(peak, under float64) float64 { return under / (6 * Sureness) * peak }

// PeakNeeded is the height in mm of the peak that a bed has to hold before it carries a mean height of icing. Derived, estimate.
func PeakNeeded(height, under float64) float64 { return height * 6 * Sureness / under }

// Slump is how far in mm a cylinder of a height in mm and a density in g/mL sinks when its wall is lifted away: s = H·[1 − z·(1 − ln z)] with
// z = 2τ/(ρ·g·H), and not at all from z = 1 on. The test is that of Pashias et al. 1996, J. Rheol. 40, 1179 (that it exists was read); derived.
func Slump(height, yield, density float64) float64 {
	z := 2 * yield / (density * Gravity * height)
	if z >= 1 {
		return 0
	}
	return height * (1 - z*(1-math.Log(z)))
}

// SlumpYield is the shortcut back from a slump in mm to a yield stress in Pa, ρ·g·H·(1 − √(s/H))/2; it reads too high, by half in a soft batter.
func SlumpYield(height, slump, density float64) float64 {
	return density * Gravity * height * (1 - math.Sqrt(slump/height)) / 2
}

// SphereHeld is the yield stress in Pa from which a ball of a diameter in mm that is heavier than what it lies in by a density in g/mL does not
// sink: 0.143/3 of the stress of its weight (Beris et al. 1985, memory).
func SphereHeld(diameter, heavier float64) float64 { return 0.143 / 3 * heavier * Gravity * diameter }
