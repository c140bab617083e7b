package slice

import "math"

// What a mould leaves on the sides that lay against it, by eye, no source.
const (
	pitMeshMM  = 3.1  // one pit of air at most in a square of so many mm
	pitOften   = 0.42 // of the squares, where many were caught
	pitLeast   = 0.16 // mm, radius of the finest
	pitMore    = 0.75 // and how much larger the largest
	pitDark    = 0.34 // how much darker the upper half of one is, that hides its own light
	pitLight   = 0.1  // and how much brighter the lower
	matTone    = 0.03 // how unevenly the skin came off the mould: matt here, smooth there, to each side
	matMM      = 13   // over so far
	squeezeMM  = 3.2  // so far down the wall icing was pressed between mould and batter at the most
	squeezeIn  = 2.4  // mm in from the wall the icing stands that was
	squeezeAll = 7    // mm it stands high there where it was pressed down in full
)

// moulded is how bright a side is that lay against the mould at a place so far along it and so high up, for pits of air and for how it came off.
func moulded(along, up float64) float64 {
	u, v := along/matMM, up/matMM
	drift := math.Sin(1.1*u+0.7*v+1.7*math.Sin(0.8*v-0.5*u)) + 0.6*math.Sin(2.3*v-1.9*u+1.2*math.Sin(1.7*u+0.4))
	return (1 + matTone*drift/1.6) * (1 + pitted(along, up, drift))
}

// pitted is how much brighter or darker a place is for the pit it lies in, where more or fewer were caught.
func pitted(along, up, drift float64) float64 {
	i, j := math.Floor(along/pitMeshMM), math.Floor(up/pitMeshMM)
	name := i + 57*j
	if odd(name) > pitOften*(0.55+0.45*drift) {
		return 0
	}
	big := odd(name + 0.31)
	r := pitLeast + pitMore*big*big*big*big
	room := pitMeshMM - 2*r
	dx := along - i*pitMeshMM - r - room*odd(name+0.57)
	dy := up - j*pitMeshMM - r - room*odd(name+0.83)
	d := math.Sqrt(dx*dx+dy*dy) / r
	if d >= 1 {
		return 0
	}
	edge := min(1, 3*(1-d))
	if dy > -0.25*r {
		return -pitDark * edge * min(1, 0.45+dy/r)
	}
	return pitLight * edge
}

// odd is a number from 0 to 1 that goes by another.
func odd(of float64) float64 {
	v := 43758.5453 * math.Sin(12.9898*of+1.7)
	return v - math.Floor(v)
}

// squeezed is the icing that was pressed down between the mould and the batter at a place of a long side so far below the top of the base; ok is false
// where none was.
func (b *block) squeezed(along, across, below float64) (stuff uint8, ok bool) {
	if b.s.on == nil || b.t == nil || below > squeezeMM {
		return 0, false
	}
	if across < b.s.recipe.Box.W/2 {
		across += squeezeIn
	} else {
		across -= squeezeIn
	}
	high := b.t.height(along, across)
	tongue := 0.42 + 0.38*math.Sin(along/3.3+1.6*math.Sin(along/9.1)) + 0.2*math.Sin(along/1.27+1.3*math.Sin(along/4.1))
	if below > squeezeMM*tongue*min(1, high/squeezeAll) {
		return 0, false
	}
	stuff = b.t.at(along, across)
	return stuff, int(stuff) >= b.s.portions && stuff != ground
}
