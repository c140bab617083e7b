package swirl

import "math"

// stream is a slab poured from a pot that holds several colours. A chain of maps that keep measure leads from a
// point of the mould to a point of the pot: the time it was poured and its place along the lip, then the chord of
// the pot it left, then the stick stir in the pot undone. So every portion keeps its share exactly.
type stream struct {
	layout layout
	box    Box
	tilt   float64   // of the pour towards the far end; 0 along the whole middle
	folds  float64   // how often the falling sheet folds over the width, whole
	drift  float64   // folds by which the fold pattern moves over the whole pour
	sway   wobble    // folds, slow change along the loaf
	surge  wobble    // radians by which the pot has turned, slow change along the loaf
	stir   float64   // radians at the middle of the pot
	chord  []float64 // table of the chord at which a share of the pot has been poured
}

func (s *stream) label(x, y, z float64) int {
	tau := z / s.box.H
	if s.tilt > 0 {
		tau = rank(tau+s.tilt*x/s.box.L, s.tilt)
	}
	side := fold(s.folds*y/s.box.W + s.drift*tau + s.sway.at(x))
	u := s.chordAt(tau)
	v := math.Sqrt(max(0, 1-u*u)) * (2*side - 1)
	return s.layout.at(s.untwist(u, v, s.surge.at(x)))
}

// untwist carries a place of the pot that is turned by an angle in radians back to before the tool stirred it.
func (s *stream) untwist(u, v, by float64) (float64, float64) {
	sin, cos := math.Sincos(by - s.stir*math.Exp(-2*(u*u+v*v)))
	return u*cos - v*sin, u*sin + v*cos
}

// fold runs from 0 to 1 and back once for every whole t; over whole periods its values are spread evenly.
func fold(t float64) float64 {
	t -= math.Floor(t)
	return 1 - math.Abs(2*t-1)
}

const chordKnots = 1024

// chordTable inverts A(u) = (u√(1-u²) + asin u)/π + ½, the share of the disk on one side of a chord.
func chordTable() []float64 {
	table := make([]float64, chordKnots+1)
	for i := range table {
		want := float64(i) / chordKnots
		low, high := -1.0, 1.0
		for range 50 {
			mid := 0.5 * (low + high)
			if (mid*math.Sqrt(1-mid*mid)+math.Asin(mid))/math.Pi+0.5 < want {
				low = mid
			} else {
				high = mid
			}
		}
		table[i] = 0.5 * (low + high)
	}
	return table
}

func (s *stream) chordAt(tau float64) float64 {
	t := clamp(tau, 0, 1) * chordKnots
	i := min(int(t), chordKnots-1)
	f := t - float64(i)
	return s.chord[i] + f*(s.chord[i+1]-s.chord[i])
}
