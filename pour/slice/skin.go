package slice

import (
	"context"
	"image"
	"math"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// Ground is the label of a place where nothing but the ground is seen.
const ground = relief.Bare

// skin is what one flat side shows: its width and its height above its foot in mm, from its left edge.
type skin struct {
	wide, high float64 // of the base
	peak       float64 // above it
	base       swirl.Picture
	over       relief.Picture // of all, the base as well; empty: nothing
	shift      int            // of what stands on it, after the portions
	grain      func(portion uint8, x, y float64) float64
	stuff      swirl.Material // of the base
}

// drawn is what draws a side of the base.
type drawn interface {
	Draft(dst *swirl.Picture, w, h int)
	Refine(ctx context.Context, dst *swirl.Picture, w, h int) error
}

// skin draws a side so many pixels to the mm.
func (s *Scene) skin(ctx context.Context, d drawn, v *relief.View, wide, high, perMM float64, fine bool) (*skin, error) {
	k := &skin{wide: wide, high: high, shift: s.portions}
	w, h := max(2, int(wide*perMM+0.5)), max(2, int(high*perMM+0.5))
	if !fine {
		d.Draft(&k.base, w, h)
	} else if err := d.Refine(ctx, &k.base, w, h); err != nil {
		return nil, err
	}
	if v == nil {
		return k, nil
	}
	crown := int(math.Ceil(s.peakMM * perMM))
	k.peak = float64(crown) * high / float64(h)
	v = v.Under(k.peak)
	return k, v.Draw(ctx, &k.over, w, h+crown, image.Rect(0, 0, w, h+crown))
}

// at is the stuff at a place of the side, and how bright it is there; ok is false where nothing is.
func (k *skin) at(x, z float64) (stuff uint8, bright float64, ok bool) {
	if k.over.W > 0 {
		i, j := place(x/k.wide, k.over.W), place((k.high+k.peak-z)/(k.high+k.peak), k.over.H)
		if l := k.over.Label(i, j); l != relief.Bare {
			return uint8(k.shift + l), float64(k.over.Dots[j*k.over.W+i].Bright) / relief.Lit * k.grained(ground, x, z), true
		}
	}
	if z > k.high {
		return ground, 0, false
	}
	i, j := place(x/k.wide, k.base.W), place(1-z/k.high, k.base.H)
	l := k.base.Label(i, j)
	return uint8(l), k.grained(uint8(l), x, z) * k.base.Clouded(i, j, k.stuff), l != swirl.Empty
}

// grained is how bright a place is for the material it is of.
func (k *skin) grained(portion uint8, x, z float64) float64 {
	if k.grain == nil {
		return 1
	}
	return k.grain(portion, x, k.high-z)
}

// place is the pixel at a part of a row.
func place(part float64, n int) int { return min(max(int(part*float64(n)), 0), n-1) }
