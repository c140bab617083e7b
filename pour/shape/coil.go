package shape

import "math"

// CoilLength is how long a strand is in mm that winds outwards between two radii of its centre line with a pitch from turn to turn: the arc of an
// Archimedean spiral, F(r1) − F(r0) with F(r) = [r·√(r² + b²) + b²·ln(r + √(r² + b²))]/(2b) and b = pitch/2π. Derived; (r1² − r0²)·π/pitch is too
// short, by 4 % in a small rosette.
func CoilLength(pitch, inner, outer float64) float64 {
	b := pitch / (2 * math.Pi)
	primitive := func(r float64) float64 {
		slant := math.Hypot(r, b)
		return (r*slant + b*b*math.Log(r+slant)) / (2 * b)
	}
	return primitive(outer) - primitive(inner)
}

// CoilTurns is how often a strand goes round between two radii.
func CoilTurns(pitch, inner, outer float64) float64 { return (outer - inner) / pitch }

// CoilPitch is what lies between neighbouring turns of a strand of a width that overlap by a fraction of it, in mm. Overlap lengthens the strand
// and takes no volume away. Derived.
func CoilPitch(width, overlap float64) float64 { return width * (1 - overlap) }

// Rosette is a strand coiled from a middle to a rim, in one tier or several on top of each other.
type Rosette struct {
	Strand  float64   // mm², the strand's cross-section
	Width   float64   // mm, the strand as it lies
	Overlap float64   // fraction of the width by which turns overlap, 0 to below 1
	Inner   float64   // mm, the radius of the centre line where the coil begins
	Tiers   []float64 // mm, the radius of the centre line where it ends, tier by tier from below
}

// Length is the length in mm of the strand over all tiers.
func (r Rosette) Length() float64 {
	sum := 0.0
	for _, outer := range r.Tiers {
		sum += CoilLength(CoilPitch(r.Width, r.Overlap), r.Inner, outer)
	}
	return sum
}

// Volume is the rosette's volume in mm³.
func (r Rosette) Volume() float64 { return r.Strand * r.Length() }

// Diameter is the rosette's outer diameter in mm: that of the widest tier's centre line and a strand's width. Derived.
func (r Rosette) Diameter() float64 {
	widest := r.Inner
	for _, outer := range r.Tiers {
		widest = max(widest, outer)
	}
	return 2*widest + r.Width
}
