package script

import (
	"cmp"
	"math"
	"slices"
)

// Contact is a quick estimate of who lies beside whom, from the acts alone: each pair's part of all boundary between two jugs, the parts
// of all pairs summing to 1, or 0 everywhere where only one jug is poured. What is poured next to each other touches; what is poured into
// a bed touches the bed; round the pot the last touches the first; spoonfuls touch what lies where they fall. It is good for putting orders side by
// side: what really touches is measured on the drawn faces.
func (s Script) Contact() [][]float64 {
	n := len(s.Brief.Shares)
	c := contact{of: make([][]float64, n)}
	for i := range c.of {
		c.of[i] = make([]float64, n)
	}
	switch {
	case s.Brief.Technique.InPot():
		c.round(s)
		c.parts()
		c.folded(s.Brief)
	case s.Brief.Technique == Drop:
		c.streamed(s)
	case s.Brief.Technique == Spooned:
		c.heaped(s)
	case s.Brief.Technique == Combed:
		c.beside(s)
	default:
		c.poured(s)
	}
	return c.parts()
}

type contact struct{ of [][]float64 }

func (c contact) add(a, b int, weight float64) {
	if a != b {
		c.of[a][b] += weight
		c.of[b][a] += weight
	}
}

// poured has every pour touch the one before.
func (c contact) poured(s Script) {
	before := Whole
	for _, a := range s.Acts {
		if a.Kind != Pour {
			continue
		}
		if before != Whole {
			c.add(before, a.Jug, 1)
		}
		before = a.Jug
	}
}

// beside has every stripe touch the one at its right.
func (c contact) beside(s Script) {
	type stripe struct {
		at  float64
		jug int
	}
	var list []stripe
	for _, a := range s.Acts {
		for _, at := range a.Lines {
			list = append(list, stripe{at, a.Jug})
		}
	}
	slices.SortFunc(list, func(a, b stripe) int { return cmp.Compare(a.at, b.at) })
	for i := 1; i < len(list); i++ {
		c.add(list[i-1].jug, list[i].jug, 1)
	}
}

// A stream wanders so far to either side of its line, and covers so much of every stretch of the loaf where it goes, in widths of the mould: set by
// comparing with faces drawn, no source. The mould's width is looked at in so many places.
const (
	streamReach = 0.4
	streamCover = 0.15
	places      = 20
)

// streamed has every stream touch what lies on the surface where it lands, which is now here and now there within its reach.
func (c contact) streamed(s Script) {
	var surface [places][]float64
	for i := range surface {
		surface[i] = make([]float64, len(s.Brief.Shares))
	}
	for _, a := range s.Acts {
		if a.Kind != Pour {
			continue
		}
		for i := range surface {
			at := (float64(i) + 0.5) / places
			cover := 0.0
			for _, line := range a.Lines {
				if math.Abs(at-line) < streamReach {
					cover += streamCover / streamReach / float64(len(a.Lines))
				}
			}
			if len(a.Lines) == 0 {
				cover = 1
			}
			c.cover(surface[i], a.Jug, min(1, cover))
		}
	}
}

// cover lays a jug over a part of a surface that is of the jugs by parts; it touches what it covers.
func (c contact) cover(surface []float64, jug int, part float64) {
	for j, lies := range surface {
		c.add(jug, j, part*lies)
		surface[j] -= part * lies
	}
	surface[jug] += part
}

// round has the colours touch as they lie in the pot: beside each other and, where the pot's own batter is left between, beside the pot.
// Slices of a cake close to a ring, stripes do not; of colours poured one into the other the last lies inside and touches no pot.
func (c contact) round(s Script) {
	pot := s.Brief.Shares[0] > 0
	var list []int
	for i, a := range s.Acts {
		if a.Kind != IntoPot {
			continue
		}
		begins := i == 0 || s.Acts[i-1].Round != a.Round
		if begins && s.Brief.Technique == PotSpots {
			c.row(list)
			list = nil
		}
		if n := len(list); pot && (begins || s.Brief.PotBetween && n > 0 && list[n-1] != 0) {
			list = append(list, 0)
		}
		list = append(list, a.Jug)
	}
	c.row(list)
	if n := len(list); n > 0 && s.Brief.Technique != PotSpots && s.Brief.Technique != PotStripes {
		c.add(list[n-1], list[0], 1)
	}
}

// foldedPart is how much boundary arises as the stream out of the pot falls onto what it laid before, against what it had in the pot; fitted
// by eye to faces, no source.
const foldedPart = 0.7

// folded has every two jugs touch in proportion to both their shares, as ribbons fall on one another wherever chance has it.
func (c contact) folded(b Brief) {
	shares, sum := b.Shares, 0.0
	for a := range shares {
		for b := range a {
			sum += shares[a] * shares[b]
		}
	}
	for a := range shares {
		for b := range a {
			if sum > 0 {
				c.add(a, b, foldedPart*shares[a]*shares[b]/sum)
			}
		}
	}
}

// row has each touch the next.
func (c contact) row(list []int) {
	for i := 1; i < len(list); i++ {
		c.add(list[i-1], list[i], 1)
	}
}

// spoonCover is how much of the mould's width the spoonfuls of an act cover, for every share they are of the batter: set by comparing with
// faces drawn, no source.
const spoonCover = 8

// heaped has every act of spoonfuls touch what lies on the surface, as chance has it, where they cover it.
func (c contact) heaped(s Script) {
	surface := make([]float64, len(s.Brief.Shares))
	for _, a := range s.Acts {
		if a.Kind != Spoon {
			continue
		}
		c.cover(surface, a.Jug, min(1, spoonCover*a.Share))
	}
}

// parts makes the contacts parts of their sum over all pairs.
func (c contact) parts() [][]float64 {
	sum := 0.0
	for a := range c.of {
		for b := range a {
			sum += c.of[a][b]
		}
	}
	for a := range c.of {
		for b := range c.of[a] {
			if sum > 0 {
				c.of[a][b] /= sum
			}
		}
	}
	return c.of
}
