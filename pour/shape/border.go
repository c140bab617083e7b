package shape

import "math"

// Shell is one shell of a border: a head as a quarter of an ellipsoid and a tail as half an elliptic cone.
type Shell struct {
	Head      float64 // mm, the head's length along the border
	HalfWidth float64 // mm
	Height    float64 // mm
	Tail      float64 // mm, the tail's length
}

// Volume is the shell's volume in mm³ out of a tip of a fullness: k·π·b·c·(a/3 + t/6). Derived.
func (s Shell) Volume(fullness float64) float64 {
	return fullness * math.Pi * s.HalfWidth * s.Height * (s.Head/3 + s.Tail/6)
}

// Length is how much of a border one shell covers by itself, in mm.
func (s Shell) Length() float64 { return s.Head + s.Tail }

// Footprint is what the shell stands on in mm²: half an ellipse and the triangle of its tail. Closed form.
func (s Shell) Footprint() float64 { return s.HalfWidth * (math.Pi*s.Head/2 + s.Tail) }

// Step is how far a shell begins behind the one before, in mm, when each covers a fraction of the last.
func (s Shell) Step(overlap float64) float64 { return s.Length() * (1 - overlap) }

// Fit is how many pieces of a length stand in a row of a length when each begins a step behind the one before; 0 where not even one does, and never more
// than a million, so that a step of next to nothing stays a number. Derived.
func Fit(row, piece, step float64) int {
	if !(piece > 0 && step > 0 && row >= piece) { // Written so that what is no number fits nothing.
		return 0
	}
	return int(math.Min(math.Floor((row-piece)/step+1e-9)+1, 1e6))
}

// RopeRatio is the length of a strand that winds as a helix of a radius with a pitch, over the length of the border: √(P² + (2πρ)²)/P. A straight
// border has the radius 0. Derived.
func RopeRatio(radius, pitch float64) float64 {
	return math.Hypot(pitch, 2*math.Pi*radius) / pitch
}

// RuffleRatio is the length of a ribbon laid as a sine wave over the length of the border: (2/π)·√(1 + m²)·E(k), with m = 2πa/l for an amplitude a
// and a wavelength l, k² = m²/(1 + m²) and E the complete elliptic integral of the second kind. Derived.
func RuffleRatio(amplitude, wavelength float64) float64 {
	m := 2 * math.Pi * amplitude / wavelength
	k := m / math.Sqrt(1+m*m)
	return 2 / math.Pi * math.Sqrt(1+m*m) * elliptic(k)
}

// elliptic is the complete elliptic integral of the second kind of a modulus below 1, by the arithmetic-geometric mean, whose steps double the digits.
func elliptic(k float64) float64 {
	a, b, sum, weight := 1.0, math.Sqrt(1-k*k), k*k/2, 0.5
	for range 40 {
		c := (a - b) / 2
		if weight *= 2; math.Abs(c) < 1e-17 {
			break
		}
		a, b = (a+b)/2, math.Sqrt(a*b)
		sum += weight * c * c
	}
	return math.Pi / (2 * a) * (1 - sum)
}
