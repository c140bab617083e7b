package shape

import "math"

// Ball is the volume in mm³ of a ball of a diameter: π·d³/6. Derived.
func Ball(diameter float64) float64 { return math.Pi * diameter * diameter * diameter / 6 }

// BallBelow is the volume in mm³ of what lies below the surface of a ball that stands so far out of it: the ball less its [Cap], which has a radius of
// √(h·(d − h)) where it is cut. Derived.
func BallBelow(diameter, out float64) float64 {
	h := math.Min(math.Max(out, 0), diameter)
	return Ball(diameter) - Cap(math.Sqrt(h*(diameter-h)), h)
}

// PrismBelow is the volume in mm³ of what lies below the surface of a piece that has the same outline at every height: area × depth. A box, a
// cylinder, an oval and what is cut from a sheet are such pieces. What stands on the surface has none. Derived.
func PrismBelow(area, height, out float64) float64 {
	return area * math.Min(math.Max(height-out, 0), height)
}

// RoundRodBelow is the area in mm² of the part below the surface of the section of a round rod that lies along the loaf and stands so far out: the
// circle less a segment, R²·θ − (R − h)·√(2Rh − h²) with θ = 2·asin √(h/2R), half the angle it is seen under. Its volume is that times its length. Derived.
func RoundRodBelow(diameter, out float64) float64 {
	r := diameter / 2
	h := math.Min(math.Max(out, 0), diameter)
	half := 2 * math.Asin(math.Sqrt(h/diameter))
	return Disc(r) - (r*r*half - (r-h)*math.Sqrt(math.Max(2*r*h-h*h, 0)))
}

// BallSide is the area in mm² of the skin of a ball below the surface it stands so far out of: π·d·depth, as wide as that of a cylinder around it.
// Derived.
func BallSide(diameter, out float64) float64 {
	return math.Pi * diameter * math.Min(math.Max(diameter-out, 0), diameter)
}
