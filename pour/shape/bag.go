package shape

import "math"

// Residue is what stays behind in piping bags and tips: a part of what is made, or grams in every bag, which is nearly the same whatever was in it.
type Residue struct {
	Part   float64 // fraction of what is made, 0 to below 1; 0.05 to 0.10 is common practice, no source
	PerBag float64 // g in each bag; counts instead of the part where it is above 0
}

// Bagging is what has to be made so that a net mass comes out of the tips, and in how many bags.
type Bagging struct {
	Made  float64 // g to make
	Left  float64 // g of it that stay in bags and tips
	Bags  int     // how many bags are used: each leaves its own film, however often it is filled
	Fills int     // how often a bag is filled
}

// Bagged is what has to be made for a net mass in g that is piped from a bag for every part of it, the parts summing to 1 and a bag taking fill g at
// most. It is false where a figure cannot be, or a bag takes no more than it keeps. Derived.
func Bagged(net, fill float64, parts []float64, left Residue) (Bagging, bool) {
	if !left.fits(net, fill) {
		return Bagging{}, false
	}
	if net == 0 {
		return Bagging{}, true
	}
	made := net / (1 - left.Part)
	if left.PerBag > 0 {
		made = net + float64(Bags(parts))*left.PerBag
	}
	return left.bagging(made, fill, parts), true
}

// Emptied is what comes of a mass in g that is made: the way back from [Bagged], false for the same reasons.
func Emptied(made, fill float64, parts []float64, left Residue) (Bagging, bool) {
	if !left.fits(made, fill) {
		return Bagging{}, false
	}
	return left.bagging(made, fill, parts), true
}

// fits says whether a mass can be piped from bags that take fill g.
func (r Residue) fits(grams, fill float64) bool {
	return grams >= 0 && !math.IsInf(grams, 1) && fill > 0 && r.Part >= 0 && r.Part < 1 && r.PerBag >= 0 && r.PerBag < fill
}

// bagging fills bags with what is made.
func (r Residue) bagging(made, fill float64, parts []float64) Bagging {
	b := Bagging{Made: made, Left: made * r.Part, Bags: Bags(parts)}
	if r.PerBag > 0 {
		b.Left = min(made, float64(b.Bags)*r.PerBag)
	}
	for _, part := range parts {
		b.Fills += Fills(made*part, fill)
	}
	return b
}

// Bags is how many parts there are that are not nothing: each has a bag of its own.
func Bags(parts []float64) int {
	n := 0
	for _, part := range parts {
		if part > 0 {
			n++
		}
	}
	return n
}

// Fills is how often a bag that takes so many grams has to be filled.
func Fills(grams, fill float64) int { return int(math.Min(math.Ceil(grams/fill-1e-9), 1e6)) }

// BagRadius is the radius in mm of the mouth of a bag that lies flat with a width: a cone as it is filled. Derived.
func BagRadius(flatWidth float64) float64 { return flatWidth / math.Pi }

// BagFilm is the volume in mm³ that sticks as a film of a thickness to the inside of a conical bag of a flat width and a length. The thickness is
// an assumption. Derived.
func BagFilm(flatWidth, length, thickness float64) float64 {
	return math.Pi * BagRadius(flatWidth) * math.Hypot(BagRadius(flatWidth), length) * thickness
}

// BagHolds is the volume in mm³ that a conical bag of a flat width and a length takes when a part of it is filled; two thirds at most is common
// practice, no source. Derived.
func BagHolds(flatWidth, length, part float64) float64 {
	return part * Frustum(BagRadius(flatWidth), 0, length)
}

// Piping is how long it takes to pipe, in minutes: units at so many seconds each, and bags to fill at so many minutes. Derived.
func Piping(units, seconds float64, fills int, filling float64) float64 {
	return units*seconds/60 + float64(fills)*filling
}
