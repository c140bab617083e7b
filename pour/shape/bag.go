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
	Fills int     // how often a bag is filled
	Bags  int     // how many bags are used: each leaves its own film, however often it is filled
}

// Bagged is what has to be made for a net mass in g, a bag taking fill g at most and at most so many bags being at hand, 0 for one to each fill.
// It is false where a bag leaves as much behind as it takes, or a figure is none. Derived.
func Bagged(net, fill float64, bags int, left Residue) (Bagging, bool) {
	if !(net >= 0 && fill > 0 && left.Part >= 0 && left.Part < 1 && left.PerBag >= 0 && left.PerBag < fill) || math.IsInf(net, 1) || bags < 0 {
		return Bagging{}, false
	}
	if net == 0 {
		return Bagging{}, true
	}
	b := Bagging{Made: net / (1 - left.Part)}
	if b.Fills = fills(b.Made, fill); left.PerBag > 0 {
		b.Fills = fills(net, fill-left.PerBag)
		if bags > 0 && b.Fills > bags { // A bag that is filled again still holds its film: only the first filling gives less.
			b.Fills = fills(net+float64(bags)*left.PerBag, fill)
		}
	}
	if b.Bags = b.Fills; bags > 0 {
		b.Bags = min(b.Bags, bags)
	}
	if left.PerBag > 0 {
		b.Made = net + float64(b.Bags)*left.PerBag
	}
	b.Left = b.Made - net
	return b, true
}

// fills is how often a bag that takes so many grams has to be filled.
func fills(grams, fill float64) int { return int(math.Ceil(grams/fill - 1e-9)) }

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
func Piping(units int, seconds float64, fills int, filling float64) float64 {
	return float64(units)*seconds/60 + float64(fills)*filling
}
