package shape

import "math"

// The fullness of a profile is the power its radius falls with: r(z) = R·(1 − z/h)^p.
const (
	Cone       = 1.0 // a kiss pulled straight up: a third of its cylinder
	Paraboloid = 0.5 // a rounded dollop: half of its cylinder
)

// Mound is the volume in mm³ of a dollop or kiss of a radius (tip to tip) and a height whose radius falls by a profile's power, out of a tip
// of a fullness: k·π·R²·h/(2p + 1). Ridges that wind about it change nothing, because turning a section leaves its area (Cavalieri). Derived.
func Mound(fullness, radius, height, profile float64) float64 {
	return fullness * Disc(radius) * height / (2*profile + 1)
}

// Frustum is the volume in mm³ of a cone cut off between two radii. Closed form.
func Frustum(lower, upper, height float64) float64 {
	return math.Pi * height * (lower*lower + lower*upper + upper*upper) / 3
}

// Cap is the volume in mm³ of a piece of a sphere as high as height on a circle of a radius. Closed form.
func Cap(radius, height float64) float64 {
	return math.Pi * height * (3*radius*radius + height*height) / 6
}

// TorusArc is the volume in mm³ of a round strand of a radius bent along a circle through an angle (Pappus).
func TorusArc(strand, circle, angle float64) float64 { return Disc(strand) * circle * angle }

// Grams is the mass of a volume in mm³ at a density in g/mL.
func Grams(volume, density float64) float64 { return volume / 1000 * density }

// Whipped is the density in g/mL of a batter that has taken in a fraction of its own volume as air. Derived.
func Whipped(density, overrun float64) float64 { return density / (1 + overrun) }
