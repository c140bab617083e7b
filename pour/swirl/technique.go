package swirl

// Technique is a way the portions meet in the mould.
type Technique string

// The techniques that can be drawn.
const (
	Layers       Technique = "layers"        // one level on the other
	Drop         Technique = "drop"          // colours poured from a height into a base
	Column       Technique = "column"        // all colours poured down one line: nested rings
	Pot          Technique = "pot"           // colours poured into the pot as sectors, then all at once along the middle
	PotStripes   Technique = "pot-stripes"   // the same with stripes in the pot
	PotSpots     Technique = "pot-spots"     // the same with spots in the pot
	PotEnd       Technique = "pot-end"       // sectors in the pot, poured from one end of the mould
	Hanger       Technique = "hanger"        // a wire drawn down and up across the layers
	HangerLoops  Technique = "hanger-loops"  // a wire drawn in loops across the layers
	HangerSpiral Technique = "hanger-spiral" // a wire drawn in a widening spiral
	Comb         Technique = "comb"          // stripes drawn with a comb, along and across
	Spoon        Technique = "spoon"         // dollops from a spoon
)

// Techniques returns every technique that can be drawn, plainest first.
func Techniques() []Technique {
	return []Technique{
		Layers, Drop, Column, Pot, PotStripes, PotSpots, PotEnd, Hanger, HangerLoops, HangerSpiral, Comb, Spoon,
	}
}

// Known reports whether the technique can be drawn.
func (t Technique) Known() bool {
	for _, k := range Techniques() {
		if k == t {
			return true
		}
	}
	return false
}

// SameInEveryBar reports whether each bar carries the shares of the whole batch; the other techniques spread the
// portions unevenly along the loaf.
func (t Technique) SameInEveryBar() bool {
	return t != PotEnd && t != Comb && t != Spoon
}

// Dials are the numbers a maker turns; passes, turns and height in mm as in [Recipe].
type Dials struct {
	Passes   int
	Turns    float64
	HeightMM float64
}

// Own returns the technique's own dials, used where a recipe has 0. A dial the technique does not have is 0.
// The figures are what gives a pleasing picture; no source.
func (t Technique) Own() Dials {
	switch t {
	case Layers:
		return Dials{Passes: 1}
	case Drop:
		return Dials{Passes: 10, HeightMM: 150}
	case Column:
		return Dials{Passes: 10, HeightMM: 100}
	case Pot, PotStripes, PotSpots, PotEnd:
		return Dials{Passes: 12, Turns: 1, HeightMM: 100}
	case Hanger:
		return Dials{Passes: 2, Turns: 3}
	case HangerLoops:
		return Dials{Passes: 2, Turns: 3}
	case HangerSpiral:
		return Dials{Passes: 2, Turns: 2}
	case Comb:
		return Dials{Passes: 2, Turns: 5}
	case Spoon:
		return Dials{Passes: 500}
	}
	return Dials{}
}

// MostPasses returns how many passes are drawn at most; a recipe may ask for more.
func (t Technique) MostPasses() int {
	switch t {
	case Spoon:
		return 600
	case Hanger, HangerLoops, HangerSpiral, Layers:
		return 8
	case Comb:
		return 4
	}
	return 40
}

// leastDollops is how many dollops it takes before their shares can be made to come out.
const leastDollops = 60

func (r Recipe) dials() Dials {
	d := r.Technique.Own()
	if r.Passes > 0 && d.Passes > 0 {
		d.Passes = min(r.Passes, r.Technique.MostPasses())
		if r.Technique == Spoon {
			d.Passes = max(d.Passes, leastDollops)
		}
	}
	if r.Turns > 0 && d.Turns > 0 {
		d.Turns = clamp(r.Turns, 0.25, 8)
	}
	if r.HeightMM > 0 && d.HeightMM > 0 {
		d.HeightMM = min(r.HeightMM, 600)
	}
	return d
}
