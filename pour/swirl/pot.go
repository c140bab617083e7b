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

// layout is how colours lie in the pot, a disk of radius 1.
type layout interface {
	at(u, v float64) int
}

func (s *stream) label(x, y, z float64) int {
	tau := z / s.box.H
	if s.tilt > 0 {
		tau = rank(tau+s.tilt*x/s.box.L, s.tilt)
	}
	side := fold(s.folds*y/s.box.W + s.drift*tau + s.sway.at(x))
	u := s.lookChord(tau)
	v := math.Sqrt(max(0, 1-u*u)) * (2*side - 1)
	turn := s.surge.at(x) - s.stir*math.Exp(-2*(u*u+v*v))
	sin, cos := math.Sincos(turn)
	return s.layout.at(u*cos-v*sin, u*sin+v*cos)
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

func (s *stream) lookChord(tau float64) float64 {
	t := clamp(tau, 0, 1) * chordKnots
	i := min(int(t), chordKnots-1)
	f := t - float64(i)
	return s.chord[i] + f*(s.chord[i+1]-s.chord[i])
}

// sectors are slices of the pot like those of a cake; until holds cumulative shares of the disk.
type sectors struct {
	until   []float64
	portion []int
}

func (s *sectors) at(u, v float64) int {
	return pick(s.until, s.portion, math.Atan2(v, u)/(2*math.Pi)+0.5)
}

// bands are stripes poured side by side into the pot; until holds cumulative shares of the disk.
type bands struct {
	until   []float64
	portion []int
}

func (b *bands) at(u, _ float64) int {
	u = clamp(u, -1, 1)
	return pick(b.until, b.portion, (u*math.Sqrt(1-u*u)+math.Asin(u))/math.Pi+0.5)
}

// nests are colours poured one into another in several places of the pot. The pot is cut into rings of wedges; by a
// map that keeps measure a wedge is a unit square, and round its middle lie the portions as nested rings of exact area.
type nests struct {
	rows    []potRing
	portion [][]int // orders from the middle out; the wedges take turns
	until   [][]float64
}

// potRing is a ring of the pot cut into equal wedges.
type potRing struct {
	outer  float64 // r² of its rim
	wedges float64
	offset float64 // wedges
}

func (n *nests) at(u, v float64) int {
	q := clamp(u*u+v*v, 0, 1)
	inner, k := 0.0, 0
	for k < len(n.rows)-1 && q >= n.rows[k].outer {
		inner = n.rows[k].outer
		k++
	}
	row := n.rows[k]
	b := (q - inner) / (row.outer - inner)
	a := (math.Atan2(v, u)/(2*math.Pi)+0.5)*row.wedges + row.offset
	wedge := math.Floor(a)
	turn := (int(wedge)%int(row.wedges) + k) % len(n.portion)
	return pick(n.until[turn], n.portion[turn], withinSquare(math.Hypot(a-wedge-0.5, b-0.5)))
}

// withinSquare is the share of the unit square that lies within r of its middle.
func withinSquare(r float64) float64 {
	switch {
	case r <= 0.5:
		return math.Pi * r * r
	case r >= math.Sqrt2/2:
		return 1
	}
	return math.Pi*r*r - 4*(r*r*math.Acos(0.5/r)-0.5*math.Sqrt(r*r-0.25))
}
