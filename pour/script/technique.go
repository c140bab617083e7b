package script

import "math"

// Technique is a way the portions meet in the mould.
type Technique string

// The techniques there are acts for.
const (
	Layers       Technique = "layers"        // one level on the other
	Drop         Technique = "drop"          // colours poured from a height into a bed
	Column       Technique = "column"        // all colours poured down one line: nested rings
	Pot          Technique = "pot"           // colours poured into the pot as sectors, then all at once along the middle
	PotStripes   Technique = "pot-stripes"   // the same with stripes in the pot
	PotSpots     Technique = "pot-spots"     // the same with spots in the pot, one colour into the other
	PotEnd       Technique = "pot-end"       // sectors in the pot, poured from one end of the mould
	Hanger       Technique = "hanger"        // a wire drawn down and up across the layers
	HangerLoops  Technique = "hanger-loops"  // a wire drawn in loops across the layers
	HangerSpiral Technique = "hanger-spiral" // a wire drawn in a widening spiral
	Combed       Technique = "comb"          // stripes drawn with a comb, across and along
	Spooned      Technique = "spoon"         // spoonfuls, round upon round
)

// Techniques returns every technique, plainest first.
func Techniques() []Technique {
	return []Technique{
		Layers, Drop, Column, Pot, PotStripes, PotSpots, PotEnd, Hanger, HangerLoops, HangerSpiral, Combed, Spooned,
	}
}

// Known reports whether there are acts for the technique.
func (t Technique) Known() bool {
	for _, k := range Techniques() {
		if k == t {
			return true
		}
	}
	return false
}

// InPot reports whether the colours meet in the pot before anything is in the mould.
func (t Technique) InPot() bool {
	return t == Pot || t == PotStripes || t == PotSpots || t == PotEnd
}

// IntoBed reports whether the first jug makes a bed that the others are poured into.
func (t Technique) IntoBed() bool { return t == Drop || t == Column }

// SameInEveryBar reports whether each bar carries the shares of the whole batch; the other techniques spread the
// portions unevenly along the loaf.
func (t Technique) SameInEveryBar() bool {
	return t != PotEnd && t != Combed
}

// Dials are the numbers a maker turns; passes, turns and height in mm as in [Brief].
type Dials struct {
	Passes   int
	Turns    float64
	HeightMM float64
}

// ownDrops is about how many pours a drop has when the maker does not say: enough to look rich, few enough to be done before the
// batter thickens; a colour that falls fewer than leastDrops times is one plume and no swirl (common practice, no source).
const (
	ownDrops   = 15
	leastDrops = 3
	ownPours   = 40 // down one line, small ones
)

// ownSpoonings is about how many times a spoon goes into the jugs in turn: of fewer the spoonfuls would be too large to carry, of many more too
// small to see (by eye, no source).
const ownSpoonings = 15

// Own returns the technique's own dials for a number of jugs, used where a brief has 0. A dial the technique does not have is 0.
// A pass is one round in which every jug has its turn; where the pot is poured out it is one way over the mould, and for a comb one
// stroke. The figures are what gives a pleasing picture; no source.
func (t Technique) Own(jugs int) Dials {
	rounds := func(pours float64) int { return max(1, int(math.Round(pours/float64(max(1, jugs))))) }
	switch t {
	case Layers:
		return Dials{Passes: 1}
	case Drop:
		return Dials{Passes: max(leastDrops, rounds(ownDrops)), HeightMM: 150}
	case Column:
		return Dials{Passes: rounds(ownPours), HeightMM: 100}
	case Pot, PotStripes, PotSpots, PotEnd:
		return Dials{Passes: 12, Turns: 1, HeightMM: 100}
	case Hanger, HangerLoops:
		return Dials{Passes: 2, Turns: 3}
	case HangerSpiral:
		return Dials{Passes: 2, Turns: 4}
	case Combed:
		return Dials{Passes: 2, Turns: 5}
	case Spooned:
		return Dials{Passes: max(3, min(int(math.Round(ownSpoonings/float64(max(1, jugs)))), 6))}
	}
	return Dials{}
}

// MostPasses returns how many passes are done at most; a brief may ask for more.
func (t Technique) MostPasses() int {
	switch t {
	case Hanger, HangerLoops, HangerSpiral, Layers:
		return 8
	case Spooned:
		return 12
	case Combed:
		return 4
	}
	return 40
}

// leastRounds is how many rounds of spoonfuls it takes before they lie among one another.
const leastRounds = 2

func (b Brief) dials() Dials {
	d := b.Technique.Own(len(b.Shares))
	if b.Passes > 0 && d.Passes > 0 {
		d.Passes = min(b.Passes, b.Technique.MostPasses())
		if b.Technique == Spooned {
			d.Passes = max(d.Passes, leastRounds)
		}
	}
	if b.Turns > 0 && d.Turns > 0 {
		d.Turns = max(0.25, min(b.Turns, 8))
	}
	if b.HeightMM > 0 && d.HeightMM > 0 {
		d.HeightMM = min(b.HeightMM, 600)
	}
	return d
}
