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
		sum += r.coil(outer)
	}
	return sum
}

// coil is the length of one tier's strand, mm: never less than once round, since a piece as wide on every side as its coil reaches has been gone round.
// A small coil winds closer for that than its overlap says, and one that ends where it begins is a ring.
func (r Rosette) coil(outer float64) float64 {
	const none = 1e-9
	out := outer - r.Inner
	if out < none*r.Width {
		return 2 * math.Pi * r.Inner
	}
	return CoilLength(min(CoilPitch(r.Width, r.Overlap), out), r.Inner, outer)
}

// Volume is the rosette's volume in mm³: of each tier its strand, and never less than what stands as wide and high as it does has to hold. See
// [Rosette.least].
func (r Rosette) Volume() float64 {
	sum := 0.0
	for i := range r.Tiers {
		strand, body := r.Tier(i)
		sum += strand + body
	}
	return sum
}

// Tier is what one tier holds, mm³: its strand, and what has to come out of the tip beside that to make its body.
func (r Rosette) Tier(i int) (strand, body float64) {
	strand = r.Strand * r.coil(r.Tiers[i])
	return strand, max(0, r.least(i)-strand)
}

// least is what a tier holds at least, mm³: a body as high as a strand is wide that tapers straight from its own rim to the rim of the tier it carries,
// the uppermost to a point, as full as the tip makes a strand. Where a coil is small against its strand, the tip stands rather than goes, and what comes
// out of it makes this body and no rope. Rings that leave a hole in their middle are ropes upon each other, and nothing has to fill it. Derived.
func (r Rosette) least(tier int) float64 {
	if r.Inner > r.Width/2 {
		return 0
	}
	rim, top := r.Tiers[tier]+r.Width/2, 0.0
	if tier+1 < len(r.Tiers) {
		top = r.Tiers[tier+1] + r.Width/2
	}
	return r.Strand / Disc(r.Width/2) * Frustum(rim, top, r.Width)
}

// Diameter is the rosette's outer diameter in mm: that of the widest tier's centre line and a strand's width. Derived.
func (r Rosette) Diameter() float64 {
	widest := r.Inner
	for _, outer := range r.Tiers {
		widest = max(widest, outer)
	}
	return 2*widest + r.Width
}
