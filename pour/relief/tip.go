package relief

import (
	"math"

	"pourbench/pour/script"
)

// The tip in which a swirl ends, figures by eye, no source. Across it goes by the swirl's radius, up by its height.
const (
	tipFrom  = 0.58 // it grows out of the last round so high up
	tipLeast = 0.16 // how high it stands over that at the least, were it whole
	tipMost  = 0.31
	tipFoot  = 0.32 // radius of its shoulder
	tipBlunt = 0.22 // and how much of that is left at its end
	tipBends = 0.17 // how far its end hangs over at the most
	tipSoft  = 0.14 // how softly it goes over into the last round
	tipRidge = 0.05 // how far the ridges of the nozzle stand out of it
	tipWound = 5    // turned by so much to its end, radians
	tipShort = 0.4  // the part of it that is left at the least
	tipWhole = 1.45 // and at the most, where more than all of it is all of it
	tipRoots = 0.3  // the part of it that is below the last round
	tipFlare = 0.7  // and is so much wider at its end
	tipDeep  = 0.3  // which reaches so deep
)

// swirlTop is where the bag was drawn off: the end of the strand, drawn out thinner and thinner, that bends over under its own weight or breaks.
type swirlTop struct {
	high   float64
	bend   vector // of its end
	broken float64
	turned float64
}

func newSwirlTop(d *script.Dice) swirlTop {
	return swirlTop{high: d.Between(tipLeast, tipMost), bend: drawn(d, tipBends), broken: min(1, d.Between(tipShort, tipWhole)), turned: d.Between(0, 2*math.Pi)}
}

// reach is how far from the middle it can be.
func (t *swirlTop) reach() float64 {
	return tipFoot*(1+tipFlare)*(1+tipRidge) + math.Hypot(t.bend.x, t.bend.y)
}

// at is how high it stands at a place, 0 beside it: the highest of its rounds, each a little smaller and further over than the one below, that the place
// lies in.
func (t *swirlTop) at(x, y float64) float64 {
	const steps = 11
	slant := 0.5 * (x*t.bend.y - y*t.bend.x) / (tipBends * tipFoot)
	last := 0.0
	for k := steps; k >= 0; k-- {
		h := float64(k) / steps
		in := t.inside(x, y, h)
		if in < 0 {
			last = in
			continue
		}
		if k < steps {
			h += in / (in - last) / steps
		}
		return tipFrom + t.high*min(h, t.broken+0.12*slant) - tipDeep*max(0, 1-h/tipRoots)
	}
	return 0
}

// inside is how far inside the tip a place lies at a part of its height; less than 0 outside.
func (t *swirlTop) inside(x, y, h float64) float64 {
	over := h * h * (1.6 - 0.6*h)
	x, y = x-t.bend.x*over, y-t.bend.y*over
	taper := 1 - h
	half := tipFoot * (tipBlunt*math.Sqrt(taper) + (1-tipBlunt)*taper*(0.15+0.85*taper))
	if h < tipRoots {
		half *= 1 + tipFlare*squared(1-h/tipRoots)
	}
	in := half - math.Sqrt(x*x+y*y)
	if math.Abs(in) < 4*tipRidge*half { // elsewhere no ridge is felt
		in += half * tipRidge * math.Cos(5*math.Atan2(y, x)+tipWound*h+t.turned)
	}
	return in
}
