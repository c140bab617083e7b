package learn

import (
	"math"

	"pourbench/chem/clock"
)

// traitKey names a trait.
type traitKey struct {
	kind clock.TraitKind
	id   string
}

// belief is what is thought of all traits: a normal distribution.
type belief struct {
	keys  []traitKey
	place map[traitKey]int
	mean  []float64
	cov   [][]float64
}

func newBelief() *belief { return &belief{place: map[traitKey]int{}} }

// trait returns the place of a trait, adding it with its prior where it is new.
func (b *belief) trait(k clock.TraitKind, id string, sd float64) int {
	key := traitKey{k, id}
	if i, ok := b.place[key]; ok {
		return i
	}
	b.place[key] = len(b.keys)
	b.keys = append(b.keys, key)
	return b.grow(sd * sd)
}

// grow adds an unnamed unknown at the end, independent of the rest.
func (b *belief) grow(variance float64) int {
	n := len(b.mean)
	b.mean = append(b.mean, 0)
	for i := range b.cov {
		b.cov[i] = append(b.cov[i], 0)
	}
	row := make([]float64, n+1)
	row[n] = variance
	b.cov = append(b.cov, row)
	return n
}

// shrink forgets the last unknown; what it taught the others stays.
func (b *belief) shrink() {
	n := len(b.mean) - 1
	b.mean, b.cov = b.mean[:n], b.cov[:n]
	for i := range b.cov {
		b.cov[i] = b.cov[i][:n]
	}
}

// pull is one entry of an observation's row h that is not 0.
type pull struct {
	at int
	w  float64
}

// expect is h·m, P·hᵀ and h·P·hᵀ of a row.
func (b *belief) expect(h []pull) (mean float64, ph []float64, variance float64) {
	ph = make([]float64, len(b.mean))
	for _, p := range h {
		mean += p.w * b.mean[p.at]
		row := b.cov[p.at]
		for i := range ph {
			ph[i] += p.w * row[i]
		}
	}
	for _, p := range h {
		variance += p.w * ph[p.at]
	}
	return mean, ph, variance
}

// move shifts the mean by gain·P·hᵀ and takes off·(P·hᵀ)(h·P) off the covariance.
func (b *belief) move(ph []float64, gain, off float64) {
	for i, a := range ph {
		if a == 0 {
			continue
		}
		b.mean[i] += gain * a
		row := b.cov[i]
		k := off * a
		for j, c := range ph {
			row[j] -= k * c
		}
	}
}

// innovation is an observation against what was expected.
type innovation struct {
	expected float64
	e, s     float64 // y − expected, and its variance
	odd      bool
}

// oddZ is how many sd off an observation must be to count less, and oddFactor by how much its variance grows (trace model 3.2).
const (
	oddZ      = 3
	oddFactor = 4
)

// learn takes in an exact observation.
func (b *belief) learn(h []pull, y, s2 float64) innovation {
	mean, ph, v := b.expect(h)
	in := innovation{expected: mean, e: y - mean, s: v + s2}
	if math.Abs(in.e)/math.Sqrt(in.s) > oddZ {
		in.odd, in.s = true, v+oddFactor*s2
	}
	b.move(ph, in.e/in.s, 1/in.s)
	return in
}

// learnBelow takes in that the speed was below y (trace model 3.3): the moments of the normal cut off there.
func (b *belief) learnBelow(h []pull, y, s2 float64) innovation {
	mean, ph, v := b.expect(h)
	in := innovation{expected: mean, e: y - mean, s: v + s2}
	root := math.Sqrt(in.s)
	a := in.e / root
	d := tail(a)
	b.move(ph, -d/root, d*(d+a)/in.s)
	return in
}

// tail is φ(a)/N(a), without losing digits far below.
func tail(a float64) float64 {
	if a < -30 { // N(a) is about φ(a)/|a| there
		return -a
	}
	return math.Exp(-a*a/2) / math.Sqrt(2*math.Pi) / (math.Erfc(-a/math.Sqrt2) / 2)
}
