package cure

import (
	"fmt"
	"math"
)

// Box is a bar as the drying law sees it: its sides as cut, mm, every face open to the air. A bar that lies on a closed shelf
// has one face sealed and dries as one twice as high ([Box.Lying]). A bar with icing is its base's box (estimate: thin icing dries sooner).
type Box struct{ ThickMM, WideMM, HighMM float64 }

// The sides that the law is asked for, mm: what is less is no bar, what is more no bar either.
const (
	leastSideMM = 1
	mostSideMM  = 3000 // as long as a mould may be
)

func (b Box) sides() [3]float64 { return [3]float64{b.ThickMM, b.WideMM, b.HighMM} }

// Check says what about a box cannot be.
func (b Box) Check() error {
	for _, l := range b.sides() {
		if !(l >= leastSideMM && l <= mostSideMM) {
			return refuse(BadBar, "a bar of %.4g × %.4g × %.4g mm: every side must lie from %d to %d mm", b.ThickMM, b.WideMM, b.HighMM, leastSideMM, mostSideMM)
		}
	}
	return nil
}

// Lying returns the box that dries as this one does with the face under its height sealed by a shelf: it is twice as high (derived, by the mirror).
func (b Box) Lying() Box {
	b.HighMM *= 2
	return b
}

// inverseSquares is the sum of 1/l² over the sides, mm⁻².
func (b Box) inverseSquares() float64 {
	sum := 0.0
	for _, l := range b.sides() {
		sum += 1 / (l * l)
	}
	return sum
}

// law has f = g(s1)·g(s2)·g(s3) with s_i = w_i·t/tau and w_i = l_i⁻²/Σ l_j⁻² (derived).
func (b Box) law() law {
	var l law
	all := b.inverseSquares()
	for i, side := range b.sides() {
		l.weights[i] = 1 / (side * side) / all
	}
	return l
}

// Left returns f, the part of the water that will go which is still in the bar at x times tau, 1 at the cut.
func (b Box) Left(x float64) float64 {
	f, _ := b.law().left(x)
	return f
}

// What a diffusivity in m²/s is in mm²/day.
const mm2PerDay = 86400 * 1e6

// TauDays returns the time of the slowest mode, tau = 1/(π²D·Σ1/l²), days (derived), for a diffusivity above 0, m²/s.
func (b Box) TauDays(diffusivity float64) float64 {
	return 1 / (math.Pi * math.Pi * diffusivity * mm2PerDay * b.inverseSquares())
}

// Diffusivity returns D, m²/s, of a bar whose slowest mode takes tauDays, above 0.
func (b Box) Diffusivity(tauDays float64) float64 {
	return b.TauDays(tauDays) // each is one over the other times the same
}

// String is a box as it is read, mm.
func (b Box) String() string {
	return fmt.Sprintf("%.4g × %.4g × %.4g mm", b.ThickMM, b.WideMM, b.HighMM)
}
